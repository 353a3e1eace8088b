using System.Collections.Immutable;
using Circuits.Studies.Identify;
using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>Which question comes first, and what decides between questions that tell as much.</summary>
public sealed class SplitterTests
{
    // Two revisions; the hole is gone in the second, and a slot is there in its place.
    [Fact]
    public void Of_equal_questions_the_first_of_the_file_is_asked_and_the_others_are_named()
    {
        var bench = Bench.Plates("{at: 1, hole: 5 mm}; {at: 3, hole: 5 mm}");
        var step = Assert.Single(Steps(bench));
        Assert.Equal("hole at 1", step.Row.Trait.Phrase);
        Assert.Contains("hole at 3", step.Same.Select(row => row.Trait.Phrase));
    }

    // A mark is read by eye; a size takes a gauge.
    [Fact]
    public void Of_equal_questions_the_easiest_to_find_out_is_asked()
    {
        var bench = Bench.Of("""
            joints: {face: {between: [body, housing], sheets: [plate]}}
            parts:
              body: {kind: casting, passages: {a: {face: 1}}}
              housing: {kind: casting, passages: {b: {face: 1}}}
              plate:
                kind: sheet
                revisions:
                  1: {openings: [{at: 1, hole: 5 mm}]}
                  2: {openings: [{at: 1, hole: 6 mm}], marks: [a notch]}
            """);
        var step = Assert.Single(Steps(bench));
        Assert.Equal("a notch", step.Row.Trait.Phrase);
        var size = Assert.Single(step.Same);
        Assert.True(step.Row.Trait.Means < size.Trait.Means);
    }

    // Four revisions: a hole that one of them has leaves (3 log 3) / 4 = 1.189 bits, one that two of them have leaves 1. The second is asked though it stands later.
    [Fact]
    public void The_question_that_leaves_least_is_asked_first()
    {
        var bench = Bench.Plates("{at: 1, hole: 5 mm}, {at: 3, hole: 5 mm}; {at: 3, hole: 5 mm}; {at: 4, hole: 5 mm}; {at: 4, hole: 5 mm}, {at: 5, hole: 5 mm}");
        var rows = bench.Part("plate").Rows.Where(row => row.IsListed).ToList();
        double Left(string phrase) => Splitter.ExpectedEntropy(Splitter.Outcomes(rows.First(row => row.Trait.Phrase == phrase), [0, 1, 2, 3], 0.05), [0, 1, 2, 3]);
        Assert.Equal(0.75 * Math.Log2(3), Left("hole at 1"), 8);
        Assert.Equal(1, Left("hole at 3"), 8);
        Assert.Equal("hole at 3", Steps(bench)[0].Row.Trait.Phrase);
    }

    private static ImmutableArray<Step> Steps(Bench bench) => bench.Run(Identification.DefaultTolerance).Parts.Single(part => part.Part.Name == "plate").Steps;
}
