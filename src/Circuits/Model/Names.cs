using Circuits.Findings;

namespace Circuits.Model;

/// <summary>The full name of a passage: its part and its own name.</summary>
/// <param name="Part">The part's name; empty for the sump.</param>
/// <param name="Passage">The passage's name within its part.</param>
public readonly record struct PassageName(string Part, string Passage) : IComparable<PassageName>, INamed
{
    // Names are looked up again and again, in every network that is built.
    private readonly int hash = HashCode.Combine(Part, Passage);

    /// <summary>The sump. Every unit has it; it belongs to no part.</summary>
    public static PassageName Exhaust { get; } = new("", "exhaust");

    /// <summary>Whether this is the sump.</summary>
    public bool IsExhaust => Part.Length == 0;

    /// <inheritdoc/>
    public int CompareTo(PassageName other)
    {
        var byPart = string.CompareOrdinal(Part, other.Part);
        return byPart != 0 ? byPart : string.CompareOrdinal(Passage, other.Passage);
    }

    /// <inheritdoc/>
    public bool Equals(PassageName other) => hash == other.hash && Passage == other.Passage && Part == other.Part;

    /// <inheritdoc/>
    public override int GetHashCode() => hash;

    /// <inheritdoc/>
    public string InWords => ToString();

    /// <summary>The name as files and reports write it: <c>part.passage</c>, or <c>exhaust</c>.</summary>
    public override string ToString() => IsExhaust ? Passage : $"{Part}.{Passage}";

    /// <summary>Orders by part, then passage.</summary>
    public static bool operator <(PassageName left, PassageName right) => left.CompareTo(right) < 0;

    /// <summary>Orders by part, then passage.</summary>
    public static bool operator >(PassageName left, PassageName right) => left.CompareTo(right) > 0;

    /// <summary>Orders by part, then passage.</summary>
    public static bool operator <=(PassageName left, PassageName right) => left.CompareTo(right) <= 0;

    /// <summary>Orders by part, then passage.</summary>
    public static bool operator >=(PassageName left, PassageName right) => left.CompareTo(right) >= 0;
}

/// <summary>A passage as an element names it, with the place of the naming.</summary>
/// <param name="Name">The passage.</param>
/// <param name="Place">Where the name is written.</param>
public readonly record struct PassageUse(PassageName Name, Place Place);

/// <summary>A name of something other than a passage, with the place where it is written.</summary>
/// <param name="Name">The name.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct NameUse(string Name, Place Place);
