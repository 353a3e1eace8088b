using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>What the file says about the faults that its unit may have.</summary>
public sealed record FaultSettings
{
    /// <summary>Nothing said: every value at its default.</summary>
    public static FaultSettings Default { get; } = new();

    /// <summary>Weights of whole kinds, where they are not the default.</summary>
    public ImmutableArray<KeyValuePair<FaultKind, double>> Weights { get; init; } = [];

    /// <summary>Weights of single faults, by their codes.</summary>
    public ImmutableArray<NamedWeight> Named { get; init; } = [];

    /// <summary>Passages of one casting that open this near to each other may leak across. Default 15 mm. Judgement, no source.</summary>
    public Length Near { get; init; } = new(15);

    /// <summary>Further passages between which oil may cross.</summary>
    public ImmutableArray<NeighbourPair> Neighbours { get; init; } = [];

    /// <summary>What a bad piston seal leaves open. Default 10 mm2: a torn lip, not a weep. Judgement, no source.</summary>
    public Area SealLeak { get; init; } = new(10);

    /// <summary>What a cracked or unclamped wall leaves open. Default 5 mm2. Judgement, no source.</summary>
    public Area PassageLeak { get; init; } = new(5);

    /// <summary>What is left of a way to sump that is stopped up. Default 1 mm2. Judgement, no source.</summary>
    public Area Exhaust { get; init; } = new(1);

    /// <summary>The share of a clogged screen's mesh that is stopped up. Default 95 %: a mesh is far wider than what flows needs. Judgement, no source.</summary>
    public double Clog { get; init; } = 0.95;

    /// <summary>How many times its diameter a worn hole has. Default 1.5. Judgement, no source.</summary>
    public double Wear { get; init; } = 1.5;

    /// <summary>The weight of a kind.</summary>
    /// <param name="kind">The kind.</param>
    public double WeightOf(FaultKind kind)
    {
        foreach (var (known, weight) in Weights)
        {
            if (known == kind) return weight;
        }

        return FaultKinds.Of(kind).Weight;
    }
}

/// <summary>How likely one fault is.</summary>
/// <param name="Code">The fault's code: <c>hole-plugged plate@22</c>.</param>
/// <param name="Weight">Its weight, 0 or more.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct NamedWeight(string Code, double Weight, Place Place);

/// <summary>Two passages between which oil may cross.</summary>
/// <param name="A">One passage.</param>
/// <param name="B">The other.</param>
/// <param name="Place">Where it is written.</param>
public readonly record struct NeighbourPair(PassageUse A, PassageUse B, Place Place);
