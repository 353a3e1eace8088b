using System.ComponentModel;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering.Json;

[Description("Timed shifts and engagements.")]
internal sealed class ShiftsDocument : JudgedDocument
{
    private readonly ShiftReport report;

    internal ShiftsDocument(ShiftReport report) : base("shifts", report.Assembly, report.NearestMatched) => this.report = report;

    [Description("What was done to its parts, in words.")] public IEnumerable<Phrase> Changes => report.Assembly.Changes;

    [Description("The assembly that it is held against, or null.")]
    public BesideFields? Beside => report.Beside is { } beside ? new BesideFields(beside) : null;

    [Description("Every size that the file does not give and that was assumed.")] public IEnumerable<Phrase> Assumptions => report.Assumptions;
    public ConditionFields Conditions => new(report.Conditions);
    public IEnumerable<ShiftFields> Shifts => report.Shifts.Select(pair => new ShiftFields(pair));

    [Description("How far results spread within the tolerances of sizes; null when it was not asked for.")]
    public ShiftSpreadFields? Spread => report.Spread is { } spread ? new ShiftSpreadFields(spread) : null;

    [Description("Missing sizes that matter to the answer, most first; numbers in ms.")]
    public IEnumerable<MatterFields> Matters => report.Matters.Select(effect => new MatterFields(effect));

    public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Findings);
    [Description("What someone who acts on this must be told.")] public IEnumerable<string> Cautions => Rendering.Cautions.For(report);
}

internal sealed class BesideFields
{
    private readonly Assembly beside;

    internal BesideFields(Assembly beside) => this.beside = beside;

    [Description("Part to revision, in the order of the file.")] public IReadOnlyDictionary<string, string> Assembly => Fields.Of(beside.Choice);
    public string? Matched => beside.Matched;
}

internal sealed class ConditionFields
{
    private readonly ShiftConditions conditions;

    internal ConditionFields(ShiftConditions conditions) => this.conditions = conditions;

    [Description("Oil temperature.")] public double Celsius => Fields.Rounded(conditions.Celsius, 3);
    [Description("Pump speed while a gear is engaged or left.")] public double StandingRevolutionsPerMinute => Fields.Rounded(conditions.StandingSpeed, 3);
    [Description("Pump speed in all other shifts.")] public double DrivingRevolutionsPerMinute => Fields.Rounded(conditions.DrivingSpeed, 3);
}

internal sealed class ShiftFields
{
    private readonly ShiftPair pair;

    internal ShiftFields(ShiftPair pair) => this.pair = pair;

    [Description("Its name: 2-3.")] public string Shift => pair.Here.Plan.Name;
    public string From => pair.Here.Plan.From.Name;
    public string To => pair.Here.Plan.To.Name;
    public ShiftKind Kind => pair.Here.Plan.Kind;
    [Description("Torque at the input.")] public double InputNewtonMetres => Fields.Rounded(pair.Here.Torque, 3);
    public SampledShiftFields Here => new(pair.Here);

    [Description("The same shift of the assembly that it is held against.")]
    public SampledShiftFields? Beside => pair.Beside is { } other ? new SampledShiftFields(other) : null;
}
