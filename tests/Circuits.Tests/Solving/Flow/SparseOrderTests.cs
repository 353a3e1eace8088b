using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Solving.Flow;

public sealed class SparseOrderTests
{
    // A star of four round 0 and a pair: the ends of degree 1 go first, by their numbers, and the middle only once nothing else is smaller.
    [Fact]
    public void The_least_joined_goes_first_and_of_equals_the_lower_number()
    {
        var (order, later) = SparseOrder.Of(6, [(0, 1), (2, 0), (0, 3), (0, 3), (4, 5), (1, 1)]);
        Assert.Equal([1, 2, 0, 3, 4, 5], order);
        Assert.Equal([0], later[1]);
        Assert.Equal([3], later[0]);
        Assert.Empty(later[3]);
    }

    // A ring of four: what goes joins its neighbours to one another.
    [Fact]
    public void Those_that_the_first_touched_touch_one_another_then()
    {
        var (order, later) = SparseOrder.Of(4, [(0, 1), (1, 2), (2, 3), (3, 0)]);
        Assert.Equal([0, 1, 2, 3], order);
        Assert.Equal([1, 3], later[0]);
        Assert.Equal([2, 3], later[1]);
    }
}
