using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Shifts;
using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Studies.Shifts;

public sealed class ShiftStudyTests
{
    private static readonly Unit Swap = CircuitReader.ReadFile(Path.Combine(Repository.Root, "tests/Circuits.Tests/Cli/units/swap.yaml")).Unit!;

    /// <summary>
    /// A clutch filled through a hole from a pressure that does not give way: t = (2 A^2 / (K k)) (sqrt(ps - p1) - sqrt(ps - p2)) with
    /// p = k (x0 + x) / A from the piston's balance (CHECKS: clutch piston stroke against spring), K = Cd a sqrt(2 / rho). Thin oil: Cd as of a sharp hole.
    /// </summary>
    [Fact]
    public void A_clutch_touches_when_the_closed_form_says()
    {
        var unit = CircuitCase.Of(
            "fluid: {grade: ISO VG 2, temperature: 100 degC, viscosities: [[40 degC, 2.2 mm2/s], [100 degC, 1 mm2/s]], density: 860 kg/m3}\n"
            + "parts:\n  body:\n    kind: casting\n    passages: {source: {}, chamber: {volume: 0.1 mL}}\n    restrictions: [{between: [source, chamber], hole: 2 mm}]\n"
            + "clutches: {c: {at: body.chamber, area: 6000 mm2, return-spring: 300 N, rate: 60 N/mm, stroke: 3 mm, plates: 6, friction: 0.1, radius: 50 mm}}\n"
            + "gears:\n  \"N\": {signals: {body.source: 0 kPa}, apply: []}\n  1: {signals: {body.source: 800 kPa}, apply: [c]}\n");
        var density = unit.Unit.Fluid!.Density!.Value.KilogramsPerCubicMetre / (1 + (0.0007 * 85));
        var perRoot = 0.611 * Math.PI / 4 * 4e-6 * Math.Sqrt(2 / density);
        double At(double share) => (300 + (60e3 * share * 3e-3)) / 6e-3;
        var expected = 1e3 * 2 * 6e-3 * 6e-3 / (perRoot * 60e3) * (Math.Sqrt(8e5 - At(0)) - Math.Sqrt(8e5 - At(ShiftJudge.Touching)));
        var clutch = Assert.Single(Assert.Single(Run(unit.Assembly(), tolerance: 1e-4)).Clutches);
        Assert.Equal(expected, clutch.FillMs!.Value, 0.02 * expected);

        // Capacity at the end: all of the pressure less the spring at the end of the stroke, T = z mu W r.
        Assert.Equal(6 * 0.1 * ((8e5 * 6e-3) - 300 - 180) * 0.05, clutch.CapacityAfter, 0.5);
    }

    /// <summary>What the piston does not sweep fills first, against no pressure: V / (K sqrt(ps)), K = Cd a sqrt(2 / rho).</summary>
    [Fact]
    public void What_a_piston_does_not_sweep_fills_too()
    {
        double Fill(string fill) => Assert.Single(Assert.Single(Run(CircuitCase.Of(
            "fluid: {grade: ISO VG 2, temperature: 100 degC, viscosities: [[40 degC, 2.2 mm2/s], [100 degC, 1 mm2/s]], density: 860 kg/m3}\n"
            + "parts:\n  body:\n    kind: casting\n    passages: {source: {}, chamber: {volume: 0.1 mL}}\n    restrictions: [{between: [source, chamber], hole: 2 mm}]\n"
            + "clutches: {c: {at: body.chamber, area: 6000 mm2, return-spring: 300 N, rate: 60 N/mm, stroke: 3 mm, fill: " + fill + ", plates: 6, friction: 0.1, radius: 50 mm}}\n"
            + "gears:\n  \"N\": {signals: {body.source: 0 kPa}, apply: []}\n  1: {signals: {body.source: 800 kPa}, apply: [c]}\n").Assembly(), tolerance: 1e-4)).Clutches).FillMs!.Value;
        var perRoot = 0.611 * Math.PI / 4 * 4e-6 * Math.Sqrt(2 / (860 / (1 + (0.0007 * 85))));
        var expected = 1e3 * 10e-6 / (perRoot * Math.Sqrt(8e5));
        Assert.Equal(expected, Fill("28 mL") - Fill("18 mL"), 0.01 * expected);
    }

    [Fact]
    public void Less_fill_than_the_piston_sweeps_is_a_contradiction()
    {
        var clutch = Swap.Clutches[0];
        List<Finding> With(double millilitres) => [.. Circuits.Networks.NetworkBuilder.Build(
            Default(Swap with { Clutches = Swap.Clutches.Replace(clutch, clutch with { Fill = new(millilitres) }) })).Findings.Where(finding => finding.Rule == "fill-contradicted")];
        Assert.Equal("clutch low takes 14 mL to fill, while its 8000 mm2 over 2 mm sweep 16 mL", Assert.Single(With(14)).Words());
        Assert.Empty(With(15.9));
        Assert.Empty(With(20));
    }

    /// <summary>The on-coming clutch has a tenth more than it needs; while the other holds on, the unit stays in the old gear.</summary>
    [Fact]
    public void A_clutch_that_never_lets_go_is_a_tie_up_up_and_down()
    {
        var carried = Assert.Single(Run(Default(Swap), "1-2")).Clutches[0];
        var torque = carried.CapacityAfter / (carried.NeedAfter / 100) / 1.1;
        var shift = Swap.Shifts[0];
        var held = shift with { Commands = [.. shift.Commands.Select(command => command with { Points = [.. command.Points.Select(point => point with { Pressure = new(800) })] })] };
        var up = Assert.Single(Run(Default(Swap with { Shifts = [held] }), "1-2", torque));
        Assert.Equal((ShiftVerdict.TieUp, true), (up.Verdict, up.Reason.Words().StartsWith("low does not let go", StringComparison.Ordinal)));
        var down = Assert.Single(Run(Default(Swap with { Shifts = [held with { From = held.To, To = held.From }] }), "2-1"));
        Assert.Equal((ShiftVerdict.TieUp, true), (down.Verdict, down.Reason.Words().StartsWith("high does not let go", StringComparison.Ordinal)));
    }

    [Fact]
    public void Which_shifts_a_unit_makes()
    {
        Assert.Equal(["N-1", "1-2", "2-1"], ShiftPlans.Of(Swap).Select(plan => plan.Name));
        Assert.Equal(
            ["N-R", "N-1", "1-2", "2-3", "3-4", "4-5", "5-6", "6-5", "5-4", "4-3", "3-2", "2-1"], ShiftPlans.Of(Demo("firth")).Select(plan => plan.Name));
        Assert.Equal(
            [ShiftKind.Engagement, ShiftKind.Engagement, ShiftKind.Upshift, ShiftKind.Upshift, ShiftKind.Upshift],
            ShiftPlans.Of(Demo("weir")).Take(5).Select(plan => plan.Kind));
        Assert.Equal(ShiftKind.Release, ShiftPlans.Between(Swap, Swap.FindGear("2")!, Swap.FindGear("N")!).Kind);
    }

    /// <summary>The clutches' own times, with commands that follow a profile: later off, shorter flare, until it becomes a tie-up.</summary>
    [Fact]
    public void Letting_go_later_turns_a_flare_into_a_tie_up()
    {
        var shifts = new[] { -120, 0, 120 }.Select(later => Assert.Single(Run(Default(WithLow(Swap, later)), "1-2"))).ToList();
        Assert.Equal([ShiftVerdict.Flare, ShiftVerdict.Good, ShiftVerdict.TieUp], shifts.Select(shift => shift.Verdict));
        for (var i = 0; i < 2; i++) Assert.Equal(120, shifts[i + 1].LetsGoMs!.Value - shifts[i].LetsGoMs!.Value, 4.0);
        Assert.Equal(shifts[1].HoldsMs!.Value, shifts[0].HoldsMs!.Value, 2.0);
        Assert.Equal(-shifts[0].GapMs!.Value, shifts[0].LetsGoMs!.Value - shifts[0].HoldsMs!.Value, 1e-9);
        Assert.InRange(shifts[0].FlareMs, 60, shifts[0].GapMs!.Value);
    }

    [Fact]
    public void More_torque_than_a_clutch_can_carry_never_holds()
    {
        var carried = Assert.Single(Run(Default(Swap), "1-2")).Clutches[0];
        var most = carried.CapacityAfter / (carried.NeedAfter / 100);
        Assert.Equal(ShiftVerdict.NeverHolds, Assert.Single(Run(Default(Swap), "1-2", torque: 1.01 * most)).Verdict);
        Assert.NotEqual(ShiftVerdict.NeverHolds, Assert.Single(Run(Default(Swap), "1-2", torque: 0.99 * most)).Verdict);
    }

    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Every_shift_of_every_matched_set_is_good_and_loses_no_oil(string name)
    {
        var unit = Demo(name);
        foreach (var set in unit.Matched)
        {
            Assert.All(Run(Assembly.Of(unit, set)), shift =>
            {
                Assert.True(shift.Verdict == ShiftVerdict.Good, $"{set.Name} {shift.Plan.Name}: {shift.Verdict} {shift.Reason}");
                Assert.InRange(shift.Lost, -1e-6, 1e-6);
                Assert.All(shift.Clutches, clutch => Assert.False(clutch.RiseMs < 0, $"{set.Name} {shift.Plan.Name} {clutch}"));
                Assert.All(shift.Samples.SelectMany(sample => sample.Clutches), clutch => Assert.True(clutch.Capacity == 0 || clutch.Stroke >= 1, $"{clutch}"));
            });
        }
    }

    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void A_tighter_tolerance_comes_to_the_same_times(string name)
    {
        var assembly = Default(Demo(name));
        var (coarse, fine) = (Run(assembly), Run(assembly, tolerance: 1e-4));
        var compared = 0;
        foreach (var (a, b) in coarse.Zip(fine))
        {
            Assert.Equal(b.Verdict, a.Verdict);
            foreach (var (one, other) in a.Clutches.Zip(b.Clutches))
            {
                compared += Near(one.FillMs, other.FillMs) + Near(one.HoldsMs, other.HoldsMs) + Near(one.LetsGoMs, other.LetsGoMs) + Near(one.ReleasedMs, other.ReleasedMs);
            }
        }

        Assert.True(compared > 8, $"{compared}");

        static int Near(double? coarse, double? fine)
        {
            Assert.Equal(fine is null, coarse is null);
            if (fine is not { } exact) return 0;
            Assert.Equal(exact, coarse!.Value, Math.Max(1.5, 0.01 * exact));
            return 1;
        }
    }

    /// <summary>The mix in which direct is metered nowhere: every gear engages, and the timed shift shows that direct lets go faster.</summary>
    [Fact]
    public void A_clutch_that_is_metered_nowhere_shows_beside_the_matched_set()
    {
        var unit = Demo("firth");
        var last = Assembly.Of(unit, unit.Matched.Single(set => set.Name == "last"));
        var plate = unit.Parts.IndexOf(unit.FindPart("lower-plate")!);
        var mix = Assembly.Of(unit, last.Revisions.SetItem(plate, unit.Parts[plate].FindRevision("1")!));
        var report = ShiftStudy.Run(mix, null, ShiftStudy.ConditionsOf(unit), [ShiftPlans.Between(unit, unit.FindGear("3")!, unit.FindGear("2")!)]);
        var pair = Assert.Single(report.Shifts);
        Assert.Equal("last", report.Beside!.Matched);
        var (here, there) = (pair.Here.Clutches.Single(clutch => clutch.Clutch == "direct"), pair.Beside!.Clutches.Single(clutch => clutch.Clutch == "direct"));
        Assert.True(here.LetsGoMs < 0.6 * there.LetsGoMs && here.EmptyMs < 0.6 * (there.EmptyMs ?? pair.Beside.EndMs), $"{here} {there}");
    }

    [Fact]
    public void A_fault_of_a_mix_is_an_error_and_that_of_a_matched_set_a_warning()
    {
        var late = Assembly.Of(Swap, [Swap.Parts[0].Revisions[0], Swap.Parts[1].FindRevision("2")!, Swap.Parts[2].Revisions[0]]);
        var plan = ShiftPlans.Between(Swap, Swap.FindGear("1")!, Swap.FindGear("2")!);
        var mix = Assert.Single(ShiftStudy.Run(late, null, ShiftStudy.ConditionsOf(Swap), [plan]).Findings);
        Assert.Equal(("shift-flare", Severity.Error), (mix.Rule, mix.Severity));
        var early = WithLow(Swap, -120);
        var own = Assert.Single(ShiftStudy.Run(Default(early), null, ShiftStudy.ConditionsOf(early), [ShiftPlans.Of(early)[1]]).Findings);
        Assert.Equal(("shift-flare", Severity.Warning), (own.Rule, own.Severity));
    }

    private static Assembly Default(Unit unit) => Assembly.DefaultOf(unit);

    private static Unit Demo(string name) => CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;

    /// <summary>The unit with the command of the low clutch in 1-2 moved by a time, ms.</summary>
    private static Unit WithLow(Unit unit, double later)
    {
        var shift = unit.Shifts[0];
        var low = shift.Commands[0];
        var points = low.Points.Select((point, i) => i == 0 ? point : point with { Time = new(point.Time.Milliseconds + later) });
        return unit with { Shifts = [shift with { Commands = shift.Commands.SetItem(0, low with { Points = [.. points] }) }] };
    }

    private static List<TimedShiftReport> Run(Assembly assembly, string? shift = null, double? torque = null, double tolerance = ShiftTimer.Tolerance)
    {
        var unit = assembly.Unit;
        var plans = ShiftPlans.Of(unit);
        if (shift is not null) plans = [.. plans.Where(plan => plan.Name == shift)];
        return [.. ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit) with { Torque = torque }, plans, tolerance).Shifts.Select(pair => pair.Here)];
    }
}
