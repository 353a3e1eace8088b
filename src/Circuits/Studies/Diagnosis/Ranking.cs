using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>
/// How likely candidates are: the weights of their faults, times how well each piece of evidence fits (Bayes' rule with the pieces taken as
/// independent). What contradicts counts as told wrongly, which happens; what would be felt and was not told counts a little against it.
/// </summary>
internal static class Ranking
{
    /// <summary>How likely a piece of evidence is told wrongly. Judgement, no source.</summary>
    public const double ToldWrongly = 0.02;

    /// <summary>How likely a second fault is there besides the first. Judgement, no source.</summary>
    public const double SecondFault = 0.1;

    /// <summary>How likely nobody tells of a gear that is plainly wrong. Judgement, no source.</summary>
    private const double NotTold = 0.5;

    /// <summary>How likely nobody tells of a gear that only feels a little different. Judgement, no source.</summary>
    private const double SlightNotTold = 0.9;

    /// <summary>A candidate with its score.</summary>
    /// <param name="faults">The faults.</param>
    /// <param name="effects">What they do.</param>
    /// <param name="evidence">The evidence.</param>
    /// <param name="total">The weights of all faults together.</param>
    /// <param name="driven">The gears that a driver knows.</param>
    public static Candidate Of(
        ImmutableArray<Fault> faults, ImmutableArray<GearEffect> effects, ImmutableArray<Evidence> evidence, double total, ImmutableArray<int> driven)
    {
        GearEffect?[] known = [.. effects];
        ImmutableArray<double> degrees = [.. evidence.Select(item => item.Degree(faults, known))];
        var score = faults.Sum(fault => Math.Log(fault.Weight / total)) + ((faults.Length - 1) * Math.Log(SecondFault)) + degrees.Sum(degree => Math.Log(Math.Max(degree, ToldWrongly)));
        var told = evidence.OfType<Evidence.Felt>().SelectMany(felt => felt.Gears).ToHashSet();
        foreach (var gear in driven)
        {
            if (!told.Contains(gear)) score += Math.Log(Untold(effects[gear].Kind));
        }

        return new Candidate(faults, effects, degrees, score);
    }

    /// <summary>The score of a candidate but for the readings that need flow.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="evidence">The evidence.</param>
    public static double WithoutReadings(Candidate candidate, ImmutableArray<Evidence> evidence) =>
        candidate.Score - evidence.Zip(candidate.Degrees).Where(pair => DiagnosisStudy.NeedsFlow(pair.First)).Sum(pair => Math.Log(Math.Max(pair.Second, ToldWrongly)));

    private static double Untold(FeelKind kind) => kind switch
    {
        FeelKind.AsItShould or FeelKind.Starved or FeelKind.OverPressure => 1,
        FeelKind.LetsGoFast or FeelKind.LetsGoSlowly or FeelKind.Harsh or FeelKind.Hard or FeelKind.Delayed or FeelKind.Soft or FeelKind.NoLockUp or FeelKind.NoEngineBraking or FeelKind.Drags or FeelKind.OneTooMany => SlightNotTold,
        _ => NotTold,
    };

    /// <summary>Candidates, likeliest first; equally likely ones in the order of their codes.</summary>
    public static IEnumerable<Candidate> Sorted(IEnumerable<Candidate> candidates) => candidates
        .OrderByDescending(candidate => Math.Round(candidate.Score, 9)).ThenBy(candidate => candidate.Faults.Length)
        .ThenBy(candidate => string.Join('\n', candidate.Faults.Select(fault => fault.Code)), StringComparer.Ordinal);
}
