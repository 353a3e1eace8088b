using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>Which matched sets remain, and what to hand on to the other verbs.</summary>
public class FitTests
{
    private static readonly string Unit =
        """
        parts:
          body: {kind: casting, passages: {p: {}}, revisions: {1: {marks: [a]}, 2: {marks: [b]}, 3: {marks: [b]}}}
          pack: {kind: solenoid-pack, revisions: {1: {marks: [grey]}, 2: {marks: [brown]}}}
          case: {kind: casting, passages: {p: {}}}
        """.Replace("kind: casting, passages: {p: {}}, revisions: {1: {marks: [a]}, 2: {marks: [b]}, 3: {marks: [b]}}", "kind: other, revisions: {1: {marks: [a]}, 2: {marks: [b]}, 3: {marks: [b]}}").Replace("  case:", "  shell:");

    private const string Sets = "\nmatched: {early: {body: 1, pack: 1}, late: {body: 2, pack: 2}}";

    [Fact]
    public void A_matched_set_is_named_and_a_mix_by_the_nearest()
    {
        var bench = Bench.Of(Unit + Sets);
        Assert.Equal(["early"], bench.Run(0.05, "seen a", "seen grey").Fits);
        Assert.Equal(["early,pack=2"], bench.Run(0.05, "seen a", "seen brown").Fits);
    }

    [Fact]
    public void Look_alikes_give_a_line_each()
    {
        var bench = Bench.Of(Unit + Sets);
        Assert.Equal(["late", "late,body=3"], bench.Run(0.05, "seen b", "seen brown").Fits);
    }

    [Fact]
    public void Nothing_is_handed_on_while_a_part_is_open_or_unknown()
    {
        var bench = Bench.Of(Unit + Sets);
        Assert.Empty(bench.Run(0.05, "seen a").Fits);
        Assert.Empty(bench.Run(0.05, "seen a", "seen b", "seen grey").Fits);
    }

    [Fact]
    public void Without_matched_sets_or_other_parts_single_parts_are_named()
    {
        Assert.Equal(["body=1,pack=1"], Bench.Of(Unit).Run(0.05, "seen a", "seen grey").Fits);
        Assert.Equal(["pack=2"], Bench.Of(Unit + Sets, "pack").Run(0.05, "seen brown").Fits);
    }

    [Fact]
    public void Sets_are_ruled_out_by_the_parts_that_they_cannot_have()
    {
        var report = Bench.Of(Unit + Sets).Run(0.05, "seen b", "seen grey");
        Assert.Empty(report.PossibleSets);
        Assert.Equal(["early by body", "late by pack"], report.ExcludedSets.Select(set => $"{set.Set} by {string.Join(' ', set.Parts)}"));
        Assert.Equal(["early"], Bench.Of(Unit + Sets).Run(0.05, "seen a").PossibleSets);
    }
}
