using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>never-regulates</c>.</summary>
internal sealed class NeverRegulates : AssemblyRule
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "never-regulates", Severity.Warning,
        Meaning: "In a matched set, a reducing regulator is fed by the pump itself, and holds its pressure in no gear: line pressure is never higher than what it is set to.",
        OnTheRoad: "What it feeds has the whole of line pressure. One that only limits at full throttle may be so; else its spring is wrong in the file.",
        Example: "cooler-limit: {from: line, out: cooler, spring: 6 MPa}: line is 700 kPa at most.",
        Mend: "Check the spring's pressure, its unit and its decimal point, and what the regulator takes from.");

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        var network = assembly.Solved.Network;
        if (network.Assembly.Matched is null) return;
        for (var i = 0; i < network.Regulators.Length; i++)
        {
            var regulator = network.Regulators[i];
            if (regulator.Kind != RegulatorKind.Reducing) continue;
            var fed = assembly.Gears.Where(gear => gear.Solution.OilAt(regulator.From) is OilState.Supply or OilState.Between).ToList();
            if (fed.Count == 0 || fed.Exists(gear => gear.Solution.Modes[i] != RegulatorModes.Feeding)) continue;
            var (most, least) = (fed.Max(gear => Math.Max(gear.Solution.PressureAt(regulator.From), gear.Shown.PressureAt(regulator.From))), fed.Min(gear => gear.Solution.Sets[i]));
            if (most > least || !fed.TrueForAll(gear => IsFedByPump(gear.Solution, regulator.From))) continue;
            found.Add(Rule.At(
                regulator.Place,
                $"{regulator.Name} regulates in no gear: it is set to {new Pressure(least)} or more, and {network.Nodes[regulator.From].Name}, which feeds it, has {new Pressure(most)} at most"));
        }
    }

    /// <summary>Whether oil of the pump reaches a passage through no regulator and no pressure solenoid, which may be told more in traffic than the file tells.</summary>
    private static bool IsFedByPump(GearSolution gear, int node) => new Ways().Of(gear).Supply(node) is { } way
        && way.All(step => step.Link.Gate.Kind != GateKind.Regulator) && (way.Count == 0 ? node == gear.Network.Pump : way[0].From == gear.Network.Pump);
}
