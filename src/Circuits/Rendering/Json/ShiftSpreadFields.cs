using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Judging.Changes;
using Circuits.Studies.Shifts;
using Circuits.Studies.Spread;

namespace Circuits.Rendering.Json;

internal sealed class ShiftSpreadFields : SpreadFields
{
    private readonly ShiftSpread spread;

    internal ShiftSpreadFields(ShiftSpread spread) : base(spread.Request, spread.Sizes) => this.spread = spread;

    [JsonPropertyOrder(1)] public IEnumerable<ShiftRangeFields> Shifts => spread.Shifts.Select(shift => new ShiftRangeFields(shift));
}

internal sealed class ShiftRangeFields
{
    private readonly ShiftRange shift;

    internal ShiftRangeFields(ShiftRange shift) => this.shift = shift;

    public string Shift => shift.Plan.Name;
    public IEnumerable<ShiftVerdictFields> Verdicts => shift.Verdicts.Select(verdict => new ShiftVerdictFields(verdict.Key, verdict.Value));
    public RangeFields? HoldsMs => RangeFields.Of(shift.Holds);
    public RangeFields? LetsGoMs => RangeFields.Of(shift.LetsGo);
    public RangeFields? FlareMs => RangeFields.Of(shift.Flare);
    public RangeFields? TieUpMs => RangeFields.Of(shift.TieUp);
    public IEnumerable<ClutchSpreadFields> Clutches => shift.Clutches.Select(clutch => new ClutchSpreadFields(clutch.Key, clutch.Value));
}

internal sealed class ShiftVerdictFields
{
    private readonly ShiftVerdict verdict;
    private readonly double share;

    internal ShiftVerdictFields(ShiftVerdict verdict, double share) => (this.verdict, this.share) = (verdict, share);

    public ShiftVerdict Verdict => verdict;
    [Description("Of the samples.")] public double Percent => Fields.Rounded(share, 3);
}

internal sealed class ClutchSpreadFields
{
    private readonly string name;
    private readonly SpreadRange? touches;

    internal ClutchSpreadFields(string name, SpreadRange? touches) => (this.name, this.touches) = (name, touches);

    public string Clutch => name;
    public RangeFields? TouchesMs => RangeFields.Of(touches);
}
