namespace Circuits.Solving;

/// <summary>Decides, from pressures as they stand, where spools and balls should be.</summary>
internal sealed class Mechanics(Plan plan, PressureField field)
{
    /// <summary>Forces closer than this, N, count as equal; a spool then stays at rest.</summary>
    private const double ForceTolerance = 1e-4;

    /// <summary>Pressures closer than this, kPa, count as equal; a ball then stays where it is.</summary>
    private const double PressureTolerance = 1e-3;

    /// <summary>Whether the pressures ask a spool to be moved.</summary>
    public bool WantsMoved(int spool)
    {
        var element = plan.Spools[spool];
        if (element.Stuck is { } stuck) return stuck;
        var force = -element.Springs;
        foreach (var signal in element.MovedBy) force += signal.Factor * field.Pressure[signal.Node];
        foreach (var signal in element.HeldBy) force -= signal.Factor * field.Pressure[signal.Node];
        return force > ForceTolerance;
    }

    /// <summary>The seat that the pressures ask a ball to close, or -1.</summary>
    public int WantedSeat(int ball, int seat)
    {
        var element = plan.Balls[ball];
        var pocket = field.Pressure[element.Pocket];
        if (element.Seats.Length == 0) return -1;
        if (element.Seats.Length == 1)
        {
            var beyond = field.Pressure[element.Seats[0].Beyond];
            if (pocket > beyond + PressureTolerance) return 0;
            // Level oil does not press the ball down; without oil it rests where it lies.
            return beyond > pocket + PressureTolerance || pocket > PressureTolerance ? -1 : seat;
        }

        // The pocket says nothing: a pocket that drains lies below both its feeds.
        var (closed, open) = (field.Pressure[element.Seats[seat].Beyond], field.Pressure[element.Seats[1 - seat].Beyond]);
        return closed > open + PressureTolerance ? 1 - seat : seat;
    }

    /// <summary>
    /// Whether an open check ball stands in oil that is level on both sides. Which way the oil came must then be tried
    /// with the seat closed: oil that would leave the pocket would have closed it.
    /// </summary>
    public bool NeedsTrial(int ball, int seat)
    {
        var element = plan.Balls[ball];
        if (element.Seats.Length != 1 || seat >= 0) return false;
        var pocket = field.Pressure[element.Pocket];
        return pocket > PressureTolerance && Math.Abs(pocket - field.Pressure[element.Seats[0].Beyond]) <= PressureTolerance;
    }
}
