using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>What kind of thing is noticed when air is let in.</summary>
public enum AirNotice
{
    /// <summary>Everything is as it should be.</summary>
    AsItShould,

    /// <summary>A clutch moves.</summary>
    Moves,

    /// <summary>A clutch does not move.</summary>
    Stays,

    /// <summary>No clutch moves.</summary>
    NoneMoves,

    /// <summary>No clutch moves but those that should.</summary>
    NoOtherMoves,

    /// <summary>Air comes out at a place.</summary>
    Hisses,

    /// <summary>No air comes out at a place.</summary>
    Silent,

    /// <summary>No air comes out anywhere.</summary>
    NoneHisses,

    /// <summary>No air comes out but where it should.</summary>
    NoOtherHisses,
}

/// <summary>What was noticed when air was let in at one place on the bench.</summary>
/// <param name="Text">In the words in which it was told.</param>
/// <param name="Meaning">What was understood.</param>
/// <param name="Predictions">What air shows of faults.</param>
/// <param name="Port">The port's number among those of the predictions.</param>
/// <param name="Notice">What was noticed.</param>
/// <param name="At">The clutch or the place that it is about; null where it is about all.</param>
public sealed record AirEvidence(string Text, Phrase Meaning, AirPredictions Predictions, int Port, AirNotice Notice, string? At) : Evidence(Text, Meaning)
{
    /// <summary>How well anything fits where valves flutter. Judgement, no source.</summary>
    private const double Fluttering = 0.5;

    /// <summary>How well a piston that may move or not fits either. Judgement, no source.</summary>
    private const double Doubtful = 0.5;

    /// <summary>How well a hiss fits that is there and plainly fainter than it should be. Judgement, no source.</summary>
    private const double Faint = 0.3;

    /// <inheritdoc/>
    public override ImmutableArray<int> Gears => [];

    /// <summary>What should happen there.</summary>
    public AirOutcome Right => Predictions.Right[Port];

    /// <inheritdoc/>
    public override double Degree(ImmutableArray<Fault> faults, IReadOnlyList<GearEffect?> effects) => DegreeOf(Predictions.At(faults, Port));

    /// <summary>How well an outcome fits.</summary>
    /// <param name="found">The outcome.</param>
    public double DegreeOf(AirOutcome found)
    {
        if (!found.Settled || !Right.Settled) return Fluttering;
        return Notice switch
        {
            AirNotice.AsItShould => AirSign.Between(Right, found).IsEmpty ? 1 : 0,
            AirNotice.Moves => MovesIn(found, At!),
            AirNotice.Stays => 1 - MovesIn(found, At!),
            AirNotice.NoneMoves => found.Clutches.Select(clutch => 1 - MovesIn(found, clutch.Key)).DefaultIfEmpty(1).Min(),
            AirNotice.NoOtherMoves => found.Clutches.Where(clutch => Right.MoveOf(clutch.Key) == AirMove.Stays).Select(clutch => 1 - MovesIn(found, clutch.Key)).DefaultIfEmpty(1).Min(),
            AirNotice.Hisses => !IsHeard(found, At!) ? 0 : IsQuieter(found, At!) ? Faint : 1,
            AirNotice.Silent => !IsHeard(found, At!) || IsQuieter(found, At!) ? 1 : 0,
            AirNotice.NoneHisses => found.Hisses.Any(hiss => hiss.Heard) ? 0 : 1,
            _ => found.Hisses.Any(hiss => hiss.Heard && !IsHeard(Right, hiss.At)) ? 0 : 1,
        };
    }

    /// <summary>
    /// Whether two faults may fit together, judged by each alone: where one of them changes nothing at this port, the other has to fit.
    /// </summary>
    /// <param name="a">One fault.</param>
    /// <param name="b">The other.</param>
    internal bool CouldFit(Fault a, Fault b)
    {
        var (one, other) = (Predictions.At([a], Port), Predictions.At([b], Port));
        if (DegreeOf(one) > 0 && DegreeOf(other) > 0) return true;
        return one.IsLike(Right) ? DegreeOf(other) > 0 : !other.IsLike(Right) || DegreeOf(one) > 0;
    }

    /// <summary>Whether something else that was noticed at the same port cannot be true as well.</summary>
    /// <param name="other">The other.</param>
    internal bool Excludes(AirEvidence other)
    {
        if (other.Predictions != Predictions || other.Port != Port) return false;
        return IsAgainst(this, other) || IsAgainst(other, this);

        static bool IsAgainst(AirEvidence one, AirEvidence other) => one.Notice switch
        {
            AirNotice.AsItShould => other.DegreeOf(one.Right) == 0,
            AirNotice.Moves => (other.Notice == AirNotice.Stays && other.At == one.At) || other.Notice == AirNotice.NoneMoves
                || (other.Notice == AirNotice.NoOtherMoves && one.Right.MoveOf(one.At!) == AirMove.Stays),
            AirNotice.Hisses => (other.Notice == AirNotice.Silent && other.At == one.At) || other.Notice == AirNotice.NoneHisses
                || (other.Notice == AirNotice.NoOtherHisses && !IsHeard(one.Right, one.At!)),
            _ => false,
        };
    }

    private static double MovesIn(AirOutcome found, string clutch) => found.MoveOf(clutch) switch
    {
        AirMove.Moves => 1,
        AirMove.May => Doubtful,
        _ => 0,
    };

    private static bool IsHeard(AirOutcome outcome, string at) => outcome.Hisses.Any(hiss => hiss.Heard && hiss.At == at);

    private bool IsQuieter(AirOutcome found, string at) => AirSign.Between(Right, found).Contains(new AirSign(AirSignKind.Silent, at));
}
