using System.ComponentModel;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;
using Circuits.Studies.Changes;

namespace Circuits.Rendering.Json;

[Description("What changes do to an assembly: only what differs. Pressures in kPa (gauge), sizes in mm and mm2.")]
internal sealed class WhatIfDocument : VerdictDocument
{
    private readonly WhatIfReport report;
    private readonly string? job;

    internal WhatIfDocument(WhatIfReport report, string? job) : base("what-if", report.Before.Assembly, report.Before.NearestMatched, report.Before.Mode) =>
        (this.report, this.job) = (report, job);

    [Description("What the changes are for, from the change set's file.")] public string? Job => job;
    public IEnumerable<ChangeFields> Changes => ChangeFields.Of(report.Changes);
    [Description("The worst gear's, before.")] public Verdict Verdict => report.Before.Verdict;
    public ChangedFields After => new(report.After);
    [Description("Whether anything differs.")] public bool Differs => report.Differs;

    [Description("Only gears in which anything differs.")]
    public IEnumerable<GearDifferenceFields> Gears => report.Gears.Select(gear => new GearDifferenceFields(gear));

    public IEnumerable<FindingFields> NewFindings => FindingFields.Of(report.NewFindings);
    public IEnumerable<FindingFields> VanishedFindings => FindingFields.Of(report.VanishedFindings);
    [Description("What someone who acts on this must be told.")] public IEnumerable<string> Cautions => Rendering.Cautions.For(report.After, pressures: true);
}

internal sealed class ChangedFields
{
    private readonly AssemblyReport after;

    internal ChangedFields(AssemblyReport after) => this.after = after;

    [Description("Part to revision, in the order of the file.")] public IReadOnlyDictionary<string, string> Assembly => Fields.Of(after.Assembly.Choice);
    [Description("A changed assembly is a matched set only when all changes fit other revisions.")] public string? Matched => after.Assembly.Matched;
    [Description("The matched sets that share most parts with it.")] public IEnumerable<string> NearestMatched => after.NearestMatched;
    public Verdict Verdict => after.Verdict;
    [Description("Changes of gear after; those before are a report of their own.")] public IEnumerable<ChangeOfGearFields> ChangesOfGear => after.Changes.Select(change => new ChangeOfGearFields(change));
    [Description("Every size that the file does not give and that was assumed.")] public IEnumerable<Phrase> Assumptions => after.Assumptions.Select(assumption => assumption.Text);
}

internal sealed class ChangeFields : Placed
{
    private readonly Change change;

    internal ChangeFields(Change change) : base(change.Place) => this.change = change;

    [Description("The change in plain words.")] public Phrase Change => change.Text;
    [Description("The part that is changed.")] public string Part => change.Part;
    [Description("What is changed.")] public string Element => change.Element;
    [Description("Whether the bench can take it back with the same parts.")] public bool CanBeUndone => change.CanBeUndone;

    public static IEnumerable<ChangeFields> Of(IEnumerable<Change> changes) => changes.Select(change => new ChangeFields(change));
}
