using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Studies.Drawing;

/// <summary>Every gear of an assembly, ready to be drawn, with what differs from the nearest matched set. Immutable.</summary>
public sealed class AssemblyViews
{
    private const double Negligible = 1;
    private const double AsGoodAsLine = 0.97;

    private readonly UnitJudge judge;

    private AssemblyViews(SolvedAssembly solved, AssemblyReport report, ImmutableArray<GearView> gears, UnitJudge judge)
    {
        this.judge = judge;
        Solved = solved;
        Report = report;
        Gears = gears;
    }

    /// <summary>The assembly with its network and every gear solved.</summary>
    public SolvedAssembly Solved { get; }

    /// <summary>What was found about it.</summary>
    public AssemblyReport Report { get; }

    /// <summary>Its gears, in the order of the file.</summary>
    public ImmutableArray<GearView> Gears { get; }

    /// <summary>Why a clutch has, or lacks, pressure in a gear.</summary>
    /// <param name="gear">The gear's index.</param>
    /// <param name="clutch">The clutch's name.</param>
    public Trace Trace(int gear, string clutch) => judge.Trace(Solved, gear, Report.Gears[gear].DecidedAt, clutch);

    /// <summary>Looks at an assembly.</summary>
    /// <param name="judge">The judge of its unit.</param>
    /// <param name="assembly">The assembly.</param>
    public static AssemblyViews Of(UnitJudge judge, Assembly assembly)
    {
        var solved = judge.Solve(assembly);
        var report = judge.Report(assembly, timed: false);
        var nearest = judge.ReferenceFor(assembly).Sets.FirstOrDefault();
        if (ReferenceEquals(nearest, solved)) nearest = null;
        var against = nearest is null ? null : $"matched set {nearest.Network.Assembly.Matched}";
        return new AssemblyViews(
            solved, report,
            [.. report.Gears.Select((gear, index) => Look(judge.Shown(solved, index, gear.DecidedAt), gear, nearest is null ? null : judge.Shown(nearest, index, gear.DecidedAt), against))],
            judge);
    }

    /// <summary>A gear, with what differs from another gear of the same assembly.</summary>
    /// <param name="from">The number of the gear that it is held against.</param>
    /// <param name="to">The number of the gear to be drawn.</param>
    public GearView Change(int from, int to) =>
        Look(Gears[to].Solution, Report.Gears[to], Gears[from].Solution, $"gear {Report.Gears[from].Gear}");

    private static GearView Look(GearSolution now, GearReport report, GearSolution? before, string? against)
    {
        var foreign = Foreign(now, report, before);
        var known = new Dictionary<string, int>();
        foreach (var node in before?.Network.Nodes ?? []) known.TryAdd(node.Name, node.Index);
        var nodes = now.Network.Nodes.Select(node =>
        {
            var pressure = now.PressureAt(node.Index);
            var look = foreign.Contains(node.Index) ? OilLook.CrossFeed : LookAt(now, node.Index);
            if (before is null) return new NodeView(look, pressure, false, null);
            if (!known.TryGetValue(node.Name, out var there)) return new NodeView(look, pressure, node.Kind == NodeKind.Passage, null);
            var then = before.PressureAt(there);
            return new NodeView(look, pressure, SolvedAssembly.AreApart(pressure, then) || look == OilLook.CrossFeed, then);
        });
        return new GearView(now, report, against, [.. nodes], Moved(now, before), before is null ? [] : AddedBy(now.Network, before.Network));
    }

    private static OilLook LookAt(GearSolution solution, int node)
    {
        var pressure = solution.PressureAt(node);
        return solution.OilAt(node) switch
        {
            OilState.Trapped => OilLook.Trapped,
            OilState.Exhaust => OilLook.Exhaust,
            _ when pressure < Negligible => OilLook.Exhaust,
            _ when pressure >= AsGoodAsLine * solution.Line => OilLook.Supply,
            _ => OilLook.Reduced,
        };
    }

    /// <summary>Where foreign oil comes in, and on from there wherever it makes the pressure other than it should be.</summary>
    private static HashSet<int> Foreign(GearSolution now, GearReport report, GearSolution? before)
    {
        var into = report.CrossFeeds.Select(feed => feed.Into).ToHashSet();
        var found = now.Network.Nodes.Where(node => into.Contains(node.Name)).Select(node => node.Index).ToHashSet();
        if (before is null || found.Count == 0) return found;
        var then = new Dictionary<string, double>();
        foreach (var node in before.Network.Nodes) then.TryAdd(node.Name, before.PressureAt(node.Index));
        foreach (var start in found.ToList()) found.UnionWith(OilGraph.Reached(now.Network, start, (link, _, to) => now.IsOpen(link) && IsRaised(to)));
        return found;

        bool IsRaised(int node) =>
            node != 0 && !now.IsSource(node) && now.PressureAt(node) > then.GetValueOrDefault(now.Network.Nodes[node].Name) + Negligible;
    }

    private static ImmutableDictionary<string, Stand> Moved(GearSolution now, GearSolution? before) =>
        PositionReports.Of(now, before).Where(position => position.Reference is { } then && then != position.Position)
            .DistinctBy(position => position.Element).ToImmutableDictionary(position => position.Element, position => position.Reference!);

    private static ImmutableHashSet<string> AddedBy(Network now, Network before)
    {
        var links = before.Links.Where(link => link.Kind != LinkKind.Metal).Select(link => (link.Element, link.Detail)).ToHashSet();
        var nodes = before.Nodes.Select(node => node.Name).ToHashSet();
        return
        [
            .. now.Links.Where(link => link.Kind != LinkKind.Metal && !links.Contains((link.Element, link.Detail))).Select(link => link.Element),
            .. now.Nodes.Select(node => node.Name).Where(name => !nodes.Contains(name)),
        ];
    }
}
