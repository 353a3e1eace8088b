using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>Decides, from pressures as they stand, what each regulator should be doing.</summary>
internal sealed partial class RegulatorBalance(Plan plan, PressureField field)
{
    /// <summary>Pressures closer than this, kPa, count as equal.</summary>
    private const double Tolerance = 1e-3;

    /// <summary>Flows smaller than this, mm2 times root kPa, are none: what rounding leaves.</summary>
    private const double LeastFlow = 1e-6;

    /// <summary>The mode that the pressures ask of a regulator.</summary>
    public int Wanted(int regulator, Positions positions, GearInputs inputs)
    {
        var element = plan.Regulators[regulator];
        var mode = positions.Modes[regulator];
        return element.Kind switch
        {
            RegulatorKind.Line => RegulatorModes.Feeding,
            RegulatorKind.Relief => WantedRelief(regulator, element, mode, field.SetOf(regulator, inputs)),
            RegulatorKind.Reducing or RegulatorKind.Solenoid => WantedReducing(regulator, element, mode, field.SetOf(regulator, inputs)),
            RegulatorKind.Bypass => WantedBypass(regulator, element, mode, field.SetOf(regulator, inputs)),
        };
    }

    /// <summary>The line regulator that sets lowest, or the one that governs now when none sets lower.</summary>
    public int WantedLine(Positions positions, GearInputs inputs)
    {
        var (best, lowest) = (positions.Line, positions.Line < 0 ? double.PositiveInfinity : field.SetOf(positions.Line, inputs) - Tolerance);
        for (var i = 0; i < plan.Regulators.Length; i++)
        {
            if (plan.Regulators[i].Kind != RegulatorKind.Line || field.SetOf(i, inputs) >= lowest) continue;
            (best, lowest) = (i, field.SetOf(i, inputs));
        }

        return best;
    }

    private int WantedReducing(int regulator, PlanRegulator element, int mode, double set)
    {
        if (mode == RegulatorModes.Holding && field.HeldBy[element.Out] == regulator && RaisesItself(element)) return RegulatorModes.Feeding;
        if (set <= Tolerance) return RegulatorModes.Relieving;
        if (double.IsInfinity(set)) return RegulatorModes.Feeding;
        var pressure = field.Pressure[element.Out];
        if (mode == RegulatorModes.Feeding)
            return pressure > set + Tolerance || IsImpossible(pressure) ? RegulatorModes.Holding : mode;
        var supply = element.From < 0 ? double.NegativeInfinity : field.Pressure[element.From];
        if (mode == RegulatorModes.Relieving) return pressure > set + Tolerance ? mode : RegulatorModes.Holding;

        if (field.HeldBy[element.Out] != regulator)
        {
            // Something else fixes its outlet, so it can only help or hinder.
            if (Math.Abs(pressure - set) <= Tolerance) return mode;
            return pressure > set ? RegulatorModes.Relieving : RegulatorModes.Feeding;
        }

        // Foreign oil that pushes in from beyond is let out to the drain, whatever the supply.
        if (field.Flows[regulator] && field.RegulatorFlow[regulator] < -LeastFlow)
            return IsTooMuchToRelieve(regulator, element, set) ? RegulatorModes.Relieving : mode;
        if (supply < set - Tolerance || field.Supply.FeedsItself(element.From)) return RegulatorModes.Feeding;
        return field.Flows[regulator] && field.RegulatorFlow[regulator] > MostThrough(element.Area, supply - set) ? RegulatorModes.Feeding : mode;
    }

    private int WantedRelief(int regulator, PlanRegulator element, int mode, double set)
    {
        var pressure = field.Pressure[element.Out];
        if (mode == RegulatorModes.Feeding) return pressure > set + Tolerance ? RegulatorModes.Holding : mode;
        if (mode == RegulatorModes.Relieving) return pressure < set - Tolerance ? RegulatorModes.Holding : mode;
        if (field.HeldBy[element.Out] != regulator)
            return pressure > set + Tolerance ? RegulatorModes.Relieving : RegulatorModes.Feeding;

        // A closed relief cannot feed: what it holds must be pushed against it.
        if (!field.Flows[regulator] || field.RegulatorFlow[regulator] > MostThrough(element.Area, Tolerance)) return RegulatorModes.Feeding;
        return IsTooMuchToRelieve(regulator, element, set) ? RegulatorModes.Relieving : mode;
    }

    private bool IsTooMuchToRelieve(int regulator, PlanRegulator element, double set)
    {
        if (element.To > 0 && field.IsTrapped(element.To)) return field.RegulatorFlow[regulator] < -LeastFlow;
        var drain = element.To < 0 ? set : field.Pressure[element.To];
        return -field.RegulatorFlow[regulator] > MostThrough(element.Area, set - drain);
    }

    /// <summary>
    /// Pressures below zero, or none at all, are the sign of line oil that boosts itself without bound while a regulator
    /// stands open: it only appears to lack supply.
    /// </summary>
    private bool IsImpossible(double pressure) => pressure < -Tolerance || !field.Converged;

    /// <summary>
    /// A regulator whose own outlet adds to its set pressure as much as it rises, or more, has no pressure to hold: it
    /// gives all that it has.
    /// </summary>
    private bool RaisesItself(PlanRegulator element)
    {
        var gain = 0.0;
        foreach (var signal in element.SetBy)
        {
            if (field.Governs(signal.Node) == element.Out) gain += signal.Factor;
        }

        return gain >= 1;
    }

    private static double MostThrough(double area, double difference) =>
        (area * Math.Sqrt(Math.Max(0, difference)) * (1 + 1e-9)) + LeastFlow;
}
