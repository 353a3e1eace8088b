using Circuits.Judging;

namespace Circuits.Rendering;

/// <summary>The narrowest openings on each clutch's way from supply and to sump, where they differ from the matched set.</summary>
internal static class Controls
{
    private const double SameArea = 0.01;

    /// <summary>A list of the openings that differ, or nothing when none does.</summary>
    public static void Differences(Page page, AssemblyReport report, AssemblyReport reference)
    {
        var rows = Rows(report, reference, page.Options.Units).ToList();
        if (rows.Count == 0) return;
        var there = reference.Assembly.Matched ?? "the matched set";
        page.Heading($"Controlled through another opening than in {there}");
        foreach (var (inGears, differences) in GearLabels.Group(rows, [.. report.Gears.Select(gear => gear.Gear)]))
        {
            page.Line(inGears.Heading, Page.Strong, indent: 2);
            foreach (var row in differences)
                page.Item("-", 4, null, ($"{row.Clutch} {row.Side} ", Page.Plain), (row.Here, Page.Doubtful), ($"; in {there} {row.There}", Page.Plain));
        }
    }

    /// <summary>An opening in words: <c>2.1 mm plate@22</c>, <c>valve port body.select</c>, <c>none</c>.</summary>
    public static string Of(Control? control, UnitSystem units)
    {
        if (control is null) return "none";
        if (control.IsPort) return $"valve port {control.Element}";
        return double.IsFinite(control.SquareMillimetres)
            ? $"{Measures.Length(control.Millimetres, units)} {control.Element}"
            : $"{control.Element}, not restricted";
    }

    private static IEnumerable<(string? Gear, Row Row)> Rows(AssemblyReport report, AssemblyReport reference, UnitSystem units)
    {
        foreach (var gear in report.Gears)
        {
            if (reference.Gears.FirstOrDefault(other => other.Gear == gear.Gear) is not { } there) continue;
            foreach (var (here, was) in gear.Clutches.Zip(there.Clutches))
            {
                // How a clutch comes on matters where it is on, how it lets go where it is off; of a lost clutch the verdict speaks.
                if (here.State is ClutchState.Applied or ClutchState.Weak && Differ(here.Apply, was.Apply))
                    yield return (gear.Gear, Row("applies through", here.Apply, was.Apply));
                if (here is { Charted: false, State: ClutchState.Released } && Differ(here.Release, was.Release))
                    yield return (gear.Gear, Row("releases through", here.Release, was.Release));

                Row Row(string side, Control? now, Control? before) => new(here.Clutch, side, Of(now, units), Of(before, units));
            }
        }
    }

    private static bool Differ(Control? here, Control? there)
    {
        // Where one of them has no path at all, the verdict says so already; this table is about control.
        if (here is null || there is null) return false;
        if (here.IsPort && there.IsPort) return false;
        return here.IsPort != there.IsPort
            || Math.Abs(here.SquareMillimetres - there.SquareMillimetres) > SameArea * there.SquareMillimetres;
    }

    private sealed record Row(string Clutch, string Side, string Here, string There);
}
