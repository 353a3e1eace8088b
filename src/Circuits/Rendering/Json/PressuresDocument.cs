using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Studies.Pressures;

namespace Circuits.Rendering.Json;

[Description("Steady pressures and flows, gear by gear, under one or several conditions.")]
internal sealed class PressuresDocument : JudgedDocument
{
    private readonly PressureReport report;

    internal PressuresDocument(PressureReport report) : base("pressures", report.Assembly, report.NearestMatched) => this.report = report;

    [Description("Every size that the file does not give and that was assumed.")] public IEnumerable<Phrase> Assumptions => report.Assumptions;
    public IEnumerable<PointFields> Points => report.Points.Select(point => new PointFields(report, point));

    [Description("How far results spread within the tolerances of sizes; null when it was not asked for.")]
    public PressureSpreadFields? Spread => report.Spread is { } spread ? new PressureSpreadFields(report, spread) : null;

    [Description("Missing sizes that matter to the answer, most first; numbers in kPa.")]
    public IEnumerable<MatterFields> Matters => report.Matters.Select(effect => new MatterFields(effect));

    public IEnumerable<FindingFields> Findings => FindingFields.Of(report.Findings);

    [Description("What someone who acts on this must be told.")]
    public IEnumerable<string> Cautions => [Rendering.Cautions.Measuring, Rendering.Cautions.WhoDecides];
}

internal abstract class AnyPointFields(OperatingPoint at)
{
    [Description("The speed's name in the file, or empty.")] public string Name => at.Name;
    [Description("Oil temperature.")] public double Celsius => Fields.Rounded(at.Celsius, 3);
    [Description("Pump speed.")] public double RevolutionsPerMinute => Fields.Rounded(at.RevolutionsPerMinute, 3);
}

internal sealed class PointFields : AnyPointFields
{
    private readonly PressureReport report;
    private readonly PressurePoint point;

    internal PointFields(PressureReport report, PressurePoint point) : base(point.At) => (this.report, this.point) = (report, point);

    [JsonPropertyOrder(1)] public IEnumerable<SteadyGearFields> Gears => point.Gears.Select(gear => new SteadyGearFields(report, gear));
}

// Without an answer there is no number that could be taken for one.
internal sealed class SteadyGearFields
{
    private readonly PressureReport report;
    private readonly PressureGear gear;

    internal SteadyGearFields(PressureReport report, PressureGear gear) => (this.report, this.gear) = (report, gear);

    public string Gear => gear.Gear;
    [Description("Whether every passage's balance is met. When false, nothing here is an answer.")] public bool Converged => gear.Converged;
    [Description("When it did not converge: the passage with the largest imbalance; else null.")] public string? Worst => gear.Converged ? null : gear.Worst;
    [Description("The largest imbalance, as a fraction of what the pump gives.")] public double Residual => gear.Residual;
    [Description("What the pump gives.")] public double? PumpLitresPerMinute => Answer(gear.PumpLitresPerMinute, 4);

    [Description("What the line regulators spill: what nothing before them needs.")]
    public double? SpilledLitresPerMinute => Answer(gear.SpilledLitresPerMinute, 4);

    [Description("Gauge pressure at the pump.")] public double? PumpKilopascals => Answer(gear.LineKilopascals, 3);
    public IEnumerable<TapFields> Taps => report.Taps.Zip(gear.Taps, (tap, kilopascals) => new TapFields(tap.Name, tap.At.Name.ToString(), kilopascals));
    public IEnumerable<SteadyPressureFields> Passages => gear.Passages.Select(passage => new SteadyPressureFields(passage));
    [Description("What flows, largest first.")] public IEnumerable<RateFields> Flows => gear.Flows.Select(rate => new RateFields(rate));
    [Description("Where oil returns to sump, largest first.")] public IEnumerable<RateFields> Budget => gear.Budget.Select(rate => new RateFields(rate));

    private double? Answer(double value, int places) => gear.Converged ? Fields.Rounded(value, places) : null;
}

internal sealed class TapFields
{
    private readonly string name;
    private readonly string at;
    private readonly double? value;

    internal TapFields(string name, string at, double? value) => (this.name, this.at, this.value) = (name, at, value);

    public string Tap => name;
    public string Passage => at;
    [Description("Null where this assembly lacks the passage.")] public double? Kilopascals => Fields.Rounded(value, 3);
}

internal sealed class SteadyPressureFields
{
    private readonly SteadyPressure passage;

    internal SteadyPressureFields(SteadyPressure passage) => this.passage = passage;

    public string Passage => passage.Passage;
    public double Kilopascals => Fields.Rounded(passage.Kilopascals, 3);
}

internal sealed class RateFields : Placed
{
    private readonly SteadyRate rate;

    internal RateFields(SteadyRate rate) : base(rate.Place) => this.rate = rate;

    [Description("What it flows through.")] public string Element => rate.Element;
    public string From => rate.From;
    public string To => rate.To;
    [Bounds(0)] public double LitresPerMinute => Fields.Rounded(rate.LitresPerMinute, 5);
}
