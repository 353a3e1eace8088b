using System.Runtime.InteropServices;
using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>
/// Newton's method on the cells that lie between several fixed ones: what flows in flows out. Regulators that hold add
/// their flow as an unknown, set pressures that depend on flowing cells add their own equation. The orifice law starts
/// soft and is hardened step by step, which makes every step an easy one.
/// </summary>
internal sealed class OrificeNetwork
{
    /// <summary>Softness of the orifice law, kPa, from nearly linear to as good as sharp.</summary>
    private static readonly double[] Softness = [1000, 100, 10, 1, 0.1, 1e-3, 1e-6];

    /// <summary>Imbalance that is left at most, as a fraction of the largest flow.</summary>
    private const double Tolerance = 1e-10;

    /// <summary>The same while the law is still soft: what comes of it is only where the next, harder one starts.</summary>
    private const double SoftTolerance = 1e-3;

    /// <summary>What may be left where no step makes it less: rounding, as a fraction of the largest flow.</summary>
    private const double Acceptable = 1e-6;

    private const int MostIterations = 60;

    private const int MostHalvings = 40;

    /// <summary>What starts near is soon there; else the law that hardens step by step is quicker.</summary>
    private const int MostIterationsFromBefore = 12;

    /// <summary>The same of steps that were too long.</summary>
    private const int MostHalvingsFromBefore = 6;

    private readonly Plan plan;
    private readonly PressureField field;
    private readonly int[] unknownOf;
    private readonly int[] flowOf;
    private readonly List<int> cells = [];
    private readonly List<int> laws = [];
    private readonly List<int> regulators = [];
    private readonly int[] throughOf;
    private readonly List<Share> shares = [];
    private readonly List<Way> ways = [];
    private readonly List<int> draws = [];
    private readonly List<Through> throughs = [];
    private double[] flows = [];
    private double[] slopes = [];
    private double[] x = [];
    private double[] trial = [];
    private double[] residual = [];
    private double[] step = [];
    private double[] matrix = [];
    private double largest;

    public OrificeNetwork(Plan plan, PressureField field)
    {
        this.plan = plan;
        this.field = field;
        unknownOf = new int[plan.Cells];
        throughOf = new int[plan.Links.Length];
        flowOf = new int[plan.Regulators.Length];
    }

    /// <summary>Solves what flows. Does nothing when nothing does.</summary>
    /// <returns>False when the balance does not close.</returns>
    public bool Solve(Positions positions, GearInputs inputs)
    {
        Number();
        var n = cells.Count + laws.Count + regulators.Count;
        if (n == 0)
        {
            Array.Clear(field.RegulatorFlow);
            return true;
        }

        if (matrix.Length < n * n)
            (x, trial, residual, step, matrix) = (new double[n], new double[n], new double[n], new double[n], new double[n * n]);
        Gather();
        var solved = StartFromBefore(inputs) && Newton(n, Softness[^1], Tolerance, positions, MostIterationsFromBefore, MostHalvingsFromBefore);
        if (!solved)
        {
            Guess(inputs);
            foreach (var softness in Softness) solved = Newton(n, softness, softness == Softness[^1] ? Tolerance : SoftTolerance, positions, MostIterations, MostHalvings);
        }

        foreach (var cell in cells) field.Pressure[cell] = x[unknownOf[cell]];
        for (var cell = 0; cell < plan.Cells; cell++)
        {
            if (unknownOf[cell] >= 0 && field.Fixing[cell] != Fixing.Free) field.Value[cell] = x[unknownOf[cell]];
        }

        Array.Clear(field.RegulatorFlow);
        foreach (var regulator in regulators) field.RegulatorFlow[regulator] = x[flowOf[regulator]];
        return solved;
    }

    private void Number()
    {
        cells.Clear();
        laws.Clear();
        regulators.Clear();
        Array.Fill(unknownOf, -1);
        Array.Fill(flowOf, -1);
        for (var cell = 0; cell < plan.Cells; cell++)
        {
            if (!field.IsFlowing(cell)) continue;
            unknownOf[cell] = cells.Count;
            cells.Add(cell);
        }

        for (var cell = 0; cell < plan.Cells; cell++)
        {
            if (field.Fixing[cell] == Fixing.Free || !double.IsNaN(field.Value[cell])) continue;
            // The pump's passage and the one that its regulator holds share one pressure.
            var shared = field.Fixing[cell] == Fixing.Pump ? laws.Find(law => field.Fixing[law] == Fixing.Pump) : 0;
            unknownOf[cell] = shared > 0 ? unknownOf[shared] : cells.Count + laws.Count;
            if (shared == 0) laws.Add(cell);
        }

        for (var i = 0; i < plan.Regulators.Length; i++)
        {
            if (!field.Flows[i]) continue;
            flowOf[i] = cells.Count + laws.Count + regulators.Count;
            regulators.Add(i);
        }
    }

    /// <summary>
    /// Lays the ways by which oil comes to each balanced cell side by side: they stay while Newton's method goes over them again and again.
    /// What flows through a link between two of them is worked out once for both.
    /// </summary>
    private void Gather()
    {
        shares.Clear();
        ways.Clear();
        draws.Clear();
        throughs.Clear();
        Array.Fill(throughOf, -1);
        foreach (var cell in cells) Gather(cell);
        foreach (var regulator in regulators) Gather(plan.Regulators[regulator].Out);
        if (flows.Length < throughs.Count) (flows, slopes) = (new double[throughs.Count], new double[throughs.Count]);
    }

    private void Gather(int cell)
    {
        var (first, firstDraw) = (ways.Count, draws.Count);
        for (var k = plan.First[cell]; k < field.Open.End[cell]; k++)
        {
            var other = field.Open.Other[k];
            // A dead end has the pressure of what it hangs on, and no flow.
            if (field.Fixing[other] == Fixing.Free && !field.IsFlowing(other)) continue;
            ref var through = ref throughOf[field.Open.Link[k]];
            if (through < 0)
            {
                through = throughs.Count;
                throughs.Add(new Through(unknownOf[other], field.Value[other], unknownOf[cell], field.Value[cell], plan.Links[field.Open.Link[k]].Area));
                ways.Add(new Way(through, 1, unknownOf[other]));
            }
            else
            {
                ways.Add(new Way(through, -1, unknownOf[other]));
            }
        }

        foreach (var regulator in regulators)
        {
            if (plan.Regulators[regulator].From == cell || plan.Regulators[regulator].To == cell) draws.Add(regulator);
        }

        shares.Add(new Share(cell, unknownOf[cell], first, ways.Count, firstDraw, draws.Count));
    }

    /// <summary>
    /// Starts from the pressures and flows of the last solve, which a change of one position often leaves nearly as they were; what had none is
    /// guessed.
    /// </summary>
    /// <returns>False when more is guessed than known.</returns>
    private bool StartFromBefore(GearInputs inputs)
    {
        Guess(inputs);
        var known = 0;
        foreach (var cell in cells) known += Take(cell);
        foreach (var cell in laws) known += Take(cell);
        foreach (var regulator in regulators) x[flowOf[regulator]] = field.RegulatorFlow[regulator];
        return 2 * known >= cells.Count + laws.Count;

        int Take(int cell)
        {
            if (!(field.Pressure[cell] > 0)) return 0;
            x[unknownOf[cell]] = field.Pressure[cell];
            return 1;
        }
    }

    private void Guess(GearInputs inputs)
    {
        Array.Clear(x);
        var highest = 0.0;
        foreach (var value in field.Value)
        {
            if (!double.IsNaN(value)) highest = Math.Max(highest, value);
        }

        foreach (var cell in laws)
        {
            var set = field.HeldBy[cell] >= 0 ? field.SetOf(field.HeldBy[cell], inputs) : highest;
            x[unknownOf[cell]] = double.IsFinite(set) ? set : highest;
        }

        foreach (var cell in cells) x[unknownOf[cell]] = highest / 2;
    }

    private bool Newton(int n, double softness, double tolerance, Positions positions, int mostIterations, int mostHalvings)
    {
        var norm = Balance(x, n, softness, positions);
        for (var iteration = 0; iteration < mostIterations; iteration++)
        {
            if (norm <= tolerance * Math.Max(1, largest)) return true;
            Differentiate(x, n, positions);
            for (var i = 0; i < n; i++) step[i] = -residual[i];
            if (!LinearSystem.Solve(matrix, step, n)) return false;
            var scale = 1.0;
            var next = norm;

            // Where what is left may be rounding, a few shorter steps show whether it is.
            var most = norm <= Acceptable * Math.Max(1, largest) ? Math.Min(mostHalvings, MostHalvingsFromBefore) : mostHalvings;
            for (var halving = 0; halving < most; halving++, scale /= 2)
            {
                for (var i = 0; i < n; i++) trial[i] = x[i] + (scale * step[i]);
                next = Balance(trial, n, softness, positions);
                if (next < norm) break;
            }

            (x, trial) = (trial, x);
            // No step makes it better: rounding is all that is left, or there is no solution.
            if (!(next < norm)) return next <= Acceptable * Math.Max(1, largest);
            norm = next;
        }

        return norm <= Acceptable * Math.Max(1, largest);
    }

    /// <summary>What is out of balance at given pressures and flows, row by row, and how much that is together.</summary>
    private double Balance(double[] at, int n, double softness, Positions positions)
    {
        FlowThrough(at, softness);
        var row = 0;
        for (; row < cells.Count; row++) residual[row] = FlowInto(shares[row], at);
        foreach (var cell in laws) residual[row++] = Law(cell, at, positions);
        for (var i = 0; i < regulators.Count; i++) residual[row++] = FlowInto(shares[cells.Count + i], at) + at[flowOf[regulators[i]]];

        var sum = 0.0;
        for (var i = 0; i < n; i++) sum += residual[i] * residual[i];
        return Math.Sqrt(sum);
    }

    /// <summary>How each row changes with each unknown, where the balance was last looked at.</summary>
    private void Differentiate(double[] at, int n, Positions positions)
    {
        Array.Clear(matrix, 0, n * n);
        var row = 0;
        for (; row < cells.Count; row++) FlowInto(shares[row], at, matrix.AsSpan(row * n, n));
        foreach (var cell in laws) Law(cell, positions, matrix.AsSpan(row++ * n, n));
        for (var i = 0; i < regulators.Count; i++, row++)
        {
            FlowInto(shares[cells.Count + i], at, matrix.AsSpan(row * n, n));
            matrix[(row * n) + flowOf[regulators[i]]] += 1;
        }
    }

    private void FlowThrough(double[] at, double softness)
    {
        var all = CollectionsMarshal.AsSpan(throughs);
        var flows = this.flows.AsSpan(0, all.Length);
        var slopes = this.slopes.AsSpan(0, all.Length);
        for (var i = 0; i < all.Length; i++)
        {
            ref readonly var through = ref all[i];
            flows[i] = (through.FromUnknown >= 0 ? at[through.FromUnknown] : through.FromValue) - (through.ToUnknown >= 0 ? at[through.ToUnknown] : through.ToValue);
        }

        OrificeLaw.At(flows, softness, flows, slopes);
        largest = 0;
        for (var i = 0; i < all.Length; i++)
        {
            flows[i] *= all[i].Area;
            slopes[i] *= all[i].Area;
            largest = Math.Max(largest, Math.Abs(flows[i]));
        }
    }

    /// <summary>Flow into a cell through its links, less what regulators draw from it.</summary>
    private double FlowInto(in Share share, double[] at)
    {
        var sum = 0.0;
        foreach (ref readonly var way in CollectionsMarshal.AsSpan(ways)[share.First..share.End]) sum += way.Sign * flows[way.Through];
        for (var i = share.FirstDraw; i < share.EndDraw; i++)
        {
            if (Draws(draws[i], share.Cell, at)) sum -= at[flowOf[draws[i]]];
        }

        return sum;
    }

    /// <summary>How it changes.</summary>
    private void FlowInto(in Share share, double[] at, Span<double> row)
    {
        foreach (ref readonly var way in CollectionsMarshal.AsSpan(ways)[share.First..share.End])
        {
            if (way.Unknown >= 0) row[way.Unknown] += slopes[way.Through];
            if (share.Unknown >= 0) row[share.Unknown] -= slopes[way.Through];
        }

        for (var i = share.FirstDraw; i < share.EndDraw; i++)
        {
            if (Draws(draws[i], share.Cell, at)) row[flowOf[draws[i]]] -= 1;
        }
    }

    /// <summary>Whether a regulator's flow comes from a cell, or goes to it.</summary>
    private bool Draws(int regulator, int cell, double[] at)
    {
        var element = plan.Regulators[regulator];
        var given = at[flowOf[regulator]];
        return (given > 0 && element.From == cell && element.Kind != RegulatorKind.Relief) || (given < 0 && element.To == cell);
    }

    /// <summary>Set pressure less what the law says.</summary>
    private double Law(int cell, double[] at, Positions positions)
    {
        var element = LawOf(cell, positions);
        var sum = at[unknownOf[cell]] - element.Spring;
        foreach (var signal in element.SetBy)
        {
            var governs = field.Governs(signal.Node);
            sum -= signal.Factor * (governs < 0 ? field.Pressure[signal.Node] : PressureAt(governs, at));
        }

        return sum;
    }

    /// <summary>How it changes.</summary>
    private void Law(int cell, Positions positions, Span<double> row)
    {
        row[unknownOf[cell]] += 1;
        foreach (var signal in LawOf(cell, positions).SetBy)
        {
            var governs = field.Governs(signal.Node);
            if (governs >= 0 && unknownOf[governs] >= 0) row[unknownOf[governs]] -= signal.Factor;
        }
    }

    private PlanRegulator LawOf(int cell, Positions positions) =>
        plan.Regulators[field.Fixing[cell] == Fixing.Pump ? positions.Line : field.HeldBy[cell]];

    private double PressureAt(int cell, double[] at)
    {
        var unknown = unknownOf[cell];
        if (unknown >= 0) return at[unknown];
        return field.Value[cell];
    }

    /// <summary>A cell whose flow must balance, its ways, and the regulators that may draw from it. The unknown is -1 where the pressure is known.</summary>
    private readonly record struct Share(int Cell, int Unknown, int First, int End, int FirstDraw, int EndDraw);

    /// <summary>An open link of a balanced cell, whether its flow counts as it is or the other way round, and the unknown beyond it.</summary>
    private readonly record struct Way(int Through, double Sign, int Unknown);

    /// <summary>A link that oil flows through, with what is known of the pressures at its ends. Unknowns are -1 where the pressure is known.</summary>
    private readonly record struct Through(int FromUnknown, double FromValue, int ToUnknown, double ToValue, double Area);
}
