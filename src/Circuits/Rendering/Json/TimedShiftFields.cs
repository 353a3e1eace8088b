using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering.Json;

// Without an answer there is no number that could be taken for one.
internal abstract class AnyShiftFields(TimedShiftReport shift)
{
    public ShiftVerdict Verdict => shift.Verdict;
    [Description("Why, in one sentence; empty for a good shift.")] public Phrase Reason => shift.Reason;

    [Description("From when on the gear that is entered holds, ms since the shift began; null when it does not come to it.")]
    public double? HoldsMs => Fields.Rounded(shift.HoldsMs, 3);

    [Description("When the gear that is left lets go, ms since the shift began; null when it does not come to it.")]
    public double? LetsGoMs => Fields.Rounded(shift.LetsGoMs, 3);

    [Description("From letting go to holding; less than zero where they overlap.")] public double? GapMs => Fields.Rounded(shift.GapMs, 3);
    [Description("The longest time in which too little capacity holds the torque.")] public double? FlareMs => Answer(Fields.Rounded(shift.FlareMs, 3));
    [Description("The longest time in which clutches work against each other.")] public double? TieUpMs => Answer(Fields.Rounded(shift.TieUpMs, 3));
    [Description("How long was looked.")] public double? EndMs => Answer(Fields.Rounded(shift.EndMs, 3));
    [Description("What was lost of the oil that was pumped, as a fraction: how exactly the sum came out.")] public double? VolumeLost => Answer(shift.Lost);
    public IEnumerable<ShiftClutchFields> Clutches => shift.Clutches.Select(clutch => new ShiftClutchFields(clutch));

    private double? Answer(double value) => shift.Verdict == ShiftVerdict.DidNotConverge ? null : value;
}

internal sealed class TimedShiftFields : AnyShiftFields
{
    internal TimedShiftFields(TimedShiftReport shift) : base(shift)
    {
    }
}

internal sealed class SampledShiftFields : AnyShiftFields
{
    /// <summary>Time between the samples, ms.</summary>
    private const double Step = 10;

    private readonly TimedShiftReport timed;

    internal SampledShiftFields(TimedShiftReport timed) : base(timed) => this.timed = timed;

    [JsonPropertyOrder(1), Description("The shift over time, every 10 ms.")]
    public IEnumerable<SampleFields> Samples => ShiftSamples.Every(timed, Step).Select(sample => new SampleFields(sample));
}

internal sealed class SampleFields
{
    private readonly ShiftSample sample;

    internal SampleFields(ShiftSample sample) => this.sample = sample;

    [Description("Time since the shift began.")] public double Ms => Fields.Rounded(sample.Ms, 3);
    [Description("Pressure at the pump.")] public double LineKilopascals => Fields.Rounded(sample.LineKilopascals, 2);

    [Description("Apply pressure of each clutch, in the order of `clutches`.")]
    public IEnumerable<double> Kilopascals => sample.Clutches.Select(clutch => Fields.Rounded(clutch.Kilopascals, 2));

    [Description("Share of its stroke; 1 where the plates touch, more while they yield.")]
    public IEnumerable<double> Stroke => sample.Clutches.Select(clutch => Fields.Rounded(clutch.Stroke, 4));

    [Description("Torque capacity.")] public IEnumerable<double> NewtonMetres => sample.Clutches.Select(clutch => Fields.Rounded(clutch.Capacity, 2));
}

internal sealed class ShiftClutchFields
{
    private readonly ShiftClutch clutch;

    internal ShiftClutchFields(ShiftClutch clutch) => this.clutch = clutch;

    public string Clutch => clutch.Clutch;
    public ClutchRole Role => clutch.Role;

    [Description("Torque that it must carry in the gear that is left; 0 where others hold it without this one.")]
    public double CarriesBeforeNewtonMetres => Fields.Rounded(clutch.NeedBefore, 3);

    [Description("The same in the gear that is entered.")] public double CarriesAfterNewtonMetres => Fields.Rounded(clutch.NeedAfter, 3);

    [Description("When its plates touch, ms since the shift began; null when it does not come to it.")]
    public double? TouchesMs => Fields.Rounded(clutch.FillMs, 3);

    [Description("From when on it can carry what it must, ms since the shift began; null when it does not come to it.")]
    public double? HoldsMs => Fields.Rounded(clutch.HoldsMs, 3);

    [Description("When it can no longer carry what it carried, ms since the shift began; null when it does not come to it.")]
    public double? LetsGoMs => Fields.Rounded(clutch.LetsGoMs, 3);

    [Description("From when on it carries nothing, ms since the shift began; null when it does not come to it.")]
    public double? ReleasedMs => Fields.Rounded(clutch.ReleasedMs, 3);

    [Description("From when on its piston is back on its stop, ms since the shift began; null when it does not come to it.")]
    public double? EmptyMs => Fields.Rounded(clutch.EmptyMs, 3);

    [Description("Torque capacity at the end.")] public double CapacityNewtonMetres => Fields.Rounded(clutch.CapacityAfter, 3);
    [Description("The highest torque capacity on the way.")] public double PeakNewtonMetres => Fields.Rounded(clutch.Peak, 3);
}
