using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Studies.AirCheck;

/// <summary>Where air is let in.</summary>
public enum AirPortKind
{
    /// <summary>A gauge port; the unit is whole.</summary>
    Tap,

    /// <summary>A clutch's feed that neither a gauge port nor a face reaches; the unit is whole.</summary>
    Feed,

    /// <summary>A passage on an open face: a joint is taken apart, its sheets are off, and what faces them is gone.</summary>
    Face,
}

/// <summary>A place where air can be let in.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name, of which there is one in a unit: <c>direct</c> for a gauge port, <c>case.direct@deck</c> for a face.</param>
/// <param name="Passage">The passage that it leads into.</param>
/// <param name="Joint">The joint that is open, or null.</param>
/// <param name="Locations">On a face, where the passage opens: air goes in at the first, the others are covered. Empty otherwise.</param>
/// <param name="Place">Where the file describes it.</param>
public sealed record AirPort(AirPortKind Kind, string Name, PassageName Passage, string? Joint, ImmutableArray<string> Locations, Place Place);

/// <summary>What a clutch's piston does when air is let in.</summary>
public enum AirMove
{
    /// <summary>Too little air reaches it.</summary>
    Stays,

    /// <summary>It may move or not: it has some of the air's pressure.</summary>
    May,

    /// <summary>It moves.</summary>
    Moves,
}

/// <summary>Air that comes out.</summary>
/// <param name="At">Where, in words: <c>upper.start by upper.swing</c>; the same place has the same words whatever is wrong.</param>
/// <param name="SquareMillimetres">How much: the hole that would let out as much at the full pressure of the air.</param>
/// <param name="Heard">Whether it is heard beside what else comes out.</param>
/// <param name="Place">The line of what it comes out of.</param>
public sealed record AirHiss(string At, double SquareMillimetres, bool Heard, Place Place);

/// <summary>What happens when air is let in at one place.</summary>
/// <param name="Settled">Whether valves and balls come to rest; nothing else counts when they do not.</param>
/// <param name="Clutches">What every clutch does, in the order of the file.</param>
/// <param name="Hisses">Where air comes out, most first.</param>
public sealed record AirOutcome(bool Settled, ImmutableArray<KeyValuePair<string, AirMove>> Clutches, ImmutableArray<AirHiss> Hisses)
{
    /// <summary>
    /// The least gauge pressure of the air, kPa, at which a spring gives way to it and the outcome may be another one; infinite where no spring is met.
    /// </summary>
    public double HoldsBelow { get; init; } = double.PositiveInfinity;

    /// <summary>What gives way then, or null.</summary>
    public string? GivesWay { get; init; }

    /// <summary>What one clutch does; it stays when there is none of that name.</summary>
    /// <param name="clutch">The clutch.</param>
    public AirMove MoveOf(string clutch)
    {
        foreach (var (name, move) in Clutches)
        {
            if (name == clutch) return move;
        }

        return AirMove.Stays;
    }

    /// <summary>Whether another is the same in everything that counts.</summary>
    /// <param name="other">The other.</param>
    public bool IsLike(AirOutcome other) => ReferenceEquals(this, other)
        || (Settled == other.Settled && Clutches.SequenceEqual(other.Clutches)
            && Hisses.Select(hiss => (hiss.At, hiss.SquareMillimetres, hiss.Heard)).SequenceEqual(other.Hisses.Select(hiss => (hiss.At, hiss.SquareMillimetres, hiss.Heard))));

    /// <summary>How much air comes out at a place, as <see cref="AirHiss.SquareMillimetres"/>.</summary>
    /// <param name="at">The place.</param>
    public double AmountAt(string at)
    {
        foreach (var hiss in Hisses)
        {
            if (hiss.At == at) return hiss.SquareMillimetres;
        }

        return 0;
    }
}
