using Circuits.Judging.Changes;

namespace Circuits.Studies.Shifts;

/// <summary>A shift over time in even steps, straight between the steps in which it was reckoned.</summary>
public static class ShiftSamples
{
    /// <summary>Samples at 0, one step, two steps and so on, up to the end.</summary>
    /// <param name="shift">The shift.</param>
    /// <param name="step">ms; above zero.</param>
    public static IEnumerable<ShiftSample> Every(TimedShiftReport shift, double step)
    {
        if (shift.Samples.IsEmpty) yield break;
        var next = 1;
        for (var k = 0; k * step <= shift.EndMs + 1e-9; k++)
        {
            var time = Math.Min(k * step, shift.EndMs);
            while (next < shift.Samples.Length - 1 && shift.Samples[next].Ms < time) next++;
            yield return Between(shift.Samples[next - 1], shift.Samples[Math.Min(next, shift.Samples.Length - 1)], time);
        }
    }

    /// <summary>The shift at a time, straight between samples; null where it was not timed.</summary>
    /// <param name="shift">The shift.</param>
    /// <param name="ms">Time since the shift began, ms.</param>
    public static ShiftSample? At(TimedShiftReport shift, double ms)
    {
        if (shift.Samples.IsEmpty) return null;
        var next = 1;
        while (next < shift.Samples.Length - 1 && shift.Samples[next].Ms < ms) next++;
        return Between(shift.Samples[next - 1], shift.Samples[Math.Min(next, shift.Samples.Length - 1)], ms);
    }

    private static ShiftSample Between(ShiftSample before, ShiftSample after, double time)
    {
        var share = after.Ms > before.Ms ? Math.Clamp((time - before.Ms) / (after.Ms - before.Ms), 0, 1) : 0;
        return new ShiftSample(
            time, Mix(before.LineKilopascals, after.LineKilopascals),
            [.. before.Clutches.Zip(after.Clutches, (a, b) => (Mix(a.Kilopascals, b.Kilopascals), Mix(a.Stroke, b.Stroke), Mix(a.Capacity, b.Capacity)))]);

        double Mix(double a, double b) => a + (share * (b - a));
    }
}
