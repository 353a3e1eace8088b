using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Networks;

/// <summary>Which holes a ball of 6 mm can close: a ball as large as its hole falls through.</summary>
public sealed class BallDrafterTests
{
    [Theory]
    [InlineData("hole: 5.99 mm", "")]
    [InlineData("hole: 6 mm", "ball-falls-through")]
    [InlineData("hole: 6.01 mm", "ball-falls-through")]
    [InlineData("slot: 5.99 x 14 mm", "seat-will-not-seal")]
    [InlineData("slot: 6 x 14 mm", "ball-falls-through")]
    public void A_hole_of_a_sheet_is_closed_only_by_a_ball_that_is_larger(string shape, string rule) =>
        Assert.Equal(rule, Found(Sheets(shape)));

    [Theory]
    [InlineData("hole: 5.99 mm", "")]
    [InlineData("hole: 6 mm", "ball-falls-through")]
    public void So_is_a_seat_in_the_casting(string shape, string rule) => Assert.Equal(rule, Found(CircuitCase.Body(
        "pocket beyond", $"balls: {{check: {{in: pocket, seats: {{to: beyond, {shape}}}, diameter: 6 mm}}}}", "signals: {body.pocket: 500 kPa}")));

    // It falls through the first sheet, which therefore is no seat, and is held by the second.
    [Theory]
    [InlineData("hole: 6 mm")]
    [InlineData("slot: 6 x 14 mm")]
    public void A_ball_as_large_as_the_hole_of_the_first_sheet_lies_on_the_second(string first)
    {
        var unit = Sheets(first, "hole: 4 mm");
        Assert.Equal("", Found(unit));
        Assert.Equal("closes second@1", unit.Position("body.check"));
        CircuitCase.Near(0, unit.Pressure("cover.beyond"));
    }

    private static CircuitCase Sheets(params string[] shapes)
    {
        string[] names = ["first", "second"];
        var sheets = shapes.Select((shape, i) => $"  {names[i]}: {{kind: sheet, openings: [{{at: 1, {shape}}}]}}\n");
        return CircuitCase.Of(
            $"joints: {{face: {{between: [body, cover], sheets: [{string.Join(", ", names[..shapes.Length])}]}}}}\nparts:\n"
            + "  body: {kind: casting, passages: {pocket: {face: 1}}, balls: {check: {in: pocket, seats: 1, diameter: 6 mm}}}\n"
            + string.Concat(sheets)
            + "  cover: {kind: casting, passages: {beyond: {face: 1}}, restrictions: [{between: [beyond, exhaust], hole: 2 mm}]}\n"
            + "gears: {G: {signals: {body.pocket: 500 kPa}, apply: []}}\n");
    }

    private static string Found(CircuitCase unit) =>
        string.Join(' ', unit.Rules().Where(rule => rule is "ball-falls-through" or "seat-will-not-seal"));
}
