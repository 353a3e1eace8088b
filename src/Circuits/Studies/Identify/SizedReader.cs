using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Understands what was measured on a part: <c>21</c>, <c>hole at 21</c>, <c>22-23</c>, <c>a~b</c>, <c>ball in range</c>.</summary>
internal static class SizedReader
{
    public static PhraseReading Read(PartTraits part, string what, BenchSize size, bool alone)
    {
        var answer = new Answer.Sizes([size]);
        if (Hole(part, what) is { } hole) return new PhraseMatch(hole, answer, IsDenied: false);
        // A bare location means what lies there: a hole, or a slot when it is measured both ways or spans several.
        var phrase = what;
        if (part.Part.Kind == PartKind.Sheet && LocationWords.Read(part, PhraseWords.Normal(what)).Spots is not null) phrase = $"opening at {what}";
        var reading = new PhraseReader(part, alone).Read(phrase);
        if (reading.Match is not { } match) return reading;
        if (match.IsDenied) return PhraseReading.Fault("what is not there has no size");
        return SizedRow(part, match.Row.Trait, size) is { } row ? new PhraseMatch(row, answer, IsDenied: false)
            : PhraseReading.Fault($"{match.Row.Trait.Phrase} has no size that is measured");
    }

    private static TraitRow? SizedRow(PartTraits part, Trait trait, BenchSize size)
    {
        switch (trait.Key.Kind)
        {
            case TraitKind.Hole or TraitKind.Slot or TraitKind.Cup or TraitKind.Opening or TraitKind.Window:
                var at = trait.Key.Subject.Split('\n');
                var kinds = trait.Key.Kind is TraitKind.Hole or TraitKind.Slot ? [trait.Key.Kind]
                    : size.Length is not null || at.Length > 1 ? (TraitKind[])[TraitKind.Slot, TraitKind.Hole] : [TraitKind.Hole, TraitKind.Slot];
                var known = kinds.Select(kind => part.Find(new TraitKey(kind, trait.Key.Subject, true))).OfType<TraitRow>().FirstOrDefault();
                return known ?? Longer(part, kinds, at) ?? part.Row(SheetTraits.Opening(trait.Part, kinds[0], at, sized: true));
            case TraitKind.Restriction or TraitKind.Seat or TraitKind.Ball or TraitKind.Accumulator or TraitKind.Bypass:
                return part.Find(trait.Key with { Sized = true });
            default:
                return null;
        }
    }

    // A slot may be named by one of its ends, if only one slot reaches there.
    private static TraitRow? Longer(PartTraits part, TraitKind[] kinds, string[] at)
    {
        var longer = part.Rows.Where(row => row.Trait.Key is { Sized: true } key && kinds.Contains(key.Kind) && at.All(key.Subject.Split('\n').Contains)).ToList();
        return longer.Count == 1 ? longer[0] : null;
    }

    /// <summary>A hole inside the part, by the passages that it joins.</summary>
    private static TraitRow? Hole(PartTraits part, string what)
    {
        if (what.Split('~') is not [var a, var b]) return null;
        string[] names = [Local(a), Local(b)];
        // A seat between the same passages has to be called one.
        return part.Rows
            .Where(row => row.Trait.Key is { Sized: true, Kind: TraitKind.Restriction or TraitKind.Seat } key
                && key.Subject.Split('~').Order(StringComparer.Ordinal).SequenceEqual(names.Order(StringComparer.Ordinal)))
            .MinBy(row => row.Trait.Key.Kind);

        string Local(string name)
        {
            name = name.Trim();
            return name.StartsWith(part.Part.Name + ".", StringComparison.Ordinal) ? name[(part.Part.Name.Length + 1)..] : name;
        }
    }
}
