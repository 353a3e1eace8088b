using Circuits.Model;

namespace Circuits.Cli;

/// <summary>Turns <c>--fit</c> into an assembly.</summary>
internal static class FittedParts
{
    /// <summary>
    /// The assembly that the items name: a matched set, single revisions laid over it, or over the first matched set
    /// when none is named.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <param name="file">Its file, for messages.</param>
    /// <param name="items">Items of the form <c>part=revision</c>, or a matched set's name.</param>
    /// <exception cref="UserError">An item names what the unit does not have, or two items contradict.</exception>
    public static Assembly Of(Unit unit, string file, IReadOnlyList<string> items)
    {
        var sets = items.Where(item => !item.Contains('=', StringComparison.Ordinal)).Distinct().ToList();
        if (sets.Count > 1)
        {
            throw new UserError(
                UserError.Usage, $"--fit names two matched sets: {sets[0]} and {sets[1]}", "Name one, and lay single parts over it as part=revision.");
        }

        var start = sets.Count == 0 ? Assembly.DefaultOf(unit) : Assembly.Of(unit, MatchedSet(unit, file, sets[0]));
        var revisions = start.Revisions.ToBuilder();
        var named = new Dictionary<string, string>();
        foreach (var item in items.Where(item => item.Contains('=', StringComparison.Ordinal)))
        {
            var at = item.IndexOf('=', StringComparison.Ordinal);
            var (part, revision) = (item[..at], item[(at + 1)..]);
            if (named.TryGetValue(part, out var before) && before != revision)
                throw new UserError(UserError.Usage, $"--fit names two revisions of {part}: {before} and {revision}", "Name one.");
            named[part] = revision;
            var (index, chosen) = Single(unit, file, item);
            revisions[index] = chosen;
        }

        return Assembly.Of(unit, revisions.ToImmutable());
    }

    /// <summary>The part, by its number, and the revision that an item of the form <c>part=revision</c> names.</summary>
    /// <exception cref="UserError">It names what the unit does not have.</exception>
    public static (int Part, Revision Revision) Single(Unit unit, string file, string item)
    {
        var at = item.IndexOf('=', StringComparison.Ordinal);
        var (part, revision) = (item[..at], item[(at + 1)..]);
        var index = IndexOf(unit, file, part);
        return (index, unit.Parts[index].FindRevision(revision)
            ?? throw UserError.Unknown($"revision of {part}", revision, [.. unit.Parts[index].Revisions.Select(known => known.Name)], $" in {file}"));
    }

    private static MatchedSet MatchedSet(Unit unit, string file, string name)
    {
        if (unit.Matched.FirstOrDefault(set => set.Name == name) is { } found) return found;
        if (unit.FindPart(name) is { } part)
        {
            throw new UserError(
                UserError.Usage, $"--fit {name} names a part without a revision",
                $"Write {name}={part.Revisions[^1].Name}; its revisions: {string.Join(", ", part.Revisions.Select(known => known.Name))}.");
        }

        throw UserError.Unknown("matched set", name, [.. unit.Matched.Select(set => set.Name)], $" in {file}");
    }

    private static int IndexOf(Unit unit, string file, string part)
    {
        for (var i = 0; i < unit.Parts.Length; i++)
        {
            if (unit.Parts[i].Name == part) return i;
        }

        throw UserError.Unknown("part", part, [.. unit.Parts.Select(known => known.Name)], $" in {file}");
    }
}
