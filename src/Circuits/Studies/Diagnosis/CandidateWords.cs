using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Quantities;
using Circuits.Studies.AirCheck;

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

    /// <summary>What it lets expect in gears of which nothing was told, and besides what was told at the places where air was let in.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<Phrase> Expects(Candidate candidate, DiagnosisReport report)
    {
        var told = report.Evidence.OfType<Evidence.Felt>().SelectMany(felt => felt.Gears).ToHashSet();
        return
        [
            .. Enumerable.Range(0, candidate.Effects.Length).Where(gear => !told.Contains(gear) && candidate.Effects[gear].Kind != FeelKind.AsItShould)
                .Select(gear => Complaints.Of(candidate.Effects[gear], report.Assembly.Unit.Gears[gear].Name)!),
            .. AirBesides(candidate, report),
        ];
    }

    private static IEnumerable<Phrase> AirBesides(Candidate candidate, DiagnosisReport report)
    {
        foreach (var told in report.Evidence.OfType<AirEvidence>().GroupBy(item => (item.Predictions, item.Port)))
        {
            var first = told.First();
            foreach (var sign in AirSign.Between(first.Right, first.Predictions.At(candidate.Faults, first.Port)))
            {
                if (!told.Any(item => item.At == sign.At)) yield return Phrase.Of($"air at {AirWords.Of(first.Predictions.Ports[first.Port])}: {sign}");
            }
        }
    }

    /// <summary>What was observed and it contradicts, with what it lets expect instead.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<Phrase> Contradicts(Candidate candidate, DiagnosisReport report) =>
    [
        .. report.Evidence.Select((item, i) => (Item: item, Degree: candidate.Degrees[i])).Where(pair => pair.Degree == 0).Select(pair => pair.Item switch
        {
            Evidence.Reading reading => Phrase.Of(
                $"{reading.Text}: it lets expect {new Pressure(reading.Predicted(candidate.Faults, candidate.Effects))}"),
            Evidence.Felt felt => Phrase.Of(
                $"{felt.Text}: it lets expect {Phrase.Join(", ", felt.In.Where(item => item.Of(candidate.Effects[item.Gear]) == 0).Select(item => Complaints.Of(candidate.Effects[item.Gear], report.Assembly.Unit.Gears[item.Gear].Name) ?? Phrase.Of($"{report.Assembly.Unit.Gears[item.Gear].Name} as it should be")))}"),
            AirEvidence air => Phrase.Of($"{air.Text}: it lets expect {AirWords.Between(air.Right, air.Predictions.At(candidate.Faults, air.Port))}"),
            _ => Phrase.Of($"{pair.Item.Text}"),
        }),
    ];
}
