using Circuits.Studies.Sizing;
using Xunit;

namespace Circuits.Tests.Studies.Sizing;

public sealed class HoleSearchTests
{
    /// <summary>A sharp hole fills in a time that goes with one over its area.</summary>
    [Theory]
    [InlineData(100, 2)]
    [InlineData(400, 1)]
    [InlineData(25, 4)]
    public void A_time_that_goes_with_one_over_the_area_is_found(double wanted, double diameter)
    {
        var found = new HoleSearch(d => 400 / (d * d)).Find(wanted, 0.35, 10, 2);
        Assert.Equal((SizeOutcome.Found, 1), (found.Outcome, found.Solutions));
        Assert.Equal(diameter, found.Millimetres!.Value, 0.002 * diameter);
    }

    [Fact]
    public void A_time_that_no_hole_gives_is_out_of_range() =>
        Assert.Equal(SizeOutcome.OutOfRange, new HoleSearch(d => 400 / (d * d)).Find(1, 0.35, 10, 2).Outcome);

    [Fact]
    public void A_hole_that_makes_no_difference_is_said_to_make_none() =>
        Assert.Equal(SizeOutcome.Unaffected, new HoleSearch(_ => 255.4).Find(100, 0.35, 10, 2).Outcome);

    [Fact]
    public void Where_the_time_jumps_past_the_wanted_one_the_search_stalls_there()
    {
        var found = new HoleSearch(d => d < 1.7 ? 300 : 100).Find(200, 0.35, 10, 2);
        Assert.Equal(SizeOutcome.Jumps, found.Outcome);
        Assert.Equal(1.7, found.Millimetres!.Value, 0.01);
    }

    [Fact]
    public void Never_counts_as_longer_than_any_time()
    {
        var found = new HoleSearch(d => d < 1 ? null : 400 / (d * d)).Find(300, 0.35, 10, 3);
        Assert.Equal(SizeOutcome.Found, found.Outcome);
        Assert.Equal(Math.Sqrt(400 / 300.0), found.Millimetres!.Value, 0.005);
        Assert.Equal(SizeOutcome.Jumps, new HoleSearch(d => d < 1 ? null : 400 / (d * d)).Find(3000, 0.35, 10, 3).Outcome);
    }

    [Theory]
    [InlineData(1, 0.75)]
    [InlineData(5, 8)]
    public void Of_two_holes_the_nearer_to_the_hole_as_it_is_is_taken(double now, double expected)
    {
        // Shortest at 2.449 mm; 100 ms at 0.75 and at 8 mm.
        var found = new HoleSearch(d => 100 + (20 * (Math.Abs(Math.Log(d / Math.Sqrt(6))) - Math.Log(8 / Math.Sqrt(6))))).Find(100, 0.35, 10, now);
        Assert.Equal((SizeOutcome.Found, 2), (found.Outcome, found.Solutions));
        Assert.Equal(expected, found.Millimetres!.Value, 0.2);
    }

    [Fact]
    public void Each_hole_is_tried_once()
    {
        var count = 0;
        var search = new HoleSearch(d =>
        {
            count++;
            return 400 / (d * d);
        });
        search.Find(100, 0.35, 10, 2);
        search.At(2);
        Assert.Equal(search.Tried.Length, count);
        Assert.InRange(count, 12, 30);
    }
}
