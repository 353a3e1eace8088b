using System.Collections.Immutable;
using Circuits.Driveline;
using Circuits.Findings;
using Circuits.Judging.Changes;
using Circuits.Judging.Conditions;
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
    private readonly SettledJudge? settled;
    private readonly ChangeJudge? changes;
    private readonly Ways ways = new();
    private readonly List<Reference> references = [];
    private readonly ImmutableArray<GearRule> gearRules = RuleCatalogue.GearRules;
    private readonly ImmutableArray<AssemblyRule> assemblyRules = RuleCatalogue.AssemblyRules;
    private ImmutableArray<SolvedAssembly> matched;
    private ImmutableArray<ImmutableArray<GearReport>> matchedReports;

    /// <summary>A judge of one unit.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="mode">What verdicts rest on.</param>
    public UnitJudge(Unit unit, JudgeMode mode = JudgeMode.Full)
        : this(unit, mode, ShiftPlans.Of(unit))
    {
    }

    /// <summary>A judge of a unit with gears more than it changes to.</summary>
    internal UnitJudge(Unit unit, JudgeMode mode, ImmutableArray<ShiftPlan> plans)
    {
        (Unit, Mode) = (unit, mode);
        if (mode == JudgeMode.Full && unit.Pump is not null) (settled, changes) = (new SettledJudge(unit, () => Matched), new ChangeJudge(unit, plans));
        if (unit.GearSet is null) return;
        if (GearTrain.TryBuild(unit.GearSet, out var train, out var faults)) drive = new DriveJudge(unit, train);
        GearsetFaults = faults;
    }

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>What verdicts rest on.</summary>
    public JudgeMode Mode { get; }

    /// <summary>What is wrong with the gear train; when there is an error, nothing is said of drive.</summary>
    public ImmutableArray<Finding> GearsetFaults { get; } = [];

    internal ImmutableArray<SolvedAssembly> Matched => matched.IsDefault
        ? matched = [.. Unit.Matched.Select(set => SolvedAssembly.Of(Assembly.Of(Unit, set)))]
        : matched;

    private ImmutableArray<ImmutableArray<GearReport>> MatchedReports => matchedReports.IsDefault
        ? matchedReports = [.. Matched.Select(set => Describe(set, ReferenceTo([set])))]
        : matchedReports;

    /// <summary>The conditions at which gears are judged; empty where verdicts rest on the static answer.</summary>
    public ImmutableArray<OperatingPoint> Points => settled?.Points ?? [];

    /// <summary>Everything there is to say about an assembly.</summary>
    /// <param name="assembly">An assembly of this judge's unit.</param>
    /// <param name="timed">Whether changes of gear are timed too, which takes longer than all else.</param>
    public AssemblyReport Report(Assembly assembly, bool timed = true)
    {
        var solved = Solve(assembly);
        var reference = ReferenceFor(assembly);
        var contexts = Contexts(solved, reference);
        var made = timed && changes is not null ? changes.Judge(assembly, NearestIn(reference), gear => contexts[Unit.Gears.IndexOf(gear)].Report.Verdict == Verdict.AsCharted) : [];
        var gears = contexts.Select(context => changes is not null ? ChangeFeel.With(context, made) : WithFeel(context)).ToImmutableArray();
        contexts = [.. contexts.Select((context, index) => context with { Report = gears[index] })];
        return new AssemblyReport(
            assembly, reference.Names, gears, [.. solved.Network.Assumptions.DistinctBy(assumption => assumption.Text)],
            [.. Findings(solved, contexts, made), .. ChangeJudge.FindingsOf(made).Select(finding => finding with { Assembly = assembly.Choice })])
        {
            Changes = made,
            Mode = Mode,
            Points = Points,
        };
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
        var flow = settled?.AnswersOf(network, solve);
        var none = ImmutableArray.Create(new ClutchControls[network.Clutches.Length]);
        foreach (var index in gears) yield return Judge(solve(index), index, reference, none, flow).Verdict;
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
        var decided = Judge(solved.Gears[index].Solution, index, ReferenceFor(assembly), [.. solved.Network.Clutches.Select(_ => default(ClutchControls))], settled?.AnswersOf(solved)).DecidedAt;
        return Trace(solved, index, decided, name);
    }

    /// <summary>The same of an assembly that is solved and judged.</summary>
    /// <param name="solved">The assembly.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="decided">The condition that decides its verdict.</param>
    /// <param name="name">A clutch's name, or <c>part.passage</c>.</param>
    internal Trace Trace(SolvedAssembly solved, int gear, ConditionReport? decided, string name)
    {
        var reference = ReferenceFor(solved.Network.Assembly);
        var clutch = solved.Network.Clutches.FirstOrDefault(candidate => candidate.Clutch.Name == name);
        return new Tracer(Shown(solved, gear, decided), clutch is null ? reference.In(gear) : reference.WaysOf(clutch, gear, solved)).Trace(Unit.Gears[gear].Name, name) with { At = decided?.At };
    }

    /// <summary>A gear's positions with the pressures of a condition; its static answer where nobody asks for flow, or there is no answer at it.</summary>
    /// <param name="solved">The assembly.</param>
    /// <param name="gear">The gear's number.</param>
    /// <param name="decided">The condition.</param>
    internal GearSolution Shown(SolvedAssembly solved, int gear, ConditionReport? decided) => At(solved.Gears[gear].Solution, gear, decided, settled?.AnswersOf(solved));

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
        var flow = settled?.AnswersOf(solved);
        return [.. solved.Gears.Select((gear, index) => new GearContext(
            index, gear, reports[index],
            [.. references.Select(item => new ReferenceGear(item.Name, item.Set.Gears[index].Solution, item.Reports[index]))])
        {
            Shown = At(gear.Solution, index, reports[index].DecidedAt, flow),
            DiffersMost = new(() => DiffersMost(index, reports[index].DecidedAt, flow, reference), LazyThreadSafetyMode.None),
        })];
    }

    /// <summary>What flows in the nearest matched set at the unit's conditions; null without one, and where nobody asks for flow.</summary>
    private FlowAnswers? Nearest(Reference reference) => reference.Sets.IsEmpty ? null : settled?.AnswersOf(reference.Sets[0]);

    private RelatedPlace? DiffersMost(int gear, ConditionReport? decided, FlowAnswers? flow, Reference reference)
    {
        if (flow is null || decided is null || reference.Sets is not [var nearest, ..]) return null;
        var point = flow.Points.IndexOf(decided.At);
        return OpeningDifference.Most(flow.In(gear, point), Nearest(reference)!.In(gear, point))?.Told(nearest.Network.Assembly.Matched!);
    }

    private ImmutableArray<GearReport> Describe(SolvedAssembly solved, Reference reference) =>
        [.. solved.Gears.Select((gear, index) => Describe(solved, gear, index, reference, settled?.AnswersOf(solved)))];

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
    /// <param name="finder">Looks for where its clutches are metered, for what that lets expect of changes of gear; the asking thread's own, for several ask one judge this. Null where changes are timed.</param>
    /// <param name="flow">What flows at the unit's conditions, or null.</param>
    internal GearReport Felt(SolvedGear gear, int index, Reference reference, ImmutableArray<ReferenceGear> against, Ways? finder, FlowAnswers? flow)
    {
        var controls = ImmutableArray.Create(new ClutchControls[gear.Solution.Network.Clutches.Length]);
        var judged = Judge(gear.Solution, index, reference, controls, flow);
        var report = new GearReport(
            gear.Gear.Name, judged.Verdict, gear.Solution.Settled, false, judged.Line, judged.Clutches, [],
            DriveOf(index, judged, judged.Clutches, gear.Solution.Settled))
        {
            Conditions = judged.Conditions,
            DecidedAt = judged.DecidedAt,
        };

        // How clutches are controlled is felt only where nothing else is; finding it out takes as long as solving.
        if (finder is null || report.Drive is not { Feel.Kind: FeelKind.AsItShould }) return report;
        judged = Judge(gear.Solution, index, reference, ControlsOf(gear.Solution, finder.Of(gear.Solution)), flow);
        return WithFeel(new GearContext(index, gear, report with { Clutches = judged.Clutches }, against));
    }

    /// <summary>Whether changes of gear are timed.</summary>
    internal bool TimesChanges => changes is not null;

    /// <summary>What is felt on the way into gears that themselves are as they should be, by the gear's number; null where nothing is.</summary>
    /// <param name="network">The network of an assembly of this judge's unit.</param>
    /// <param name="solve">A gear's static answer by its number.</param>
    /// <param name="reference">The nearest matched sets.</param>
    /// <param name="isRight">Whether a gear, by its number, is as it should be.</param>
    internal ImmutableArray<Feel?> OnTheWay(Network network, Func<int, GearSolution> solve, Reference reference, Func<int, bool> isRight)
    {
        var made = changes!.Judge(
            network, solve, NearestIn(reference), plan => isRight(Unit.Gears.IndexOf(plan.To)), doubt: false);
        return [.. Unit.Gears.Select(gear => ChangeFeel.Into(gear.Name, made))];
    }

    /// <summary>The changes of gear that are not good, of an assembly whose gears are all as they should be.</summary>
    /// <param name="network">The network of an assembly of this judge's unit.</param>
    /// <param name="solve">A gear's static answer by its number.</param>
    /// <param name="reference">The nearest matched sets.</param>
    internal ImmutableArray<ChangeBehaviour> ChangesOf(Network network, Func<int, GearSolution> solve, Reference reference) =>
        ChangeFeel.Behaviour(changes!.Judge(network, solve, NearestIn(reference), static _ => true, doubt: true));

    private static Assembly? NearestIn(Reference reference) => reference.Sets.IsEmpty ? null : reference.Sets[0].Network.Assembly;

    /// <summary>The ratio that a gear's charted clutches give; null without a gear train, and where it does not drive.</summary>
    /// <param name="gear">The gear's number.</param>
    public double? RatioOf(int gear) => drive?.RatioOf(gear);

    /// <summary>What a gear does, as <see cref="Report"/> tells it, without what it takes to say why.</summary>
    /// <param name="gear">The gear, solved.</param>
    /// <param name="index">Its number.</param>
    /// <param name="reference">The nearest matched sets.</param>
    /// <param name="against">That gear of theirs.</param>
    /// <param name="controls">Where its clutches are metered.</param>
    /// <param name="flow">What flows at the unit's conditions, or null.</param>
    internal GearBehaviour Behaviour(
        SolvedGear gear, int index, Reference reference, ReferenceBasis against, ImmutableArray<ClutchControls> controls, FlowAnswers? flow)
    {
        var solution = gear.Solution;
        var judged = Judge(solution, index, reference, controls, flow);
        var report = new GearReport(
            gear.Gear.Name, judged.Verdict, solution.Settled, !gear.Others.IsEmpty, judged.Line, judged.Clutches,
            CrossFeedsOf(solution, against.Basis, moves: false), DriveOf(index, judged, judged.Clutches, solution.Settled))
        {
            Conditions = judged.Conditions,
            DecidedAt = judged.DecidedAt,
        };
        return GearBehaviour.Of(TimesChanges ? report : WithFeel(new GearContext(index, gear, report, against.Gears)));
    }

    /// <summary>Where each clutch of a gear is metered.</summary>
    internal static ImmutableArray<ClutchControls> ControlsOf(GearSolution solution, Ways ways) =>
    [
        .. solution.Network.Clutches.Select(clutch => clutch.Chamber < 0
            ? default
            : new ClutchControls(Narrowest(ways, clutch.Chamber, solution), ways.SumpControl(clutch.Chamber))),
    ];

    /// <summary>What flows in a network at the unit's conditions; null where the static answer alone is asked for, or nothing pumps.</summary>
    /// <param name="network">The network.</param>
    /// <param name="start">A gear's static answer by its number.</param>
    internal FlowAnswers? FlowOf(Network network, Func<int, GearSolution> start) => settled?.AnswersOf(network, start);

    /// <summary>A gear's positions with the pressures of the condition that decides; as it is without one, or without an answer there.</summary>
    private static GearSolution At(GearSolution still, int gear, ConditionReport? decided, FlowAnswers? flow)
    {
        if (flow is null || decided is null || decided.DidNotConvergeAt is not null) return still;
        var settled = flow.In(gear, flow.Points.IndexOf(decided.At));
        return still.Under(node => settled.PressureAt(node) / 1e3);
    }

    /// <summary>What flows in an assembly at the unit's conditions, or null.</summary>
    internal FlowAnswers? FlowOf(SolvedAssembly solved) => settled?.AnswersOf(solved);

    /// <summary>A gear's clutches and verdict: by flow, at the condition that decides, where flow is asked; else by the static answer.</summary>
    private JudgedGear Judge(GearSolution solution, int index, Reference reference, ImmutableArray<ClutchControls> controls, FlowAnswers? flow)
    {
        var clutches = Clutches(Unit.Gears[index], solution, index, reference, controls);
        if (flow is null || flow.Points.IsEmpty) return new JudgedGear(clutches, VerdictOf(solution, clutches), solution.Line, [], null);
        var conditions = settled!.Judge(flow, reference, index);
        var deciding = conditions[0];
        foreach (var condition in conditions)
        {
            if (condition.Verdict > deciding.Verdict) deciding = condition;
        }

        var verdict = solution.Settled ? deciding.Verdict : Verdict.NeverSettles;
        if (deciding.Clutches.IsEmpty) return new JudgedGear(clutches, verdict, solution.Line, conditions, deciding);
        return new JudgedGear([.. clutches.Select((clutch, i) => clutch.At(deciding.Clutches[i], deciding.LineKilopascals))], verdict, deciding.LineKilopascals, conditions, deciding);
    }

    /// <summary>What the driver feels: of the clutches; where those are right, of line pressure; else nothing, whatever runs dry meanwhile.</summary>
    private DriveReport? DriveOf(int gear, JudgedGear judged, ImmutableArray<ClutchReport> clutches, bool settled)
    {
        if (drive?.Judge(gear, clutches, settled) is not { Feel.Kind: FeelKind.AsItShould } report) return drive?.Judge(gear, clutches, settled);
        var name = Unit.Gears[gear].Name;
        foreach (var condition in judged.Conditions)
        {
            foreach (var need in condition.Needs)
            {
                if (need.Verdict is Verdict.Starved or Verdict.OverPressure)
                    return report with { Feel = new Feel(need.Verdict == Verdict.Starved ? FeelKind.Starved : FeelKind.OverPressure, name) { Clutch = need.Need.Name } };
            }
        }

        // Of line pressure only gears that drive tell anything.
        if (drive.ShouldDrive(gear))
        {
            foreach (var condition in judged.Conditions)
            {
                if (condition.LineOff(Unit.Thresholds) is var off and not LineState.AsMatched)
                    return report with { Feel = new Feel(off == LineState.Low ? FeelKind.Soft : FeelKind.Hard, name) };
            }
        }

        return report;
    }

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

    private GearReport Describe(SolvedAssembly solved, SolvedGear gear, int index, Reference reference, FlowAnswers? flow)
    {
        var still = gear.Solution;
        ways.Of(still);
        var judged = Judge(still, index, reference, ControlsOf(still, ways), flow);
        var solution = At(still, index, judged.DecidedAt, flow);
        ImmutableArray<ClutchReport> clutches = [.. judged.Clutches.Select((clutch, number) => Explained(clutch, solution.Network.Clutches[number]))];
        return new GearReport(
            gear.Gear.Name, judged.Verdict, solution.Settled, !gear.Others.IsEmpty, judged.Line, clutches,
            CrossFeedEffect.Weighed(CrossFeedsOf(still, reference.BasisOf(index), moves: true), index, flow, Nearest(reference)), DriveOf(index, judged, clutches, solution.Settled))
        {
            Conditions = judged.Conditions,
            DecidedAt = judged.DecidedAt,
            PositionsLater = () => PositionReports.Of(solution, reference.In(index).FirstOrDefault()),
            PressuresLater = () => Pressures(solution),
            Cycle = solution.Cycle,
            Histories = [.. gear.Others.Select(other => HistoryText.Of(still, other))],
        };

        ClutchReport Explained(ClutchReport judged, ClutchElement clutch) => clutch.Chamber < 0 ? judged : judged with
        {
            StoppedAt = judged.Verdict is Verdict.Lost or Verdict.Weak ? StopOf(clutch, solution, new Routes(solution, reference.WaysOf(clutch, index, solved))) : null,
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

    /// <summary>A gear whose clutches are right may still be felt through how they come and go: where that is not timed, by the openings that they are metered by.</summary>
    private static GearReport WithFeel(GearContext gear)
    {
        if (gear.Report.Drive is not { Feel.Kind: FeelKind.AsItShould } drive || gear.IsMatched) return gear.Report;
        return ControlChange.Feels(gear) is { } felt ? gear.Report with { Drive = drive with { Feel = felt } } : gear.Report;
    }

    /// <summary>Adds to the first error of a gear the opening that differs most, unless one of them points to it.</summary>
    private static void NameDifference(GearContext gear, List<Finding> findings, int first)
    {
        var at = findings.FindIndex(first, finding => finding.Severity == Severity.Error);
        if (at < 0 || gear.DiffersMost.Value is not { } differs || findings.FindIndex(first, finding => finding.Severity == Severity.Error && finding.Place == differs.Place) >= 0) return;
        findings[at] = findings[at] with { Related = findings[at].Related.Add(differs) };
    }

    private List<Finding> Findings(SolvedAssembly solved, ImmutableArray<GearContext> gears, ImmutableArray<ChangeReport> made)
    {
        var choice = solved.Network.Assembly.Choice;
        var findings = new List<Finding>(solved.Network.Findings);
        foreach (var gear in gears)
        {
            findings.AddRange(gear.Solution.Inputs.Findings);
            var first = findings.Count;
            foreach (var rule in gearRules) rule.Find(gear, findings);
            NameDifference(gear, findings, first);
            for (var i = first; i < findings.Count; i++) findings[i] = findings[i] with { Gear = gear.Gear };
        }

        var context = new AssemblyContext(solved, gears, MatchedReports) { Changes = made };
        foreach (var rule in assemblyRules) rule.Find(context, findings);
        var told = new HashSet<Finding>();
        findings.RemoveAll(finding => !told.Add(finding));
        return findings.ConvertAll(finding => finding with { Assembly = choice });
    }
}
