using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary><c>gears</c>: one assembly, every gear.</summary>
internal static class GearsVerb
{
    public static Verb Create(CommonOptions options) => new(
        "gears", "What these parts do together in every gear: clutches, verdicts, cross-feeds, what the driver feels.",
        [options.Files, options.Fit, options.Gear, options.Quick, options.FindingsFormat, options.Output, options.Units],
        ["circuits gears unit.yaml", "circuits gears unit.yaml --fit late,plate=1", "circuits gears unit.yaml --fit plate=1 --gear R"],
        session => PerUnit.Run(session, (unit, file) => Ask(session, unit, file)));

    private static UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var gears = PerUnit.Gears(session, unit, file);
        var judge = new UnitJudge(unit, session.Mode);
        var whole = judge.Report(assembly);
        var report = Only(whole with { Findings = [.. judge.GearsetFaults, .. whole.Findings] }, gears);
        return new UnitAnswer(
            () => GearsText.Of(report, Reference(judge, report), detailed: session.Gears.Length > 0, session.Text),
            () => Documents.Of(report),
            report.Findings)
        {
            Cases = TestedCases.Of(report),
        };
    }

    private static AssemblyReport Only(AssemblyReport report, IReadOnlyCollection<string> gears) => report with
    {
        Gears = [.. report.Gears.Where(gear => gears.Contains(gear.Gear))],
        Changes = [.. report.Changes.Where(change => gears.Contains(change.Plan.To.Name))],
        Findings = [.. report.Findings.Where(finding => finding.Gear is null || gears.Contains(finding.Gear))],
    };

    private static AssemblyReport? Reference(UnitJudge judge, AssemblyReport report)
    {
        if (report.Assembly.Matched is not null || report.NearestMatched.IsEmpty) return null;
        var unit = report.Assembly.Unit;
        return judge.Report(Assembly.Of(unit, unit.Matched.First(set => set.Name == report.NearestMatched[0])), timed: false);
    }
}
