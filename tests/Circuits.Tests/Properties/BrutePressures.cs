namespace Circuits.Tests.Properties;

/// <summary>
/// Pressures for given positions, in the plainest way: what is fixed is fixed, what lies between is balanced by a
/// general-purpose equation solver, then set pressures and regulator flows are worked out anew, until nothing changes.
/// Whatever way they were found, <see cref="Imbalance"/> holds them against each cell's own balance, by bisection.
/// </summary>
internal sealed class BrutePressures
{
    private readonly BruteNetwork network;
    private readonly BruteState state;
    private readonly List<BruteLink>[] open;
    private readonly bool[] isFixed;
    private readonly int[] heldBy;
    private readonly double[] flow;

    public BrutePressures(BruteNetwork network, BruteState state)
    {
        this.network = network;
        this.state = state;
        Pressure = new double[network.Cells];
        open = [.. Enumerable.Range(0, network.Cells).Select(_ => new List<BruteLink>())];
        foreach (var link in network.Links.Where(state.IsOpen))
        {
            open[link.A].Add(link);
            open[link.B].Add(link);
        }

        isFixed = new bool[network.Cells];
        heldBy = new int[network.Cells];
        flow = new double[network.Regulators.Length];
        Array.Fill(heldBy, -1);
        isFixed[0] = true;
        foreach (var (cell, kilopascals) in network.Given)
        {
            isFixed[cell] = true;
            Pressure[cell] = kilopascals;
        }

        LineCells = [.. network.Regulators.Where(regulator => regulator.Kind == BruteKind.Line).Select(regulator => regulator.Out)
            .Append(network.Pump).Where(cell => cell > 0 && !isFixed[cell]).Distinct()];
        foreach (var cell in LineCells) isFixed[cell] = true;
        for (var i = 0; i < flow.Length; i++)
        {
            var (regulator, cell) = (network.Regulators[i], network.Regulators[i].Out);
            if (regulator.Kind == BruteKind.Line || state.Modes[i] != 1 || isFixed[cell]) continue;
            isFixed[cell] = true;
            heldBy[cell] = i;
        }
    }

    public double[] Pressure { get; }

    private List<int> LineCells { get; }

    /// <summary>Whether a cell is held by this regulator.</summary>
    public bool Holds(int regulator) => heldBy[network.Regulators[regulator].Out] == regulator;

    /// <summary>What a holding regulator gives (takes away when negative).</summary>
    public double FlowOf(int regulator) => flow[regulator];

    /// <summary>Set pressure from the pressures as they stand; a pressure solenoid has its command.</summary>
    public double SetOf(int regulator)
    {
        var element = network.Regulators[regulator];
        return double.IsNaN(element.Command)
            ? Math.Max(0, element.Spring + element.SetBy.Sum(signal => signal.Factor * Pressure[signal.Cell]))
            : element.Command;
    }

    /// <summary>Line pressure from the pressures as they stand: the lowest of the line regulators.</summary>
    public double LinePressure()
    {
        var lines = Enumerable.Range(0, flow.Length).Where(i => network.Regulators[i].Kind == BruteKind.Line).ToList();
        return lines.Count == 0 ? network.Unregulated : lines.Min(SetOf);
    }

    /// <summary>Finds the pressures.</summary>
    /// <returns>Whether they came to rest, each cell in balance.</returns>
    public bool Relax()
    {
        var free = new BruteBalance(network.Cells, [.. network.Links.Where(state.IsOpen)], isFixed, IsTapped);
        for (var round = 0; round < 60; round++)
        {
            var change = 0.0;
            for (var cell = 1; cell < network.Cells; cell++)
            {
                if (isFixed[cell]) change = Math.Max(change, MoveTo(cell, TargetOf(cell)));
                if (double.IsInfinity(Pressure[cell])) return false;
            }

            change = Math.Max(change, free.Solve(Pressure, Drawn));
            change = Math.Max(change, UpdateFlows(0.7));
            var highest = Pressure.Max();
            if (!double.IsFinite(change) || !(highest < 1e7)) return false;
            if (change < 1e-7 * Math.Max(1, highest)) return WorstCell() < 1e-7 * Math.Max(1, highest);
        }

        return false;
    }

    /// <summary>
    /// How far each cell is from its own balance, for pressures that come from elsewhere. Openings where several things
    /// meet have no pressure of their own there, and are relaxed first.
    /// </summary>
    public double Imbalance(Func<int, double> known)
    {
        for (var cell = 1; cell < network.Cells; cell++)
        {
            if (!network.Nameless.Contains(cell)) Pressure[cell] = known(cell);
        }

        var named = Enumerable.Range(0, network.Cells).Select(cell => !network.Nameless.Contains(cell)).ToArray();
        new BruteBalance(network.Cells, [.. network.Links.Where(state.IsOpen)], named, IsTapped).Solve(Pressure, Drawn);
        for (var round = 0; round <= flow.Length; round++) UpdateFlows(1);
        return WorstCell();
    }

    /// <summary>Whether a cell has oil, and none of it from the pump or from outside, but from regulators only that it feeds.</summary>
    public bool FeedsItself(int cell)
    {
        var supplied = new HashSet<int>(LineCells.Concat(network.Given.Where(pair => pair.Value > 0).Select(pair => pair.Key)));
        for (var grown = true; grown;)
        {
            var before = supplied.Count;
            foreach (var at in supplied.ToList()) supplied.UnionWith(open[at].Select(link => Other(link, at)).Where(other => other != 0));
            supplied.UnionWith(Enumerable.Range(0, flow.Length).Where(i => Holds(i) && supplied.Contains(network.Regulators[i].From)).Select(i => network.Regulators[i].Out));
            grown = supplied.Count > before;
        }

        return !supplied.Contains(cell) && !Trapped().Contains(cell);
    }

    /// <summary>Cells that no open link joins, however far, to anything whose pressure is fixed.</summary>
    public HashSet<int> Trapped()
    {
        var reached = new HashSet<int>(Enumerable.Range(0, network.Cells).Where(cell => isFixed[cell]));
        var queue = new Queue<int>(reached);
        while (queue.TryDequeue(out var cell))
        {
            foreach (var link in open[cell])
            {
                if (reached.Add(Other(link, cell))) queue.Enqueue(Other(link, cell));
            }
        }

        return [.. Enumerable.Range(0, network.Cells).Where(cell => !reached.Contains(cell))];
    }

    private static int Other(BruteLink link, int cell) => link.A == cell ? link.B : link.A;

    private bool IsTapped(int cell) =>
        Enumerable.Range(0, flow.Length).Any(i => Holds(i) && (network.Regulators[i].From == cell || network.Regulators[i].To == cell));

    private double WorstCell()
    {
        var worst = 0.0;
        for (var cell = 1; cell < network.Cells; cell++)
        {
            var target = TargetOf(cell);
            worst = Math.Max(worst, double.IsNaN(target) ? 0 : Math.Abs(target - Pressure[cell]));
        }

        return worst;
    }

    private double MoveTo(int cell, double target)
    {
        var change = Math.Abs(target - Pressure[cell]);
        Pressure[cell] = target;
        return change;
    }

    /// <summary>Where a cell ought to be by its neighbours as they stand; not a number for one that keeps what it has.</summary>
    private double TargetOf(int cell)
    {
        if (network.Given.TryGetValue(cell, out var given)) return given;
        if (LineCells.Contains(cell)) return LinePressure();
        if (heldBy[cell] >= 0) return SetOf(heldBy[cell]);
        return open[cell].Count == 0 ? double.NaN : Balanced(cell);
    }

    private double Balanced(int cell)
    {
        var links = open[cell];
        if (links.Count == 0) return Pressure[cell];
        var drawn = Drawn(cell);
        if (links.Count == 1 && drawn == 0) return Pressure[Other(links[0], cell)];
        var reach = Math.Pow(drawn / links.Max(link => link.Area), 2);
        var low = links.Min(link => Pressure[Other(link, cell)]) - reach;
        var high = links.Max(link => Pressure[Other(link, cell)]) + reach;
        for (var i = 0; i < 80 && high - low > 1e-13 * high; i++)
        {
            var middle = (low + high) / 2;
            if (NetInflow(cell, middle) > drawn) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private double NetInflow(int cell, double pressure)
    {
        var sum = 0.0;
        foreach (var link in open[cell])
        {
            var difference = Pressure[Other(link, cell)] - pressure;
            sum += Math.Sign(difference) * link.Area * Math.Sqrt(Math.Abs(difference));
        }

        return sum;
    }

    /// <summary>What holding regulators take out of a cell, less what they let into it.</summary>
    private double Drawn(int cell)
    {
        var sum = 0.0;
        for (var i = 0; i < flow.Length; i++)
        {
            if (flow[i] > 0 && network.Regulators[i].Kind == BruteKind.Reducing && network.Regulators[i].From == cell) sum += flow[i];
            if (flow[i] < 0 && network.Regulators[i].To == cell) sum += flow[i];
        }

        return sum;
    }

    /// <returns>How far they moved, as a pressure.</returns>
    private double UpdateFlows(double share)
    {
        var change = 0.0;
        for (var i = 0; i < flow.Length; i++)
        {
            if (!Holds(i)) continue;
            var cell = network.Regulators[i].Out;
            var step = share * (Drawn(cell) - NetInflow(cell, Pressure[cell]) - flow[i]);
            flow[i] += step;
            change = Math.Max(change, Math.Abs(step) / network.Regulators[i].Area);
        }

        return change;
    }
}
