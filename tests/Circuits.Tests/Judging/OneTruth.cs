using System.Globalization;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Pressures;
using Circuits.Studies.Shifts;

namespace Circuits.Tests.Judging;

/// <summary>
/// Holds what a report says of an assembly against what <c>pressures</c> and <c>shifts</c> print of it. Written from README's words and apart from the
/// stages that judge: it reads clutch pressures off the answers of one and verdicts off the other, and knows the gears' chart and the file's thresholds.
/// </summary>
/// <param name="judge">The judge of the unit.</param>
internal sealed class OneTruth(UnitJudge judge)
{
    private readonly Unit unit = judge.Unit;
    private readonly Dictionary<string, PressureReport> matched = [];

    /// <summary>Verdicts that were held against another source.</summary>
    public int Compared { get; private set; }

    /// <summary>Verdicts of gears and changes that are not decided.</summary>
    public int NotDecided { get; private set; }

    /// <summary>What contradicts, a line each.</summary>
    public List<string> Contradictions { get; } = [];

    /// <summary>Compares all of an assembly.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="assembly">The assembly.</param>
    /// <param name="report">What is said of it.</param>
    public void Compare(string name, Assembly assembly, AssemblyReport report)
    {
        Gears(name, assembly, report);
        Changes(name, assembly, report);
    }

    /// <summary>A gear is good just where every clutch that it charts has its share of what the matched set gives, and no other has one.</summary>
    private void Gears(string name, Assembly assembly, AssemblyReport report)
    {
        var here = Pressures(assembly);
        var worst = report.Gears.Max(gear => gear.Verdict);
        if (report.Verdict != worst) Contradictions.Add($"{name}: called {report.Verdict}, its worst gear {worst}");
        var set = report.NearestMatched.IsEmpty ? null : unit.Matched.First(set => set.Name == report.NearestMatched[0]);
        var there = set is null ? null : PressuresOf(set);
        for (var gear = 0; gear < unit.Gears.Length; gear++)
        {
            Compared++;
            var said = report.Gears[gear].Verdict;
            if (said == Verdict.NotDecided) NotDecided++;
            var wrong = Wrong(assembly, here, there, set, gear);

            // A clutch that has its pressure may still carry too little torque, and a gear with every clutch right may starve something: those say so by words of their own.
            if (said == Verdict.AsCharted && wrong is not null) Contradictions.Add($"{name}: gear {unit.Gears[gear].Name} is called good, and pressures show {wrong}");
            if (said is Verdict.Lost or Verdict.Unwanted && wrong is null && report.Gears[gear].Settled && !Untouched(report.Gears[gear]))
                Contradictions.Add($"{name}: gear {unit.Gears[gear].Name} is called {said}, and pressures show nothing of it");
        }
    }

    /// <summary>Whether a charted clutch has its pressure and its plates do not touch: its return spring is stronger.</summary>
    private static bool Untouched(GearReport gear) => gear.DecidedAt?.Clutches.Any(clutch => clutch is { Charted: true, ClampNewtons: <= 0 }) == true;

    private void Changes(string name, Assembly assembly, AssemblyReport report)
    {
        foreach (var change in report.Changes)
        {
            Compared++;
            if (change.Verdict == ShiftVerdict.NotDecided) NotDecided++;
            var said = change.Verdict;
            var study = ShiftStudy.Run(assembly, null, new ShiftConditions(change.At.Celsius, change.At.RevolutionsPerMinute, change.At.RevolutionsPerMinute, null), [change.Plan]);
            var found = study.Shifts[0].Here.Verdict;
            if (said != found) Contradictions.Add($"{name}: {change.Plan.Name} at {change.At.Name} is called {said}, shifts says {found}");
        }
    }

    private string? Wrong(Assembly assembly, PressureReport here, PressureReport? there, MatchedSet? set, int gear)
    {
        for (var point = 0; point < here.Points.Length; point++)
        {
            if (!here.Points[point].Gears[gear].Converged) return "no answer";
            foreach (var clutch in unit.Clutches)
            {
                var line = here.Points[point].Gears[gear].LineKilopascals;
                var kilopascals = Net(clutch.In(assembly), here, point, gear);
                var charted = unit.Gears[gear].Apply.Any(use => use.Name == clutch.Name);
                var full = there is null ? line : Full(clutch.In(Assembly.Of(unit, set!)), there, point, gear, charted) ?? line;
                full = Math.Max(full, unit.Thresholds.Floor * line);
                if (full < 0.01) continue;
                if (charted ? kilopascals < unit.Thresholds.Applied * full : kilopascals >= unit.Thresholds.Weak * full && kilopascals >= 0.01)
                    return string.Create(CultureInfo.InvariantCulture, $"{clutch.Name} at {kilopascals:0.#} of {full:0.#} kPa at {here.Points[point].At.Name}");
            }
        }

        return null;
    }

    /// <summary>What the matched set gives a clutch in that gear, or, where the gear does not apply it, the least that it gives it elsewhere.</summary>
    private double? Full(Clutch clutch, PressureReport there, int point, int gear, bool charted) => charted
        ? Net(clutch, there, point, gear)
        : Enumerable.Range(0, unit.Gears.Length).Where(other => unit.Gears[other].Apply.Any(use => use.Name == clutch.Name)).Select(other => (double?)Net(clutch, there, point, other)).Min();

    private static double Net(Clutch clutch, PressureReport report, int point, int gear)
    {
        var apply = At(clutch.At!.Value.Name.ToString());
        if (clutch.ReleaseAt is not { } release) return Math.Max(0, apply);
        var share = clutch.Area is { } area ? (clutch.ReleaseArea ?? area).SquareMillimetres / area.SquareMillimetres : 1;
        return Math.Max(0, apply - (share * At(release.Name.ToString())));

        double At(string passage) => report.Points[point].Gears[gear].Passages.FirstOrDefault(each => each.Passage == passage) is { } found ? found.Kilopascals : 0;
    }

    private PressureReport PressuresOf(MatchedSet set)
    {
        if (!matched.TryGetValue(set.Name, out var known)) matched[set.Name] = known = Pressures(Assembly.Of(unit, set));
        return known;
    }

    private PressureReport Pressures(Assembly assembly) => PressureStudy.Run(
        assembly, [.. judge.Points.Select(point => new Circuits.Studies.Pressures.OperatingPoint(point.Name, point.Celsius, point.RevolutionsPerMinute))], [.. unit.Gears.Select(gear => gear.Name)]);
}
