using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;

namespace Circuits.Judging.Changes;

/// <summary>
/// Holds what clutches can carry over time against the torque at the input, by virtual work on the gear train. In an upshift the
/// clutches of both gears help one another until the on-coming one has more than it needs; from then on an off-going one that still
/// holds works against it. In a downshift the engine first has to run up to the lower gear's speed, and until then an on-coming
/// clutch drags against it: there one gear or the other must hold.
/// </summary>
internal sealed class ShiftJudge
{
    /// <summary>At this share of its stroke plates touch.</summary>
    public const double Touching = 1;

    /// <summary>At this one a piston lies on its stop.</summary>
    private const double Empty = 0;

    private const double Short = 0.05;
    private const double Opposed = 0.2;
    private const double Nothing = 1e-6;
    private const double Sudden = 0.5;
    private const double Plenty = 100;
    private const double KiloPascal = 1e-3;

    private readonly ShiftTrain train;
    private readonly ShiftPlan plan;
    private readonly double torque;
    private readonly TimedRecord record;
    private readonly Curve curve;
    private readonly HashSet<string> before;
    private readonly HashSet<string> after;
    private readonly HashSet<string> either;
    private readonly List<Side> sides = [];
    private readonly TorqueLimits? left;
    private readonly TorqueLimits? entered;
    private readonly TorqueLimits? between;
    private readonly double[] capacities;

    public ShiftJudge(Network network, ShiftTrain train, ShiftPlan plan, double torque, TimedRecord record)
    {
        (this.train, this.plan, this.torque, this.record) = (train, plan, torque, record);
        curve = new Curve(record.Seconds);
        before = [.. plan.From.Apply.Select(use => use.Name)];
        after = [.. plan.To.Apply.Select(use => use.Name)];
        either = [.. before, .. after];
        foreach (var clutch in record.Clutches)
        {
            var named = network.Clutches[clutch.Piston.Clutch].Clutch;
            var role = (before.Contains(named.Name), after.Contains(named.Name)) switch
            {
                (true, true) => ClutchRole.Holding,
                (true, false) => ClutchRole.OffGoing,
                (false, true) => ClutchRole.OnComing,
                _ => ClutchRole.Uncharted,
            };
            sides.Add(new Side(clutch, named, role, torque * train.Need(plan.From, named.Name), torque * train.Need(plan.To, named.Name)));
        }

        (left, entered, between) = (train.Limits(plan.From), train.Limits(plan.To), train.Limits(plan.From, plan.To));
        capacities = new double[between?.Clutches.Length ?? 0];
    }

    /// <summary>Whether every charted clutch holds and every other one has let go, in the last sample.</summary>
    public bool IsDone()
    {
        var last = record.Seconds.Count - 1;
        return sides.TrueForAll(side => after.Contains(side.Clutch.Name)
            ? side.Record.Stroke[last] >= Touching && side.Capacity(last) >= side.After
            : side.Record.Clamp[last] == 0) && HeldAfter(last) >= 1;
    }

    /// <summary>Judges the whole run.</summary>
    /// <param name="limits">When a shift is no longer good.</param>
    /// <param name="lost">What was lost of the oil that was pumped.</param>
    public TimedShiftReport Judge(ShiftLimits limits, double lost)
    {
        var clutches = sides.OrderBy(side => side.Role).Where(side => side.Role != ClutchRole.Uncharted || Peak(side) > 0).ToList();
        var report = new TimedShiftReport(plan, torque, ShiftVerdict.Good)
        {
            Clutches = [.. clutches.Select(ClutchOf)],
            EndMs = 1e3 * record.Seconds[^1],
            Lost = lost,
            Samples = [.. Enumerable.Range(0, record.Seconds.Count).Select(i => new ShiftSample(
                1e3 * record.Seconds[i], record.Line[i] * KiloPascal,
                [.. clutches.Select(side => (side.Record.Pressure[i] * KiloPascal, side.Record.Stroke[i], side.Capacity(i)))]))],
            FlareMs = plan.Kind is ShiftKind.Upshift or ShiftKind.Downshift ? curve.LongestAbove(Shortfall, Short) : 0,
            TieUpMs = plan.Kind == ShiftKind.Release ? 0 : curve.LongestAbove(Opposition, Opposed),
        };
        var charted = report.Clutches.Where(clutch => after.Contains(clutch.Clutch)).ToList();
        if (charted.Exists(clutch => clutch.NeedAfter > 0)) charted.RemoveAll(clutch => clutch.NeedAfter == 0);
        var leaving = report.Clutches.Where(clutch => clutch.Role == ClutchRole.OffGoing).ToList();
        report = report with
        {
            HoldsMs = charted.Count > 0 && charted.TrueForAll(clutch => clutch.HoldsMs is not null) && HoldsFrom() is { } holds
                ? Math.Max(holds, charted.Max(clutch => clutch.HoldsMs!.Value)) : null,
            LetsGoMs = leaving.Where(clutch => clutch.NeedBefore > 0).Min(clutch => clutch.LetsGoMs),
        };
        return Weigh(report, limits);
    }

    /// <summary>Looks whether an otherwise good shift is harsh: by the file's limit, else beside the same shift of the matched set.</summary>
    /// <param name="here">The shift.</param>
    /// <param name="beside">The shift that it is held against, or null.</param>
    /// <param name="limits">When a shift is no longer good.</param>
    public static TimedShiftReport Feel(TimedShiftReport here, TimedShiftReport? beside, ShiftLimits limits)
    {
        if (here.Verdict != ShiftVerdict.Good) return here;
        var sudden = new List<Phrase>();
        foreach (var clutch in here.Clutches.Where(clutch => clutch is { Role: ClutchRole.OnComing, NeedAfter: > 0, RiseMs: not null }))
        {
            var usual = beside?.Clutches.FirstOrDefault(other => other.Clutch == clutch.Clutch)?.RiseMs;
            if (!(clutch.RiseMs < (limits.Harsh ?? Sudden * usual))) continue;
            var instead = limits.Harsh is null ? Phrase.Of($", {new Duration(usual!.Value)} with the matched set") : null;
            sudden.Add(Phrase.Of($"{clutch.Clutch} takes its torque within {new Duration(clutch.RiseMs!.Value)}{instead}"));
        }

        return sudden.Count == 0 ? here : here with { Verdict = ShiftVerdict.Harsh, Reason = Phrase.Join("; ", sudden) };
    }

    private TimedShiftReport Weigh(TimedShiftReport report, ShiftLimits limits)
    {
        var flare = plan.Kind == ShiftKind.Downshift ? limits.Rise : limits.Flare;
        var weak = report.Clutches.Where(clutch => after.Contains(clutch.Clutch) && clutch.HoldsMs is null).ToList();
        var stays = report.Clutches.Where(clutch => clutch.Role is ClutchRole.OffGoing or ClutchRole.Uncharted && clutch.ReleasedMs is null).ToList();
        if (plan.Kind == ShiftKind.Release)
        {
            if (stays.Count > 0) return Is(ShiftVerdict.TieUp, Stays());
            var gone = report.Clutches.Max(clutch => clutch.ReleasedMs) ?? 0;
            return gone > limits.Delayed ? Is(ShiftVerdict.Delayed, Phrase.Of($"{new Duration(gone)} until nothing drags")) : report;
        }

        if (after.FirstOrDefault(name => sides.TrueForAll(side => side.Clutch.Name != name)) is { } absent)
            return Is(ShiftVerdict.NeverHolds, Phrase.Of($"{absent} has no chamber in this assembly"));
        if (weak.Count > 0)
        {
            return Is(ShiftVerdict.NeverHolds, Phrase.Join("; ", weak.Select(clutch => clutch.FillMs is null && clutch.Role == ClutchRole.OnComing
                ? Phrase.Of($"{clutch.Clutch} is not filled within {new Duration(report.EndMs)}")
                : Phrase.Of($"{clutch.Clutch} can carry {new Torque(clutch.CapacityAfter):bare} of {new Torque(clutch.NeedAfter)}")).Concat(stays.Count > 0 ? [Stays()] : [])));
        }

        if (report.HoldsMs is null && train.Ratio(plan.To) is not null)
            return Is(ShiftVerdict.NeverHolds, Phrase.Of($"its clutches together hold {new Torque(torque * HeldAfter(record.Seconds.Count - 1)):bare} of {new Torque(torque)} at the input"));
        if (stays.Count > 0) return Is(ShiftVerdict.TieUp, Stays());
        if (report.TieUpMs > limits.TieUp) return Is(ShiftVerdict.TieUp, Phrase.Of($"for {new Duration(report.TieUpMs)} clutches work against each other"));
        if (report.FlareMs > flare)
            return Is(ShiftVerdict.Flare, Phrase.Of($"for {new Duration(report.FlareMs)} less than {new Share(1 - Short)} of the torque is held"));
        if (report.HoldsMs > limits.Delayed) return Is(ShiftVerdict.Delayed, Phrase.Of($"{new Duration(report.HoldsMs!.Value)} until the gear holds"));
        return report;

        Phrase Stays() => stays.Count == 1 ? Phrase.Of($"{stays[0].Clutch} does not let go within {new Duration(report.EndMs)}") : Phrase.Of($"{Names(stays)} do not let go within {new Duration(report.EndMs)}");

        TimedShiftReport Is(ShiftVerdict verdict, Phrase why) => report with { Verdict = verdict, Reason = why };
    }

    private static Phrase Names(IEnumerable<ShiftClutch> clutches) => Phrase.Join(" and ", clutches.Select(clutch => Phrase.Of($"{clutch.Clutch}")));

    private ShiftClutch ClutchOf(Side side)
    {
        var wasOn = side.Record.Stroke[0] >= Touching;
        var last = record.Seconds.Count - 1;
        var clutch = new ShiftClutch(side.Clutch.Name, side.Role)
        {
            NeedBefore = side.Before,
            NeedAfter = side.After,
            CapacityAfter = side.Capacity(last),
            Peak = Peak(side),
            FillMs = wasOn ? null : curve.Reaches(i => side.Record.Stroke[i], Touching),
        };
        if (side.Role is ClutchRole.OnComing or ClutchRole.Holding)
        {
            var filled = curve.StaysAtOrAbove(i => side.Record.Stroke[i], Touching);
            return clutch with { HoldsMs = side.After > 0 ? curve.StaysAtOrAbove(side.Capacity, side.After) : filled };
        }

        return clutch with
        {
            LetsGoMs = side.Before > 0 ? curve.Reaches(i => side.Before - side.Capacity(i), Nothing * side.Before) : null,
            ReleasedMs = curve.StaysAtOrBelow(i => side.Record.Clamp[i], 0),
            EmptyMs = curve.StaysAtOrBelow(i => side.Record.Stroke[i], Empty),
        };
    }

    private double? HoldsFrom() => curve.StaysAtOrAbove(HeldAfter, 1);

    private double Peak(Side side) => Enumerable.Range(0, record.Seconds.Count).Max(side.Capacity);

    /// <summary>Torque that charted clutches hold in a sample, as a fraction of what is at the input; without a gear train all of it.</summary>
    private double Held(TorqueLimits? limits, HashSet<string> chart, int sample)
    {
        if (limits is null) return 1;
        foreach (var side in sides)
        {
            var k = limits.Clutches.IndexOf(side.Clutch.Name);
            if (k >= 0) capacities[k] = chart.Contains(side.Clutch.Name) ? side.Capacity(sample) : 0;
        }

        // Where nothing can give way, any number will do that is more than enough.
        return Math.Min(limits.Held(capacities) / torque, Plenty);
    }

    private double HeldAfter(int sample) => Held(entered, after, sample);

    /// <summary>What is missing of the torque, as a fraction of it: in an upshift both gears' clutches help one another.</summary>
    private double Shortfall(int sample) => 1 - (plan.Kind == ShiftKind.Upshift
        ? Held(between, either, sample)
        : Math.Max(Held(left, before, sample), HeldAfter(sample)));

    /// <summary>
    /// What works against the torque, as a fraction of it: clutches that lock the gear that is entered, as far as that holds already.
    /// In an upshift what it holds up to the torque itself is the handing over; once it holds that, both lock the gear train, and all that the others hold is against it.
    /// </summary>
    private double Opposition(int sample)
    {
        var against = 0.0;
        foreach (var side in sides)
        {
            if (!after.Contains(side.Clutch.Name) && train.TiesUp(plan.To, side.Clutch.Name))
                against = Math.Max(against, side.Capacity(sample) / (side.Before > 0 ? side.Before : torque));
        }

        if (against == 0) return 0;
        var held = HeldAfter(sample);
        return Math.Min(against, plan.Kind == ShiftKind.Upshift && held < 1 ? 0 : held);
    }

    private sealed record Side(ClutchRecord Record, Clutch Clutch, ClutchRole Role, double Before, double After)
    {
        private readonly ClutchSizes sizes = new(Clutch);

        /// <summary>Torque capacity in a sample, N m.</summary>
        public double Capacity(int sample) => ClutchTorque.Capacity(Record.Clamp[sample], sizes.Friction, sizes.Plates, sizes.Radius / 1e3);
    }
}
