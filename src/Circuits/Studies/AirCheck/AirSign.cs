using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Studies.AirCheck;

/// <summary>What is other than it should be.</summary>
public enum AirSignKind
{
    /// <summary>A clutch stays that should move.</summary>
    Stays,

    /// <summary>A clutch moves that should stay.</summary>
    Moves,

    /// <summary>Air comes out where none should.</summary>
    Hisses,

    /// <summary>No air comes out where it should.</summary>
    Silent,
}

/// <summary>Something that a person at the bench notices.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="At">The clutch, or where air comes out.</param>
public readonly record struct AirSign(AirSignKind Kind, string At) : IWorded
{
    /// <inheritdoc/>
    public IEnumerable<string> About => [Kind.ToString(), At];

    /// <summary>A hiss must be this many times as loud, or as faint, to be noticed as new or gone. Judgement, no source.</summary>
    private const double Clearly = 4;

    /// <summary>
    /// What tells an outcome from the one that should be. A piston that may move or not tells nothing, nor does a hiss that is only somewhat louder,
    /// nor anything where valves do not come to rest.
    /// </summary>
    /// <param name="should">The outcome that should be.</param>
    /// <param name="found">The one that is.</param>
    public static ImmutableArray<AirSign> Between(AirOutcome should, AirOutcome found)
    {
        if (!should.Settled || !found.Settled) return [];
        var signs = ImmutableArray.CreateBuilder<AirSign>();
        foreach (var (clutch, move) in should.Clutches)
        {
            var now = found.MoveOf(clutch);
            if (move == AirMove.Moves && now == AirMove.Stays) signs.Add(new AirSign(AirSignKind.Stays, clutch));
            if (move == AirMove.Stays && now == AirMove.Moves) signs.Add(new AirSign(AirSignKind.Moves, clutch));
        }

        foreach (var hiss in found.Hisses)
        {
            if (hiss.Heard && should.AmountAt(hiss.At) * Clearly <= hiss.SquareMillimetres) signs.Add(new AirSign(AirSignKind.Hisses, hiss.At));
        }

        foreach (var hiss in should.Hisses)
        {
            if (hiss.Heard && found.AmountAt(hiss.At) * Clearly <= hiss.SquareMillimetres) signs.Add(new AirSign(AirSignKind.Silent, hiss.At));
        }

        return signs.ToImmutable();
    }
}
