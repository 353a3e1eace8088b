using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Studies.Remedies;

/// <summary>
/// Says whether an assembly is right, with its report when it is. Every search of a remedy goes through here, so that a
/// faster way to judge has one place.
/// </summary>
internal sealed class RemedyJudge
{
    /// <summary>How much wider, by area, than before counts as metered no more; the rule <c>unmetered</c> draws the line there too.</summary>
    private const double Wider = 2;

    private const string ControlChanged = "control-changed";
    private const string DependsOnHistory = "depends-on-history";

    private readonly UnitJudge judge;
    private readonly CancellationToken stop;
    private readonly Action<int> progress;
    private readonly ImmutableArray<int> wrong;
    private readonly ImmutableArray<AssemblyReport> matched;
    private readonly HashSet<FindingKey> known;
    private readonly HashSet<FindingKey> usual;

    /// <summary>Judges what was, once.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="start">The assembly to be mended.</param>
    /// <param name="progress">Told how many assemblies have been solved.</param>
    /// <param name="stop">Breaks a search off.</param>
    public RemedyJudge(UnitJudge judge, Assembly start, Action<int> progress, CancellationToken stop)
    {
        this.judge = judge;
        this.stop = stop;
        this.progress = progress;
        Before = judge.Report(start);
        matched = [.. judge.Unit.Matched.Select(set => judge.Report(Assembly.Of(judge.Unit, set)))];
        usual = [.. matched.SelectMany(report => report.Findings).Select(About)];
        known = [.. Before.Findings.Select(About)];

        // A gear that never settles takes longest to solve, so it comes last.
        wrong = [.. Enumerable.Range(0, Before.Gears.Length).Where(i => Before.Gears[i].Verdict != Verdict.AsCharted).OrderBy(i => Before.Gears[i].Verdict)];
    }

    /// <summary>The report on the assembly as it is.</summary>
    public AssemblyReport Before { get; }

    /// <summary>How many assemblies were solved.</summary>
    public int Solved { get; private set; }

    /// <summary>Whether the assembly is right as it is.</summary>
    public bool IsRightBefore => Holds(Before);

    /// <summary>The report on an assembly in which every gear is right; null for any other.</summary>
    /// <param name="assembly">The assembly.</param>
    public AssemblyReport? Right(Assembly assembly)
    {
        stop.ThrowIfCancellationRequested();
        progress(++Solved);

        // What is wrong now is where most attempts fail, and one gear is soon solved.
        if (!judge.IsAsCharted(assembly, wrong)) return null;
        var report = judge.Report(assembly);
        return Holds(report) ? report : null;
    }

    /// <summary>
    /// The report on a worked assembly in which every gear is right and nothing new is wrong: no new way to sump, no new
    /// dependence on history. Another control than the matched set's may stay, and is told.
    /// </summary>
    /// <param name="assembly">The assembly.</param>
    public AssemblyReport? RightByWork(Assembly assembly) =>
        Right(assembly) is { } report && report.Findings.All(IsBearable) ? report : null;

    /// <summary>Warnings of a report that no matched set has.</summary>
    /// <param name="report">The report.</param>
    public ImmutableArray<Finding> Leaves(AssemblyReport report) =>
        [.. report.Findings.Where(finding => finding.Severity == Severity.Warning && !IsUsual(finding))];

    /// <summary>How far the openings that control clutches are from those of the nearest matched set: the sum of log ratios of their areas.</summary>
    /// <param name="report">A report.</param>
    public double DistanceToMatched(AssemblyReport report)
    {
        if (Nearest(report) is not { } set) return 0;
        var sum = 0.0;
        foreach (var (here, there) in report.Gears.Zip(set.Gears))
        {
            foreach (var (clutch, other) in here.Clutches.Zip(there.Clutches)) sum += Apart(clutch.Apply, other.Apply) + Apart(clutch.Release, other.Release);
        }

        return sum;
    }

    private static double Apart(Control? one, Control? other)
    {
        if (one is null || other is null) return 0;
        var ratio = Math.Abs(Math.Log(one.SquareMillimetres / other.SquareMillimetres));
        return double.IsFinite(ratio) ? ratio : 0;
    }

    /// <summary>What a finding is about, wherever the line stands that it points at.</summary>
    private static FindingKey About(Finding finding) => FindingKey.Of(finding) with { Place = Place.None };

    /// <summary>Whether matched sets have it too: what is known good by declaration is not held against a remedy.</summary>
    private bool IsUsual(Finding finding) => usual.Contains(About(finding))
        || (finding.Rule == DependsOnHistory && matched.Any(set => set.Gears.Any(gear => gear.Gear == finding.Gear && gear.DependsOnHistory)));

    private bool IsBearable(Finding finding) =>
        finding.Severity != Severity.Warning || finding.Rule == ControlChanged || known.Contains(About(finding)) || IsUsual(finding);

    private bool Holds(AssemblyReport report) => report.Verdict == Verdict.AsCharted
        && report.Findings.All(finding => finding.Severity != Severity.Error || IsUsual(finding))
        && KeepsMetering(report);

    private AssemblyReport? Nearest(AssemblyReport report) =>
        report.NearestMatched.IsEmpty ? null : matched.First(set => set.Assembly.Matched == report.NearestMatched[0]);

    /// <summary>No clutch that was metered, before or in the nearest matched set, is metered no more.</summary>
    private bool KeepsMetering(AssemblyReport report)
    {
        var nearest = Nearest(report);
        for (var i = 0; i < report.Gears.Length; i++)
        {
            foreach (var clutch in report.Gears[i].Clutches)
            {
                if (Metering.Of(report.Gears, i, clutch.Clutch) is not { } now) continue;
                var limit = nearest is null ? null : Metering.Of(nearest.Gears, i, clutch.Clutch);
                if (limit is null || limit.IsPort) limit = Metering.Of(Before.Gears, i, clutch.Clutch);
                if (limit is { IsPort: false } && now.SquareMillimetres > Wider * limit.SquareMillimetres) return false;
            }
        }

        return true;
    }
}
