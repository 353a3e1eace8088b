using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>What fixes a cell's pressure.</summary>
internal enum Fixing : byte
{
    /// <summary>Nothing: it follows from its neighbours.</summary>
    Free,

    /// <summary>It is the sump.</summary>
    Sump,

    /// <summary>The gear fixes it.</summary>
    Given,

    /// <summary>The pump and its line regulator.</summary>
    Pump,

    /// <summary>A regulator that is holding.</summary>
    Regulator,
}

/// <summary>
/// The pressures that belong to given positions. Cells that one source alone reaches take its pressure, cells that only
/// drain take none, cells that nothing reaches keep what they had; between several sources or drains the orifice network
/// is solved. Holds the work arrays of one thread; results are overwritten by the next solve.
/// </summary>
internal sealed class PressureField
{
    private readonly Plan plan;
    private readonly OrificeNetwork flow;
    private readonly int[] region;
    private readonly int[] order;
    private readonly int[] regionStart;
    private readonly int[] regionFixing;
    private readonly bool[] regionFlows;
    private readonly int[] hangsOn;
    private readonly bool[] flowing;
    private readonly CellQueue ends;
    private readonly bool[] tapped;
    private int regions;
    private PressureField? kept;

    public PressureField(Plan plan)
    {
        this.plan = plan;
        Pressure = new double[plan.Cells];
        Open = new OpenLinks(plan);
        Fixing = new Fixing[plan.Cells];
        HeldBy = new int[plan.Cells];
        RegulatorFlow = new double[plan.Regulators.Length];
        Flows = new bool[plan.Regulators.Length];
        Value = new double[plan.Cells];
        region = new int[plan.Cells];
        order = new int[plan.Cells];
        regionStart = new int[plan.Cells + 1];
        regionFixing = new int[plan.Cells];
        regionFlows = new bool[plan.Cells];
        hangsOn = new int[plan.Cells];
        flowing = new bool[plan.Cells];
        // A cell waits there at most twice: to begin with, and once more for each that hangs on it.
        ends = new CellQueue(2 * plan.Cells);
        tapped = new bool[plan.Cells];
        flow = new OrificeNetwork(plan, this);
        Supply = new OilSupply(plan, this);
    }

    /// <summary>Where oil comes from, after a solve.</summary>
    public OilSupply Supply { get; }

    /// <summary>Pressure of each cell, kPa.</summary>
    public double[] Pressure { get; }

    /// <summary>The links that are open.</summary>
    public OpenLinks Open { get; }

    /// <summary>What fixes each cell.</summary>
    public Fixing[] Fixing { get; }

    /// <summary>The regulator that holds a cell, where one does.</summary>
    public int[] HeldBy { get; }

    /// <summary>Flow that each holding regulator gives (taken away when negative), mm2 times root kPa.</summary>
    public double[] RegulatorFlow { get; }

    /// <summary>Whether a holding regulator can have any flow at all.</summary>
    public bool[] Flows { get; }

    /// <summary>Known pressure of a fixed cell; not a number while it follows from others.</summary>
    public double[] Value { get; }

    /// <summary>Whether the last solve met its tolerance.</summary>
    public bool Converged { get; private set; }

    /// <summary>Solves the pressures for positions and modes as they stand.</summary>
    /// <param name="positions">Where everything stands.</param>
    /// <param name="inputs">What the gear sets.</param>
    /// <param name="given">Pressure fixed from outside, cell by cell; not a number where none is.</param>
    /// <param name="memory">What trapped oil keeps, cell by cell.</param>
    public void Solve(Positions positions, GearInputs inputs, double[] given, double[] memory)
    {
        Open.Set(positions, inputs);
        FixCells(positions, given);
        FindRegions();
        FindFlows(positions);
        CutDeadEnds();
        ResolveValues(positions, inputs, memory);
        FillTrapped(memory);
        Converged = flow.Solve(positions, inputs);
        Fill();
        Supply.Forget();
    }

    /// <summary>Keeps the last solve's results, so that another may be tried.</summary>
    internal void Keep()
    {
        kept ??= new PressureField(plan);
        CopyTo(kept);
    }

    /// <summary>Puts kept results back.</summary>
    internal void Restore() => kept!.CopyTo(this);

    private void CopyTo(PressureField other)
    {
        Pressure.CopyTo(other.Pressure, 0);
        Open.CopyTo(other.Open);
        Fixing.CopyTo(other.Fixing, 0);
        HeldBy.CopyTo(other.HeldBy, 0);
        RegulatorFlow.CopyTo(other.RegulatorFlow, 0);
        Flows.CopyTo(other.Flows, 0);
        Value.CopyTo(other.Value, 0);
        region.CopyTo(other.region, 0);
        order.CopyTo(other.order, 0);
        regionStart.CopyTo(other.regionStart, 0);
        regionFixing.CopyTo(other.regionFixing, 0);
        regionFlows.CopyTo(other.regionFlows, 0);
        hangsOn.CopyTo(other.hangsOn, 0);
        flowing.CopyTo(other.flowing, 0);
        other.Supply.Forget();
        other.regions = regions;
        other.Converged = Converged;
    }

    /// <summary>Set pressure of a regulator from pressures as they stand, kPa.</summary>
    public double SetOf(int regulator, GearInputs inputs)
    {
        var element = plan.Regulators[regulator];
        if (element.Kind == RegulatorKind.Solenoid) return inputs.Set[regulator];
        var set = element.Spring;
        foreach (var signal in element.SetBy) set += signal.Factor * Pressure[signal.Node];
        return Math.Max(0, set);
    }

    /// <summary>The cell whose pressure a cell shares: itself when fixed or in flow; -1 when trapped.</summary>
    internal int Governs(int cell)
    {
        while (hangsOn[cell] >= 0) cell = hangsOn[cell];
        return flowing[cell] || Fixing[cell] != Solving.Fixing.Free ? cell : regionFixing[region[cell]];
    }

    /// <summary>Whether a free cell lies on a way between several fixed ones, so that oil may flow through it.</summary>
    internal bool IsFlowing(int cell) => flowing[cell];

    /// <summary>Whether any oil flows in the region of a free cell.</summary>
    internal bool IsInFlow(int cell) => regionFlows[region[cell]];

    /// <summary>Whether a free cell is reached by nothing at all.</summary>
    internal bool IsTrapped(int cell) => Fixing[cell] == Solving.Fixing.Free && regionFixing[region[cell]] < 0;

    private void FixCells(Positions positions, double[] given)
    {
        Array.Clear(Fixing);
        Array.Fill(HeldBy, -1);
        Array.Fill(Value, double.NaN);
        Fixing[0] = Solving.Fixing.Sump;
        Value[0] = 0;
        for (var cell = 1; cell < given.Length; cell++)
        {
            if (double.IsNaN(given[cell])) continue;
            Fixing[cell] = Solving.Fixing.Given;
            Value[cell] = given[cell];
        }

        if (plan.Pump > 0) FixLine(plan.Pump);
        if (positions.Line >= 0) FixLine(plan.Regulators[positions.Line].Out);
        for (var i = 0; i < plan.Regulators.Length; i++)
        {
            var cell = plan.Regulators[i].Out;
            if (positions.Modes[i] != RegulatorModes.Holding || Fixing[cell] != Solving.Fixing.Free) continue;
            Fixing[cell] = Solving.Fixing.Regulator;
            HeldBy[cell] = i;
        }
    }

    /// <summary>
    /// The regulator feels the passage that it holds; the pump's own passage is at least as high, and counts as level with it.
    /// </summary>
    private void FixLine(int cell)
    {
        if (Fixing[cell] == Solving.Fixing.Free) Fixing[cell] = Solving.Fixing.Pump;
    }

    /// <summary>Groups free cells that open links join without passing a fixed cell.</summary>
    private void FindRegions()
    {
        Array.Fill(region, -1);
        regions = 0;
        var count = 0;
        for (var seed = 1; seed < plan.Cells; seed++)
        {
            if (region[seed] >= 0 || Fixing[seed] != Solving.Fixing.Free) continue;
            var current = regions++;
            regionStart[current] = count;
            regionFixing[current] = -1;
            regionFlows[current] = false;
            region[seed] = current;
            order[count++] = seed;
            for (var head = count - 1; head < count; head++) count = Grow(order[head], current, count);
        }

        regionStart[regions] = count;
    }

    private int Grow(int cell, int current, int count)
    {
        foreach (var other in Open.From(cell))
        {
            if (Fixing[other] != Solving.Fixing.Free)
            {
                if (regionFixing[current] < 0) regionFixing[current] = other;
                else if (!IsLevel(regionFixing[current], other)) regionFlows[current] = true;
            }
            else if (region[other] < 0)
            {
                region[other] = current;
                order[count++] = other;
            }
        }

        return count;
    }

    private bool IsLevel(int a, int b) => a == b || (Fixing[a] == Solving.Fixing.Pump && Fixing[b] == Solving.Fixing.Pump);

    /// <summary>A regulator that gives flow draws it from its supply, or lets it out to its drain, so their regions flow too.</summary>
    private void FindFlows(Positions positions)
    {
        Array.Clear(Flows);
        for (var changed = true; changed;)
        {
            changed = false;
            for (var i = 0; i < plan.Regulators.Length; i++)
            {
                var element = plan.Regulators[i];
                if (Flows[i] || positions.Modes[i] != RegulatorModes.Holding || HeldBy[element.Out] != i || !GivesFlow(i)) continue;
                Flows[i] = changed = true;
                LetFlow(element.From);
                LetFlow(element.To);
            }
        }
    }

    /// <summary>What a regulator takes from a region, or relieves into it, passes on to what fixes that region; if nothing does, none flows.</summary>
    private void LetFlow(int cell)
    {
        if (cell > 0 && Fixing[cell] == Solving.Fixing.Free && regionFixing[region[cell]] >= 0) regionFlows[region[cell]] = true;
    }

    private bool GivesFlow(int regulator)
    {
        var cell = plan.Regulators[regulator].Out;
        foreach (var other in Open.From(cell))
        {
            if (Fixing[other] != Solving.Fixing.Free || regionFlows[region[other]]) return true;
        }

        for (var i = 0; i < plan.Regulators.Length; i++)
        {
            if (Flows[i] && (plan.Regulators[i].From == cell || plan.Regulators[i].To == cell) && plan.Regulators[i].Out != cell) return true;
        }

        return false;
    }

    /// <summary>
    /// A cell in a flowing region that only one other cell touches has no flow and that cell's pressure. What is left
    /// when all of them are cut off is small.
    /// </summary>
    private void CutDeadEnds()
    {
        Array.Fill(hangsOn, -1);
        Array.Clear(flowing);
        var flows = false;
        for (var i = 0; i < regions; i++)
        {
            if (!regionFlows[i]) continue;
            flows = true;
            foreach (var cell in order.AsSpan(regionStart[i]..regionStart[i + 1])) flowing[cell] = true;
        }

        if (!flows) return;
        FindTapped();
        ends.Clear();
        for (var cell = 1; cell < flowing.Length; cell++)
        {
            if (flowing[cell]) ends.Add(cell);
        }

        while (ends.TryTake(out var cell))
        {
            if (!flowing[cell] || tapped[cell] || OnlyNeighbour(cell) is not (> -1 and var neighbour)) continue;
            hangsOn[cell] = neighbour;
            flowing[cell] = false;
            if (flowing[neighbour]) ends.Add(neighbour);
        }
    }

    /// <summary>Marks the cells that a regulator which gives flow takes it from, or relieves into.</summary>
    private void FindTapped()
    {
        Array.Clear(tapped);
        for (var i = 0; i < plan.Regulators.Length; i++)
        {
            if (!Flows[i]) continue;
            if (plan.Regulators[i].From >= 0) tapped[plan.Regulators[i].From] = true;
            if (plan.Regulators[i].To >= 0) tapped[plan.Regulators[i].To] = true;
        }
    }

    /// <summary>The one cell that oil can pass to, or -1 when there are several.</summary>
    private int OnlyNeighbour(int cell)
    {
        var only = -1;
        foreach (var other in Open.From(cell))
        {
            if (hangsOn[other] == cell) continue;
            if (only >= 0 && only != other) return -1;
            only = other;
        }

        return only;
    }

    /// <summary>Works out the fixed pressures that need no equations: set pressures whose signals are known.</summary>
    private void ResolveValues(Positions positions, GearInputs inputs, double[] memory)
    {
        for (var changed = true; changed;)
        {
            changed = false;
            changed |= ResolveLine(positions, inputs, memory);
            for (var i = 0; i < plan.Regulators.Length; i++)
            {
                var cell = plan.Regulators[i].Out;
                if (HeldBy[cell] == i && double.IsNaN(Value[cell])) changed |= Resolve(cell, i, inputs, memory);
            }
        }
    }

    private bool ResolveLine(Positions positions, GearInputs inputs, double[] memory)
    {
        var changed = plan.Pump > 0 && ResolveAt(plan.Pump);
        return (positions.Line >= 0 && ResolveAt(plan.Regulators[positions.Line].Out)) || changed;

        bool ResolveAt(int cell) =>
            Fixing[cell] == Solving.Fixing.Pump && double.IsNaN(Value[cell]) && Resolve(cell, positions.Line, inputs, memory);
    }

    private bool Resolve(int cell, int regulator, GearInputs inputs, double[] memory)
    {
        var value = regulator < 0 ? plan.UnregulatedPressure : LawValue(regulator, inputs, memory);
        Value[cell] = value;
        return !double.IsNaN(value);
    }

    private double LawValue(int regulator, GearInputs inputs, double[] memory)
    {
        var element = plan.Regulators[regulator];
        if (element.Kind == RegulatorKind.Solenoid) return inputs.Set[regulator];
        var set = element.Spring;
        foreach (var signal in element.SetBy)
        {
            var governs = Governs(signal.Node);
            set += signal.Factor * (governs < 0 ? Remembered(signal.Node, memory) : Value[governs]);
        }

        return Math.Max(0, set);
    }

    /// <summary>
    /// Shut-in oil keeps the pressure of the chambers that it is shut in with, by volume; without any, the highest it had.
    /// </summary>
    private double Remembered(int cell, double[] memory)
    {
        var (start, end) = (regionStart[region[cell]], regionStart[region[cell] + 1]);
        var (sum, volume, highest) = (0.0, 0.0, 0.0);
        for (var i = start; i < end; i++)
        {
            sum += plan.Compliance[order[i]] * memory[order[i]];
            volume += plan.Compliance[order[i]];
            highest = Math.Max(highest, memory[order[i]]);
        }

        return volume > 0 ? sum / volume : highest;
    }

    private void FillTrapped(double[] memory)
    {
        for (var i = 0; i < regions; i++)
        {
            if (regionFixing[i] >= 0) continue;
            var kept = Remembered(order[regionStart[i]], memory);
            for (var k = regionStart[i]; k < regionStart[i + 1]; k++) Pressure[order[k]] = kept;
        }
    }

    private void Fill()
    {
        for (var cell = 0; cell < plan.Cells; cell++)
        {
            var governs = Governs(cell);
            if (governs < 0 || (governs == cell && IsFlowing(cell))) continue;
            Pressure[cell] = Fixing[governs] == Solving.Fixing.Free ? Pressure[governs] : Value[governs];
        }
    }
}
