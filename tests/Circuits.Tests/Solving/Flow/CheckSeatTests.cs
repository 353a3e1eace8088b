using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

/// <summary>
/// How a check ball opens with flow: free while oil comes from beyond its seat, and shut evenly over the kilopascal by which its pocket is above.
/// </summary>
public sealed class CheckSeatTests
{
    // Thin oil through 4 mm, Q = 0.611 A sqrt(2 dp / rho) times the share that is open, 1 - dp / 1 kPa where the pocket is above.
    [Theory]
    [InlineData(0.25, 0.75)]
    [InlineData(0.5, 0.5)]
    [InlineData(0.9, 0.1)]
    [InlineData(0.999, 0.001)]
    [InlineData(1, 0)]
    [InlineData(1.5, 0)]
    [InlineData(300, 0)]
    [InlineData(-0.25, 1)]
    [InlineData(-0.5, 1)]
    [InlineData(-300, 1)]
    public void A_check_ball_shuts_over_a_kilopascal(double above, double open)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "pocket beyond", "balls: {check: {in: pocket, seats: {to: beyond, hole: 4 mm}, diameter: 6 mm}}",
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"signals: {{body.pocket: {500 + above} kPa, body.beyond: 500 kPa}}")).Assembly());
        var seat = Assert.Single(flow.Solve(FlowCase.Thin).Elements);
        Assert.Equal(FlowKind.CheckSeat, seat.Element.Kind);
        var expected = Math.Sign(above) * open * 0.611 * Math.PI / 4 * 16e-6 * Math.Sqrt(2 * 1e3 * Math.Abs(above) / 850);
        Assert.Equal(expected, seat.Rate, Math.Max(1e-12, 1e-3 * Math.Abs(expected)));
    }

    // A two-way ball turns over in the middle: level feeds leave both seats half open, and a kilopascal either way shuts one.
    [Theory]
    [InlineData(0, 0.5, 0.5)]
    [InlineData(0.5, 0.75, 0.25)]
    [InlineData(-0.5, 0.25, 0.75)]
    [InlineData(1, 1, 0)]
    [InlineData(-1, 0, 1)]
    public void A_two_way_ball_turns_over_within_a_kilopascal_either_way(double above, double one, double two)
    {
        var flow = new FlowCase(CircuitCase.Body(
            "pocket one two", "balls: {two-way: {in: pocket, seats: [{to: one, hole: 4 mm}, {to: two, hole: 4 mm}], diameter: 6 mm}}",
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"signals: {{body.pocket: 400 kPa, body.one: {500 + above} kPa, body.two: 500 kPa}}")).Assembly());
        var seats = flow.Solve(FlowCase.Thin).Elements;
        Assert.Equal(2, seats.Length);
        Near(one, 100 + above, seats[0].Rate);
        Near(two, 100, seats[1].Rate);

        static void Near(double open, double kilopascals, double rate)
        {
            var expected = open * 0.611 * Math.PI / 4 * 16e-6 * Math.Sqrt(2e3 * kilopascals / 850);
            Assert.Equal(expected, Math.Abs(rate), Math.Max(1e-12, 1e-3 * expected));
        }
    }
}
