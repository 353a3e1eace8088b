using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Matrix;
using Spectre.Console;

namespace Circuits.Rendering.Matrix;

/// <summary>Every group of a matrix on a page: what it does in each gear, best first, and which revisions lead to it.</summary>
public static class MatrixText
{
    /// <summary>Most groups on a page; groups with a matched set stand on it all the same.</summary>
    private const string Dot = " · ";

    private const int MostGroups = 40;

    /// <summary>Most lines on how revisions lead to a group.</summary>
    private const int MostBoxes = 6;

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="summary">The groups.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(MatrixSummary summary, TextOptions options)
    {
        var page = new Page(options);
        Header(page, summary);
        var space = summary.Space;
        var ordered = summary.BestFirst();
        var shown = ordered.Where((group, index) => index < MostGroups || group.Matched.Count > 0).ToList();
        page.Blank();
        var names = space.Gears.Select(gear => space.Unit.Gears[gear].Name).ToList();
        // Gears whose columns leave no room for words are told by name.
        var columns = !page.IsPlain && names.Sum(name => Cells.Of(Printable.Of(name)) + 1) <= page.Options.Width / 2;
        if (!page.IsPlain) page.Line(columns ? $"group  {Columns(names, _ => "")}count  worst" : "group  count  worst", Page.Faint);
        foreach (var group in shown) Write(page, summary, group, names, columns);
        if (shown.Count < ordered.Count)
            page.Line($"... and {Words.Count(ordered.Count - shown.Count, "group")} more, none better: --format json or jsonl has them all.", Page.Faint);
        if (page.IsPlain) return page.ToString();
        page.Blank();
        page.Flow(MatrixMark.Legend, Page.Faint);
        return page.ToString();
    }

    /// <summary>Which revisions of which parts a box holds: <c>plate 1-2 · gasket any</c>; parts of which one revision is tried are left out.</summary>
    /// <param name="space">The assemblies.</param>
    /// <param name="box">The box.</param>
    /// <param name="between">What stands between two parts.</param>
    internal static string Of(MatrixSpace space, Box box, string between = Dot)
    {
        var parts = new List<string>();
        for (var part = 0; part < box.Parts.Length; part++)
        {
            var (tried, has) = (space.Choices[part], box.Parts[part]);
            if (tried.Length == 1) continue;
            parts.Add($"{space.Unit.Parts[part].Name} {(has.Length == tried.Length ? "any" : Revisions(tried, has))}");
        }

        return parts.Count == 0 ? "the one assembly" : string.Join(between, parts);
    }

    /// <summary>How many assemblies are right, in words.</summary>
    internal static string Verdicts(MatrixSummary summary) =>
        $"{Words.Count(summary.Right, "assembly", "assemblies")} as charted in every gear{(summary.Rough == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {summary.Rough} of them with a change of gear that is not good"))}, "
        + $"{(summary.Space.Count - summary.Right).ToString(CultureInfo.InvariantCulture)} not";

    private static void Header(Page page, MatrixSummary summary)
    {
        var space = summary.Space;
        page.Item("unit    ", 0, null, (space.Unit.Name, Page.Strong), ($" (data: {Words.Of(space.Unit.Data)})", Page.Plain));
        var fixedParts = space.Unit.Parts.Zip(space.Choices)
            .Where(pair => pair.Second.Length == 1 && pair.First.Revisions.Length > 1)
            .Select(pair => $"{pair.First.Name} {pair.Second[0].Name}").ToList();
        if (fixedParts.Count > 0) page.Item("fixed   ", string.Join(", ", fixedParts), indent: 0);
        if (space.Mode == Judging.JudgeMode.Quick) GearsText.JudgedBy(page, space.Mode, []);
        page.Item(
            "matrix  ",
            $"{Words.Count(space.Count, "assembly", "assemblies")} in {Words.Count(summary.Groups.Count, "group")}; {Words.Count(summary.Networks, "distinct network")} solved", indent: 0);
        page.Item("verdict ", Verdicts(summary), indent: 0);
    }

    private static void Write(Page page, MatrixSummary summary, MatrixGroup group, List<string> names, bool columns)
    {
        var style = GearChart.VerdictStyle(group.Behaviour.Verdict);
        var marks = columns ? Columns(names, i => MatrixMark.Of(group.Behaviour.Gears[i].Verdict)) : "";
        var number = group.Number.ToString(CultureInfo.InvariantCulture);
        var count = group.Count.ToString(CultureInfo.InvariantCulture);
        if (page.IsPlain)
        {
            page.Item("group:", number, indent: 0);
            page.Item("count:", count, indent: 0);
            page.Item("worst:", Worst(group, names), indent: 0);
        }
        else
        {
            page.Item($"{number.PadLeft(5)}  {marks}{count.PadLeft(5)} ", 0, style, (Worst(group, names), style));
        }

        if (!columns) Gears(page, group, names);
        foreach (var set in group.Matched) page.Item("*", $"matched set {set}", indent: 7);
        var boxes = summary.BoxesOf(group);
        foreach (var box in boxes.Take(MostBoxes)) page.Item("-", Of(summary.Space, box, page.IsPlain ? ", " : Dot), indent: 7);
        var left = boxes.Skip(MostBoxes).Sum(box => box.Count);
        if (left > 0) page.Item("-", $"{Words.Count(left, "assembly", "assemblies")} more", indent: 7);
        if (page.IsPlain) page.Blank();
    }

    private static void Gears(Page page, MatrixGroup group, List<string> names)
    {
        foreach (var verdict in group.Behaviour.Gears.Select(gear => gear.Verdict).Distinct().OrderDescending())
        {
            var gears = Enumerable.Range(0, names.Count).Where(i => group.Behaviour.Gears[i].Verdict == verdict).Select(i => names[i]);
            page.Item($"{Words.Of(verdict)}:", string.Join(", ", gears), indent: 7);
        }
    }

    /// <summary>What is wrong in the worst gear, or what is felt although no gear is wrong.</summary>
    private static string Worst(MatrixGroup group, List<string> names)
    {
        var gears = group.Behaviour.Gears;
        if (group.WorstGear >= 0)
        {
            var with = Enumerable.Range(0, gears.Length).Where(i => gears[i].Verdict == group.Behaviour.Verdict).Select(i => names[i]);
            var feels = gears[group.WorstGear].Feel;
            return $"{Words.Of(group.Behaviour.Verdict)} in {string.Join(", ", with)}{(feels is null ? "" : $" ({FeelWords.Of(feels)})")}";
        }

        var felt = gears.FirstOrDefault(gear => gear.Feel is { Kind: not FeelKind.AsItShould })?.Feel;
        var feeds = gears.Sum(gear => gear.CrossFeeds);
        var changes = group.Behaviour.Changes ?? [];
        return "as-charted" + string.Concat(changes.GroupBy(change => change.Verdict).OrderByDescending(same => same.Key)
                .Select(same => $"; {VerdictText.Of(same.Key)} in {string.Join(", ", same.Select(change => change.Change).Distinct())}"))
            + (felt is null ? "" : $", yet {FeelWords.Of(felt)}") + (feeds == 0 ? "" : $", {Words.Count(feeds, "cross-feed")}");
    }

    private static string Columns(List<string> names, Func<int, string> mark)
    {
        var columns = names.Select((name, i) => (mark(i) is { Length: > 0 } own ? own : Printable.Of(name)).PadRight(Cells.Of(Printable.Of(name))));
        return string.Concat(columns.Select(column => column + " ")) + " ";
    }

    private static string Revisions(ImmutableArray<Revision> tried, ImmutableArray<int> has)
    {
        var runs = new List<string>();
        for (var from = 0; from < has.Length;)
        {
            var to = from;
            while (to + 1 < has.Length && has[to + 1] == has[to] + 1 && Follows(tried[has[to]].Name, tried[has[to + 1]].Name)) to++;
            runs.Add(from == to ? tried[has[from]].Name : $"{tried[has[from]].Name}-{tried[has[to]].Name}");
            from = to + 1;
        }

        return string.Join(", ", runs);
    }

    /// <summary>Only numbers make a run that everybody reads the same way.</summary>
    private static bool Follows(string name, string next) =>
        int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && int.TryParse(next, NumberStyles.None, CultureInfo.InvariantCulture, out var after) && after == number + 1;
}
