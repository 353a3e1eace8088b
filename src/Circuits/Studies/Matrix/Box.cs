using System.Collections.Immutable;

namespace Circuits.Studies.Matrix;

/// <summary>Assemblies that some revisions of each part lead to, whichever of them are combined.</summary>
/// <param name="Parts">For each part, which of its revisions that are tried, ascending.</param>
public sealed record Box(ImmutableArray<ImmutableArray<int>> Parts)
{
    /// <summary>How many assemblies it holds.</summary>
    public long Count => Parts.Aggregate(1L, (count, revisions) => count * revisions.Length);

    /// <summary>Boxes that do not overlap and hold just the given assemblies, the largest first.</summary>
    /// <param name="members">Numbers of assemblies, ascending.</param>
    /// <param name="sizes">How many revisions of each part are tried.</param>
    /// <remarks>
    /// Assemblies that share all parts but the last are gathered by the set of its revisions; those whose last parts then read the
    /// same, by the set of revisions of the part before; and so on up to the first part.
    /// </remarks>
    public static IReadOnlyList<Box> Cover(IReadOnlyList<long> members, ImmutableArray<int> sizes)
    {
        // What may follow a choice of the parts so far: boxes of the parts after them, kept once each.
        var endings = new Endings();
        var level = new List<(long Prefix, int Ending)>(members.Count);
        foreach (var member in members) level.Add((member, Endings.Nothing));
        for (var part = sizes.Length - 1; part >= 0; part--) level = Gather(level, sizes[part], endings);
        List<Box> boxes = level.Count == 0 ? [] : [.. endings.BoxesOf(level[0].Ending).Select(parts => new Box(parts))];
        return [.. Join(boxes, sizes.Length).OrderByDescending(box => box.Count)];
    }

    /// <summary>Makes one of boxes that differ in the revisions of a single part, as long as there are such.</summary>
    private static List<Box> Join(List<Box> boxes, int parts)
    {
        for (var before = int.MaxValue; boxes.Count < before;)
        {
            before = boxes.Count;
            for (var part = parts - 1; part >= 0; part--)
            {
                boxes =
                [
                    .. boxes.GroupBy(box => box.Key(except: part))
                        .Select(alike => alike.First() with { Parts = alike.First().Parts.SetItem(part, [.. alike.SelectMany(box => box.Parts[part]).Order()]) }),
                ];
            }
        }

        return boxes;
    }

    private string Key(int except) =>
        string.Join(';', Parts.Select((revisions, part) => part == except ? "" : string.Join(',', revisions)));

    private static List<(long Prefix, int Ending)> Gather(List<(long Prefix, int Ending)> level, int size, Endings endings)
    {
        var gathered = new List<(long, int)>();
        for (var from = 0; from < level.Count;)
        {
            var prefix = level[from].Prefix / size;
            var to = from;
            var revisions = new SortedDictionary<int, List<int>>();
            for (; to < level.Count && level[to].Prefix / size == prefix; to++)
            {
                if (!revisions.TryGetValue(level[to].Ending, out var with)) revisions[level[to].Ending] = with = [];
                with.Add((int)(level[to].Prefix % size));
            }

            gathered.Add((prefix, endings.NumberOf([.. revisions.Select(pair => (pair.Value.ToImmutableArray(), pair.Key))])));
            from = to;
        }

        return gathered;
    }

    private sealed class Endings
    {
        /// <summary>No part follows.</summary>
        public const int Nothing = -1;

        private readonly Dictionary<string, int> numbers = [];
        private readonly List<ImmutableArray<(ImmutableArray<int> Revisions, int Ending)>> all = [];

        public int NumberOf(ImmutableArray<(ImmutableArray<int> Revisions, int Ending)> ways)
        {
            var key = string.Join(';', ways.Select(way => $"{string.Join(',', way.Revisions)}:{way.Ending}"));
            if (numbers.TryGetValue(key, out var number)) return number;
            all.Add(ways);
            return numbers[key] = all.Count - 1;
        }

        public IEnumerable<ImmutableArray<ImmutableArray<int>>> BoxesOf(int ending)
        {
            if (ending == Nothing) return [[]];
            return all[ending].SelectMany(way => BoxesOf(way.Ending).Select(rest => rest.Insert(0, way.Revisions)));
        }
    }
}
