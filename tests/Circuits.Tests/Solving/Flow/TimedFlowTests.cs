using Circuits.Model;
using Circuits.Reading;
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
        var ((few, brief), (many, whole)) = (Run(0.02), Run(0.4));
        Assert.True(many > few + 50, $"{few} and {many} steps");
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
