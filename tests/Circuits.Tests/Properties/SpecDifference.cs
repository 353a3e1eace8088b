namespace Circuits.Tests.Properties;

/// <summary>Writes a revision as what differs from the one that it is based on.</summary>
internal static class SpecDifference
{
    public static IEnumerable<string> Lines(string part, RevisionSpec from, RevisionSpec to)
    {
        yield return $"based-on: {from.Name}";
        foreach (var ((key, old), (_, now)) in SpecText.Named(part, from).Zip(SpecText.Named(part, to)))
        {
            var changes = Named(old, now).ToList();
            if (changes.Count == 0) continue;
            yield return $"{key}:";
            foreach (var change in changes) yield return $"  {change}";
        }

        var openings = Openings(from, to).ToList();
        if (openings.Count > 0) yield return $"openings: {ElementText.List(openings)}";
        if (to.IsGasket && !(from.IsGasket && from.OpenExcept.SequenceEqual(to.OpenExcept)))
            yield return $"open-except: {ElementText.List(to.OpenExcept)}";
        if (!to.IsGasket && from.IsGasket) yield return "open-except: null";
        foreach (var (key, old, now) in new[] { ("restrictions", from.Restrictions, to.Restrictions), ("leaks", from.Leaks, to.Leaks) })
        {
            var changes = Holes(part, old, now).ToList();
            if (changes.Count > 0) yield return $"{key}: {ElementText.List(changes)}";
        }
    }

    private static IEnumerable<string> Named(
        List<(string Name, SpecText.Entry Value)> old, List<(string Name, SpecText.Entry Value)> now)
    {
        foreach (var (name, value) in now)
        {
            var before = old.Find(item => item.Name == name).Value;
            if (before?.Text == value.Text) continue;
            if (before is null || value.Keys.IsEmpty)
            {
                yield return $"{name}: {value.Text}";
                continue;
            }

            var keys = value.Keys.Where(key => !before.Keys.Contains(key)).ToList();
            keys.AddRange(before.Keys.Where(key => value.Keys.All(other => other.Key != key.Key)).Select(key => (key.Key, "null")));
            yield return $"{name}: {ElementText.Flow(keys)}";
        }

        foreach (var (name, _) in old)
        {
            if (!now.Exists(item => item.Name == name)) yield return $"{name}: null";
        }
    }

    /// <summary>An entry takes the place of every inherited opening that shares a location with it, so those that stay are written again.</summary>
    private static IEnumerable<string> Openings(RevisionSpec from, RevisionSpec to)
    {
        var changed = new HashSet<string>();
        var texts = to.Openings.Select(Text).ToList();
        foreach (var opening in from.Openings)
        {
            if (!texts.Remove(Text(opening))) changed.UnionWith(opening.At);
        }

        foreach (var opening in to.Openings)
        {
            if (texts.Contains(Text(opening))) changed.UnionWith(opening.At);
        }

        for (var grown = true; grown;)
        {
            grown = false;
            foreach (var opening in from.Openings.Concat(to.Openings))
            {
                if (!opening.At.Any(changed.Contains) || opening.At.All(changed.Contains)) continue;
                changed.UnionWith(opening.At);
                grown = true;
            }
        }

        var written = to.Openings.Where(opening => opening.At.Any(changed.Contains)).ToList();
        foreach (var opening in written) yield return Text(opening);
        foreach (var location in from.Openings.SelectMany(opening => opening.At).Distinct().Where(changed.Contains))
        {
            if (!written.Exists(opening => opening.At.Contains(location))) yield return $"{{at: {location}, hole: null}}";
        }
    }

    private static string Text(OpeningSpec opening) => ElementText.Flow(ElementText.Opening(opening));

    private static IEnumerable<string> Holes(string part, IEnumerable<HoleSpec> old, IEnumerable<HoleSpec> now)
    {
        var before = old.ToLookup(Pair, hole => ElementText.Flow(ElementText.Hole(hole, part)));
        var after = now.ToLookup(Pair, hole => ElementText.Flow(ElementText.Hole(hole, part)));
        foreach (var group in after)
        {
            if (before[group.Key].SequenceEqual(group)) continue;
            foreach (var text in group) yield return text;
        }

        foreach (var hole in old.DistinctBy(Pair))
        {
            if (!after.Contains(Pair(hole)))
                yield return $"{{between: {ElementText.List([ElementText.Name(hole.A, part), ElementText.Name(hole.B, part)])}, hole: null}}";
        }
    }

    private static (string, string) Pair(HoleSpec hole)
    {
        var (a, b) = (hole.A.ToString(), hole.B.ToString());
        return string.CompareOrdinal(a, b) < 0 ? (a, b) : (b, a);
    }
}
