using Circuits.Studies.Identify;
using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>What remains after something was seen or measured, and what is said when nothing does.</summary>
public class NarrowingTests
{
    private static readonly Bench Sizes = Bench.Plates("{at: 1, hole: 5.0 mm}; {at: 1, hole: 5.1 mm}; {at: 1, hole: 5.4 mm}; {at: 2, hole: 5.0 mm}");

    [Theory]
    [InlineData("1=5.0mm", "1")]
    [InlineData("1=5.05 mm", "1 2")]
    [InlineData("1=5.051 mm", "2")]
    [InlineData("1=4.95 mm", "1")]
    [InlineData("1=4.949 mm", "")]
    [InlineData("1=0.2126 in", "3")]        // 5.400 mm
    [InlineData("1=13/64 in", "2")]         // 5.159 mm, 0.059 from 5.1: see the tolerance below
    public void A_measured_size_leaves_what_lies_within_the_tolerance(string measured, string remaining)
    {
        var tolerance = measured.Contains('/') ? 0.06 : Identification.DefaultTolerance;
        Assert.Equal(remaining, Sizes.Remaining("plate", tolerance, "measured " + measured));
    }

    [Theory]
    [InlineData(0, "1")]
    [InlineData(0.1, "1 2")]
    [InlineData(0.4, "1 2 3")]
    public void The_tolerance_can_be_set(double tolerance, string remaining) =>
        Assert.Equal(remaining, Sizes.Remaining("plate", tolerance, "measured 1=5.0 mm"));

    // ASME B94.11M: number drill 45 is 0.0820 in, 2.083 mm.
    [Fact]
    public void A_number_drill_measures() =>
        Assert.Equal("1", Bench.Plates("{at: 1, hole: 2.08 mm}; {at: 1, hole: 2.2 mm}").Remaining("plate", "measured plate@1=#45"));

    [Fact]
    public void A_slot_is_measured_by_its_width_or_both_ways()
    {
        var bench = Bench.Plates("{at: [1, 3], slot: 3 x 12 mm}; {at: [1, 3], slot: 3 x 14 mm}; {at: [1, 3], slot: 4 x 14 mm}");
        Assert.Equal("1 2", bench.Remaining("plate", "measured 1-3=3 mm"));
        Assert.Equal("2", bench.Remaining("plate", "measured 3-1=14 x 3 mm"));
        Assert.Equal("3", bench.Remaining("plate", "measured slot at 1-3=4 mm x 14 mm"));
        Assert.Equal("3", bench.Remaining("plate", "measured 1=4mm"));
    }

    [Fact]
    public void Sizes_that_a_gauge_may_take_for_one_another_are_no_question_but_are_named()
    {
        var plate = Sizes.Run(0.05).Parts.Single(part => part.Part.Name == "plate");
        Assert.Equal(["1 hole at 1: 5/5.1 1 2, 5.4 3, - 4"], Sizes.Steps("plate"));
        var alike = Assert.Single(plate.Alike);
        Assert.Equal([0, 1], alike.Revisions);
        Assert.Equal("hole at 1", Assert.Single(alike.TooClose).Trait.Phrase);
        Assert.Equal(["1 hole at 1: 5 1, 5.1 2, 5.4 3, - 4"], Sizes.Run(0.049).Parts.Single(part => part.Part.Name == "plate").Steps
            .Select(step => $"{step.Number} {step.Row.Trait.Phrase}: {string.Join(", ", step.Outcomes.Select(outcome => $"{Bench.Word(outcome.Answer)} {outcome.Revisions[0] + 1}"))}"));
    }

    // 1.0, 1.1 and 1.2 chain; once 1.1 is out, the other two are told apart.
    [Fact]
    public void Sizes_chain_only_while_the_one_between_remains()
    {
        var bench = Bench.Plates("{at: 1, hole: 1.0 mm}; {at: 1, hole: 1.1 mm}, {at: 2, hole: 1 mm}; {at: 1, hole: 1.2 mm}");
        Assert.Equal(["1 hole at 2: yes 2, no 1 3 > 2", "2 hole at 1: 1 1, 1.2 3"], bench.Steps("plate"));
    }

    [Fact]
    public void The_first_question_halves_and_looking_comes_before_measuring()
    {
        var bench = Bench.Plates(
            """
            {at: 1, hole: 5 mm}, {at: 3, hole: 2 mm};
            {at: 1, hole: 5 mm}, {at: 4, hole: 2 mm};
            {at: 1, hole: 7 mm}, {at: 4, hole: 2 mm}, {at: 2, hole: 2 mm};
            {at: 1, hole: 7 mm}, {at: 3, hole: 2 mm}, {at: 2, hole: 2 mm}, {at: 6, hole: 1 mm}
            """);
        // "hole at 1" (5 or 7 mm) halves as well as "hole at 2" and "hole at 3" do, but has to be measured; "hole at 6" parts one from three.
        Assert.Equal(["1 hole at 2: yes 3 4 > 2, no 1 2 > 3", "2 hole at 3: yes 4, no 3", "3 hole at 3: yes 1, no 2"], bench.Steps("plate"));
        var first = bench.Run(0.05).Parts.Single(part => part.Part.Name == "plate").Steps[0];
        Assert.Equal([Means.PinGauge], first.Same.Select(row => row.Trait.Means));
    }

    // A size that leaves three kinds is worth more than a look that leaves two.
    [Fact]
    public void What_splits_best_comes_first_even_if_it_is_measured()
    {
        var bench = Bench.Plates("{at: 1, hole: 5 mm}, {at: 2, hole: 1 mm}; {at: 1, hole: 6 mm}, {at: 2, hole: 1 mm}; {at: 1, hole: 7 mm}");
        Assert.Equal(["1 hole at 1: 5 1, 6 2, 7 3"], bench.Steps("plate"));
    }

    [Fact]
    public void What_no_revision_has_is_said_with_the_nearest_ones()
    {
        var bench = Bench.Plates("{at: 1, hole: 5 mm}; {at: 2, hole: 5 mm}; {at: 3, hole: 5 mm}, {at: 6, hole: 2 mm}");
        var plate = bench.Run(0.05, "seen hole at 1", "measured 1=5.3 mm", "seen hole at 6").Parts.Single(part => part.Part.Name == "plate");
        Assert.Equal(PartStatus.Unknown, plate.Status);
        Assert.Equal([0, 2], plate.Nearest.Select(revision => revision.Revision));
        Assert.Equal(["hole at 1: 5.3 mm", "hole at 6"], plate.Nearest[0].By.Select(observation => observation.Meaning.Words()));
        Assert.Equal([2, 3, 2], plate.Excluded.Select(revision => revision.By.Length));
    }

    [Theory]
    [InlineData("seen hole at 1", "not hole at 1", true)]
    [InlineData("seen hole at 1", "not opening at 1", true)]
    [InlineData("seen no hole at 1", "measured 1=5 mm", true)]
    [InlineData("seen plain metal at 1", "seen cup at 1", true)]
    [InlineData("measured 1=5 mm", "measured 1=5.2 mm", true)]
    [InlineData("measured 1=5 mm", "measured 1=5.1 mm", false)]
    [InlineData("seen plate: slot at 1-3", "seen plate: metal at 3", true)]
    [InlineData("seen body: rib between 1 and 2", "seen body: track from 1 to 2", true)]
    [InlineData("seen body: rib between 1 and 2", "seen body: solid metal at 2", true)]
    [InlineData("not body: rib between 1 and 2", "not body: track from 2 to 1", false)]
    [InlineData("seen 2 holes at 1", "seen 1 hole at 1", true)]
    [InlineData("seen 2 holes at 1", "not 2 holes at 1", true)]
    [InlineData("not 2 holes at 1", "not 1 hole at 1", false)]
    [InlineData("seen 2 holes at 1", "not 1 hole at 1", false)]
    [InlineData("seen body: passage at 1", "not housing: passage at 1", false)]
    [InlineData("not hole at 1", "not slot at 1-3", false)]
    public void What_cannot_both_be_true_is_found(string one, string other, bool contradictory)
    {
        var bench = Bench.Plates("{at: 1, hole: 5 mm}, {at: 1, hole: 5 mm}; {at: [1, 3], slot: 2 x 8 mm}; {at: 1, hole: 5 mm, cup: true}");
        Assert.Equal(contradictory, Identifier.Contradiction([bench.Told(one), bench.Told(other)], 0.05) is not null);
        Assert.Equal(contradictory, Identifier.Contradiction([bench.Told(other), bench.Told(one)], 0.05) is not null);
    }

    [Fact]
    public void A_tolerance_out_of_range_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sizes.Run(1.1));
}
