using Xunit;
using Xunit.v3;

namespace Circuits.Tests.Conventions;

public sealed class TimeLimitTests
{
    private static int Own => Assert.IsAssignableFrom<ICoreTest>(TestContext.Current.Test).Timeout;

    [Fact]
    public void A_test_that_names_no_limit_has_one() => Assert.Equal((int)TimeLimit.Default.TotalMilliseconds, Own);

    [Theory]
    [InlineData(1)]
    public void So_has_every_row_of_a_theory(int row) => Assert.Equal(row * (int)TimeLimit.Default.TotalMilliseconds, Own);

    [Fact(Timeout = 123_000)]
    public void A_limit_that_a_test_names_is_kept()
    {
        TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
        Assert.Equal(123_000, Own);
    }
}
