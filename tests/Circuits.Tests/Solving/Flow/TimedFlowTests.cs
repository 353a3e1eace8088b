using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>Filling and draining in time against closed forms, which stand in each test.</summary>
public sealed class TimedFlowTests
{
    private static readonly double PerRoot = 0.611 * Math.PI / 4 * 1e-6 * Math.Sqrt(2 / 850.0);

    private const string Clutch = "clutches: {c: {at: body.chamber, area: 6000 mm2, return-spring: 300 N, rate: 60 N/mm, stroke: 3 mm}}";

    /// <summary>t = (2 A^2 / (K k)) (sqrt(ps - p1) - sqrt(ps - p2)), p = k (x0 + x) / A: a piston on a spring, filled through a hole.</summary>
    [Fact]
    public void A_piston_strokes_as_fast_as_its_hole_lets_it()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source chamber", "restrictions: [{between: [source, chamber], hole: 1 mm}]", "signals: {body.source: 800 kPa}", Clutch).Assembly());
        var (begin, end) = Crossings(flow, 0.2, 0.8, 1.5, 1e-5, rising: true, ("chamber", 0));
        double At(double share) => (300 + (60e3 * share * 3e-3)) / 6e-3;
        var expected = 2 * 6e-3 * 6e-3 / (PerRoot * 60e3) * (Math.Sqrt(8e5 - At(0.2)) - Math.Sqrt(8e5 - At(0.8)));
        Assert.Equal(expected, end - begin, 0.001 * expected);
    }

    /// <summary>t = (2 A^1.5 / (K sqrt k)) (sqrt(x0 + x1) - sqrt(x0 + x2)): the same piston, drained by its spring.</summary>
    [Fact]
    public void A_spring_empties_a_clutch_as_fast_as_its_hole_lets_it()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source chamber", "restrictions: [{between: [chamber, exhaust], hole: 1 mm}]", "", Clutch).Assembly());
        var (begin, end) = Crossings(flow, 0.8, 0.2, 2.5, 1e-5, rising: false, ("chamber", 800));
        var expected = 2 * Math.Pow(6e-3, 1.5) / (PerRoot * Math.Sqrt(60e3)) * (Math.Sqrt(5e-3 + 2.4e-3) - Math.Sqrt(5e-3 + 0.6e-3));
        Assert.Equal(expected, end - begin, 0.001 * expected);
    }

    /// <summary>sqrt(ps - p) = sqrt(ps - p0) - B K t / (2 V): a stiff vessel. At half of the time to fill, p = 0.75 ps.</summary>
    [Fact]
    public void A_stiff_vessel_fills_by_the_oil_that_gives_way()
    {
        var flow = Vessel();
        var full = 2 * 1e-4 * Math.Sqrt(1e6) / (FlowCase.Thin.Bulk * PerRoot);
        flow.Run(FlowCase.Thin, full / 2, 1e-6, _ => { });
        Assert.Equal(0.75e6, flow.Balance.Pressure[flow.Cell("vessel")], 0.002 * 1e6);
    }

    /// <summary>The method is of second order: half the step, a quarter of the error.</summary>
    [Fact]
    public void The_error_falls_with_the_square_of_the_step()
    {
        var flow = Vessel();
        var full = 2 * 1e-4 * Math.Sqrt(1e6) / (FlowCase.Thin.Bulk * PerRoot);
        var (coarse, fine) = (ErrorAt(0.03), ErrorAt(0.0003));
        var order = Math.Log(coarse.Error / fine.Error) / Math.Log((double)fine.Steps / coarse.Steps);
        Assert.True(order > 1.6, $"order {order}: {coarse}, {fine}");

        (double Error, int Steps) ErrorAt(double tolerance)
        {
            var run = flow.Run(FlowCase.Thin, full / 2, tolerance, _ => { });
            return (Math.Abs(flow.Balance.Pressure[flow.Cell("vessel")] - 0.75e6), run.Steps);
        }
    }

    /// <summary>A step ends where plates touch, so that even coarse steps see no force before contact, and see contact when the closed form above has it.</summary>
    [Fact]
    public void Plates_touch_at_contact_and_take_no_force_before()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source chamber", "restrictions: [{between: [source, chamber], hole: 1 mm}]", "signals: {body.source: 800 kPa}", Clutch).Assembly());
        Array.Clear(flow.Balance.Pressure);
        flow.Balance.Set(flow.Static("G").Inputs, FlowCase.Thin);
        var timed = new TimedFlow(flow.Flow, flow.Balance);
        var (leaves, touches, steps) = (double.NaN, double.NaN, 0);
        timed.Run(FlowCase.Thin, [], 1.5, 0.1, time =>
        {
            steps++;
            var (share, clamp) = (timed.Pistons.ShareOf(0, flow.Balance.Pressure), timed.Pistons.ClampOf(0, flow.Balance.Pressure));
            if (share < 1) Assert.Equal(0, clamp);
            if (double.IsNaN(leaves) && share > 0) leaves = time;
            if (double.IsNaN(touches) && share >= 1) touches = time;
            if (share < 1) Assert.True(double.IsNaN(touches), "it went back");
        });
        var expected = 2 * 6e-3 * 6e-3 / (PerRoot * 60e3) * (Math.Sqrt(8e5 - 5e4) - Math.Sqrt(8e5 - 8e4));
        Assert.Equal(expected, touches, 0.002 * expected);
        Assert.True(steps < 300, $"{steps}");
    }

    /// <summary>
    /// Oil cannot pull: a release side that is shut in while a strong spring takes the piston back opens a void just below -100 kPa, which the piston's balance
    /// then closes again with what it holds: A p(apply) - A p(release) = preload + k x.
    /// </summary>
    [Fact]
    public void Oil_that_is_shut_in_pulls_no_harder_than_the_air_presses()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "chamber behind", "restrictions: [{between: [chamber, exhaust], hole: 3 mm}]", "",
            "clutches: {c: {at: body.chamber, area: 6000 mm2, release: body.behind, release-area: 6000 mm2, return-spring: 4000 N, rate: 60 N/mm, stroke: 3 mm}}").Assembly());
        var (least, share) = (0.0, 1.0);
        var run = flow.Run(FlowCase.Thin, 1, 1e-3, _ =>
        {
            least = Math.Min(least, flow.Balance.Pressure[flow.Cell("behind")]);
            share = flow.Flow.Pistons[0].At(flow.Balance.Pressure, 0).Share;
        }, start: ("chamber", 900));
        Assert.True(run.Finished, $"{run}");
        Assert.InRange(least, -103e3, -100e3);
        Assert.Equal(0, share);
        Assert.InRange(run.Lost * run.Pumped, -1e-12, 1e-12);
    }

    [Theory]
    [InlineData("rill", "1", "2")]
    [InlineData("weir", "1", "2")]
    [InlineData("weir", "2", "3")]
    [InlineData("firth", "5", "6")]
    public void No_oil_is_lost_and_a_tighter_tolerance_comes_to_the_same_times(string name, string from, string to)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var times = new List<double[]>();
        foreach (var tolerance in new[] { 1e-3, 1e-4 })
        {
            var start = flow.Solve(FlowCase.Pumped, from);
            start.Pressures.CopyTo(flow.Balance.Pressure);
            flow.Balance.Set(flow.Static(to).Inputs, FlowCase.Pumped);
            var filled = flow.Flow.Pistons.Select(_ => double.NaN).ToArray();
            var run = new TimedFlow(flow.Flow, flow.Balance).Run(FlowCase.Pumped, [], 1.5, tolerance, time =>
            {
                for (var i = 0; i < filled.Length; i++)
                {
                    if (double.IsNaN(filled[i]) && flow.Flow.Pistons[i].At(flow.Balance.Pressure, 0).Share > 0.99) filled[i] = time;
                }
            });
            Assert.True(run.Finished, $"{run}");
            Assert.InRange(run.Lost, -1e-6, 1e-6);
            times.Add(filled);
        }

        Assert.Contains(times[1], time => time > 0);
        for (var i = 0; i < times[0].Length; i++)
        {
            if (times[1][i] > 0) Assert.Equal(times[1][i], times[0][i], 0.02 * times[1][i]);
        }
    }

    /// <summary>What a run takes at its start is all that it takes, however many steps follow.</summary>
    [Fact]
    public void Steps_allocate_nothing()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml")).Unit!;
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var start = flow.Solve(FlowCase.Pumped, "5");
        var timed = new TimedFlow(flow.Flow, flow.Balance);
        var inputs = flow.Static("6").Inputs;
        Run(0.1);
        var ((few, brief), (many, whole)) = (Run(0.002), Run(0.4));
        Assert.True(many > few + 25, $"{few} and {many} steps");
        Assert.Equal(brief, whole);

        (int Steps, long Bytes) Run(double seconds)
        {
            start.Pressures.CopyTo(flow.Balance.Pressure);
            flow.Balance.Set(inputs, FlowCase.Pumped);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var run = timed.Run(FlowCase.Pumped, [], seconds, 1e-3, Nothing);
            return (run.Steps, GC.GetAllocatedBytesForCurrentThread() - before);
        }
    }

    private static readonly Action<double> Nothing = _ => { };

    /// <summary>A run is bounded by a count, and says where it was when that was used up.</summary>
    [Fact]
    public void A_run_that_takes_too_many_steps_ends_and_names_the_passage()
    {
        var flow = new FlowCase(CircuitCase.Body(
            "source chamber", "restrictions: [{between: [source, chamber], hole: 1 mm}]", "signals: {body.source: 800 kPa}", Clutch).Assembly());
        var run = flow.Run(FlowCase.Thin, 1.5, 1e-20, _ => { });
        Assert.False(run.Finished);
        Assert.Equal(TimedFlow.MostSteps, run.Steps + run.Rejected);
        Assert.Equal(flow.Cell("chamber"), run.WorstCell);
        Assert.InRange(run.Seconds, 1e-5, 0.9);
    }

    /// <summary>The bound lies far above what a shift takes that comes to its end.</summary>
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Shifts_of_the_demo_units_take_a_tenth_of_the_steps_allowed(string name)
    {
        var read = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var solved = SolvedAssembly.Of(Assembly.DefaultOf(read));
        var most = 0;
        var conditions = FlowConditions.Of(read, 90, FlowDefaults.RoadSpeed, []);
        foreach (var (from, to) in solved.Gears.Zip(solved.Gears.Skip(1)))
        {
            var run = new TimedAssembly(solved.Network).Run(from.Solution, to.Solution.Inputs, conditions, [], ShiftTimer.Longest, ShiftTimer.Tolerance, _ => false).Outcome!.Value;
            Assert.True(run.Finished);
            most = Math.Max(most, run.Steps + run.Rejected);
        }

        Assert.InRange(most, 1, TimedFlow.MostSteps / 10);
    }

    private static FlowCase Vessel() => new(CircuitCase.Of(
        "parts:\n  body:\n    kind: casting\n    passages: {source: {}, vessel: {volume: 100 mL}}\n"
        + "    restrictions: [{between: [source, vessel], hole: 1 mm}]\n"
        + "gears:\n  G: {signals: {body.source: 1000 kPa}, apply: []}\n").Assembly());

    /// <summary>The times at which the clutch's stroke passes two shares; between steps straight.</summary>
    private static (double Begin, double End) Crossings(
        FlowCase flow, double first, double second, double seconds, double tolerance, bool rising, params (string, double)[] start)
    {
        var (begin, end, last, lastTime) = (double.NaN, double.NaN, double.NaN, 0.0);
        var run = flow.Run(FlowCase.Thin, seconds, tolerance, time =>
        {
            var share = flow.Flow.Pistons[0].At(flow.Balance.Pressure, 0).Share;
            begin = Passed(begin, first);
            end = Passed(end, second);
            (last, lastTime) = (share, time);

            double Passed(double known, double level)
            {
                if (!double.IsNaN(known) || double.IsNaN(last) || (rising ? share < level : share > level)) return known;
                return lastTime + ((time - lastTime) * (level - last) / (share - last));
            }
        }, start: start);
        Assert.True(run.Finished, $"{run}");
        return (begin, end);
    }
}
