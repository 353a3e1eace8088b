using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Changes;

/// <summary>Torque at the input that a settled gear has to hold.</summary>
internal static class InputTorque
{
    /// <summary>
    /// At idle, what a converter passes on at a stand; else the most that the file gives for shifts into or out of the gear; where it gives
    /// none for that gear, the least that it gives for others, else what is assumed; N m.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="point">The condition.</param>
    public static double In(Unit unit, int gear, OperatingPoint point)
    {
        if (point.RevolutionsPerMinute <= OperatingPoint.SpeedsOf(unit)[0].Value) return FlowDefaults.StandingTorque;
        var name = unit.Gears[gear].Name;
        double? own = null, least = null;
        foreach (var shift in unit.Shifts)
        {
            if (shift.InputTorque is not { NewtonMetres: var torque }) continue;
            if ((shift.From.Name == name || shift.To.Name == name) && !(torque <= own)) own = torque;
            if (!(torque >= least)) least = torque;
        }

        return own ?? least ?? FlowDefaults.ShiftTorque;
    }
}
