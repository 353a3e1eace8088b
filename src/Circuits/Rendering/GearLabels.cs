using System.Collections.Immutable;

namespace Circuits.Rendering;

/// <summary>Says a thing once that is the same in several gears.</summary>
internal static class GearLabels
{
    /// <summary>
    /// Items that are equal but for their gear, with the gears that they stand in. Ordered by those gears: by the first
    /// gear, what concerns no single gear last; otherwise the order given is kept.
    /// </summary>
    /// <param name="items">The items, each with its gear or null.</param>
    /// <param name="gears">Every gear in order.</param>
    /// <param name="comparer">When two items say the same.</param>
    public static ImmutableArray<(GearNames Gears, ImmutableArray<T> Items)> Group<T>(
        IEnumerable<(string? Gear, T Item)> items, ImmutableArray<string> gears, IEqualityComparer<T>? comparer = null)
        where T : notnull
    {
        var names = gears.ToList();
        var order = new List<T>();
        var found = new Dictionary<T, SortedSet<int>>(comparer);
        foreach (var (gear, item) in items)
        {
            if (!found.TryGetValue(item, out var indices))
            {
                found.Add(item, indices = []);
                order.Add(item);
            }

            if (gear is null) continue;
            if (!names.Contains(gear)) names.Add(gear);
            indices.Add(names.IndexOf(gear));
        }

        return [.. order
            .Select(item => (Gears: found[item], Item: item))
            .GroupBy(pair => string.Join(' ', pair.Gears))
            .OrderBy(group => group.First().Gears.FirstOrDefault(int.MaxValue))
            .ThenBy(group => group.First().Gears.Count)
            .Select(group => (
                new GearNames([.. group.First().Gears.Select(index => names[index])], gears.Length),
                group.Select(pair => pair.Item).ToImmutableArray()))];
    }
}

/// <summary>The gears that something stands in.</summary>
/// <param name="Names">Their names in order; none when it concerns no single gear.</param>
/// <param name="Total">How many gears there are.</param>
internal readonly record struct GearNames(ImmutableArray<string> Names, int Total)
{
    /// <summary>As a heading: <c>Gear R</c>, <c>Gears 2, 3</c>, <c>Every gear</c>, <c>The assembly</c>.</summary>
    public string Heading => Names.Length switch
    {
        0 => "The assembly",
        1 => $"Gear {Names[0]}",
        _ => Names.Length == Total ? "Every gear" : $"Gears {string.Join(", ", Names)}",
    };
}
