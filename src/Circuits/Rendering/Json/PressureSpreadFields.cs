using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Studies.Pressures;
using Circuits.Studies.Spread;

namespace Circuits.Rendering.Json;

internal sealed class PressureSpreadFields : SpreadFields
{
    private readonly PressureReport report;
    private readonly PressureSpread spread;

    internal PressureSpreadFields(PressureReport report, PressureSpread spread) : base(spread.Request, spread.Sizes) => (this.report, this.spread) = (report, spread);

    [JsonPropertyOrder(1)] public IEnumerable<PointSpreadFields> Points => spread.Points.Select(point => new PointSpreadFields(report, point));
}

internal sealed class PointSpreadFields : AnyPointFields
{
    private readonly PressureReport report;
    private readonly PressureSpreadPoint point;

    internal PointSpreadFields(PressureReport report, PressureSpreadPoint point) : base(point.At) => (this.report, this.point) = (report, point);

    [JsonPropertyOrder(1)] public IEnumerable<GearSpreadFields> Gears => point.Gears.Select(gear => new GearSpreadFields(report, gear));
}

internal sealed class GearSpreadFields
{
    private readonly PressureReport report;
    private readonly PressureSpreadGear gear;

    internal GearSpreadFields(PressureReport report, PressureSpreadGear gear) => (this.report, this.gear) = (report, gear);

    public string Gear => gear.Gear;
    [Description("For how many samples of a hundred there is an answer.")] public double ConvergedPercent => Fields.Rounded(gear.Converged, 3);
    public RangeFields? PumpKilopascals => RangeFields.Of(gear.Line);
    public IEnumerable<TapSpreadFields> Taps => report.Taps.Zip(gear.Taps, (tap, range) => new TapSpreadFields(tap.Name, range));
}

internal sealed class TapSpreadFields
{
    private readonly string name;
    private readonly SpreadRange? range;

    internal TapSpreadFields(string name, SpreadRange? range) => (this.name, this.range) = (name, range);

    public string Tap => name;
    public RangeFields? Kilopascals => RangeFields.Of(range);
}
