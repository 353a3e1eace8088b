using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>Tells applied from weak from released, and holds it against the chart.</summary>
internal static class ClutchJudge
{
    /// <summary>Pressures below this, kPa, are nothing.</summary>
    private const double Nothing = 0.01;

    /// <summary>Judges one clutch in one gear.</summary>
    /// <param name="clutch">The clutch.</param>
    /// <param name="gear">The gear.</param>
    /// <param name="solution">The gear's state.</param>
    /// <param name="reference">What the matched set gives the clutch, kPa, or null.</param>
    /// <param name="thresholds">The unit's thresholds.</param>
    public static ClutchReport Judge(
        ClutchElement clutch, GearState gear, GearSolution solution, double? reference, Thresholds thresholds)
    {
        var pressure = NetPressure.Of(clutch, solution);
        var line = solution.Line;
        var full = Math.Max(reference ?? line, thresholds.Floor * line);
        var strength = pressure < Nothing || full < Nothing ? ClutchState.Released
            : pressure >= thresholds.Applied * full ? ClutchState.Applied
            : pressure >= thresholds.Weak * full ? ClutchState.Weak
            : ClutchState.Released;
        var charted = Charts.Applies(gear, clutch.Clutch.Name);
        var trapped = clutch.Chamber >= 0 && pressure >= Nothing && solution.OilAt(clutch.Chamber) == OilState.Trapped;
        return new ClutchReport(
            clutch.Clutch.Name, charted, trapped ? ClutchState.Trapped : strength, VerdictOf(charted, strength),
            line < Nothing ? 0 : pressure / line, pressure)
        { Strength = strength };
    }

    /// <summary>A clutch's strength held against the chart.</summary>
    /// <param name="charted">Whether the chart applies it.</param>
    /// <param name="strength">Applied, weak or released.</param>
    public static Verdict VerdictOf(bool charted, ClutchState strength) => (charted, strength) switch
    {
        (true, ClutchState.Applied) => Verdict.AsCharted,
        (true, ClutchState.Weak) => Verdict.Weak,
        (true, _) => Verdict.Lost,
        (false, ClutchState.Released) => Verdict.AsCharted,
        _ => Verdict.Unwanted,
    };
}
