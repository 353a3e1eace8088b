using Circuits.Solving;
using Xunit;

namespace Circuits.Tests.Solving;

/// <summary>What tells whether positions were there before, against a set of their texts.</summary>
public sealed class PositionLogTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(5)]
    public void A_row_is_new_once(int length)
    {
        var log = new PositionLog(length);
        var random = new Random(7);
        for (var round = 0; round < 2; round++)
        {
            var texts = new HashSet<string>();
            for (var i = 0; i < 100; i++)
            {
                var row = Enumerable.Range(0, length).Select(_ => random.Next(-1, 2)).ToArray();
                row.CopyTo(log.Next);
                Assert.Equal(texts.Add(string.Join(',', row)), log.Add());
            }

            log.Clear();
        }
    }
}
