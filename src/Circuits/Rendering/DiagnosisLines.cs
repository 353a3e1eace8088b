using System.Globalization;
using Circuits.Findings;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.JobSheets;

namespace Circuits.Rendering;

/// <summary>A diagnosis as lines of a sheet.</summary>
internal static class DiagnosisLines
{
    private const int MostClasses = 5;
    private const int MostMembers = 4;

    /// <summary>The lines.</summary>
    public static IEnumerable<SheetLine> Of(JobDiagnosis diagnosis, UnitSystem units)
    {
        var report = diagnosis.Report;
        if (!report.Contradictions.IsEmpty)
        {
            yield return new SheetLine("what was told cannot all be true, so it is not diagnosed");
            foreach (var pair in report.Contradictions) yield return new SheetLine($"{pair.First.Text} and {pair.Second.Text}: {PhraseWords.Of(pair.Why, units)}", 1);
            yield break;
        }

        if (report.SoundExplains)
        {
            yield return new SheetLine("the parts as found explain all that was told; no fault is needed");
            yield break;
        }

        if (report.Explaining.IsEmpty)
        {
            yield return new SheetLine(string.Create(
                CultureInfo.InvariantCulture, $"nothing explains all that was told: {report.Faults} single faults and {report.Pairs} pairs were tried"));
        }
        else
        {
            yield return new SheetLine("explain all that was told, likeliest first:");
        }

        foreach (var known in report.Explaining.Take(MostClasses))
        {
            var names = string.Join("; or ", known.Members.Take(MostMembers).Select(member => Named(member, units)));
            var more = known.Members.Length > MostMembers ? string.Create(CultureInfo.InvariantCulture, $"; or {known.Members.Length - MostMembers} more that look the same") : "";
            yield return new SheetLine(string.Create(CultureInfo.InvariantCulture, $"{names}{more} ({100 * known.Share:0} %)"), 1);
        }

        if (report.Explaining.Length > MostClasses) yield return new SheetLine(string.Create(CultureInfo.InvariantCulture, $"{report.Explaining.Length - MostClasses} less likely"), 1);
        if (diagnosis.Next is { } next) yield return new SheetLine($"next test, which tells most for its cost: {PhraseWords.Of(next.Text, units)}");
        foreach (var other in report.LookAlikes) yield return new SheetLine($"not hydraulic, and looks the same: {PhraseWords.Of(other, units)}");
    }

    private static string Named(Candidate candidate, UnitSystem units)
    {
        var places = candidate.Faults.Where(fault => fault.Place != Place.None).Select(fault => fault.Place.ToString()).ToList();
        var name = PhraseWords.Of(candidate.Name, units);
        return places.Count == 0 ? name : $"{name} ({string.Join(", ", places)})";
    }
}
