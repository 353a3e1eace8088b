using Circuits.Laws;

namespace Circuits.Solving.Flow;

/// <summary>
/// What flows into each cell at given pressures, and how that changes with them. Holds the work arrays of one thread;
/// evaluating allocates nothing. Pressures in Pa, flows in m3/s.
/// </summary>
internal sealed partial class FlowBalance
{
    private readonly FlowNetwork flow;
    private readonly double[] travel;
    private readonly double[] travelSlope;
    private readonly double[] slopes;
    private readonly bool[] active;
    private readonly bool[] pinned;
    private readonly double[] commands;
    private readonly OrificeCurve[] holes;
    private FlowConditions conditions = FlowConditions.None;
    private bool sized;
    private double[]? lagFrom;
    private double lagRatio;

    public FlowBalance(FlowNetwork flow)
    {
        this.flow = flow;
        System = flow.NewSystem();
        Pressure = new double[flow.Cells];
        Net = new double[flow.Cells];
        Flow = new double[flow.Elements.Length];
        travel = new double[flow.Spools.Length];
        travelSlope = new double[flow.Spools.Length];
        slopes = new double[flow.Elements.Length == 0 ? 2 : flow.Elements.Max(element => element.DependsOn.Length)];
        active = new bool[flow.Elements.Length];
        pinned = new bool[flow.Cells];
        commands = new double[flow.Regulators.Length];
        holes = new OrificeCurve[flow.Elements.Length];
        Heads = new double[flow.Pistons.Length];
    }

    /// <summary>What turning oil adds to each piston, N.</summary>
    public double[] Heads { get; }

    /// <summary>Pressure of each cell; the caller sets them.</summary>
    public double[] Pressure { get; }

    /// <summary>What flows into each cell, less what flows out.</summary>
    public double[] Net { get; }

    /// <summary>What flows through each element, from its first end to its second.</summary>
    public double[] Flow { get; }

    /// <summary>The change of <see cref="Net"/> with each cell's pressure; unknown i is cell i + 1.</summary>
    public SparseSystem System { get; }

    /// <summary>What the pump gives.</summary>
    public double Pumped { get; private set; }

    /// <summary>What flows out to sump and into passages whose pressure is fixed from outside; less than zero when those give more.</summary>
    public double Drained { get; private set; }

    /// <summary>Whether a cell's pressure is fixed from outside.</summary>
    public bool IsPinned(int cell) => cell == 0 || pinned[cell];

    /// <summary>How far a spool has travelled, 0 at rest to 1 fully moved, at the pressures last evaluated.</summary>
    public double TravelOf(int spool) => travel[spool];

    /// <summary>Whether an element can pass oil in this gear at all.</summary>
    public bool IsActive(int element) => active[element];

    /// <summary>Sets what the gear and its conditions fix; spools follow at once again.</summary>
    public void Set(GearInputs inputs, FlowConditions given)
    {
        Begin(given);
        foreach (var (node, kilopascals) in inputs.Fixed)
        {
            var cell = flow.CellOf[node];
            pinned[cell] = true;
            Pressure[cell] = kilopascals * 1e3;
        }

        for (var i = 0; i < commands.Length; i++) commands[i] = inputs.Set[i] * 1e3;
        for (var i = 0; i < active.Length; i++) active[i] = IsOpen(flow.Elements[i], inputs);
    }

    /// <summary>Opens everything and fixes some cells, for a network that has no gears.</summary>
    /// <param name="given">Oil and pump.</param>
    /// <param name="pressures">Cells and Pa.</param>
    public void Set(FlowConditions given, IEnumerable<(int Cell, double Pascals)> pressures)
    {
        Begin(given);
        Array.Fill(active, true);
        foreach (var (cell, pascals) in pressures) (pinned[cell], Pressure[cell]) = (true, pascals);
    }

    /// <summary>Commands a pressure solenoid.</summary>
    /// <param name="regulator">Its number among regulators.</param>
    /// <param name="pascals">The pressure; infinite for its whole feed.</param>
    public void Command(int regulator, double pascals) => commands[regulator] = pascals;

    /// <summary>Evaluates the balance at the pressures as they stand.</summary>
    /// <param name="withSlopes">Whether to fill <see cref="System"/> too.</param>
    public void Evaluate(bool withSlopes)
    {
        Array.Clear(Net);
        if (withSlopes) System.Clear();
        MoveSpools();
        AddPump(withSlopes);
        for (var i = 0; i < flow.Elements.Length; i++)
        {
            if (!active[i])
            {
                Flow[i] = 0;
                continue;
            }

            var element = flow.Elements[i];
            double rate;
            if (element.Kind == FlowKind.Orifice)
            {
                (rate, var slope) = holes[i].Flow(Pressure[element.A] - Pressure[element.B]);
                if (withSlopes) AddSlope(element, slope);
            }
            else
            {
                rate = FlowThrough(element, holes[i]);
                if (withSlopes) AddSlopes(element);
            }

            Flow[i] = rate;
            Net[element.A] -= rate;
            Net[element.B] += rate;
        }

        Drained = Net[0];
        Net[0] = 0;
        for (var cell = 1; cell < flow.Cells; cell++)
        {
            if (pinned[cell])
            {
                Drained += Net[cell];
                Net[cell] = 0;
            }

            if (withSlopes && pinned[cell]) System.Values[cell - 1] = -1;
        }
    }

    private void Begin(FlowConditions given)
    {
        lagFrom = null;
        Array.Clear(pinned);
        if (sized && given == conditions) return;
        (sized, conditions) = (true, given);
        for (var i = 0; i < Heads.Length; i++) Heads[i] = given.Heads.IsEmpty || flow.Pistons[i].Clutch < 0 ? 0 : given.Heads[flow.Pistons[i].Clutch];
        for (var i = 0; i < holes.Length; i++) holes[i] = given.Hole(flow.Elements[i].Area, flow.Elements[i].Slot);
    }

    private static bool IsOpen(FlowElement element, GearInputs inputs)
    {
        var gate = element.Gate;
        return gate.Kind switch
        {
            Networks.GateKind.Lever => inputs.Lever == gate.Position,
            Networks.GateKind.Solenoid => inputs.Fed[gate.Element] == (gate.Position == 1),
            Networks.GateKind.Open or Networks.GateKind.Shut or Networks.GateKind.Valve or Networks.GateKind.Ball or Networks.GateKind.Regulator => true,
        };
    }

    /// <summary>
    /// From now on spools follow their forces with a lag: over a part of a step each goes from a given travel towards where its
    /// forces would have it, by this ratio of the part to the lag.
    /// </summary>
    /// <param name="from">Where each begins, or null for spools that follow at once.</param>
    /// <param name="ratio">The part of the step over the lag.</param>
    public void Lag(double[]? from, double ratio) => (lagFrom, lagRatio) = (from, ratio);

    private void MoveSpools()
    {
        for (var i = 0; i < flow.Spools.Length; i++)
        {
            var spool = flow.Spools[i];
            var force = -spool.Preload;
            for (var k = 0; k < spool.Cells.Length; k++) force += spool.Factors[k] * Pressure[spool.Cells[k]];
            var share = force / spool.Range;
            (travel[i], travelSlope[i]) = share <= 0 ? (0, 0) : share >= 1 ? (1, 0) : (share, 1 / spool.Range);
            if (lagFrom is null) continue;
            var follows = lagRatio / (1 + lagRatio);
            travel[i] = (lagFrom[i] / (1 + lagRatio)) + (follows * travel[i]);
            travelSlope[i] *= follows;
        }
    }

    private void AddPump(bool withSlopes)
    {
        if (flow.Pump <= 0) return;
        var (rate, slope) = conditions.Pump.At(Pressure[flow.Pump]);
        Pumped = rate;
        Net[flow.Pump] += rate;
        if (withSlopes && !pinned[flow.Pump]) System.Values[flow.Pump - 1] += slope;
    }

    private void AddSlope(FlowElement element, double slope)
    {
        var values = System.Values;
        if (element.A > 0 && !pinned[element.A])
        {
            values[element.A - 1] -= slope;
            if (element.B > 0) values[element.PlacesA[1]] += slope;
        }

        if (element.B == 0 || pinned[element.B]) return;
        values[element.B - 1] -= slope;
        if (element.A > 0) values[element.PlacesB[0]] += slope;
    }

    private void AddSlopes(FlowElement element)
    {
        var (rowA, rowB) = (element.A > 0 && !pinned[element.A], element.B > 0 && !pinned[element.B]);
        for (var k = 0; k < element.DependsOn.Length; k++)
        {
            if (slopes[k] == 0) continue;
            if (rowA && element.PlacesA[k] >= 0) System.Values[element.PlacesA[k]] -= slopes[k];
            if (rowB && element.PlacesB[k] >= 0) System.Values[element.PlacesB[k]] += slopes[k];
        }
    }

    /// <summary>Flow through an element; leaves its slope by each pressure that it depends on in <see cref="slopes"/>.</summary>
    private double FlowThrough(FlowElement element, in OrificeCurve hole)
    {
        var difference = Pressure[element.A] - Pressure[element.B];
        Array.Clear(slopes, 0, element.DependsOn.Length);
        var (open, byDifference) = element.Kind switch
        {
            FlowKind.Track or FlowKind.Own => (1, 0),
            FlowKind.SpoolPort => SpoolPort(element),
            FlowKind.CheckSeat => Ramp(1 + (-difference / (FlowDefaults.BallBand * 1e3)), -1 / (FlowDefaults.BallBand * 1e3)),
            FlowKind.TwoWaySeat => TwoWaySeat(element),
            FlowKind.BypassPort => Bypass(element, difference),
            FlowKind.FeedPort or FlowKind.DrainPort or FlowKind.SpillPort => RegulatorPort(element),
            FlowKind.Orifice => (1, 0),
        };
        if (open <= 0) return 0;
        var (rate, slope) = element.Kind switch
        {
            FlowKind.Own => element.Law!(conditions, difference),
            FlowKind.Track => conditions.Track(element.Area, element.Length, difference),
            _ => hole.Flow(difference),
        };
        for (var k = 2; k < element.DependsOn.Length; k++) slopes[k] *= rate;
        var ends = (open * slope) + (byDifference * rate);
        slopes[0] = (slopes[0] * rate) + ends;
        slopes[1] = (slopes[1] * rate) - ends;
        return open * rate;
    }

    /// <summary>A port's open share by the spool's share of its travel, where its laps were measured.</summary>
    private static (double Open, double Slope) LappedPort(double share, int towards, double full, double overlap)
    {
        var opening = (full / 2) - overlap;
        var port = Circuits.Laws.SpoolPort.Open(towards * (share - 0.5) * full, overlap, 1 / opening, opening);
        return (port.Area, towards * port.Slope * full);
    }

    /// <summary>Where nobody measured them, spools are cut so that what is open at rest closes by half of the travel, and what is open when moved opens from there.</summary>
    private (double Open, double ByDifference) SpoolPort(FlowElement element)
    {
        var spool = flow.Spools[element.Element];
        var share = travel[element.Element];
        var (open, slope) = spool.Lap is { } lap
            ? LappedPort(share, element.Position == 1 ? 1 : -1, lap.Travel, lap.Overlap)
            : element.Position == 1 ? Ramp((2 * share) - 1, 2) : Ramp(1 - (2 * share), -2);
        slope *= travelSlope[element.Element];
        for (var k = 0; k < spool.Factors.Length; k++) slopes[k + 2] = slope * spool.Factors[k];
        return (open, 0);
    }

    private (double Open, double ByDifference) TwoWaySeat(FlowElement element)
    {
        var beyond = flow.Balls[element.Element]!.Beyond;
        const double band = 2 * FlowDefaults.BallBand * 1e3;
        var sign = element.Position == 0 ? 1 : -1;
        var (open, slope) = Ramp(0.5 + (sign * (Pressure[beyond[0]] - Pressure[beyond[1]]) / band), sign / band);
        slopes[2] = slope;
        slopes[3] = -slope;
        return (open, 0);
    }

    private (double Open, double ByDifference) RegulatorPort(FlowElement element)
    {
        var regulator = flow.Regulators[element.Element];
        var set = regulator.IsCommanded ? commands[element.Element] : regulator.Spring;
        for (var k = 0; k < regulator.Cells.Length; k++) set += regulator.Factors[k] * Pressure[regulator.Cells[k]];
        var follows = set > 0;
        if (!follows) set = 0;
        if (double.IsPositiveInfinity(set)) return (element.Kind == FlowKind.FeedPort ? 1 : 0, 0);
        var (open, slope, byDifference) = regulator.Spool is { } spool ? SpooledPort(element, spool, Pressure[regulator.Regulated], set) : BandedPort(element, regulator, set);

        // A regulator watches its outlet, which is the second end of its feed port and the first of the others.
        slopes[element.Kind == FlowKind.FeedPort ? 1 : 0] = slope;
        if (follows)
        {
            for (var k = 0; k < regulator.Factors.Length; k++) slopes[k + 2] = -slope * regulator.Factors[k];
        }

        return (open, byDifference);
    }

    private (double Open, double ByPressure, double ByDifference) BandedPort(FlowElement element, FlowRegulator regulator, double set)
    {
        var excess = (Pressure[regulator.Regulated] - set) / regulator.Band;
        var (open, slope) = element.Kind switch
        {
            FlowKind.FeedPort => Ramp(-excess, -1 / regulator.Band),
            FlowKind.DrainPort => Ramp(excess, 1 / regulator.Band),
            _ => Ramp(excess - element.Position, 1 / regulator.Band),
        };
        return (open, slope, 0);
    }

    private (double Open, double ByPressure, double ByDifference) SpooledPort(FlowElement element, in RegulatorSizes spool, double pressure, double set)
    {
        var difference = Pressure[element.A] - Pressure[element.B];
        var port = element.Kind == FlowKind.FeedPort
            ? RegulatorLaw.Feed(spool, pressure, set * spool.Area, difference)
            : RegulatorLaw.Spill(spool, pressure, set * spool.Area, difference, element.Position);
        return (port.Area / element.Area, port.ByPressure / element.Area, port.ByDifference / element.Area);
    }

    private static (double Open, double Slope) Ramp(double share, double slope) =>
        share <= 0 ? (0, 0) : share >= 1 ? (1, 0) : (share, slope);
}
