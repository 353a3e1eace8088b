using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>How likely candidates are against one another, and what decides between equals.</summary>
public sealed class RankingTests
{
    private static Fault Of(string element, double weight) => new(FaultKind.HolePlugged, element, Phrase.Of($"hole {element} plugged"), new Place("case.yaml", 1, 1), weight, []);

    private static GearEffect Feels(FeelKind kind) => new(new Feel(kind, "R"), [], []);

    // Of weights that come to 10, one fault of weight 2 has 2/10; a second of weight 1 besides it has another 1/10, and that there are two at all 1 in 10.
    [Fact]
    public void A_second_fault_costs_its_weight_and_one_in_ten()
    {
        var one = Ranking.Of([Of("a@1", 2)], [], [], 10, []);
        var two = Ranking.Of([Of("a@1", 2), Of("a@2", 1)], [], [], 10, []);
        Assert.Equal(Math.Log(0.2), one.Score, 12);
        Assert.Equal(Math.Log(0.2 * 0.1 * 0.1), two.Score, 12);
        Assert.Equal(0, Ranking.Of([], [], [], 10, []).Score - Math.Log(1 / 0.1), 12);
    }

    // A driver keeps quiet about a plainly wrong gear one time in two, about a slight difference nine times in ten; about what is right nothing is to be told.
    [Theory]
    [InlineData(FeelKind.AsItShould, 1)]
    [InlineData(FeelKind.Harsh, 0.9)]
    [InlineData(FeelKind.Drags, 0.9)]
    [InlineData(FeelKind.NoDrive, 0.5)]
    [InlineData(FeelKind.TieUp, 0.5)]
    public void What_would_be_felt_and_was_not_told_counts_against_a_candidate(FeelKind kind, double share)
    {
        ImmutableArray<GearEffect> effects = [Feels(kind), Feels(FeelKind.NoDrive)];
        Assert.Equal(Math.Log(0.2 * share), Ranking.Of([Of("a@1", 2)], effects, [], 10, [0]).Score, 12);
        Assert.Equal(Math.Log(0.2 * share * 0.5), Ranking.Of([Of("a@1", 2)], effects, [], 10, [0, 1]).Score, 12);
        Assert.Equal(Math.Log(0.2), Ranking.Of([Of("a@1", 2)], effects, [], 10, []).Score, 12);
    }

    [Fact]
    public void Of_equally_likely_ones_fewer_faults_come_first_then_the_order_of_their_codes()
    {
        Candidate With(double score, params string[] elements) => new([.. elements.Select(element => Of(element, 1))], [], [], score);
        var sorted = Ranking.Sorted([With(-2, "b@1"), With(-3, "a@0"), With(-2, "a@2", "a@3"), With(-2 + 1e-12, "B@1"), With(-2, "a@9"), With(-1, "z@1")]);
        Assert.Equal(["z@1", "B@1", "a@9", "b@1", "a@2 a@3", "a@0"], sorted.Select(candidate => string.Join(' ', candidate.Faults.Select(fault => fault.Element))));
    }

    // Weights of pairs: 6, 3 and 2 with the first; two pairs weigh 6: the one of lower numbers comes first.
    [Fact]
    public void Pairs_come_by_weight_then_by_their_numbers()
    {
        ImmutableArray<GearEffect> sound = [Feels(FeelKind.AsItShould)];
        Candidate Single(string element, double weight) => new([Of(element, weight)], sound, [0], 0);
        ImmutableArray<Candidate> singles = [Single("a@1", 1), Single("a@2", 2), Single("a@3", 3), Single("a@4", 6)];
        var search = new PairSearch(singles, sound, []);
        var (pairs, complete) = search.Find(10, 100, 0, () => throw new InvalidOperationException());
        Assert.Equal([(2, 3), (1, 3), (0, 3), (1, 2), (0, 2), (0, 1)], pairs);
        Assert.True(complete);
        (pairs, complete) = search.Find(3, 100, 0, () => throw new InvalidOperationException());
        Assert.Equal([(2, 3), (1, 3), (0, 3)], pairs);
        Assert.False(complete);
    }

    // Shares are of what explains everything; classes of equal share stay in the order of their likeliest members.
    [Fact]
    public void Classes_are_sorted_by_their_share()
    {
        Candidate Of(string element, FeelKind kind, double weight, double degree = 1) =>
            new([RankingTests.Of(element, 1)], [Feels(kind)], [degree], Math.Log(weight));
        var classes = CandidateClass.Of([
            Of("a@1", FeelKind.NoDrive, 2), Of("a@2", FeelKind.Slips, 2), Of("a@3", FeelKind.Harsh, 1.5), Of("a@4", FeelKind.Harsh, 2.5), Of("a@5", FeelKind.TieUp, 9, degree: 0)]);
        Assert.Equal(["a@3", "a@1", "a@2", "a@5"], classes.Select(known => known.First.Faults[0].Element));
        Assert.Equal([0.5, 0.25, 0.25, 0], classes.Select(known => Math.Round(known.Share, 9)));
    }
}
