using System.ComponentModel;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering.Json;

internal sealed class GearDifferenceFields
{
    private readonly GearDifference gear;

    internal GearDifferenceFields(GearDifference gear) => this.gear = gear;

    public string Gear => gear.Gear;
    public GearSideFields Before => new(gear.Before);
    public GearSideFields After => new(gear.After);

    [Description("Clutches of which anything differs.")]
    public IEnumerable<ClutchDifferenceFields> Clutches => gear.Clutches.Select(clutch => new ClutchDifferenceFields(clutch));

    public IEnumerable<CrossFeedFields> NewCrossFeeds => gear.NewCrossFeeds.Select(feed => new CrossFeedFields(feed));
    public IEnumerable<CrossFeedFields> VanishedCrossFeeds => gear.VanishedCrossFeeds.Select(feed => new CrossFeedFields(feed));

    [Description("What stands elsewhere.")]
    public IEnumerable<PositionDifferenceFields> Positions => gear.Positions.Select(position => new PositionDifferenceFields(position));

    [Description("Passages whose pressure differs.")]
    public IEnumerable<PressureDifferenceFields> Pressures => gear.Pressures.Select(pressure => new PressureDifferenceFields(pressure));
}

internal sealed class GearSideFields
{
    private readonly GearReport gear;

    internal GearSideFields(GearReport gear) => this.gear = gear;

    public Verdict Verdict => gear.Verdict;
    [Description("Whether positions and pressures came to agree.")] public bool Settled => gear.Settled;
    [Description("Whether another start leads to another state.")] public bool DependsOnHistory => gear.DependsOnHistory;
    public double? LineKilopascals => Fields.Rounded(gear.LineKilopascals, 3);
    [Description("Null when the file gives no gear train.")] public DriveFields? Drive => DriveFields.Of(gear.Drive);
    [Description("What goes on and off in turn, when it never settles.")] public IEnumerable<string> Cycle => gear.Cycle;
    [Description("What differs, when it depends on history.")] public IEnumerable<Phrase> Histories => gear.Histories;
}

internal sealed class ClutchDifferenceFields
{
    private readonly ClutchDifference clutch;

    internal ClutchDifferenceFields(ClutchDifference clutch) => this.clutch = clutch;

    public string Clutch => clutch.Clutch;
    public ClutchSideFields Before => new(clutch.Before);
    public ClutchSideFields After => new(clutch.After);
}

internal sealed class PositionDifferenceFields
{
    private readonly Difference position;

    internal PositionDifferenceFields(Difference position) => this.position = position;

    public string Element => position.Name;
    [Description("Null when it was not there.")] public Stand? Before => position.Before;
    [Description("Null when it is gone.")] public Stand? After => position.After;
}

internal sealed class PressureDifferenceFields
{
    private readonly PressureDifference pressure;

    internal PressureDifferenceFields(PressureDifference pressure) => this.pressure = pressure;

    public string Passage => pressure.Passage;
    public double? BeforeKilopascals => Fields.Rounded(pressure.Before, 3);
    public double? AfterKilopascals => Fields.Rounded(pressure.After, 3);
}
