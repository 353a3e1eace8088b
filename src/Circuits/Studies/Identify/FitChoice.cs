using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Says how to name the parts on the bench to the other verbs.</summary>
internal static class FitChoice
{
    // A part that stays undecided between look-alikes doubles the lines; more of them help nobody.
    private const int MostLines = 8;

    /// <summary>
    /// The values of <c>--fit</c>, one for every choice among look-alikes; empty while a part is open or unknown, or when there
    /// are too many.
    /// </summary>
    public static ImmutableArray<string> Of(Unit unit, ImmutableArray<PartIdentity> parts)
    {
        if (parts.Any(part => part.Status is PartStatus.Open or PartStatus.Unknown)) return [];
        var count = parts.Aggregate(1L, (product, part) => Math.Min(product * part.Remaining.Length, MostLines + 1));
        if (count > MostLines) return [];
        var whole = unit.Parts.All(part => part.Revisions.Length == 1 || parts.Any(known => known.Part == part));
        return [.. Choices([.. parts.Where(part => part.Part.Revisions.Length > 1)]).Select(choice => whole ? Whole(unit, choice) : Listed(choice)).Where(fit => fit.Length > 0)];
    }

    private static IEnumerable<ImmutableArray<KeyValuePair<string, string>>> Choices(ImmutableArray<PartIdentity> parts) =>
        parts.Aggregate(
            (IEnumerable<ImmutableArray<KeyValuePair<string, string>>>)[[]],
            (choices, part) => choices.SelectMany(
                _ => part.Remaining, (choice, revision) => choice.Add(KeyValuePair.Create(part.Part.Name, part.Part.Revisions[revision].Name))));

    /// <summary>The matched set that differs least, and what differs.</summary>
    private static string Whole(Unit unit, ImmutableArray<KeyValuePair<string, string>> choice)
    {
        if (unit.Matched.IsEmpty) return Listed(choice);
        var (set, others) = unit.Matched
            .Select(set => (Set: set, Others: choice.Where(pair => !set.Revisions.Contains(pair)).ToImmutableArray()))
            .MinBy(pair => pair.Others.Length);
        return others.IsEmpty ? set.Name : $"{set.Name},{Listed(others)}";
    }

    private static string Listed(ImmutableArray<KeyValuePair<string, string>> choice) =>
        string.Join(',', choice.Select(pair => $"{pair.Key}={pair.Value}"));
}
