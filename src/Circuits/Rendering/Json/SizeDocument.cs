using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Studies.Sizing;

namespace Circuits.Rendering.Json;

[Description("The hole that gives a wanted time of a shift.")]
internal sealed class SizeDocument : JudgedDocument
{
    private readonly SizeReport report;

    internal SizeDocument(SizeReport report) : base("size", report.Assembly, report.NearestMatched) => this.report = report;

    [Description("What was done to its parts, in words.")] public IEnumerable<Phrase> Changes => report.Assembly.Changes;
    [Description("Where the hole is to be, as it was asked for.")] public string Location => report.Request.Location;
    public string Shift => report.Request.Shift.Name;
    [Description("Which of its times is wanted.")] public WantedTime Time => report.Request.Time;
    [Description("The clutch meant; null where the time is the gear's.")] public string? Clutch => report.Clutch;
    [Description("The time wanted; of a gap less than zero for an overlap.")] public double WantedMs => Fields.Rounded(report.Request.Ms, 3);
    [Description("The smallest hole tried.")] public double LeastMillimetres => Fields.Rounded(report.Request.Least, 4);
    [Description("The largest.")] public double? MostMillimetres => Fields.Rounded(report.Request.Most, 4);
    public SizeOutcome Outcome => report.Outcome;
    [Description("Why no hole was found; empty when one was.")] public Phrase Reason => report.Reason;
    [Description("The hole as it is; null for metal or an opening without a size.")] public HoleFields? Now => HoleFields.Of(report.Now);
    [Description("The hole found, or where the search stalled.")] public HoleFields? Hole => HoleFields.Of(report.Hole);
    [Description("The nearest number drill below.")] public HoleFields? DrillBelow => HoleFields.Of(report.DrillBelow);
    [Description("The nearest number drill above.")] public HoleFields? DrillAbove => HoleFields.Of(report.DrillAbove);
    [Bounds(0), Description("How many holes give the time; the nearest to the hole as it is was taken.")] public int Solutions => report.Solutions;
    [Description("What to do.")] public ChangeFields? Work => report.Work is { } work ? new ChangeFields(work) : null;
    [Description("Every hole that was tried, by rising diameter.")] public IEnumerable<HoleFields> Tried => report.Tried.Select(hole => new HoleFields(hole));
    [Description("Shifts that the hole changes.")] public IEnumerable<ShiftChangeFields> Shifts => report.Shifts.Select(shift => new ShiftChangeFields(shift));

    [Description("Only gears in which anything differs.")]
    public IEnumerable<GearDifferenceFields> Gears => report.Gears.Select(gear => new GearDifferenceFields(gear));

    [Description("How far results spread within the tolerances of sizes; null when it was not asked for.")]
    public SizeSpreadFields? Spread => report.Spread is { } spread ? new SizeSpreadFields(spread) : null;

    [Description("Every size that the file does not give and that was assumed.")] public IEnumerable<Phrase> Assumptions => report.Assumptions;
    [Description("What comes with the hole, or that there is none.")] public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Findings);
    [Description("What someone who acts on this must be told.")] public IEnumerable<string> Cautions => SizeText.CautionsOf(report);
}

internal sealed class HoleFields
{
    private readonly SizedHole hole;

    internal HoleFields(SizedHole hole) => this.hole = hole;

    [Description("Diameter.")] public double Millimetres => Fields.Rounded(hole.Millimetres, 4);
    [Description("The time that it gives; null where it never comes to it.")] public double? Ms => Fields.Rounded(hole.Ms, 3);
    [Bounds(1, 80), Description("The number drill (ASME B94.11M) of that diameter, or null.")] public int? NumberDrill => hole.Drill;

    public static HoleFields? Of(SizedHole? hole) => hole is null ? null : new HoleFields(hole);
}

internal sealed class ShiftChangeFields
{
    private readonly ShiftChange shift;

    internal ShiftChangeFields(ShiftChange shift) => this.shift = shift;

    public string Shift => shift.Before.Plan.Name;
    public TimedShiftFields Before => new(shift.Before);
    public TimedShiftFields After => new(shift.After);
}

internal sealed class SizeSpreadFields : SpreadFields
{
    private readonly SizeSpread spread;

    internal SizeSpreadFields(SizeSpread spread) : base(spread.Request, spread.Sizes) => this.spread = spread;

    [JsonPropertyOrder(1), Description("The hole found and the number drills beside it; the hole as it is where none was found.")]
    public IEnumerable<HoleSpreadFields> Holes => spread.Holes.Select(hole => new HoleSpreadFields(hole));
}

internal sealed class HoleSpreadFields
{
    private readonly SizedRange hole;

    internal HoleSpreadFields(SizedRange hole) => this.hole = hole;

    public double Millimetres => Fields.Rounded(hole.Hole.Millimetres, 4);
    [Bounds(1, 80)] public int? NumberDrill => hole.Hole.Drill;
    public RangeFields? Ms => RangeFields.Of(hole.Ms);
}
