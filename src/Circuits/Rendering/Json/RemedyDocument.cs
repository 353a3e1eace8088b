using System.Collections.Immutable;
using System.ComponentModel;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Remedies;

namespace Circuits.Rendering.Json;

[Description("What would make an assembly right: other parts, or work on the parts that are there.")]
internal sealed class RemedyDocument : VerdictDocument
{
    private readonly RemedyReport report;

    internal RemedyDocument(RemedyReport report) : base("remedy", report.Before.Assembly, report.Before.NearestMatched, report.Before.Mode) => this.report = report;

    public Verdict Verdict => report.Before.Verdict;
    [Description("Whether there is nothing to mend; then nothing was looked for.")] public bool Right => report.IsRight;
    public PartSearchFields Parts => new(report.PartSearch, report.Parts);
    public BenchFields Bench => new(report);
    [Description("Findings of the assembly as it is.")] public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Before.Findings);
    [Description("What someone who acts on this must be told.")] public IEnumerable<string> Cautions => RemedyText.CautionsFor(report);
}

internal sealed class PartSearchFields
{
    private readonly PartSearchExtent search;
    private readonly ImmutableArray<Remedy> remedies;

    internal PartSearchFields(PartSearchExtent search, ImmutableArray<Remedy> remedies) => (this.search, this.remedies) = (search, remedies);

    [Bounds(1), Description("How many parts must change; null when no choice was found.")] public int? Fewest => search.Fewest;
    [Bounds(0), Description("Assemblies that were solved.")] public int Tried => search.Tried;
    [Bounds(0), Description("How many parts at once were tried.")] public int Depth => search.Depth;
    [Description("Whether every choice of up to depth parts was tried.")] public bool Complete => search.Complete;
    public IEnumerable<RemedyFields> Remedies => remedies.Select(remedy => new RemedyFields(remedy));
}

internal sealed class BenchFields
{
    private readonly RemedyReport report;

    internal BenchFields(RemedyReport report) => this.report = report;

    public BenchSearchFields Tried => new(report.BenchSearch);
    [Description("The least invasive first.")] public IEnumerable<RemedyFields> Remedies => report.Bench.Select(remedy => new RemedyFields(remedy));
}

internal sealed class BenchSearchFields
{
    private readonly BenchSearchExtent search;

    internal BenchSearchFields(BenchSearchExtent search) => this.search = search;

    [Bounds(0), Description("Balls left out, put in or exchanged, alone.")] public int Balls => search.Balls;
    [Bounds(0), Description("Plugs alone.")] public int Plugs => search.Plugs;
    [Bounds(0), Description("Holes alone, each location and size counted.")] public int Holes => search.Holes;
    [Bounds(0), Description("Pairs tried.")] public int Pairs => search.Pairs;
    [Bounds(0), Description("Pairs that there are; 0 when pairs were not called for.")] public int PossiblePairs => search.PossiblePairs;
}

internal sealed class RemedyFields
{
    private readonly Remedy remedy;

    internal RemedyFields(Remedy remedy) => this.remedy = remedy;

    public IEnumerable<ChangeFields> Changes => ChangeFields.Of(remedy.Changes);
    [Description("Whether the bench can take all of it back with the same parts.")] public bool CanBeUndone => remedy.CanBeUndone;
    [Description("Part to revision, in the order of the file.")] public IReadOnlyDictionary<string, string> Assembly => Fields.Of(remedy.After.Assembly.Choice);
    [Description("The matched set that it then is, or null.")] public string? Matched => remedy.After.Assembly.Matched;
    [Only("as-charted")] public Verdict Verdict => remedy.After.Verdict;
    [Description("For a hole whose size was searched: every tried size that does, smallest first.")] public IEnumerable<string> Sizes => remedy.Sizes.Select(size => size.Text);
    [Description("Matched sets that have it so at every place that is changed.")] public IEnumerable<string> AsIn => remedy.AsIn;

    [Description("What the driver still feels, gears in order.")]
    public IEnumerable<Feel> Feels => remedy.Feels;

    [Description("Warnings that stay.")] public IEnumerable<FindingFields> Leaves => FindingFields.Of(remedy.Leaves);
}
