using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Stacking;

namespace Circuits.Judging;

/// <summary>
/// Judges assemblies of one unit: what holds, what does not, and why. Solves the matched sets once and holds every other
/// assembly against the nearest of them. Not for use by several threads at once.
/// </summary>
public sealed class UnitJudge
{
    private readonly DriveJudge? drive;
    private readonly Ways ways = new();
    private readonly List<Reference> references = [];
    private readonly ImmutableArray<GearRule> gearRules = RuleCatalogue.GearRules;
    private readonly ImmutableArray<AssemblyRule> assemblyRules = RuleCatalogue.AssemblyRules;
    private ImmutableArray<SolvedAssembly> matched;
    private ImmutableArray<ImmutableArray<GearReport>> matchedReports;

    /// <summary>A judge of one unit.</summary>
    /// <param name="unit">The unit.</param>
    public UnitJudge(Unit unit)
    {
        Unit = unit;
        if (unit.GearSet is null) return;
        if (GearTrain.TryBuild(unit.GearSet, out var train, out var faults)) drive = new DriveJudge(unit, train);
        GearsetFaults = faults;
    }

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>What is wrong with the gear train; when there is an error, nothing is said of drive.</summary>
    public ImmutableArray<Finding> GearsetFaults { get; } = [];

    internal ImmutableArray<SolvedAssembly> Matched => matched.IsDefault
        ? matched = [.. Unit.Matched.Select(set => SolvedAssembly.Of(Assembly.Of(Unit, set)))]
        : matched;

    private ImmutableArray<ImmutableArray<GearReport>> MatchedReports => matchedReports.IsDefault
        ? matchedReports = [.. Matched.Select(set => Describe(set, ReferenceTo([set])))]
        : matchedReports;

    /// <summary>Everything there is to say about an assembly.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    public AssemblyReport Report(Assembly assembly)
    {
        var solved = Solve(assembly);
        var reference = ReferenceFor(assembly);
        var contexts = Contexts(solved, reference);
        var gears = contexts.Select(WithFeel).ToImmutableArray();
        contexts = [.. contexts.Select((context, index) => context with { Report = gears[index] })];
        return new AssemblyReport(
            assembly, reference.Names, gears, [.. solved.Network.Assumptions.Select(assumption => assumption.Text).Distinct()],
            [.. Findings(solved, contexts)]);
    }

    /// <summary>Whether gears are as charted. It says no more than that, and takes a small part of a report's time.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    /// <param name="gears">The gears' numbers.</param>
    public bool IsAsCharted(Assembly assembly, IEnumerable<int> gears) => Verdicts(assembly, gears).All(verdict => verdict == Verdict.AsCharted);

    /// <summary>Verdicts of gears, one after the other. They are those of a report, in a small part of its time.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    /// <param name="gears">The gears' numbers.</param>
    public IEnumerable<Verdict> Verdicts(Assembly assembly, IEnumerable<int> gears)
    {
        var reference = ReferenceFor(assembly);
        var network = NetworkBuilder.BuildOpen(assembly, joint => JointStacker.Stack(assembly, joint, static (_, _) => { }));
        var solve = SolvedAssembly.OneByOne(Plan.Of(network));
        var none = ImmutableArray.Create(new ClutchControls[network.Clutches.Length]);
        foreach (var index in gears)
        {
            var solution = solve(index);
            yield return VerdictOf(solution, Clutches(Unit.Gears[index], solution, index, reference, none));
        }
    }

    /// <summary>Why a clutch or passage has, or lacks, pressure in a gear.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    /// <param name="gear">The gear's name.</param>
    /// <param name="name">A clutch's name, or <c>part.passage</c>.</param>
    /// <exception cref="ArgumentException">The unit has no such gear, or the assembly no such clutch or passage.</exception>
    public Trace Trace(Assembly assembly, string gear, string name)
    {
        var index = Unit.Gears.IndexOf(Unit.FindGear(gear) ?? throw new ArgumentException($"no gear {gear}", nameof(gear)));
        var solved = Solve(assembly);
        var reference = ReferenceFor(assembly);
        return new Tracer(solved.Gears[index].Solution, reference.In(index)).Trace(gear, name);
    }

    /// <summary>The nearest of the matched sets.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    internal Reference ReferenceFor(Assembly assembly) => ReferenceTo(assembly.NearestOf(Matched, set => set.Network.Assembly));

    /// <summary>The same sets are one reference, so that what is worked out of them is worked out once.</summary>
    private Reference ReferenceTo(ImmutableArray<SolvedAssembly> sets)
    {
        foreach (var known in references)
        {
            if (known.Sets.AsSpan().SequenceEqual(sets.AsSpan(), ReferenceEqualityComparer.Instance)) return known;
        }

        var reference = new Reference(sets);
        references.Add(reference);
        return reference;
    }

    internal SolvedAssembly Solve(Assembly assembly) =>
        assembly.Matched is { } name
            ? Matched.First(set => set.Network.Assembly.Matched == name)
            : SolvedAssembly.Of(assembly);

    private ImmutableArray<GearContext> Contexts(SolvedAssembly solved, Reference reference)
    {
        // A matched set is held against itself, and that has been told.
        var reports = reference.Sets is [var only] && only == solved ? MatchedReports[Matched.IndexOf(solved)] : Describe(solved, reference);
        var references = reference.Sets
            .Select(set => (Name: set.Network.Assembly.Matched!, Set: set, Reports: MatchedReports[Matched.IndexOf(set)])).ToList();
        return [.. solved.Gears.Select((gear, index) => new GearContext(
            index, gear, reports[index],
            [.. references.Select(item => new ReferenceGear(item.Name, item.Set.Gears[index].Solution, item.Reports[index]))]))];
    }

    private ImmutableArray<GearReport> Describe(SolvedAssembly solved, Reference reference) =>
        [.. solved.Gears.Select((gear, index) => Describe(gear, index, reference))];

    /// <summary>A gear of the sets that assemblies are held against, made ready.</summary>
    internal ReferenceBasis BasisOf(Reference reference, int index) => new(GearsOf(reference, index), reference.BasisOf(index));

    /// <summary>A gear of the sets that assemblies are held against.</summary>
    internal ImmutableArray<ReferenceGear> GearsOf(Reference reference, int index) =>
    [
        .. reference.Sets.Select(set => new ReferenceGear(
            set.Network.Assembly.Matched!, set.Gears[index].Solution, MatchedReports[Matched.IndexOf(set)][index])),
    ];

    /// <summary>What a driver feels of a gear and which clutches are on, and no more: what else a report tells is empty.</summary>
    /// <param name="gear">The gear, solved.</param>
    /// <param name="index">Its number.</param>
    /// <param name="reference">The nearest matched sets.</param>
    /// <param name="against">That gear of theirs.</param>
    /// <param name="finder">Looks for where its clutches are metered; the asking thread's own, for several ask one judge this.</param>
    internal GearReport Felt(SolvedGear gear, int index, Reference reference, ImmutableArray<ReferenceGear> against, Ways finder)
    {
        var controls = ImmutableArray.Create(new ClutchControls[gear.Solution.Network.Clutches.Length]);
        var clutches = Clutches(gear.Gear, gear.Solution, index, reference, controls);
        var report = new GearReport(
            gear.Gear.Name, VerdictOf(gear.Solution, clutches), gear.Solution.Settled, false, gear.Solution.Line, clutches, [],
            drive?.Judge(index, clutches, gear.Solution.Settled));

        // How clutches are controlled is felt only where nothing else is; finding it out takes as long as solving.
        if (report.Drive is not { Kind: FeelKind.AsItShould }) return report;
        clutches = Clutches(gear.Gear, gear.Solution, index, reference, ControlsOf(gear.Solution, finder.Of(gear.Solution)));
        return WithFeel(new GearContext(index, gear, report with { Clutches = clutches }, against));
    }

    /// <summary>The ratio that a gear's charted clutches give; null without a gear train, and where it does not drive.</summary>
    /// <param name="gear">The gear's number.</param>
    public double? RatioOf(int gear) => drive?.RatioOf(gear);

    /// <summary>What a gear does, as <see cref="Report"/> tells it, without what it takes to say why.</summary>
    /// <param name="gear">The gear, solved.</param>
    /// <param name="index">Its number.</param>
    /// <param name="reference">The nearest matched sets.</param>
    /// <param name="against">That gear of theirs.</param>
    /// <param name="controls">Where its clutches are metered.</param>
    internal GearBehaviour Behaviour(
        SolvedGear gear, int index, Reference reference, ReferenceBasis against, ImmutableArray<ClutchControls> controls)
    {
        var solution = gear.Solution;
        var clutches = Clutches(gear.Gear, gear.Solution, index, reference, controls);
        var report = new GearReport(
            gear.Gear.Name, VerdictOf(solution, clutches), solution.Settled, !gear.Others.IsEmpty, solution.Line, clutches,
            CrossFeedsOf(solution, against.Basis, moves: false), drive?.Judge(index, clutches, solution.Settled));
        return GearBehaviour.Of(WithFeel(new GearContext(index, gear, report, against.Gears)));
    }

    /// <summary>Where each clutch of a gear is metered.</summary>
    internal static ImmutableArray<ClutchControls> ControlsOf(GearSolution solution, Ways ways) =>
    [
        .. solution.Network.Clutches.Select(clutch => clutch.Chamber < 0
            ? default
            : new ClutchControls(Narrowest(ways, clutch.Chamber, solution), ways.SumpControl(clutch.Chamber))),
    ];

    private ImmutableArray<ClutchReport> Clutches(GearState gear, GearSolution solution, int index, Reference reference, ImmutableArray<ClutchControls> controls)
    {
        var clutches = ImmutableArray.CreateBuilder<ClutchReport>(solution.Network.Clutches.Length);
        foreach (var clutch in solution.Network.Clutches)
        {
            var judged = ClutchJudge.Judge(
                clutch, gear, solution, reference.ClutchPressure(clutch.Clutch.Name, index), Unit.Thresholds);
            clutches.Add(clutch.Chamber < 0 ? judged : judged with
            {
                Apply = judged.Charted || judged.Strength != ClutchState.Released ? controls[clutches.Count].Supply : null,
                Release = judged.Strength == ClutchState.Released ? controls[clutches.Count].Sump : null,
            });
        }

        return clutches.MoveToImmutable();
    }

    private static Verdict VerdictOf(GearSolution solution, ImmutableArray<ClutchReport> clutches) =>
        !solution.Settled ? Verdict.NeverSettles : clutches.IsEmpty ? Verdict.AsCharted : clutches.Max(clutch => clutch.Verdict);

    private GearReport Describe(SolvedGear gear, int index, Reference reference)
    {
        var solution = gear.Solution;
        ways.Of(solution);
        var routes = new Lazy<Routes>(() => new Routes(solution, reference.In(index)), LazyThreadSafetyMode.None);
        ImmutableArray<ClutchReport> clutches =
        [
            .. Clutches(gear.Gear, gear.Solution, index, reference, ControlsOf(solution, ways)).Select((judged, number) => Explained(judged, solution.Network.Clutches[number])),
        ];
        return new GearReport(
            gear.Gear.Name, VerdictOf(solution, clutches), solution.Settled, !gear.Others.IsEmpty, solution.Line, clutches,
            CrossFeedsOf(solution, reference.BasisOf(index), moves: true), drive?.Judge(index, clutches, solution.Settled))
        {
            PositionsLater = () => PositionReports.Of(solution, reference.In(index).FirstOrDefault()),
            PressuresLater = () => Pressures(solution),
            Cycle = solution.Cycle,
            Histories = [.. gear.Others.Select(other => HistoryText.Of(solution, other))],
        };

        ClutchReport Explained(ClutchReport judged, ClutchElement clutch) => clutch.Chamber < 0 ? judged : judged with
        {
            StoppedAt = judged.Verdict is Verdict.Lost or Verdict.Weak ? StopOf(clutch, solution, routes.Value) : null,
            SupplyWay = judged.Strength != ClutchState.Released ? Elements(ways.Supply(clutch.Chamber)) : [],
            SumpWay = judged.Strength == ClutchState.Released ? Elements(ways.ToSump(clutch.Chamber)) : [],
        };
    }

    /// <summary>In a state that never settles, the foreign oil of every phase counts: it is what keeps it going.</summary>
    private static ImmutableArray<CrossFeed> CrossFeedsOf(GearSolution solution, CrossFeeds.Basis basis, bool moves) => solution.Settled
        ? CrossFeeds.Find(solution, basis, moves)
        : [.. solution.Phases.SelectMany(phase => CrossFeeds.Find(phase, basis, moves)).DistinctBy(feed => (feed.Into, feed.From, feed.Through))];

    private static ImmutableArray<string> Elements(IReadOnlyList<Step>? way)
    {
        var elements = ImmutableArray.CreateBuilder<string>();
        foreach (var step in way ?? [])
        {
            // The two contacts of one opening are one step for the reader.
            if (step.Link.Kind == LinkKind.Chamber || (elements.Count > 0 && elements[^1] == step.Link.Element)) continue;
            elements.Add(step.Link.Element);
        }

        return elements.ToImmutable();
    }

    private static Control? Narrowest(Ways ways, int chamber, GearSolution solution) =>
        solution.PressureAt(chamber) > 0.01 ? ways.SupplyControl(chamber) : null;

    private static Stop? StopOf(ClutchElement clutch, GearSolution solution, Routes routes)
    {
        var heldOff = clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber);
        return heldOff > solution.PressureAt(clutch.Chamber) / 2 && solution.PressureAt(clutch.Chamber) > 0.01
            ? routes.ReleaseStopOf(clutch.ReleaseChamber)
            : routes.StopOf(clutch.Chamber);
    }

    private static ImmutableArray<PassagePressure> Pressures(GearSolution solution) =>
    [
        .. solution.Network.Nodes.Where(node => node.Kind == NodeKind.Passage)
            .Select(node => new PassagePressure(node.Name, solution.OilAt(node.Index), solution.PressureAt(node.Index))),
    ];

    /// <summary>A gear whose clutches are right may still be felt through how they come and go.</summary>
    private static GearReport WithFeel(GearContext gear)
    {
        if (gear.Report.Drive is not { Feels: "as it should" } drive || gear.IsMatched) return gear.Report;
        return ControlChange.Feels(gear) is { } felt ? gear.Report with { Drive = drive with { Feels = felt.Text, Kind = felt.Kind } } : gear.Report;
    }

    private List<Finding> Findings(SolvedAssembly solved, ImmutableArray<GearContext> gears)
    {
        var choice = solved.Network.Assembly.Choice;
        var findings = new List<Finding>(solved.Network.Findings);
        foreach (var gear in gears)
        {
            findings.AddRange(gear.Solution.Inputs.Findings);
            var first = findings.Count;
            foreach (var rule in gearRules) rule.Find(gear, findings);
            for (var i = first; i < findings.Count; i++) findings[i] = findings[i] with { Gear = gear.Gear };
        }

        var context = new AssemblyContext(solved, gears, MatchedReports);
        foreach (var rule in assemblyRules) rule.Find(context, findings);
        var told = new HashSet<Finding>();
        findings.RemoveAll(finding => !told.Add(finding));
        return findings.ConvertAll(finding => finding with { Assembly = choice });
    }
}
