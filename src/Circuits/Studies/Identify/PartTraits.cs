using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Everything that a person at a bench can find out about a part, and what it is on each revision.</summary>
public sealed class PartTraits
{
    private readonly Dictionary<TraitKey, TraitRow> byKey;

    private PartTraits(Unit unit, Part part)
    {
        Part = part;
        Spots = new PartSpots(unit, part);
        var table = new TraitTable(part.Revisions.Length);
        if (part.Kind == PartKind.Sheet) SheetTraits.Derive(part, Spots, table);
        Casting = new CastingTraits(part, Spots);
        Casting.Derive(table);
        ElementTraits.Derive(unit, part, table);
        Rows = table.Rows();
        byKey = Rows.ToDictionary(row => row.Trait.Key);
        // What a mark says may be derived anyway, and then for every revision: the author need not have repeated it.
        var reader = new PhraseReader(this, alone: true);
        Rows = [.. Rows.Where(row => !IsDerived(row, reader)).OrderBy(Group).ThenBy(FirstSpot)];
        byKey = Rows.ToDictionary(row => row.Trait.Key);
    }

    /// <summary>The part.</summary>
    public Part Part { get; }

    /// <summary>Its traits: of openings and cavities first, then of its elements, marks last.</summary>
    public ImmutableArray<TraitRow> Rows { get; }

    internal PartSpots Spots { get; }

    internal CastingTraits Casting { get; }

    /// <summary>The traits of a part.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="part">One of its parts.</param>
    public static PartTraits Of(Unit unit, Part part) => new(unit, part);

    /// <summary>A trait's row; one that no revision has is absent from all.</summary>
    internal TraitRow Row(Trait trait)
    {
        if (byKey.TryGetValue(trait.Key, out var row)) return row;
        var absent = TraitTable.AbsenceOf(trait.Key);
        return new TraitRow(trait, [.. Part.Revisions.Select(_ => absent)], IsListed: false);
    }

    // Sheets read best location by location; all else by what it is about.
    private static TraitKind Group(TraitRow row) => row.Trait.Key.Kind <= TraitKind.Window ? TraitKind.Hole : row.Trait.Key.Kind;

    private int FirstSpot(TraitRow row) => row.Trait.Key.Kind > TraitKind.Window ? 0
        : row.Trait.Key.Subject.Split('\n').Min(id => Spots.All.IndexOf(Spots.All.FirstOrDefault(spot => spot.Id == id)));

    /// <summary>Whether a mark says what is derived, and says it rightly of every revision that has it.</summary>
    private static bool IsDerived(TraitRow row, PhraseReader reader) =>
        row.Trait.Key.Kind == TraitKind.Mark && reader.Derived(row.Trait.Phrase) is { IsKnown: true } match
        && row.Answers.Zip(match.Row.Answers).All(pair => pair.First != Answer.Yes || pair.Second.Admits(match.Answer, 0) != match.IsDenied);

    internal TraitRow? Find(TraitKey key) => byKey.GetValueOrDefault(key);
}
