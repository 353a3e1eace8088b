using System.Diagnostics;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Html;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;

namespace Circuits.Benchmarks;

/// <summary>How long the page to hand over takes, from reading the file to its last byte.</summary>
internal static class ReportLimits
{
    private const double Wanted = 3;

    public static int Run()
    {
        Console.WriteLine(FormattableString.Invariant($"{Environment.ProcessorCount} cores"));
        foreach (var name in new[] { "rill", "weir", "firth" })
        {
            var (first, size) = Once(name);
            var again = Once(name).Seconds;
            Console.WriteLine(FormattableString.Invariant($"{name}: {first:0.00} s the first time in this process, {again:0.00} s the second; {size / 1024} KiB; wanted for the full unit: under {Wanted:0} s"));
        }

        return 0;
    }

    private static (double Seconds, int Size) Once(string name)
    {
        var watch = Stopwatch.StartNew();
        var unit = CircuitReader.ReadFile(Path.Combine("circuits", name, $"{name}.yaml")).Unit ?? throw new InvalidOperationException($"Start it at the top of the repository: circuits/{name} is not there.");
        var (judge, assembly) = (new UnitJudge(unit), Assembly.DefaultOf(unit));
        var sheet = JobSheet.Of(judge, assembly, new JobGiven(null, [], [], []), new RemedyOptions(), CancellationToken.None);
        var shifts = ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit), ShiftPlans.Of(unit));
        var air = AirStudy.Run(assembly, null, 6, CancellationToken.None);
        var page = ReportPage.Of(new ReportContent(sheet, AssemblyViews.Of(judge, assembly), shifts, air, "circuits report", ""), UnitSystem.Si);
        return (watch.Elapsed.TotalSeconds, page.Length);
    }
}
