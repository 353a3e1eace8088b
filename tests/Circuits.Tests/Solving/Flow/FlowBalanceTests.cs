using Circuits.Model;
using Circuits.Reading;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>The balance of flows: its slopes, and that nothing is lost in it.</summary>
public sealed class FlowBalanceTests
{
    [Theory]
    [InlineData("rill")]
    [InlineData("weir")]
    [InlineData("firth")]
    public void Its_slopes_are_those_that_small_steps_show(string name)
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var balance = flow.Balance;
        var dice = new Random(3);
        foreach (var gear in flow.Gears)
        {
            balance.Set(gear.Solution.Inputs, FlowCase.Pumped);
            for (var cell = 1; cell < flow.Flow.Cells; cell++)
            {
                if (!balance.IsPinned(cell)) balance.Pressure[cell] = 1e6 * dice.NextDouble();
            }

            // A two-way ball turns over within a kilopascal, which chance would never meet.
            foreach (var ball in flow.Flow.Balls.OfType<FlowBall>().Where(ball => ball.Beyond.All(cell => !balance.IsPinned(cell))))
                balance.Pressure[ball.Beyond[1]] = balance.Pressure[ball.Beyond[0]] + 300;
            var at = balance.Pressure.ToArray();
            var along = at.Select((_, cell) => balance.IsPinned(cell) ? 0 : dice.NextDouble() - 0.5).ToArray();
            balance.Evaluate(withSlopes: true);
            var slopes = Times(flow, along);
            var ahead = Net(0.1);
            var behind = Net(-0.1);
            for (var cell = 1; cell < at.Length; cell++)
            {
                if (balance.IsPinned(cell)) continue;
                var measured = (ahead[cell] - behind[cell]) / 0.2;
                Assert.True(
                    Math.Abs(measured - slopes[cell]) <= 1e-5 * (Math.Abs(measured) + 1e-8), $"{flow.Flow.Names[cell]} in {gear.Gear.Name}: {measured} {slopes[cell]}");
            }

            double[] Net(double step)
            {
                for (var cell = 1; cell < at.Length; cell++) balance.Pressure[cell] = at[cell] + (step * along[cell]);
                balance.Evaluate(withSlopes: false);
                return [.. balance.Net];
            }
        }
    }

    [Fact]
    public void What_comes_in_goes_out()
    {
        var unit = CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", "firth", "firth.yaml")).Unit!;
        var flow = new FlowCase(Assembly.DefaultOf(unit));
        var balance = flow.Balance;
        foreach (var gear in flow.Gears)
        {
            balance.Set(gear.Solution.Inputs, FlowCase.Pumped);
            for (var cell = 1; cell < flow.Flow.Cells; cell++) balance.Pressure[cell] = 1e3 * cell;
            balance.Evaluate(withSlopes: false);
            Assert.Equal(balance.Pumped, balance.Drained + balance.Net.Sum(), 15);
        }
    }

    private static double[] Times(FlowCase flow, double[] along)
    {
        var product = new double[along.Length];
        var pairs = flow.Flow.Pairs.Concat(flow.Flow.Pairs.Select(pair => (Row: pair.Column, Column: pair.Row)))
            .Concat(Enumerable.Range(0, along.Length - 1).Select(i => (Row: i, Column: i))).Distinct();
        foreach (var (row, column) in pairs)
            product[row + 1] += flow.Balance.System.Values[flow.Balance.System.Pattern.PlaceOf(row, column)] * along[column + 1];
        return product;
    }
}
