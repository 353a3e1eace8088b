namespace Circuits.Judging.Changes;

/// <summary>When a quantity that was sampled over time passes a level; straight between samples.</summary>
/// <param name="seconds">Times, rising.</param>
internal sealed class Curve(IReadOnlyList<double> seconds)
{
    private const double Ms = 1e3;

    /// <summary>The first time at which it is at a level or above, ms; null when it never is.</summary>
    public double? Reaches(Func<int, double> value, double level)
    {
        for (var i = 0; i < seconds.Count; i++)
        {
            if (value(i) >= level) return i == 0 ? 0 : Crossing(i, value, level);
        }

        return null;
    }

    /// <summary>From when on it stays at a level or above, ms; null when it ends below.</summary>
    public double? StaysAtOrAbove(Func<int, double> value, double level) => Stays(i => value(i) >= level, value, level);

    /// <summary>From when on it stays at a level or below, ms; null when it ends above.</summary>
    public double? StaysAtOrBelow(Func<int, double> value, double level) => Stays(i => value(i) <= level, value, level);

    /// <summary>The longest time without a break in which it is above a level, ms.</summary>
    public double LongestAbove(Func<int, double> value, double level)
    {
        double longest = 0;
        double? since = null;
        for (var i = 0; i < seconds.Count; i++)
        {
            if (value(i) > level) since ??= i == 0 ? 0 : Crossing(i, value, level);
            else if (since is { } start)
            {
                longest = Math.Max(longest, Crossing(i, value, level) - start);
                since = null;
            }
        }

        return since is { } open ? Math.Max(longest, (Ms * seconds[^1]) - open) : longest;
    }

    /// <summary>Its value at a time, s.</summary>
    public double At(Func<int, double> value, double time)
    {
        var i = 0;
        while (i < seconds.Count - 1 && seconds[i] < time) i++;
        if (i == 0 || seconds[i] <= time) return value(i);
        var share = (time - seconds[i - 1]) / (seconds[i] - seconds[i - 1]);
        return value(i - 1) + (share * (value(i) - value(i - 1)));
    }

    private double? Stays(Func<int, bool> holds, Func<int, double> value, double level)
    {
        var last = seconds.Count - 1;
        if (last < 0 || !holds(last)) return null;
        while (last > 0 && holds(last - 1)) last--;
        return last == 0 ? 0 : Crossing(last, value, level);
    }

    private double Crossing(int i, Func<int, double> value, double level)
    {
        var (before, after) = (value(i - 1), value(i));
        var share = before == after ? 1 : Math.Clamp((level - before) / (after - before), 0, 1);
        return Ms * (seconds[i - 1] + (share * (seconds[i] - seconds[i - 1])));
    }
}
