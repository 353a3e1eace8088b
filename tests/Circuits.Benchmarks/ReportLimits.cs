using System.Diagnostics;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Rendering.Drawing;
using Circuits.Rendering.Html;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Drawing;
using Circuits.Studies.JobSheets;
using Circuits.Studies.Remedies;
using Circuits.Studies.Shifts;
using Circuits.Tests;
using Circuits.Tests.Rendering.Drawing;

namespace Circuits.Benchmarks;

/// <summary>How long drawings and the page to hand over take, from reading the file to the last byte.</summary>
internal static class ReportLimits
{
    public static int Run()
    {
        Console.WriteLine(FormattableString.Invariant($"{Environment.ProcessorCount} cores; seconds, the first time in this process and the second"));
        Print("page of rill", "", () => Page("rill"));
        Print("page of weir", "", () => Page("weir"));
        Print("page of firth", "3", () => Page("firth"));
        Print("drawing of a gear of firth", "1", () => Draw(UnitOf("firth")));
        Print("drawing of 2,000 passages", "10", () => Draw(BigUnit.Of(1000)));
        var compiled = CompiledProgram.Seconds("report", CompiledProgram.Unit("firth")) is { } page
            ? FormattableString.Invariant($"page {page:0.00}, drawing of a gear {CompiledProgram.Seconds("draw", CompiledProgram.Unit("firth"), "--gear", "3"):0.00}")
            : CompiledProgram.Absent;
        Console.WriteLine($"firth, the compiled program from start to end: {compiled}");
        return 0;
    }

    private static void Print(string what, string wanted, Func<int> work)
    {
        var (first, size) = Time(work);
        var (second, _) = Time(work);
        Console.WriteLine(FormattableString.Invariant($"{what}: {first:0.00}, {second:0.00}; {size / 1024} KiB{(wanted.Length > 0 ? $"; wanted: under {wanted}" : "")}"));
    }

    private static (double Seconds, int Size) Time(Func<int> work)
    {
        var watch = Stopwatch.StartNew();
        var size = work();
        return (watch.Elapsed.TotalSeconds, size);
    }

    private static Unit UnitOf(string name) => CircuitReader.ReadFile(Path.Combine(Repository.Root, "circuits", name, $"{name}.yaml")).Unit!;

    private static int Draw(Unit unit)
    {
        var views = AssemblyViews.Of(new UnitJudge(unit), Assembly.DefaultOf(unit));
        using var text = new StringWriter();
        CircuitDrawing.Of(views.Gears, UnitSystem.Si).Write(text, views.Gears[^1]);
        return text.GetStringBuilder().Length;
    }

    private static int Page(string name)
    {
        var unit = UnitOf(name);
        var (judge, assembly) = (new UnitJudge(unit), Assembly.DefaultOf(unit));
        var sheet = JobSheet.Of(judge, assembly, new JobGiven(null, [], [], []), new RemedyOptions(), CancellationToken.None);
        var shifts = ShiftStudy.Run(assembly, null, ShiftStudy.ConditionsOf(unit), ShiftPlans.Of(unit));
        var air = AirStudy.Run(assembly, null, 6, CancellationToken.None);
        return ReportPage.Of(new ReportContent(sheet, AssemblyViews.Of(judge, assembly), shifts, air, "circuits report", ""), UnitSystem.Si).Length;
    }
}
