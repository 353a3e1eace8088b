using System.Diagnostics;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Circuits.Solving.Timing;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

public sealed class TimedLookTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Look(string name)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, name + ".yaml")).Unit!;
        var network = NetworkBuilder.Build(Assembly.Of(unit, unit.Matched[0]));
        var solved = SolvedAssembly.Of(Plan.Of(network));
        var flow = FlowDrafter.Compile(network);
        var balance = new FlowBalance(flow);
        var conditions = new FlowConditions(840, 9e-6, new PumpCurve(15e-6 * 2000 / 60 * 0.85, 2e6));
        var steady = new SteadyAssembly(network);
        foreach (var shift in unit.Shifts)
        {
            var from = solved.Gears.First(gear => gear.Gear.Name == shift.From.Name);
            var to = solved.Gears.First(gear => gear.Gear.Name == shift.To.Name);
            var start = steady.Solve(from.Solution, conditions);
            for (var i = 0; i < flow.Cells; i++) balance.Pressure[i] = start.Pressures[i];
            balance.Set(to.Solution.Inputs, conditions);
            var commands = shift.Commands.Select(profile => new CommandTimes(
                Enumerable.Range(0, network.Regulators.Length).First(i => network.Regulators[i].Solenoid?.Name == profile.Solenoid.Name),
                [.. profile.Points.Select(point => (point.Time.Milliseconds / 1e3, point.Pressure.Kilopascals * 1e3))])).ToList();
            var watch = Stopwatch.StartNew();
            var next = 0.0;
            var lines = new List<string>();
            var run = new TimedFlow(flow, balance).Run(conditions, commands, 1.0, 1e-3, time =>
            {
                if (time < next) return;
                next = time + 0.05;
                lines.Add($"   {time * 1e3,6:0} ms line {balance.Pressure[flow.Pump] / 1e3:0} " + string.Join("  ", flow.Pistons.Select(piston => $"{piston.Name} {balance.Pressure[piston.Apply] / 1e3:0} {piston.At(balance.Pressure).Share:0.00}")));
            });
            output.WriteLine($"{shift.From.Name}-{shift.To.Name} cells {flow.Cells} elements {flow.Elements.Length} fill {balance.System.Filled} {run} {watch.ElapsedMilliseconds} ms");
            foreach (var line in lines) output.WriteLine(line);
        }
    }
}
