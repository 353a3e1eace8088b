using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Stacking.Rules;

namespace Circuits.Solving;

/// <summary>What a gear sets from outside, in the numbers of a network.</summary>
public sealed class GearInputs
{
    private GearInputs(int switches, int regulators)
    {
        Fed = new bool[switches];
        Set = new double[regulators];
    }

    /// <summary>The manual valve's position; -1 when it has none of that name.</summary>
    public int Lever { get; private set; } = -1;

    /// <summary>For each switching solenoid, whether its outlet is joined to its feed.</summary>
    internal bool[] Fed { get; }

    /// <summary>For each regulator that is a pressure solenoid, the pressure it holds, kPa; infinite for its whole feed.</summary>
    internal double[] Set { get; }

    /// <summary>Pressures fixed from outside: node and kPa.</summary>
    internal List<(int Node, double Kilopascals)> Fixed { get; } = [];

    /// <summary>What the gear names and this assembly lacks.</summary>
    public List<Finding> Findings { get; } = [];

    /// <summary>Resolves a gear's settings against a network.</summary>
    /// <param name="network">The network.</param>
    /// <param name="gear">The gear.</param>
    public static GearInputs Of(Network network, GearState gear)
    {
        var inputs = new GearInputs(network.Switches.Length, network.Regulators.Length);
        inputs.SetLever(network, gear);
        inputs.SetSolenoids(network, gear);
        foreach (var signal in gear.Signals)
        {
            var node = network.FindNode(signal.At.Name);
            if (node < 0)
                inputs.Miss(gear, signal.At.Place, $"gear {gear.Name} fixes the pressure of {signal.At.Name}, which this assembly lacks");
            else
                inputs.Fixed.Add((node, signal.Pressure.Kilopascals));
        }

        return inputs;
    }

    private void SetLever(Network network, GearState gear)
    {
        if (gear.Lever is not { } lever) return;
        Lever = network.LeverPositions.IndexOf(lever.Name);
        if (Lever < 0)
            Miss(gear, lever.Place, $"gear {gear.Name} needs lever position {lever.Name}, which this assembly lacks");
    }

    private void SetSolenoids(Network network, GearState gear)
    {
        for (var i = 0; i < network.Switches.Length; i++)
        {
            var element = network.Switches[i];
            var energized = Names(gear.Energize, element.Name, element.Source.Name) || Commanded(gear, element.Name, element.Source.Name) is not null;
            var restsHigh = element.Source.AtRest == RestState.High;
            Fed[i] = element.Source.Fault switch
            {
                SolenoidFault.StuckLow => false,
                SolenoidFault.StuckHigh => true,
                SolenoidFault.Dead => restsHigh,
                SolenoidFault.Reversed => energized == restsHigh,
                _ => energized != restsHigh,
            };
        }

        for (var i = 0; i < network.Regulators.Length; i++)
        {
            if (network.Regulators[i] is not { Solenoid: { } solenoid } element) continue;
            Set[i] = solenoid.Fault switch
            {
                SolenoidFault.StuckLow => 0,
                SolenoidFault.StuckHigh => double.PositiveInfinity,
                SolenoidFault.Dead => solenoid.AtRest == RestState.High ? double.PositiveInfinity : 0,
                SolenoidFault.Reversed => Mirrored(PressureOf(gear, element.Name, solenoid), FullPressure(network.Assembly.Unit, element.Name, solenoid)),
                _ => PressureOf(gear, element.Name, solenoid),
            };
        }

        foreach (var use in gear.Energize) Find(network, gear, use);
        foreach (var command in gear.Commands) Find(network, gear, command.Solenoid);
    }

    private void Find(Network network, GearState gear, NameUse use)
    {
        foreach (var element in network.Switches)
        {
            if (use.Name == element.Name || use.Name == element.Source.Name) return;
        }

        foreach (var element in network.Regulators)
        {
            if (element.Solenoid is { } solenoid && (use.Name == element.Name || use.Name == solenoid.Name)) return;
        }

        Miss(gear, use.Place, $"gear {gear.Name} works solenoid {use.Name}, which this assembly lacks");
    }

    /// <summary>What a solenoid of the other polarity gives for the same current: full where the right one gives none, and so on between.</summary>
    private static double Mirrored(double pressure, double full) =>
        pressure <= 0 ? double.PositiveInfinity : Math.Max(0, full - pressure);

    /// <summary>The most that a solenoid is ever told to hold, kPa: the top of its table, else the highest command of any gear.</summary>
    private static double FullPressure(Unit unit, string fullName, Solenoid solenoid) => solenoid.Table.IsEmpty
        ? unit.Gears.Select(gear => Commanded(gear, fullName, solenoid.Name)?.Pressure?.Kilopascals ?? 0).DefaultIfEmpty(0).Max()
        : solenoid.Table.Max(point => point.Pressure.Kilopascals);

    private static double PressureOf(GearState gear, string fullName, Solenoid solenoid)
    {
        if (Commanded(gear, fullName, solenoid.Name) is not { } command)
        {
            // Energized without a pressure means fully on: the reverse of its rest.
            var high = Names(gear.Energize, fullName, solenoid.Name) != (solenoid.AtRest == RestState.High);
            return high ? double.PositiveInfinity : 0;
        }

        if (command.Pressure is { } pressure) return pressure.Kilopascals;
        return SolenoidTable.PressureAt(solenoid, command.Current!.Value.Amperes);
    }

    private static Command? Commanded(GearState gear, string fullName, string name)
    {
        foreach (var command in gear.Commands)
        {
            if (command.Solenoid.Name == fullName || command.Solenoid.Name == name) return command;
        }

        return null;
    }

    private static bool Names(ImmutableArray<NameUse> uses, string fullName, string name)
    {
        foreach (var use in uses)
        {
            if (use.Name == fullName || use.Name == name) return true;
        }

        return false;
    }

    private void Miss(GearState gear, Place place, PhraseBuilder message) =>
        Findings.Add(MissingName.Rule.At(place, message) with { Gear = gear.Name });
}
