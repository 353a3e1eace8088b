using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Conditions;
using Circuits.Model;
using Circuits.Networks;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>One assembly, every gear, as a page that a technician reads at a glance.</summary>
public static class GearsText
{
    private const string CrossFeedRule = "cross-feed";
    private const string AssumedSizeRule = "assumed-size";

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="reference">The report of the nearest matched set, to compare openings with; null when there is none, or it is the same.</param>
    /// <param name="detailed">Whether to show positions, pressures and openings of each gear as well.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(AssemblyReport report, AssemblyReport? reference, bool detailed, TextOptions options)
    {
        var page = new Page(options);
        Header(page, report.Assembly, report.NearestMatched);
        JudgedBy(page, report.Mode, report.Points);
        Summary(page, report);
        page.Blank();
        GearChart.Write(page, report);
        if (!report.Gears.IsEmpty && report.Gears.All(gear => gear.Drive is null))
            page.Line("The file gives no gear train: ratios and what the driver feels are not worked out.", Page.Faint);
        ChangeList.Write(page, report);
        FindingList(page, report);
        CrossFeedList(page, report);
        if (reference is not null) Controls.Differences(page, report, reference);
        if (detailed)
        {
            foreach (var gear in report.Gears) GearDetail.Write(page, report, gear);
        }

        if (!report.Assumptions.IsEmpty) page.Heading("Assumptions");
        foreach (var assumption in report.Assumptions) Assumption(page, assumption);
        PageEnding.Cautions(page, Cautions.For(report, pressures: detailed));
        return page.ToString();
    }

    /// <summary>What the page is about: the unit, where its numbers come from, the assembly and its nearest matched set.</summary>
    internal static void Header(Page page, Assembly assembly, IEnumerable<string> nearest)
    {
        var unit = assembly.Unit;
        page.Item("unit    ", 0, null, (unit.Name, Page.Strong), ($" (data: {Words.Of(unit.Data)})", Page.Plain));
        page.Item("assembly", Words.Of(assembly), indent: 0);
        var names = nearest.ToList();
        for (var i = 0; i < assembly.Changes.Length; i++) page.Item(i == 0 ? "changed " : "        ", page.Words(assembly.Changes[i]), indent: 0);
        var matched = assembly.Matched is { } set ? $"yes: {set}"
            : names.Count == 0 ? "no: the file declares no matched set"
            : $"no; nearest: {string.Join(", ", names.Select(name => Nearest(assembly, name)))}";
        page.Item("matched ", matched, indent: 0);
    }

    /// <summary>What verdicts rest on; a quick one is never shown without it.</summary>
    internal static void JudgedBy(Page page, JudgeMode mode, ImmutableArray<OperatingPoint> points)
    {
        if (mode == JudgeMode.Quick) page.Item("judged  ", "by the static answer alone (--quick); flow may show a gear bad that it calls good", indent: 0);
        else if (points.IsEmpty) page.Item("judged  ", "by the static answer alone: without a pump nothing flows", indent: 0);
        else page.Item("judged  ", $"by flow at {string.Join(", ", points.Select(point => page.Words(point.InFull)))}", indent: 0);
    }

    private static string Nearest(Assembly assembly, string name)
    {
        if (assembly.Unit.Matched.FirstOrDefault(set => set.Name == name) is not { } set) return name;
        var other = Assembly.Of(assembly.Unit, set);
        var differing = assembly.Choice.Zip(other.Choice).Where(pair => pair.First.Value != pair.Second.Value)
            .Select(pair => $"{pair.Second.Key} {pair.Second.Value}").ToList();
        return differing.Count == 0 ? name : $"{name} (it has {string.Join(", ", differing)})";
    }

    private static void Summary(Page page, AssemblyReport report)
    {
        var doubtful = report.Verdict == Verdict.AsCharted && Errors(report) > 0;
        page.Item("verdict ", 0, null, (Summary(report), doubtful ? Page.Doubtful : GearChart.VerdictStyle(report.Verdict)));
    }

    private static int Errors(AssemblyReport report) => report.Findings.Count(finding => finding.Severity == Severity.Error);

    /// <summary>What an assembly comes to, on one line: <c>lost in R; weak in 3, 4</c>.</summary>
    internal static string Summary(AssemblyReport report)
    {
        var wrong = report.Gears.Where(gear => gear.Verdict != Verdict.AsCharted).ToList();
        var errors = Errors(report);
        var shown = report.Gears.Length == report.Assembly.Unit.Gears.Length ? "every gear" : string.Join(", ", report.Gears.Select(gear => gear.Gear));
        var changes = ChangeList.Summary(report);
        return (wrong.Count == 0 ? $"as-charted in {shown}{(errors == 0 || changes.Length > 0 ? "" : $", yet {Words.Count(errors, "error")}: see below")}"
            : string.Join("; ", wrong.GroupBy(gear => gear.Verdict).OrderByDescending(group => group.Key)
                .Select(group => $"{Words.Of(group.Key)} in {string.Join(", ", group.Select(gear => gear.Gear))}"))) + changes;
    }

    private static void FindingList(Page page, AssemblyReport report)
    {
        // Assumptions and cross-feeds have lists of their own on this page, which say more; what the driver feels stands in the chart.
        var feeds = report.Gears.SelectMany(gear => gear.CrossFeeds.Select(feed => (gear.Gear, feed.Place))).ToHashSet();
        var findings = report.Findings
            .Where(finding => finding.Rule != AssumedSizeRule && finding.Tells is not Feel)
            .Where(finding => finding.Rule != CrossFeedRule || !feeds.Contains((finding.Gear ?? "", finding.Place)))
            .Select(finding => (finding.Gear, finding))
            .ToList();
        if (findings.Count == 0) return;
        page.Heading("Findings");
        FindingGroups(page, findings, [.. report.Gears.Select(gear => gear.Gear)]);
    }

    /// <summary>Findings under the gears that they stand in; what is the same in several gears is told once.</summary>
    internal static void FindingGroups(Page page, IEnumerable<(string? Gear, Finding Finding)> findings, ImmutableArray<string> gears)
    {
        foreach (var (inGears, group) in GearLabels.Group(findings, gears, SameFinding.Instance))
        {
            page.Line(inGears.Heading, Page.Strong, indent: 2);
            foreach (var finding in group) Write(page, finding);
        }
    }

    private static void Assumption(Page page, Assumption assumption)
    {
        var text = page.Words(assumption.Text);
        if (assumption.Place is { File.Length: > 0 } at) page.Item("-", 2, null, (text, Page.Plain), ($" [{at}]", Page.Faint));
        else page.Item("-", text);
    }

    private static void Write(Page page, Finding finding)
    {
        var style = SeverityStyle(finding.Severity);
        page.Item(Words.Of(finding.Severity), 4, style, ($"{finding.Rule}: ", style), (page.Words(finding.Message, gearIsTold: true), Page.Plain));
        if (finding.Place.File.Length > 0) page.Line(finding.Place.ToString(), Page.Faint, indent: 10);
        if (finding.Help is { } help) page.Item("help:", help, indent: 10);
        foreach (var related in finding.Related) page.Line($"{page.Words(related.Message)}: {related.Place}", Page.Faint, indent: 10);
    }

    private static Style SeverityStyle(Severity severity) => severity switch
    {
        Severity.Error => Page.Bad,
        Severity.Warning => Page.Doubtful,
        _ => Page.Plain,
    };

    private static void CrossFeedList(Page page, AssemblyReport report)
    {
        var feeds = report.Gears.SelectMany(gear => gear.CrossFeeds.Select(feed => ((string?)gear.Gear, feed))).ToList();
        if (feeds.Count == 0) return;
        page.Heading("Cross-feeds");
        foreach (var (inGears, group) in GearLabels.Group(feeds, [.. report.Gears.Select(gear => gear.Gear)], SameCrossFeed.Instance))
        {
            page.Line(inGears.Heading, Page.Strong, indent: 2);
            foreach (var feed in group)
            {
                var sentence = $"oil of {feed.From} enters {feed.Into} through {feed.Through} ({feed.Part} {feed.Revision})";
                var severity = feed.IsHarmless ? Severity.Note : report.Findings.FirstOrDefault(finding => finding.Rule == CrossFeedRule && finding.Place == feed.Place && finding.Severity != Severity.Note)?.Severity;
                var style = SeverityStyle(severity ?? Severity.Note);
                page.Item(severity is { } grave ? Words.Of(grave) : "-", 4, style, ($"{CrossFeedRule}: ", style), (sentence, Page.Plain));
                if (feed.IsHarmless) page.Line("too little to matter", Page.Plain, indent: 10);
                foreach (var moved in feed.Moves) page.Item("it moves", page.Words(moved.Phrase), 10);
                if (feed.Place.File.Length > 0) page.Line(feed.Place.ToString(), Page.Faint, indent: 10);
            }
        }
    }

    /// <summary>Findings that read the same but for their gear.</summary>
    internal sealed class SameFinding : IEqualityComparer<Finding>
    {
        public static SameFinding Instance { get; } = new();

        public bool Equals(Finding? x, Finding? y) => x is not null && y is not null
            && x.Rule == y.Rule && x.Severity == y.Severity && x.Message.Equals(y.Message, PhraseAside.Gear) && x.Place == y.Place && x.Help == y.Help;

        public int GetHashCode(Finding obj) => HashCode.Combine(obj.Rule, obj.Message, obj.Place);
    }

    /// <summary>Cross-feeds that read the same.</summary>
    private sealed class SameCrossFeed : IEqualityComparer<CrossFeed>
    {
        public static SameCrossFeed Instance { get; } = new();

        public bool Equals(CrossFeed? x, CrossFeed? y) => x is not null && y is not null
            && x with { Moves = [] } == y with { Moves = [] } && x.Moves.SequenceEqual(y.Moves);

        public int GetHashCode(CrossFeed obj) => HashCode.Combine(obj.Into, obj.From, obj.Through);
    }
}
