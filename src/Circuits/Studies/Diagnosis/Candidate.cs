using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>One or two faults that may be what is wrong.</summary>
/// <param name="Faults">The faults; none for the assembly as it should be.</param>
/// <param name="Effects">What they do, gear by gear.</param>
/// <param name="Degrees">How well each piece of evidence fits, in the order in which it was told; 0 contradicts.</param>
/// <param name="Score">How likely it is against others: the higher the likelier.</param>
public sealed record Candidate(ImmutableArray<Fault> Faults, ImmutableArray<GearEffect> Effects, ImmutableArray<double> Degrees, double Score)
{
    /// <summary>Whether it explains everything that was observed.</summary>
    public bool ExplainsAll => Degrees.All(degree => degree > 0);

    /// <summary>What it is when it is no fault of the hydraulics; else null.</summary>
    public string? Mechanical { get; init; }

    /// <summary>Its name: that of its fault, or of both.</summary>
    public Phrase Name => Mechanical is { } other ? Phrase.Of($"{other}")
        : Faults.IsEmpty ? Phrase.Of($"no fault")
        : Phrase.Join(", and ", Faults.Select(fault => fault.Name));

    /// <summary>Whether neither the driver nor any gauge can tell it from another, in any gear.</summary>
    /// <param name="other">The other.</param>
    public bool IsLike(Candidate other)
    {
        for (var i = 0; i < Effects.Length; i++)
        {
            if (!Effects[i].IsLike(other.Effects[i])) return false;
        }

        return true;
    }

    /// <summary>How far its pressures are from the readings, kPa: the root of the mean square; null without readings.</summary>
    /// <param name="evidence">The evidence.</param>
    public double? FromReadings(ImmutableArray<Evidence> evidence)
    {
        var readings = evidence.OfType<Evidence.Reading>().ToList();
        return readings.Count == 0
            ? null
            : Math.Sqrt(readings.Average(reading => Math.Pow(reading.Predicted(Faults, Effects) - reading.Kilopascals, 2)));
    }
}

/// <summary>Candidates that no gauge and no road test can tell apart.</summary>
/// <param name="Members">The candidates, likeliest first.</param>
/// <param name="Share">Their share of all that explains everything, 0 to 1; 0 for those that do not.</param>
public sealed record CandidateClass(ImmutableArray<Candidate> Members, double Share)
{
    /// <summary>The likeliest.</summary>
    public Candidate First => Members[0];

    /// <summary>Sorts candidates into classes, the likeliest class first; those that explain nothing whole in the order of their likeliest members.</summary>
    /// <param name="candidates">The candidates, likeliest first.</param>
    public static ImmutableArray<CandidateClass> Of(IEnumerable<Candidate> candidates)
    {
        var classes = new List<List<Candidate>>();
        foreach (var candidate in candidates)
        {
            if (classes.Find(known => known[0].IsLike(candidate)) is { } home) home.Add(candidate);
            else classes.Add([candidate]);
        }

        var total = classes.Sum(Weight);
        return [.. classes.Select(members => new CandidateClass([.. members], total > 0 ? Weight(members) / total : 0)).OrderByDescending(known => Math.Round(known.Share, 12))];

        static double Weight(List<Candidate> members) => members.Where(member => member.ExplainsAll).Sum(member => Math.Exp(member.Score));
    }
}
