using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Model;
using Circuits.Studies.Identify;

namespace Circuits.Rendering.Json;

internal sealed class PartFields
{
    private readonly Identification report;
    private readonly PartIdentity part;

    internal PartFields(Identification report, PartIdentity part) => (this.report, this.part) = (report, part);

    public string Part => part.Part.Name;
    public PartKind Kind => part.Part.Kind;

    [Description("single: one revision known; settled: one remains; alike: several remain and nothing tells them apart; open: there is more to look at; unknown: no known revision fits.")]
    public PartStatus Status => part.Status;

    [Description("All, in the order of the file.")] public IEnumerable<string> Revisions => part.Part.Revisions.Select(revision => revision.Name);
    [Description("Those that fit all observations.")] public IEnumerable<string> Remaining => NamesOf(part, part.Remaining);
    public IEnumerable<ExcludedFields> Excluded => part.Excluded.Select(revision => new ExcludedFields(part, revision));

    [Description("When none fits: those that the fewest observations speak against.")]
    public IEnumerable<string> Nearest => NamesOf(part, part.Nearest.Select(revision => revision.Revision));

    [Description("Among those that remain, revisions that no question tells apart for sure.")]
    public IEnumerable<LookAlikeFields> LookAlikes => part.Alike.Select(alike => new LookAlikeFields(part, alike));

    [Description("What to look at, in the order that splits best.")]
    public IEnumerable<QuestionFields> Steps => part.Steps.Select(step => new QuestionFields(report, part, step));

    [Description("Everything that differs between the revisions that remain.")]
    public IEnumerable<TraitDifferenceFields> Differences => part.Differing(report.Tolerance).Select(row => new TraitDifferenceFields(report, part, row));

    public static IEnumerable<string> NamesOf(PartIdentity part, IEnumerable<int> revisions) => revisions.Select(revision => part.Part.Revisions[revision].Name);
}

internal sealed class ExcludedFields
{
    private readonly PartIdentity part;
    private readonly ExcludedRevision excluded;

    internal ExcludedFields(PartIdentity part, ExcludedRevision excluded) => (this.part, this.excluded) = (part, excluded);

    public string Revision => part.Part.Revisions[excluded.Revision].Name;
    [Bounds(1)] public IEnumerable<ExclusionFields> By => excluded.By.Select(observation => new ExclusionFields(observation, excluded.Revision));
}

internal sealed class LookAlikeFields
{
    private readonly PartIdentity part;
    private readonly LookAlikes alike;

    internal LookAlikeFields(PartIdentity part, LookAlikes alike) => (this.part, this.alike) = (part, alike);

    [Bounds(2)] public IEnumerable<string> Revisions => PartFields.NamesOf(part, alike.Revisions);
    [Description("What differs by less than the gauge tells for sure.")] public IEnumerable<string> TooClose => alike.TooClose.Select(row => row.Trait.Phrase);
    [Description("Elements that differ in what cannot be seen, pinned or measured.")] public IEnumerable<string> Unseen => alike.Unseen;
}

internal abstract class AnyTraitFields(Identification report, Trait trait)
{
    [Description("Words that --seen and --measured understand; of what is counted, the words after the number.")]
    public string Phrase => trait.Means == Means.Count ? trait.Phrase : report.Reader.Spelled(trait, trait.Phrase);

    public Means How => trait.Means;
    [Description("What helps to find it: the passage at a location.")] public string? Detail => trait.Detail;
}

internal sealed class QuestionFields : AnyTraitFields
{
    private readonly Identification told;
    private readonly PartIdentity part;
    private readonly Step step;

    internal QuestionFields(Identification told, PartIdentity part, Step step) : base(told, step.Row.Trait) => (this.told, this.part, this.step) = (told, part, step);

    [JsonPropertyOrder(-1), Bounds(1)] public int Step => step.Number;

    [JsonPropertyOrder(1), Bounds(2)]
    public IEnumerable<AnswerFields> Outcomes => step.Outcomes.Select(outcome => new AnswerFields(outcome.Answer, PartFields.NamesOf(part, outcome.Revisions), outcome.Next));

    [JsonPropertyOrder(1), Description("Phrases that part the revisions just so.")]
    public IEnumerable<string> Same => step.Same.Select(row => told.Reader.Spelled(row.Trait, row.Trait.Phrase));
}

internal sealed class AnswerFields
{
    private readonly Answer answer;
    private readonly IEnumerable<string> those;
    private readonly int? next;

    internal AnswerFields(Answer answer, IEnumerable<string> those, int? next) => (this.answer, this.those, this.next) = (answer, those, next);

    public Answer Answer => answer;
    [Bounds(1)] public IEnumerable<string> Revisions => those;
    [Bounds(2), Description("The step that goes on, or null.")] public int? Next => next;
}

internal sealed class TraitDifferenceFields : AnyTraitFields
{
    private readonly PartIdentity part;
    private readonly TraitRow row;

    internal TraitDifferenceFields(Identification told, PartIdentity part, TraitRow row) : base(told, row.Trait) => (this.part, this.row) = (part, row);

    [JsonPropertyOrder(1), Description("Revision to answer.")]
    public IReadOnlyDictionary<string, Answer> Answers => Fields.Of(part.Remaining.Select(revision => KeyValuePair.Create(part.Part.Revisions[revision].Name, row.Answers[revision])));
}
