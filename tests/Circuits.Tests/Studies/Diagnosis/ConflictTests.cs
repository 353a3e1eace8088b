using System.Collections.Immutable;
using Circuits.Studies.Diagnosis;
using Circuits.Tests.Demo;
using Xunit;

namespace Circuits.Tests.Studies.Diagnosis;

/// <summary>What of the evidence cannot be explained together.</summary>
public sealed class ConflictTests
{
    private static readonly DemoUnit Demo = new("rill/rill.yaml");
    private static readonly ImmutableArray<Evidence> Told =
        [.. new[] { "no reverse", "slips in 1", "no second", "no drive in 1" }.Select(text => new EvidenceReader(Demo.Judge).Complaint(text).Evidence!)];

    // Each row is a candidate, 1 fits and 0 contradicts; what is named is met by what each contradicts.
    [Theory]
    [InlineData("0111 1011", "0 1")]
    [InlineData("0011 1100", "0 2")]      // 0 3, 1 2 and 1 3 are as small: the first in the order of the evidence
    [InlineData("1001 1010 1100", "1 2")] // 1 3 and 2 3 too
    [InlineData("0111 0011", "0")]        // what contradicts less decides
    [InlineData("0111 1011 1101 1110", "0 1 2 3")]
    [InlineData("1111 0111", "")]         // one explains all of it
    public void The_smallest_set_is_named_and_of_equals_the_first(string candidates, string expected)
    {
        var degrees = candidates.Split(' ').Select(row => row.Select(letter => letter == '1' ? 0.5 : 0.0).ToImmutableArray());
        Assert.Equal(expected, string.Join(' ', Conflict.Of(Told, degrees).Select(piece => Told.IndexOf(piece))));
    }
}
