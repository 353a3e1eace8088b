using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging.Rules;
using Circuits.Quantities;

namespace Circuits.Studies.Diagnosis;

/// <summary>A diagnosis as findings, each at the line of what is at fault.</summary>
public static class DiagnosisFindings
{
    private const int Most = 10;

    /// <summary>The findings, likeliest fault first.</summary>
    /// <param name="report">The diagnosis.</param>
    public static ImmutableArray<Finding> Of(DiagnosisReport report)
    {
        var choice = report.Assembly.Choice;
        if (!report.Contradictions.IsEmpty)
        {
            return
            [
                .. report.Contradictions.Select(pair => DiagnosisRules.ContradictoryEvidence.At(
                    report.Assembly.Unit.Place, $"'{pair.First.Text}' and '{pair.Second.Text}' cannot both be true: {pair.Why}", DiagnosisRules.ContradictoryEvidence.Mend) with { Assembly = choice }),
            ];
        }

        if (report.SoundExplains) return [];
        if (report.Explaining.IsEmpty)
        {
            return
            [
                DiagnosisRules.Unexplained.At(
                    report.Assembly.Unit.Place, $"nothing explains all of: {Phrase.Join("; ", report.Evidence.Select(item => Phrase.Of($"{item.Text}")))}", DiagnosisRules.Unexplained.Mend) with { Assembly = choice },
            ];
        }

        return
        [
            .. report.Explaining.SelectMany(known => known.Members.Select(member => (Class: known, Member: member))).Take(Most).Select(pair => DiagnosisRules.PossibleFault.At(
                pair.Member.Faults[0].Place,
                $"{pair.Member.Name}: explains everything observed ({new Share(pair.Class.Share)} with what looks the same)") with
            {
                Assembly = choice,
                Related = [.. pair.Member.Faults.Skip(1).Select(fault => new RelatedPlace(fault.Place, fault.Name))],
            }),
        ];
    }
}
