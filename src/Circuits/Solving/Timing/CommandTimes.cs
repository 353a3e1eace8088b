using System.Collections.Immutable;

namespace Circuits.Solving.Timing;

/// <summary>A pressure solenoid's command over time: straight between its points, level beyond them.</summary>
/// <param name="Regulator">The solenoid's number among the network's regulators.</param>
/// <param name="Points">Seconds and pascals, in rising order of time; at least one.</param>
internal sealed record CommandTimes(int Regulator, ImmutableArray<(double Seconds, double Pascals)> Points)
{
    /// <summary>The command at a time, Pa.</summary>
    public double At(double seconds)
    {
        if (seconds <= Points[0].Seconds) return Points[0].Pascals;
        for (var i = 1; i < Points.Length; i++)
        {
            var (before, after) = (Points[i - 1], Points[i]);
            if (seconds > after.Seconds) continue;
            var share = (seconds - before.Seconds) / (after.Seconds - before.Seconds);
            return before.Pascals + (share * (after.Pascals - before.Pascals));
        }

        return Points[^1].Pascals;
    }

    /// <summary>The first of its points that lies after a time; infinite when none does.</summary>
    public double NextAfter(double seconds)
    {
        foreach (var point in Points)
        {
            if (point.Seconds > seconds + 1e-12) return point.Seconds;
        }

        return double.PositiveInfinity;
    }
}
