using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>What can be found out about a part's balls, valves, solenoids and the like, on one revision after the other; each kind's traits stand in its file.</summary>
internal sealed partial class ElementTraits(Unit unit, Part part, TraitTable table) : IElementKinds<int>
{
    public static void Derive(Unit unit, Part part, TraitTable table)
    {
        var traits = new ElementTraits(unit, part, table);
        for (var i = 0; i < part.Revisions.Length; i++)
        {
            traits.Each(i);
            foreach (var mark in part.Revisions[i].Marks) table.Yes(Mark(part.Name, mark.Name), i);
        }
    }

    public void Passages(int revision) { } // CastingTraits tells of them, by what all revisions have at a location

    public void Openings(int revision) { } // SheetTraits tells of them, by what all revisions have at a location

    public void Lever(int revision) { } // what the manual valve joins shows nowhere

    public void Leaks(int revision) { } // nobody sees a leak on a bench

    /// <summary>A mark in the author's words.</summary>
    public static Trait Mark(string part, string text)
    {
        var words = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return new Trait(part, new TraitKey(TraitKind.Mark, words.ToUpperInvariant(), false), words, Means.Look);
    }

    /// <summary>A pocket as phrases name it: by its own name within its part, else by its full name.</summary>
    public static string Local(string part, PassageName passage) => passage.Part == part ? passage.Passage : passage.ToString();

    private static Trait WithSize(string part, TraitKind kind, string subject, string phrase, bool sized, Means presence, Means size) =>
        new(part, new TraitKey(kind, subject, sized), phrase, sized ? size : presence) { Implied = sized ? [new TraitKey(kind, subject, false)] : [] };

    private static Trait Named(string part, TraitKind kind, string word, string name) =>
        new(part, new TraitKey(kind, name, false), $"{word} {name}", Means.Look);

    private static void DeriveHole(Part part, TraitKind kind, PassageUse a, PassageUse b, Shape shape, int revision, TraitTable table)
    {
        var (one, two) = Between(part.Name, kind, a, b);
        var phrase = $"{(kind == TraitKind.Seat ? "seat" : "drilled hole")} between {one} and {two}";
        var subject = $"{one}~{two}";
        table.Yes(WithSize(part.Name, kind, subject, phrase, false, Means.Look, Means.PinGauge), revision);
        table.Size(WithSize(part.Name, kind, subject, phrase, true, Means.Look, Means.PinGauge), revision, BenchText.SizeOf(shape));
    }

    /// <summary>The passages that a hole joins; of a plain one, in the order of their names.</summary>
    private static (string One, string Two) Between(string part, TraitKind kind, PassageUse a, PassageUse b)
    {
        var (one, two) = (Local(part, a.Name), Local(part, b.Name));
        return string.CompareOrdinal(one, two) > 0 && kind == TraitKind.Restriction ? (two, one) : (one, two);
    }
}
