using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Identify;

namespace Circuits.Rendering.Json;

[Description("Which revision each part on the bench may be, and what to look at next. Lengths are in millimetres.")]
internal sealed class IdentifyDocument : Document
{
    private readonly Identification report;

    internal IdentifyDocument(Identification report) : base("identify") => this.report = report;

    [Description("The unit's name.")] public string Unit => report.Unit.Name;
    [Description("Where the file's numbers come from.")] public DataOrigin Data => report.Unit.Data;
    [Bounds(0, 1), Description("How far a measured size may be off.")] public double ToleranceMm => Fields.Rounded(report.Tolerance, 4);

    [Description("What was told, in the order of the command line: seen, not seen, measured.")]
    public IEnumerable<ObservationFields> Observations => report.Observations.Select(observation => new ObservationFields(observation));

    public IEnumerable<PartFields> Parts => report.Parts.Select(part => new PartFields(report, part));
    public MatchedSetFields MatchedSets => new(report);

    [Description("Values for --fit, one for each choice among look-alikes; empty while a part is open or unknown.")]
    public IEnumerable<string> Fits => report.Fits;
}

internal sealed class MatchedSetFields
{
    private readonly Identification report;

    internal MatchedSetFields(Identification report) => this.report = report;

    [Description("Matched sets that the parts may be.")] public IEnumerable<string> Possible => report.PossibleSets;
    public IEnumerable<ExcludedSetFields> Excluded => report.ExcludedSets.Select(set => new ExcludedSetFields(set));
}

internal sealed class ExcludedSetFields
{
    private readonly ExcludedSet set;

    internal ExcludedSetFields(ExcludedSet set) => this.set = set;

    public string Set => set.Set;
    [Bounds(1), Description("The parts whose revision in the set is excluded.")] public IEnumerable<string> By => set.Parts;
}

internal abstract class AnyObservationFields(Observation observation)
{
    public ObservationKind Kind => observation.Kind;
    [Description("As it was told.")] public string Text => observation.Text;
    [Description("The part that it was taken to be about.")] public string Part => observation.Part;
    [Description("What was understood.")] public Phrase Meaning => observation.Meaning;
}

internal sealed class ObservationFields : AnyObservationFields
{
    internal ObservationFields(Observation observation) : base(observation)
    {
    }
}

/// <summary>An observation that speaks against a revision.</summary>
internal sealed class ExclusionFields : AnyObservationFields
{
    private readonly Observation observation;
    private readonly int revision;

    internal ExclusionFields(Observation observation, int revision) : base(observation) => (this.observation, this.revision) = (observation, revision);

    [JsonPropertyOrder(1), Description("What the trait is on that revision.")] public Answer OnRevision => observation.Row.Answers[revision];
}
