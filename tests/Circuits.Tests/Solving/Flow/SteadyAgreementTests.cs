using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Solving;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

public sealed class SteadyAgreementTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Look(string name)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, name + ".yaml")).Unit!;
        foreach (var set in unit.Matched)
        {
            var network = NetworkBuilder.Build(Assembly.Of(unit, set));
            var solved = SolvedAssembly.Of(Plan.Of(network));
            var steady = new SteadyAssembly(network);
            foreach (var gear in solved.Gears)
            {
                var conditions = new FlowConditions(840, 9e-6, new PumpCurve(15e-6 * 2000 / 60 * 0.85, 2e6));
                var state = steady.Solve(gear.Solution, conditions);
                output.WriteLine($"{set.Name} {gear.Gear.Name} {state.Converged} {state.Residual:E1} {state.Worst} steps {state.Steps} line {state.PressureAt(network.Pump) / 1e3:0.0} static {gear.Solution.Line:0.0}");
                foreach (var clutch in network.Clutches)
                {
                    var (a, b) = (state.PressureAt(clutch.Chamber) / 1e3, gear.Solution.PressureAt(clutch.Chamber));
                    if (Math.Abs(a - b) > 0.03 * Math.Max(100, b)) output.WriteLine($"    {clutch.Clutch.Name} {a:0.0} static {b:0.0}");
                }
            }
        }
    }
}
