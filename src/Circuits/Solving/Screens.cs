using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving;

public sealed partial class Plan
{
    void IElementKinds<Network>.Screens(Network network) { } // a mesh is a link, its bypass a regulator
}

internal sealed partial class RegulatorBalance
{
    /// <summary>
    /// A bypass is shut while what lies behind the mesh is less than its difference below what is before it; then it holds it there, and when it can
    /// hold no more it stands open. Where something else says what lies behind the mesh, it opens at its difference and shuts when no oil would pass.
    /// </summary>
    private int WantedBypass(int regulator, PlanRegulator element, int mode, double set)
    {
        const int shut = RegulatorModes.Relieving;
        var (pressure, before) = (field.Pressure[element.Out], field.Pressure[element.From]);
        if (set <= Tolerance || field.Supply.FeedsItself(element.From)) return shut;
        switch (mode)
        {
            case RegulatorModes.Feeding when field.Fixing[element.Out] != Fixing.Free:
                return before > pressure + Tolerance ? mode : shut;
            case RegulatorModes.Feeding:
                return pressure > set + Tolerance ? RegulatorModes.Holding : mode;
            case RegulatorModes.Holding when field.HeldBy[element.Out] != regulator:
                return pressure < set - Tolerance ? RegulatorModes.Feeding : shut;
            case RegulatorModes.Holding:
                // What it holds up must not rise with it, and must take oil.
                if (RaisesItself(element) || field.RegulatorFlow[regulator] < -LeastFlow) return shut;
                return field.Flows[regulator] && field.RegulatorFlow[regulator] > MostThrough(element.Area, before - set) ? RegulatorModes.Feeding : mode;
            default:
                return pressure < set - Tolerance ? RegulatorModes.Holding : shut;
        }
    }
}
