using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;

namespace Circuits.Studies.Diagnosis;

/// <summary>What a candidate explains, lets expect besides, and contradicts: for every form of a report.</summary>
public static class CandidateWords
{
    /// <summary>What was observed, is out of the ordinary, and it explains.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<string> Explains(Candidate candidate, DiagnosisReport report) =>
    [
        .. report.Evidence.Where((item, i) => candidate.Degrees[i] > 0 && item.Degree([], report.Sound) == 0).Select(item => item.Text),
    ];

    /// <summary>What it lets expect in gears of which nothing was told.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<string> Expects(Candidate candidate, DiagnosisReport report)
    {
        var told = report.Evidence.OfType<Evidence.Felt>().SelectMany(felt => felt.Gears).ToHashSet();
        return
        [
            .. Enumerable.Range(0, candidate.Effects.Length).Where(gear => !told.Contains(gear) && candidate.Effects[gear].Kind != FeelKind.AsItShould)
                .Select(gear => Complaints.Of(candidate.Effects[gear], report.Assembly.Unit.Gears[gear].Name)!),
        ];
    }

    /// <summary>What was observed and it contradicts, with what it lets expect instead.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<string> Contradicts(Candidate candidate, DiagnosisReport report) =>
    [
        .. report.Evidence.Select((item, i) => (Item: item, Degree: candidate.Degrees[i])).Where(pair => pair.Degree == 0).Select(pair => pair.Item switch
        {
            Evidence.Reading reading => string.Create(
                CultureInfo.InvariantCulture,
                $"{reading.Text}: it lets expect {candidate.Effects[reading.Gear].Taps[reading.Tap] ?? 0:0} kPa"),
            Evidence.Felt felt => $"{felt.Text}: it lets expect {string.Join(", ", felt.In.Where(item => item.Of(candidate.Effects[item.Gear]) == 0).Select(item => Complaints.Of(candidate.Effects[item.Gear], report.Assembly.Unit.Gears[item.Gear].Name) ?? $"{report.Assembly.Unit.Gears[item.Gear].Name} as it should be"))}",
            _ => pair.Item.Text,
        }),
    ];
}
