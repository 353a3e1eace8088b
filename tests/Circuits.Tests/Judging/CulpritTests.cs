using Xunit;

namespace Circuits.Tests.Judging;

/// <summary>Of one opening that is wrong, what is found names it. <c>culprits</c> among the benchmarks counts them over more units.</summary>
public class CulpritTests
{
    [Fact]
    public void The_one_opening_that_was_changed_is_named()
    {
        foreach (var tally in Culprits.Count(first: 1, count: 200))
        {
            Assert.True(tally.Wrong >= 10, $"{tally.Change}: only {tally.Wrong} changes make something wrong");
            Assert.True(tally.Named >= 0.95 * tally.Wrong, $"{tally.Change}: {tally.Named} of {tally.Wrong}\n{string.Join('\n', tally.Missed)}");
        }
    }
}
