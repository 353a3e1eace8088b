using System.ComponentModel;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Json;

[Description("Every combination of revisions, and what it does.")]
internal sealed class MatrixDocument : Document
{
    private readonly MatrixSummary summary;
    private readonly IEnumerable<string> lines;

    internal MatrixDocument(MatrixSummary summary, IEnumerable<string> lines) : base("matrix") => (this.summary, this.lines) = (summary, lines);

    public string Unit => summary.Space.Unit.Name;
    public DataOrigin Data => summary.Space.Unit.Data;

    [Description(VerdictDocument.Modes)] public Judging.JudgeMode Mode => summary.Space.Mode;

    [Bounds(1), Description("The revisions of each part that are tried.")]
    public IReadOnlyDictionary<string, IEnumerable<string>> Parts => Fields.Of(
        summary.Space.Unit.Parts.Zip(summary.Space.Choices, (part, revisions) => KeyValuePair.Create(part.Name, revisions.Select(revision => revision.Name))));

    public IEnumerable<string> Gears => summary.Space.Gears.Select(gear => summary.Space.Unit.Gears[gear].Name);
    [Bounds(1)] public long Assemblies => summary.Space.Count;
    [Bounds(1), Description("How many networks there are that the solver can tell apart.")] public int Networks => summary.Networks;
    [Description("Best first.")] public IEnumerable<MatrixGroupFields> Groups => summary.BestFirst().Select(group => new MatrixGroupFields(summary, group));
    [Description("The last part's revision changes fastest.")] public IEnumerable<RowLine> Rows => lines.Select(line => new RowLine(line));
}

internal sealed class MatrixGroupFields
{
    private readonly MatrixSummary summary;
    private readonly MatrixGroup group;

    internal MatrixGroupFields(MatrixSummary summary, MatrixGroup group) => (this.summary, this.group) = (summary, group);

    [Bounds(1)] public int Group => group.Number;
    public Verdict Verdict => group.Behaviour.Verdict;
    [Description("The first of its worst gears; null when none is wrong.")] public string? WorstGear => group.WorstGear < 0 ? null : GearName(group.WorstGear);
    [Bounds(1)] public int Assemblies => group.Count;
    public IEnumerable<string> Matched => group.Matched;
    public IEnumerable<GroupGearFields> Gears => group.Behaviour.Gears.Select((gear, i) => new GroupGearFields(GearName(i), gear));

    [Description("The changes of gear that are not good, nor as bad with the matched set; null where none was timed.")]
    public IEnumerable<GroupChangeFields>? Changes => group.Behaviour.Changes is { } changes ? changes.Select(change => new GroupChangeFields(change)) : null;

    [Bounds(1), Description("The revisions that lead to it: for each entry, any combination of them; entries do not overlap.")]
    public IEnumerable<IReadOnlyDictionary<string, IEnumerable<string>>> Revisions => summary.BoxesOf(group).Select(box => Fields.Of(
        box.Parts.Select((revisions, part) => KeyValuePair.Create(
            summary.Space.Unit.Parts[part].Name, revisions.Select(i => summary.Space.Choices[part][i].Name)))));

    private string GearName(int gear) => summary.Space.Unit.Gears[summary.Space.Gears[gear]].Name;
}

internal sealed class GroupGearFields
{
    private readonly string name;
    private readonly GearBehaviour gear;

    internal GroupGearFields(string name, GearBehaviour gear) => (this.name, this.gear) = (name, gear);

    public string Gear => name;
    public Verdict Verdict => gear.Verdict;
    public Feel? Feels => gear.Feel;
    [Bounds(0)] public int CrossFeeds => gear.CrossFeeds;
    public bool DependsOnHistory => gear.DependsOnHistory;
}

internal sealed class GroupChangeFields
{
    private readonly ChangeBehaviour change;

    internal GroupChangeFields(ChangeBehaviour change) => this.change = change;

    [Description("The change, as in 2-3.")] public string Change => change.Change;
    [Description("The name of the condition at which it was timed.")] public string Condition => change.Condition;
    public ShiftVerdict Verdict => change.Verdict;
    public Feel Feels => change.Feel;
}
