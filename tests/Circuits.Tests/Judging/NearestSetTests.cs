using Circuits.Tests.Solving;
using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>Which matched sets an assembly is held against: all that share most parts with it.</summary>
public sealed class NearestSetTests
{
    private static readonly CircuitCase Unit = CircuitCase.Of("""
        parts:
          a: {kind: casting, revisions: {1: {passages: {x: {}}}, 2: {based-on: 1}, 3: {based-on: 1}}}
          b: {kind: casting, revisions: {1: {passages: {x: {}}}, 2: {based-on: 1}, 3: {based-on: 1}}}
          c: {kind: casting, revisions: {1: {passages: {x: {}}}, 2: {based-on: 1}, 3: {based-on: 1}}}
        matched: {first: {a: 1, b: 1, c: 1}, second: {a: 2, b: 2, c: 2}, third: {a: 3, b: 3, c: 2}}
        gears: {G: {apply: []}}
        """);

    [Theory]
    [InlineData("1 1 2", "first")]
    [InlineData("1 2 3", "first second")]
    [InlineData("3 1 2", "third")]
    [InlineData("3 1 1", "first")]
    [InlineData("1 3 2", "third")]
    [InlineData("1 2 2", "second")]
    [InlineData("3 2 1", "first second third")]
    [InlineData("2 3 2", "second third")]
    [InlineData("2 2 2", "second")]
    public void Those_that_share_most_parts_and_all_of_them(string revisions, string nearest)
    {
        var chosen = revisions.Split(' ');
        Assert.Equal(nearest, string.Join(' ', Unit.Report($"a={chosen[0]}", $"b={chosen[1]}", $"c={chosen[2]}").NearestMatched));
    }
}
