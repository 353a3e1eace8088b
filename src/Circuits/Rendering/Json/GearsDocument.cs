using System.ComponentModel;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering.Json;

[Description("What one assembly does in every gear. Pressures in kPa (gauge), sizes in mm and mm2.")]
internal sealed class GearsDocument : VerdictDocument
{
    private readonly AssemblyReport report;

    internal GearsDocument(AssemblyReport report) : base("gears", report.Assembly, report.NearestMatched, report.Mode) => this.report = report;

    [Description("The conditions at which gears were judged; empty for the static answer.")] public IEnumerable<JudgedPointFields> Conditions => report.Points.Select(point => new JudgedPointFields(point));
    [Description("Every size that the file does not give and that was assumed.")] public IEnumerable<Phrase> Assumptions => report.Assumptions.Select(assumption => assumption.Text);
    public IEnumerable<GearFields> Gears => report.Gears.Select(gear => new GearFields(gear));
    [Description("Changes of gear, each at every condition that judges it; empty for the static answer.")] public IEnumerable<ChangeOfGearFields> Changes => report.Changes.Select(change => new ChangeOfGearFields(change));
    public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Findings);
    [Description("What someone who acts on this must be told.")] public IEnumerable<string> Cautions => Rendering.Cautions.For(report, pressures: true);
}

internal sealed class GearFields
{
    private readonly GearReport gear;

    internal GearFields(GearReport gear) => this.gear = gear;

    public string Gear => gear.Gear;
    [Description("Whether positions and pressures came to agree.")] public bool Settled => gear.Settled;
    [Description("Whether another start leads to another state.")] public bool DependsOnHistory => gear.DependsOnHistory;
    public Verdict Verdict => gear.Verdict;
    [Description("The condition that decides the verdict, whose pressures are those told; null for the static answer.")] public string? Condition => gear.DecidedAt?.At.Name;
    [Description("The gear at each condition.")] public IEnumerable<JudgedConditionFields> Conditions => gear.Conditions.Select(condition => new JudgedConditionFields(condition));
    public IEnumerable<ClutchFields> Clutches => gear.Clutches.Select(clutch => new ClutchFields(clutch));
    public IEnumerable<CrossFeedFields> CrossFeeds => gear.CrossFeeds.Select(feed => new CrossFeedFields(feed));
    [Description("Null when the file gives no gear train.")] public DriveFields? Drive => DriveFields.Of(gear.Drive);
    public double? LineKilopascals => Fields.Rounded(gear.LineKilopascals, 3);
    public IEnumerable<PositionFields> Positions => gear.Positions.Select(position => new PositionFields(position));
    public IEnumerable<PressureFields> Pressures => gear.Pressures.Select(pressure => new PressureFields(pressure));
    [Description("What goes on and off in turn, when it never settles.")] public IEnumerable<string> Cycle => gear.Cycle;
    [Description("What differs, when it depends on history.")] public IEnumerable<Phrase> Histories => gear.Histories;
}

internal sealed class PositionFields : Placed
{
    private readonly PositionReport position;

    internal PositionFields(PositionReport position) : base(position.Place) => this.position = position;

    public PositionKind Kind => position.Kind;
    public string Element => position.Element;
    public Stand Position => position.Position;
    [Description("Its position in the matched set; null when that has no such element.")] public Stand? Reference => position.Reference;
}

internal sealed class PressureFields
{
    private readonly PassagePressure pressure;

    internal PressureFields(PassagePressure pressure) => this.pressure = pressure;

    public string Passage => pressure.Passage;
    [Description("What its oil is joined to; between: to supply and sump both.")] public Solving.OilState JoinedTo => pressure.State;
    [Description("Gauge pressure.")] public double? Kilopascals => Fields.Rounded(pressure.Kilopascals, 3);
}
