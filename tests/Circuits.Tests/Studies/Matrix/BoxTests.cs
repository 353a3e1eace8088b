using System.Collections.Immutable;
using Circuits.Studies.Matrix;
using Xunit;

namespace Circuits.Tests.Studies.Matrix;

public class BoxTests
{
    [Fact]
    public void Boxes_hold_just_the_members_each_once()
    {
        var random = new Random(20);
        for (var round = 0; round < 200; round++)
        {
            ImmutableArray<int> sizes = [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => random.Next(1, 5))];
            var count = sizes.Aggregate(1L, (product, size) => product * size);
            var density = random.Next(1, 100);
            var members = Enumerable.Range(0, (int)count).Where(_ => random.Next(100) < density).Select(number => (long)number).ToList();
            var boxes = Box.Cover(members, sizes);
            var held = boxes.SelectMany(box => Numbers(box, sizes)).Order().ToList();
            Assert.Equal(members, held);
            Assert.Equal(members.Count, boxes.Sum(box => box.Count));
        }
    }

    [Fact]
    public void What_is_one_box_comes_out_as_one()
    {
        ImmutableArray<int> sizes = [3, 2, 4];
        Assert.Equal(24, Assert.Single(Box.Cover([.. Enumerable.Range(0, 24).Select(number => (long)number)], sizes)).Count);

        // Revisions 0 and 2 of the first part, any of the second, 1 to 3 of the third.
        var members = from a in (long[])[0, 2] from b in (long[])[0, 1] from c in (long[])[1, 2, 3] select (a * 8) + (b * 4) + c;
        var box = Assert.Single(Box.Cover([.. members], sizes));
        Assert.Equal([[0, 2], [0, 1], [1, 2, 3]], box.Parts.Select(part => part.ToArray()));
    }

    [Fact]
    public void Shards_lie_side_by_side_and_are_alike_in_size()
    {
        foreach (var (count, shards) in new[] { (0L, 3), (1L, 3), (24L, 7), (1152L, 5), ((1L << 62) - 1, 1000) })
        {
            var ranges = Enumerable.Range(1, shards).Select(shard => MatrixSpace.Shard(count, shard, shards)).ToList();
            Assert.Equal((0L, count), (ranges[0].From, ranges[^1].To));
            Assert.All(ranges.Zip(ranges.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
            var sizes = ranges.ConvertAll(range => range.To - range.From);
            Assert.InRange(sizes.Max() - sizes.Min(), 0, 1);
        }
    }

    private static IEnumerable<long> Numbers(Box box, ImmutableArray<int> sizes)
    {
        IEnumerable<long> numbers = [0];
        for (var part = 0; part < sizes.Length; part++)
        {
            var (size, revisions) = (sizes[part], box.Parts[part]);
            numbers = [.. numbers.SelectMany(number => revisions.Select(revision => (number * size) + revision))];
        }

        return numbers;
    }
}
