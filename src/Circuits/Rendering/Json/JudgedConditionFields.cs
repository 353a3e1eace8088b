using System.ComponentModel;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Judging.Conditions;
using Circuits.Model;

namespace Circuits.Rendering.Json;

internal sealed class JudgedPointFields
{
    private readonly OperatingPoint point;

    internal JudgedPointFields(OperatingPoint point) => this.point = point;

    public string Condition => point.Name;
    [Description("Oil temperature.")] public double? DegreesCelsius => Fields.Rounded(point.Celsius, 1);
    [Description("Pump speed.")] public double? RevolutionsPerMinute => Fields.Rounded(point.RevolutionsPerMinute, 1);
}

internal sealed class JudgedConditionFields
{
    private readonly ConditionReport report;

    internal JudgedConditionFields(ConditionReport report) => this.report = report;

    public string Condition => report.At.Name;
    public Verdict Verdict => report.Verdict;
    [Description("Whether the nearest matched set is as bad there.")] public bool SharedByMatched => report.SharedByMatched;
    [Description("Null where there is no answer.")] public double? LineKilopascals => report.DidNotConvergeAt is null ? Fields.Rounded(report.LineKilopascals, 3) : null;
    [Description("The nearest matched set's.")] public double? MatchedLineKilopascals => Fields.Rounded(report.MatchedLineKilopascals, 3);
    [Description("What the unit needs besides clutches.")] public IEnumerable<NeedFields> Needs => report.Needs.Select(need => new NeedFields(need));
}

internal sealed class NeedFields
{
    private readonly NeedReport report;

    internal NeedFields(NeedReport report) => this.report = report;

    [Description("The file's name for it, or the passage.")] public string Need => report.Need.Name;
    [Description("Null for a need that the file gives; else the fixed opening by which its oil goes on, which it was recognized by.")] public string? RecognizedBy => report.Need.DrainsBy;
    public Verdict Verdict => report.Verdict;
    public double? Kilopascals => Fields.Rounded(report.Kilopascals, 3);
    [Description("What flows through it.")] public double? LitresPerMinute => Fields.Rounded(report.LitresPerMinute, 3);
    [Description("The nearest matched set's.")] public double? MatchedKilopascals => Fields.Rounded(report.MatchedKilopascals, 3);
    [Description("The nearest matched set's.")] public double? MatchedLitresPerMinute => Fields.Rounded(report.MatchedLitresPerMinute, 3);
}

internal sealed class ChangeOfGearFields
{
    private readonly ChangeReport change;

    internal ChangeOfGearFields(ChangeReport change) => this.change = change;

    [Description("From gear to gear.")] public string Change => change.Plan.Name;
    public string Condition => change.At.Name;
    public ShiftVerdict Verdict => change.Verdict;
    [Description("Whether the nearest matched set does no better.")] public bool SharedByMatched => change.SharedByMatched;
    [Description("Why; empty for a good one.")] public Phrase Reason => change.Here.Reason;
    [Description("From when on the gear that is entered holds, ms; null when it does not come to it.")] public double? HoldsMs => Fields.Rounded(change.Here.HoldsMs, 1);
    [Description("The nearest matched set's.")] public double? MatchedHoldsMs => Fields.Rounded(change.Matched?.HoldsMs, 1);
}
