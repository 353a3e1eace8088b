using System.ComponentModel;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering.Json;

[Description("Whether a file is sound, and whether every matched set does in every gear what its chart and the file's expectations say.")]
internal sealed class CheckDocument : Document
{
    private readonly CheckedFile file;

    internal CheckDocument(CheckedFile file) : base("check") => this.file = file;

    [Description("The file, as it was named.")] public string File => file.File;
    [Description("The unit's name; null when the file could not be read.")] public string? Unit => file.Unit?.Name;
    [Description("Where the file's numbers come from.")] public DataOrigin? Data => file.Unit?.Data;
    [Description("Whether there is no finding of error level.")] public bool Ok => file.Ok;
    [Description(VerdictDocument.Modes)] public JudgeMode Mode => file.Mode;
    public IEnumerable<CheckedSetFields> Matched => file.Matched.Select(report => new CheckedSetFields(report));
    public ExpectationFields Expectations => new(file);
    [Description("With --changed-only: what the edit did to the verdicts; else null.")] public EditFields? Edit => file.Edit is { } edit ? new(edit) : null;
    public IEnumerable<AssemblyFindingFields> Findings => file.Findings.Select(finding => new AssemblyFindingFields(finding));
}

internal sealed class CheckedSetFields
{
    private readonly AssemblyReport report;

    internal CheckedSetFields(AssemblyReport report) => this.report = report;

    [Description("The matched set; null for a unit that declares none.")] public string? Matched => report.Assembly.Matched;
    [Description("Part to revision, in the order of the file.")] public IReadOnlyDictionary<string, string> Assembly => Fields.Of(report.Assembly.Choice);
    public Verdict Verdict => report.Verdict;

    [Description("Gear to verdict.")]
    public IReadOnlyDictionary<string, Verdict> Gears => Fields.Of(report.Gears.Select(gear => KeyValuePair.Create(gear.Gear, gear.Verdict)));
}

internal sealed class EditFields
{
    private readonly EditReport edit;

    internal EditFields(EditReport edit) => this.edit = edit;

    [Description("The branch, tag or commit that the file is compared with, as it was named.")] public string Since => edit.Since;
    [Bounds(0), Description("How many verdicts changed, each a finding verdict-changed; null where there is nothing to compare with.")] public int? VerdictsChanged => edit.VerdictsChanged;
}

internal sealed class ExpectationFields
{
    private readonly CheckedFile file;

    internal ExpectationFields(CheckedFile file) => this.file = file;

    [Bounds(0)] public int Held => file.ExpectationsHeld;
    [Bounds(0)] public int Total => file.ExpectationsTotal;
}
