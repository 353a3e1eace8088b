using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;
using Circuits.Studies.Pressures;
using Circuits.Tests.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Steady flow and shifts of every demo unit against a circuit simulator (ngspice), which solves the same laws and the same network by
/// its own means: <see cref="SpiceNetlist"/>.
/// </summary>
public class SpiceTests(ITestOutputHelper output)
{
    /// <summary>Share of the stroke at which a clutch counts as filled.</summary>
    private const double Filled = 0.99;

    /// <summary>How long a shift is followed, s.</summary>
    private const double Longest = 1.0;

    private static readonly string Demos = Path.Combine(Repository.Root, "circuits");

    /// <summary>How the simulator is asked for a shift, until it comes to its end: it gives up where its steps grow too small.</summary>
    private static readonly (bool FromRest, string Options)[] Attempts =
    [
        (false, "reltol=1e-4 abstol=1e-6 vntol=1e-4"), (true, "reltol=1e-4 abstol=1e-6 vntol=1e-4"),
        (false, "reltol=1e-3 abstol=1e-5 vntol=1e-3"), (true, "reltol=1e-3 abstol=1e-5 vntol=1e-3"),
    ];

    public static TheoryData<string> Units =>
        [.. Directory.EnumerateDirectories(Demos).SelectMany(folder => Directory.EnumerateFiles(folder, "*.yaml"))
            .Select(file => Path.GetRelativePath(Demos, file)).Order(StringComparer.Ordinal)];

    /// <summary>Pressures within 0.1 % (and 0.02 kPa), and the simulator's pressures balance in the library within a thousandth of what the pump gives.</summary>
    [Theory]
    [MemberData(nameof(Units))]
    public void Every_gear_of_the_first_matched_set_has_the_same_pressures(string file)
    {
        Assert.SkipUnless(SpiceProgram.IsInstalled, SpiceProgram.Absent);
        var unit = CircuitReader.ReadFile(Path.Combine(Demos, file)).Unit!;
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var (compared, settled, faults) = (0, 0, new List<string>());
        foreach (var gear in flow.Gears)
        {
            foreach (var point in PressureStudy.PointsOf(unit))
            {
                var conditions = FlowConditions.Of(unit, point.Celsius, point.RevolutionsPerMinute, []);
                var state = flow.Steady.Solve(gear.Solution, conditions);
                Assert.True(state.Converged, $"{gear.Gear.Name} {point.Name}: {state.Residual} at {state.Worst}");
                var netlist = new SpiceNetlist(flow.Flow, conditions);
                var values = SpiceProgram.Values(SpiceProgram.Run(netlist.Steady(gear.Solution)).Output);
                if (Apart(flow, values).Any())
                {
                    // Its iteration found nothing, or another of several steady states: history decides, so it is asked to follow it.
                    settled++;
                    values = SpiceProgram.Values(SpiceProgram.Run(netlist.Settling(gear.Solution, 2)).Output);
                }

                compared += values.Count;
                faults.AddRange(Apart(flow, values).Concat(SpiceVerdicts.Unbalanced(flow, gear.Solution.Inputs, conditions, values)).Select(fault => $"{gear.Gear.Name} {point.Name}: {fault}"));
            }
        }

        output.WriteLine($"{compared} pressures of {flow.Gears.Count()} gears; {settled} states settled in time");
        Assert.True(faults.Count == 0, $"{faults.Count} of {compared} apart\n{string.Join('\n', faults.Take(20))}");
    }

    /// <summary>What verdicts rest on, of mixes with a fault. <c>spice-verdicts</c> among the benchmarks holds 200 of them.</summary>
    [Fact]
    public void Mixes_with_faults_are_judged_by_the_same_pressures()
    {
        Assert.SkipUnless(SpiceProgram.IsInstalled, SpiceProgram.Absent);
        var judged = new SpiceVerdicts(["rill", "weir"]);
        for (var i = 0; i < 24; i++) judged.Compare(i);
        output.WriteLine(judged.Summary);
        Assert.True(judged.Bad > 1, $"only {judged.Bad} gears are not as charted");
        Assert.True(judged.Apart.Count == 0, $"{judged.Apart.Count} of {judged.Compared} apart\n{string.Join('\n', judged.Apart.Take(20))}");
    }

    [Theory]
    [InlineData("rill", "1", "2")]
    [InlineData("weir", "1", "2")]
    [InlineData("weir", "2", "3")]
    [InlineData("firth", "5", "6")]
    public void A_clutch_that_comes_on_fills_in_the_same_time(string name, string from, string to)
    {
        Assert.SkipUnless(SpiceProgram.IsInstalled, SpiceProgram.Absent);
        var unit = CircuitReader.ReadFile(Path.Combine(Demos, name, $"{name}.yaml")).Unit!;

        // A vessel that a kilopascal fills is more of a corner than the simulator's steps find round; what it takes is held by hand elsewhere.
        unit = unit with { Clutches = [.. unit.Clutches.Select(clutch => clutch.Swept is null ? clutch : clutch with { Fill = null })] };
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var point = PressureStudy.PointsOf(unit)[^1];
        var conditions = FlowConditions.Of(unit, point.Celsius, point.RevolutionsPerMinute, []);
        var filled = Fill(flow, conditions, from, to, 1e-4);
        var coming = Enumerable.Range(0, filled.Length).Where(i => filled[i] > 0).ToArray();
        Assert.NotEmpty(coming);
        var netlist = new SpiceNetlist(flow.Flow, conditions);
        var (text, files) = ("", new Dictionary<string, string>());
        foreach (var (fromRest, options) in Attempts)
        {
            (text, files) = SpiceProgram.Run(netlist.Shift(flow.Static(from), flow.Static(to).Inputs, 1, Longest, 1e-3, coming, options, fromRest));
            if (files.ContainsKey("pistons.data") && !text.Contains("aborted", StringComparison.Ordinal)) break;
        }

        Assert.True(files.ContainsKey("pistons.data"), text);
        var samples = SpiceNetlist.Samples(files["pistons.data"], coming.Length);
        foreach (var (column, piston) in coming.Index())
        {
            var theirs = SpiceNetlist.Crossing(samples.Select(sample => (sample[0] - 1, sample[column + 1])), Filled);
            output.WriteLine($"{flow.Flow.Pistons[piston].Name}: {1e3 * filled[piston]:0.000} ms, simulator {1e3 * theirs:0.000} ms");
            Assert.Equal(theirs, filled[piston], 0.01 * theirs);
        }
    }

    /// <summary>When each piston that starts off its end comes to it, s; not a number for those that do not.</summary>
    private static double[] Fill(FlowCase flow, FlowConditions conditions, string from, string to, double tolerance)
    {
        var start = flow.Solve(conditions, from);
        Assert.True(start.Converged);
        start.Pressures.CopyTo(flow.Balance.Pressure);
        flow.Balance.Set(flow.Static(to).Inputs, conditions);
        var samples = flow.Flow.Pistons.Select(_ => new List<(double, double)>()).ToArray();
        var run = new TimedFlow(flow.Flow, flow.Balance).Run(conditions, [], Longest, tolerance, time =>
        {
            for (var i = 0; i < samples.Length; i++) samples[i].Add((time, flow.Flow.Pistons[i].At(flow.Balance.Pressure, 0).Share));
        });
        Assert.True(run.Finished, $"{run}");
        return [.. samples.Select(sample => SpiceNetlist.Crossing(sample, Filled))];
    }

    private static IEnumerable<string> Apart(FlowCase flow, Dictionary<string, double> values)
    {
        for (var cell = 1; cell < flow.Flow.Cells; cell++)
        {
            var mine = flow.Steady.Balance.Pressure[cell] / 1e3;
            if (!values.TryGetValue($"v(c{cell})", out var theirs)) yield return $"{flow.Flow.Names[cell]}: {mine} kPa, the simulator has none";
            else if (!(Math.Abs(mine - theirs) <= (1e-3 * Math.Abs(theirs)) + 0.02)) yield return $"{flow.Flow.Names[cell]}: {mine} kPa, simulator {theirs}";
        }
    }
}
