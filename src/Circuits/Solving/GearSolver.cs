using System.Collections.Immutable;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>
/// Finds positions and pressures that agree: everything that moves is put where the pressures ask, all at once, until
/// nothing moves. Where that goes round in circles, one element at a time is moved; where that does too, the positions of
/// all elements that took part are tried one by one. Only when none agrees does the state never settle.
/// Not for use by several threads at once.
/// </summary>
public sealed class GearSolver
{
    /// <summary>With so few elements all positions are tried, whether they took part or not: 2^10 trials.</summary>
    private const int AlwaysTried = 10;

    /// <summary>Most elements whose positions are tried when there are more.</summary>
    private const int MostTried = 8;

    /// <summary>Most regulators whose modes are tried one by one: 3^5 trials.</summary>
    private const int MostModesTried = 5;

    /// <summary>Steps after which a circle is known well enough.</summary>
    private const int LongestCycle = 200;

    /// <summary>Pressures closer than this, kPa, are the same: what rounding leaves.</summary>
    private const double Same = 1e-6;

    private readonly Plan plan;
    private readonly PressureField field;
    private readonly Mechanics mechanics;
    private readonly RegulatorBalance balance;
    private readonly Positions trialStart;
    private readonly PositionLog seen;
    private readonly PositionLog seenRegulators;
    private readonly List<Move> moves = [];
    private readonly List<int> trials = [];
    private readonly double[] nothing;
    private GearInputs? lastInputs;
    private double[] lastGiven = [];

    /// <summary>A solver for one compiled network.</summary>
    /// <param name="plan">The compiled network.</param>
    public GearSolver(Plan plan)
    {
        this.plan = plan;
        field = new PressureField(plan);
        mechanics = new Mechanics(plan, field);
        balance = new RegulatorBalance(plan, field);
        trialStart = Positions.AtRest(plan);
        nothing = new double[plan.Cells];
        seen = new PositionLog(trialStart.MechanicalLength);
        seenRegulators = new PositionLog(trialStart.RegulatorsLength);
    }

    /// <summary>Solves a gear from rest: everything home, no pressure anywhere.</summary>
    /// <param name="inputs">What the gear sets.</param>
    public GearSolution FromRest(GearInputs inputs) => Solve(inputs, Positions.AtRest(plan), nothing);

    /// <summary>Solves a gear from the state that another gear ended in.</summary>
    /// <param name="inputs">What the gear sets.</param>
    /// <param name="before">The other gear's state, of the same network.</param>
    /// <param name="thorough">
    /// Whether to try positions one by one when moving things leads in a circle; worth its time unless the gear is known
    /// not to settle.
    /// </param>
    /// <param name="known">An answer for the same inputs from another start, or null; returned where this start leads to it.</param>
    public GearSolution FromGear(GearInputs inputs, GearSolution before, bool thorough = true, GearSolution? known = null) =>
        Solve(inputs, before.Positions.Copy(), before.CellPressures, thorough, known);

    private GearSolution Solve(GearInputs inputs, Positions positions, double[] memory, bool thorough = true, GearSolution? known = null)
    {
        var run = new Run(positions, inputs, GivenPressures(inputs), memory) { Known = known is { Settled: true } ? known : null };
        var settled = Together(run) || OneByOne(run) || (thorough && (TryAll(run) || TryAllModes(run) || Leniently(run)));
        if (run.IsKnown) return known!;
        if (settled) return new GearSolution(plan, field, run.Positions, inputs, settled, []);
        var phases = Phases(run);
        return phases[0] with { Phases = phases };
    }

    /// <summary>The states that a circle goes through, from its start.</summary>
    private ImmutableArray<GearSolution> Phases(Run run)
    {
        var cycle = DescribeCycle(run);
        var phases = ImmutableArray.CreateBuilder<GearSolution>();
        seen.Clear();
        run.Positions.CopyFrom(run.CycleStart);
        SolvePressures(run);
        while (IsNew(run.Positions) && phases.Count < LongestCycle)
        {
            phases.Add(new GearSolution(plan, field, run.Positions, run.Inputs, settled: false, cycle));
            foreach (var move in Wanted(run)) Apply(run, move);
            SolvePressures(run);
        }

        return phases.ToImmutable();
    }

    /// <summary>What a gear fixes, cell by cell; several starts of one gear come one after the other.</summary>
    private double[] GivenPressures(GearInputs inputs)
    {
        if (ReferenceEquals(inputs, lastInputs)) return lastGiven;
        var given = new double[plan.Cells];
        Array.Fill(given, double.NaN);
        foreach (var (node, kilopascals) in inputs.Fixed)
        {
            if (plan.CellOf[node] > 0) given[plan.CellOf[node]] = kilopascals;
        }

        (lastInputs, lastGiven) = (inputs, given);
        return given;
    }

    private bool Together(Run run)
    {
        seen.Clear();
        while (true)
        {
            SolvePressures(run, untilKnown: true);
            if (run.IsKnown) return true;
            run.CycleStart.CopyFrom(run.Positions);
            if (!IsNew(run.Positions)) break;
            if (ArrivedAtKnown(run)) return true;
            var wanted = Wanted(run);
            if (wanted.Count == 0) return run.RegulatorsAgree;
            foreach (var move in wanted) Apply(run, move);
        }

        RecordCycle(run);
        return false;
    }

    /// <summary>Whether spools and balls have not stood like this since the log was cleared.</summary>
    private bool IsNew(Positions positions)
    {
        positions.WriteMechanical(seen.Next);
        return seen.Add();
    }

    /// <summary>Whether everything stands as in an answer that is known, and what is trapped there has its pressure there: solving would end in that answer.</summary>
    private static bool StandsAsKnown(Run run) =>
        run.Known is { } known && run.Positions.IsAs(known.Positions) && known.Traps(run.Memory, Same) && (run.IsKnown = true);

    /// <summary>Whether everything stands, and every pressure is, as in an answer that is known to agree with itself.</summary>
    private bool ArrivedAtKnown(Run run)
    {
        if (run.Known is not { } known || !run.RegulatorsAgree || !run.Positions.IsAs(known.Positions)) return false;
        for (var cell = 0; cell < plan.Cells; cell++)
        {
            if (!(Math.Abs(field.Pressure[cell] - known.CellPressures[cell]) <= Same)) return false;
        }

        return run.IsKnown = true;
    }

    /// <summary>Follows the circle once more to learn which elements take part.</summary>
    private void RecordCycle(Run run)
    {
        var start = new int[run.Positions.MechanicalLength];
        run.Positions.WriteMechanical(start);
        for (var step = 0; step < LongestCycle; step++)
        {
            foreach (var move in Wanted(run))
            {
                run.Moving.Add(move.Element);
                Apply(run, move);
            }

            SolvePressures(run);
            if (run.Positions.StandAs(start)) return;
        }
    }

    private bool OneByOne(Run run)
    {
        run.Positions.CopyFrom(run.CycleStart);
        seen.Clear();
        while (true)
        {
            SolvePressures(run);
            if (!IsNew(run.Positions)) return false;
            var wanted = Wanted(run);
            if (wanted.Count == 0) return run.RegulatorsAgree;
            run.Moving.UnionWith(wanted.Select(move => move.Element));
            Apply(run, wanted[0]);
        }
    }

    /// <summary>Tries positions nearest the start first, so that of several states the least disturbed is found.</summary>
    private bool TryAll(Run run)
    {
        foreach (var _ in AllPositions(run))
        {
            SolvePressures(run);
            if (Wanted(run).Count == 0 && run.RegulatorsAgree) return true;
        }

        return false;
    }

    /// <summary>
    /// Regulators may agree in more ways than one for the same positions. In the last resort they start from every one of
    /// their modes.
    /// </summary>
    private bool TryAllModes(Run run)
    {
        var regulators = Adjustable();
        if (regulators.Length == 0) return false;
        foreach (var _ in AllPositions(run))
        {
            var start = run.Positions.Copy();
            for (var mode = RegulatorModes.Feeding; mode <= RegulatorModes.Relieving; mode++)
            {
                run.Positions.CopyFrom(start);
                foreach (var regulator in regulators) run.Positions.Modes[regulator] = mode;
                SolvePressures(run);
                if (Wanted(run).Count == 0 && run.RegulatorsAgree) return true;
            }
        }

        return false;
    }

    private IEnumerable<int> AllPositions(Run run)
    {
        var everything = Enumerable.Range(0, plan.Spools.Length + plan.Balls.Length)
            .Where(element => element < plan.Spools.Length || plan.Balls[element - plan.Spools.Length].Seats.Length > 0).ToList();
        var tried = everything.Count <= AlwaysTried
            ? everything
            : [.. run.Moving.Order().Take(MostTried)];
        foreach (var flips in Enumerable.Range(0, 1 << tried.Count).OrderBy(set => int.PopCount(set)).ThenBy(set => set))
        {
            run.Positions.CopyFrom(run.CycleStart);
            for (var i = 0; i < tried.Count; i++)
            {
                if ((flips & (1 << i)) != 0) Flip(run.Positions, tried[i]);
            }

            yield return flips;
        }
    }

    /// <summary>Balls that turn over and back for less than flow lets them stand midway have settled.</summary>
    private bool Leniently(Run run)
    {
        mechanics.Lenient = true;
        var settled = OneByOne(run);
        mechanics.Lenient = false;
        return settled;
    }

    /// <summary>Puts regulators into every combination of their modes, as long as trials are left.</summary>
    private static IEnumerable<int> AllModes(Run run, Positions start, int[] regulators)
    {
        var combinations = (int)Math.Pow(3, regulators.Length);
        for (var combination = 0; combination < combinations && run.ModeTrials > 0; combination++, run.ModeTrials--)
        {
            run.Positions.CopyFrom(start);
            for (var (i, rest) = (0, combination); i < regulators.Length; i++, rest /= 3) run.Positions.Modes[regulators[i]] = rest % 3;
            yield return combination;
        }
    }

    private int[] Adjustable() =>
        [.. Enumerable.Range(0, plan.Regulators.Length).Where(i => plan.Regulators[i].Kind != RegulatorKind.Line)];

    private void Flip(Positions positions, int element)
    {
        if (element < plan.Spools.Length)
        {
            positions.Moved[element] ^= true;
            return;
        }

        var ball = element - plan.Spools.Length;
        positions.Balls[ball] = plan.Balls[ball].Seats.Length == 1 ? -1 - positions.Balls[ball] : 1 - positions.Balls[ball];
    }

    /// <summary>Pressures for the positions as they stand, with every regulator doing what the pressures ask of it.</summary>
    /// <param name="run">What is being solved.</param>
    /// <param name="untilKnown">Whether to stop, with nothing solved, where everything comes to stand as in the known answer.</param>
    private void SolvePressures(Run run, bool untilKnown = false)
    {
        seenRegulators.Clear();
        SortedSet<int>? restless = null;
        var oneByOne = false;
        run.RegulatorsAgree = false;
        for (var round = 0; round < 200; round++)
        {
            if (untilKnown && StandsAsKnown(run)) return;
            field.Solve(run.Positions, run.Inputs, run.Given, run.Memory);
            if (!SetRegulators(run, oneByOne, restless))
            {
                run.RegulatorsAgree = field.Converged;
                if (run.RegulatorsAgree) return;
                break;
            }

            run.Positions.WriteRegulators(seenRegulators.Next);
            if (seenRegulators.Add()) continue;
            if (oneByOne) break;
            oneByOne = true;
            seenRegulators.Clear();
            restless = [];
        }

        // The fault may lie with one that stands still, or, where pressures cannot be solved, with any.
        if (field.Converged && restless is not null && TryModes(run, [.. restless])) return;
        TryModes(run, Adjustable());
    }

    private bool SetRegulators(Run run, bool oneByOne, SortedSet<int>? restless = null)
    {
        var changed = false;
        var line = balance.WantedLine(run.Positions, run.Inputs);
        if (line != run.Positions.Line)
        {
            run.Positions.Line = line;
            changed = true;
        }

        Span<int> wanted = stackalloc int[plan.Regulators.Length];
        for (var i = 0; i < wanted.Length; i++) wanted[i] = balance.Wanted(i, run.Positions, run.Inputs);
        for (var i = 0; i < wanted.Length; i++)
        {
            if (wanted[i] == run.Positions.Modes[i]) continue;
            restless?.Add(i);
            if (oneByOne && changed) continue;
            run.Positions.Modes[i] = wanted[i];
            changed = true;
        }

        return changed;
    }

    /// <summary>Where regulators go round in circles, their modes are tried one after the other.</summary>
    private bool TryModes(Run run, int[] restless)
    {
        if (restless.Length > MostModesTried) return false;
        var start = run.Positions.Copy();
        foreach (var _ in AllModes(run, start, restless))
        {
            field.Solve(run.Positions, run.Inputs, run.Given, run.Memory);
            if (!field.Converged || SetRegulators(run, oneByOne: true)) continue;
            run.RegulatorsAgree = true;
            return true;
        }

        run.Positions.CopyFrom(start);
        field.Solve(run.Positions, run.Inputs, run.Given, run.Memory);
        return false;
    }

    /// <summary>What the pressures ask to be moved. Overwritten by the next call.</summary>
    private List<Move> Wanted(Run run)
    {
        moves.Clear();
        trials.Clear();
        for (var i = 0; i < plan.Spools.Length; i++)
        {
            var moved = mechanics.WantsMoved(i);
            if (moved != run.Positions.Moved[i]) moves.Add(new Move(i, moved ? 1 : 0));
        }

        for (var i = 0; i < plan.Balls.Length; i++)
        {
            var seat = mechanics.WantedSeat(i, run.Positions.Balls[i]);
            if (seat != run.Positions.Balls[i]) moves.Add(new Move(plan.Spools.Length + i, seat));
            else if (mechanics.NeedsTrial(i, seat)) trials.Add(i);
        }

        // A trial costs a solve, and says something only where the rest stands still.
        if (moves.Count > 0) return moves;
        foreach (var ball in trials)
        {
            if (run.RegulatorsAgree && field.Supply.IsNeedless(plan.Balls[ball].Seats[0].Link)) continue;
            if (ClosesWhenTried(run, ball)) moves.Add(new Move(plan.Spools.Length + ball, 0));
        }

        return moves;
    }

    private bool ClosesWhenTried(Run run, int ball)
    {
        trialStart.CopyFrom(run.Positions);
        var agreed = run.RegulatorsAgree;
        field.Keep();
        run.Positions.Balls[ball] = 0;
        SolvePressures(run);
        var closes = mechanics.WantedSeat(ball, -1) == 0;
        run.Positions.CopyFrom(trialStart);
        field.Restore();
        run.RegulatorsAgree = agreed;
        return closes;
    }

    private void Apply(Run run, Move move)
    {
        if (move.Element < plan.Spools.Length) run.Positions.Moved[move.Element] = move.Position == 1;
        else run.Positions.Balls[move.Element - plan.Spools.Length] = move.Position;
    }

    private ImmutableArray<string> DescribeCycle(Run run)
    {
        var regulators = Enumerable.Range(0, plan.Regulators.Length)
            .Where(i => balance.Wanted(i, run.Positions, run.Inputs) != run.Positions.Modes[i])
            .Select(i => $"regulator {plan.Network.Regulators[i].Name}");
        return [.. run.Moving.Order().Select(element => element < plan.Spools.Length
            ? $"valve {plan.Network.Spools[element].Name}"
            : $"ball {plan.Network.Balls[element - plan.Spools.Length].Name}"), .. regulators];
    }

    /// <summary>A spool (or, numbered after them, a ball) and where it should go.</summary>
    private readonly record struct Move(int Element, int Position);

    private sealed class Run(Positions positions, GearInputs inputs, double[] given, double[] memory)
    {
        public Positions Positions { get; } = positions;

        public GearInputs Inputs { get; } = inputs;

        public double[] Given { get; } = given;

        public double[] Memory { get; } = memory;

        public bool RegulatorsAgree { get; set; }

        /// <summary>An answer from another start, or null.</summary>
        public GearSolution? Known { get; init; }

        /// <summary>Whether this start led to it.</summary>
        public bool IsKnown { get; set; }

        /// <summary>How many more combinations of regulator modes may be tried, so that a hopeless state is given up in time.</summary>
        public int ModeTrials { get; set; } = 2000;

        /// <summary>The last positions that were tried together; where a circle begins.</summary>
        public Positions CycleStart { get; } = positions.Copy();

        public SortedSet<int> Moving { get; } = [];
    }
}
