namespace Circuits.Studies.Identify;

/// <summary>Reads locations as people write them: <c>22-23</c>, <c>22 to 23</c>, <c>5 on upper</c>.</summary>
internal static class LocationWords
{
    /// <summary>The locations that the words name, or null with what is wrong with them.</summary>
    public static (IReadOnlyList<Spot>? Spots, string? Problem) Read(PartTraits part, string words)
    {
        if (One(part, words) is { Spot: { } whole }) return ([whole], null);

        // A joint named at the end holds for all of them.
        var on = words.LastIndexOf(" on ", StringComparison.Ordinal);
        var joint = on < 0 ? "" : words[on..];
        var list = on < 0 ? words : words[..on];
        var spots = new List<Spot>();
        foreach (var word in list.Replace(" to ", "-").Replace(" and ", "-").Split(['-', ',', '/', '&', ' '], StringSplitOptions.RemoveEmptyEntries))
        {
            var (spot, problem) = One(part, word + joint);
            if (spot is not { } found) return (null, problem);
            spots.Add(found);
        }

        return spots.Count == 0 ? (null, null) : (spots, null);
    }

    /// <summary>One location, or null with what is wrong with it.</summary>
    public static (Spot? Spot, string? Problem) One(PartTraits part, string word)
    {
        word = word.Trim();
        var found = part.Spots.All.Where(spot => Same(part.Spots.Label(spot), word) || Same($"{spot.Id} on {spot.Joint}", word)).ToList();
        if (found.Count == 1) return (found[0], null);
        var bare = part.Spots.All.Where(spot => Same(spot.Id, word)).ToList();
        return bare.Count > 1
            ? (null, $"{part.Part.Name} has a location {word} on joints {string.Join(" and ", bare.Select(spot => spot.Joint))}: say {part.Spots.Label(bare[0])}")
            : (null, $"{part.Part.Name} has no location '{word}'");
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
