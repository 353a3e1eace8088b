using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Cli;

/// <summary>Turns <c>--fit</c> of a matrix into the revisions that are tried of each part.</summary>
internal static class FreeParts
{
    /// <summary>
    /// The revisions of each part, in the order of the file: those that items name, or, of a part that no item names, what the matched set
    /// named has, or all.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <param name="file">Its file, for messages.</param>
    /// <param name="items">Items of the form <c>part=revision</c>, or a matched set's name.</param>
    /// <exception cref="UserError">An item names what the unit does not have, or two items contradict.</exception>
    public static ImmutableArray<ImmutableArray<Revision>> Of(Unit unit, string file, IReadOnlyList<string> items)
    {
        var singles = items.Where(item => item.Contains('=', StringComparison.Ordinal)).ToList();
        var named = singles.Select(item => FittedParts.Single(unit, file, item)).ToLookup(pair => pair.Part, pair => pair.Revision);
        var sets = items.Except(singles).ToList();
        var start = sets.Count == 0 ? null : FittedParts.Of(unit, file, sets);
        return
        [
            .. unit.Parts.Select((part, index) => named.Contains(index) ? [.. part.Revisions.Where(named[index].Contains)]
                : start is not null ? [start.Revisions[index]]
                : part.Revisions),
        ];
    }
}
