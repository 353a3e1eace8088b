using System.Globalization;
using System.Text;
using Circuits.Solving;
using Circuits.Solving.Flow;

namespace Circuits.Tests.Outside;

/// <summary>
/// A flow network as a netlist for a circuit simulator: a kilopascal is a volt, a litre a minute an ampere. The netlist carries the
/// laws, written down here a second time from their sources, and the network; never an answer.
/// Where several states are steady, history decides: as the library does, it begins from the static answer.
/// </summary>
/// <param name="flow">The network.</param>
/// <param name="conditions">Oil and pump.</param>
internal sealed class SpiceNetlist(FlowNetwork flow, FlowConditions conditions)
{
    private const double LitresPerMinute = 6e4;

    /// <summary>L/min that charge a litre in a second.</summary>
    private const double PerLitre = 60;

    /// <summary>Joins every place to its start so weakly (kPa per L/min) that only oil shut in from everything else feels it.</summary>
    private const double Weak = 1e10;

    /// <summary>What a full stroke charges, small so that currents of strokes are as exact as those of oil.</summary>
    private const double Charge = 1e-4;

    private readonly StringBuilder text = new();

    private static string Number(double value) => value.ToString("0.################e0", CultureInfo.InvariantCulture);

    /// <summary>The voltage of a cell.</summary>
    public static string Pressure(int cell) => cell == 0 ? "0" : $"v(c{cell})";

    /// <summary>A gear in steady flow.</summary>
    /// <param name="from">The static answer that it begins from.</param>
    public string Steady(GearSolution from)
    {
        Head("reltol=1e-7 vntol=1e-7 abstol=1e-9");
        Write(from, from.Inputs, 0);
        foreach (var (i, _) in flow.Spools.Index()) Line($"Bs{i} s{i} 0 V={Travel(i)}");
        Line(".control");
        Line("set numdgt=14");
        Line("op");
        for (var cell = 1; cell < flow.Cells; cell++) Line($"print v(c{cell})");
        Line("quit 0");
        Line(".endc");
        Line(".end");
        return text.ToString();
    }

    /// <summary>A network without gears, fed at its first cell: prints the first of several steady states, each of another feed.</summary>
    /// <param name="feed">kPa.</param>
    /// <param name="times">How many.</param>
    public string Repeated(double feed, int times)
    {
        Head("reltol=1e-6 vntol=1e-6 abstol=1e-9");
        Line($"Vp1 c1 0 {Number(feed)}");
        for (var cell = 2; cell < flow.Cells; cell++) Line($"Bw{cell} c{cell} 0 I={Pressure(cell)}/{Number(Weak)}");
        foreach (var (i, element) in flow.Elements.Index()) Line($"Be{i} {Node(element.A)} {Node(element.B)} I={Law(element)}");
        Line(".control");
        Line("set numdgt=14");
        Line("op");
        for (var cell = 1; cell < flow.Cells; cell++) Line($"print v(c{cell})");
        for (var k = 1; k < times; k++)
        {
            Line($"alter Vp1 dc = {Number(feed + k)}");
            Line("op");
            Line("destroy");
        }

        Line("quit 0");
        Line(".endc");
        Line(".end");
        return text.ToString();
    }

    /// <summary>A gear that settles from its static answer over time, for those that no damped iteration finds.</summary>
    /// <param name="from">The static answer that it begins from.</param>
    /// <param name="seconds">How long it may take.</param>
    public string Settling(GearSolution from, double seconds)
    {
        InTime(from, from.Inputs, 0, "reltol=1e-6 abstol=1e-9 vntol=1e-7");
        Line(".control");
        Line("set numdgt=14");
        Line($"tran {Number(seconds / 1000)} {Number(seconds)} uic");
        for (var cell = 1; cell < flow.Cells; cell++) Line($"print v(c{cell})[length(time)-1]");
        Line("quit 0");
        Line(".endc");
        Line(".end");
        return text.ToString();
    }

    /// <summary>
    /// A shift: a gear that settles from its static answer until, at once, another is set. Writes the share of pistons' strokes over time
    /// to the file pistons.data, from the shift on.
    /// </summary>
    /// <param name="from">The static answer of the gear that is left.</param>
    /// <param name="to">What the gear that is entered sets.</param>
    /// <param name="settling">How long the first gear settles, s.</param>
    /// <param name="seconds">How long the shift is followed.</param>
    /// <param name="step">The longest step, s.</param>
    /// <param name="pistons">The pistons to write.</param>
    /// <param name="options">Tolerances.</param>
    /// <param name="fromRest">Whether to begin with the static answer itself, instead of the steady state that an iteration finds from it.</param>
    public string Shift(
        GearSolution from, GearInputs to, double settling, double seconds, double step, IEnumerable<int> pistons, string options, bool fromRest)
    {
        InTime(from, to, Math.Max(settling, 1e-6), options);
        foreach (var (i, piston) in flow.Pistons.Index()) Piston(i, piston, from);
        Line(".control");
        Line("set numdgt=10");
        Line($"tran {Number(step)} {Number(settling + seconds)} {Number(settling)} {Number(step)}{(fromRest ? " uic" : "")}");
        Line("set wr_singlescale");
        Line($"wrdata pistons.data {string.Join(' ', pistons.Select(i => $"v(t{i})"))}");
        Line("quit 0");
        Line(".endc");
        Line(".end");
        return text.ToString();
    }

    /// <summary>The rows of a file of strokes: time, and a share for each piston.</summary>
    public static List<double[]> Samples(string data, int pistons) =>
        [.. data.Split('\n').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(cells => cells.Length > pistons && char.IsAsciiDigit(cells[0][0]))
            .Select(cells => cells.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];

    /// <summary>When a share first comes to a level, straight between samples; 0 where it begins there, not a number where it never does.</summary>
    public static double Crossing(IEnumerable<(double Time, double Share)> samples, double level)
    {
        (double Time, double Share)? last = null;
        foreach (var (time, share) in samples)
        {
            if (share >= level) return last is not var (before, was) ? 0 : before + ((time - before) * (level - was) / (share - was));
            last = (time, share);
        }

        return double.NaN;
    }

    private void InTime(GearSolution from, GearInputs to, double settling, string options)
    {
        Head($"chgtol=1e-12 method=gear {options}");
        Write(from, to, settling);
        foreach (var (i, _) in flow.Spools.Index())
        {
            Line($"Bs{i} a{i} 0 V={Travel(i)}");
            Line($"Rs{i} a{i} s{i} 1");
            Line($"Cs{i} s{i} 0 {Number(FlowDefaults.SpoolLag)} ic={(from.Moved[i] ? 1 : 0)}");
        }

        for (var cell = 1; cell < flow.Cells; cell++)
            Line($"Cc{cell} c{cell} 0 {Number(Volume(cell) * PerLitre)} ic={Number(Start(from, cell))}");
    }

    private double Volume(int cell) => flow.Volumes[cell] / conditions.Bulk * 1e6;

    private static double Start(GearSolution from, FlowNetwork flow, int cell)
    {
        for (var node = 0; node < flow.CellOf.Length; node++)
        {
            if (flow.CellOf[node] == cell) return from.PressureAt(node);
        }

        return flow.Arms.Where(arm => arm.Cell == cell).Select(arm => Start(from, flow, arm.Hub)).FirstOrDefault();
    }

    private double Start(GearSolution from, int cell) => Start(from, flow, cell);

    private void Line(string line) => text.Append(line).Append('\n');

    private void Head(string options)
    {
        text.Clear();
        Line("a hydraulic network: V = kPa, A = L/min");
        Line($".option itl1=2000 itl4=100 {options}");
    }

    /// <summary>What both kinds of run have: sources, elements, what they hang on.</summary>
    private void Write(GearSolution from, GearInputs to, double at)
    {
        var (before, after) = (new FlowBalance(flow), new FlowBalance(flow));
        before.Set(from.Inputs, conditions);
        after.Set(to, conditions);
        for (var cell = 1; cell < flow.Cells; cell++)
        {
            var start = Number(Start(from, cell));
            Line($".nodeset v(c{cell})={start}");
            if (before.IsPinned(cell) != after.IsPinned(cell)) throw new NotSupportedException("a gear fixes what another leaves");
            Line(before.IsPinned(cell)
                ? $"Vp{cell} c{cell} 0 {Change(before.Pressure[cell] / 1e3, after.Pressure[cell] / 1e3, at)}"
                : $"Bw{cell} c{cell} 0 I=({Pressure(cell)}-{start})/{Number(Weak)}");
        }

        if (flow.Pump > 0)
        {
            // Falls to nothing over the last hundredth below its relief.
            var relief = conditions.Pump.Relief / 1e3;
            var share = Ramp($"({Number(relief)}-{Pressure(flow.Pump)})/{Number(relief / 100)}");
            Line($"Bpump 0 c{flow.Pump} I={Number(conditions.Pump.Given * LitresPerMinute)}*{share}");
        }

        foreach (var (i, regulator) in flow.Regulators.Index()) Regulator(i, regulator, from.Inputs.Set[i], to.Set[i], at);
        foreach (var (i, element) in flow.Elements.Index())
        {
            if (!before.IsActive(i) && !after.IsActive(i)) continue;
            var gate = before.IsActive(i) && after.IsActive(i) ? "" : $"*v(g{i})";
            if (gate.Length > 0) Line($"Vg{i} g{i} 0 {Change(before.IsActive(i) ? 1 : 0, after.IsActive(i) ? 1 : 0, at)}");
            Line($"Be{i} {Node(element.A)} {Node(element.B)} I={Law(element)}*{Open(element)}{gate}");
        }
    }

    private static string Node(int cell) => cell == 0 ? "0" : $"c{cell}";

    private static string Change(double from, double to, double at) =>
        from == to ? Number(from) : $"PWL(0 {Number(from)} {Number(at)} {Number(from)} {Number(at + 1e-6)} {Number(to)})";

    private static string Ramp(string share) => $"max(0,min(1,{share}))";

    private string Law(FlowElement element)
    {
        var difference = $"({Pressure(element.A)}-{Pressure(element.B)})";
        return element.Kind == FlowKind.Track ? Track(element, difference) : Orifice(element, difference);
    }

    /// <summary>Q = 0.611 A sqrt(2 / rho) dp / (dp^2 + dpt^2)^(1/4); dpt where Re = 9.33, up to 15.1 for a slit, whose width is twice its area over half of its edge.</summary>
    private string Orifice(FlowElement element, string difference)
    {
        var area = element.Area;
        var (reynolds, diameter) = (9.33, Math.Sqrt(4 * area / Math.PI));
        if (element.Slot is var (width, length)) (reynolds, diameter) = (15.1 - (5.77 * width / length), 4 * width * length / (2 * (width + length)));
        var speed = reynolds * conditions.Viscosity / (0.611 * diameter);
        var transition = conditions.Density * speed * speed / 2 / 1e3;
        var factor = 0.611 * area * Math.Sqrt(2e3 / conditions.Density) * LitresPerMinute;
        return $"{Number(factor)}*{difference}/sqrt(sqrt({difference}*{difference}+{Number(transition * transition)}))";
    }

    /// <summary>Laminar below Re 2000. Longer or faster tracks need the law of friction, which this writer lacks.</summary>
    private string Track(FlowElement element, string difference)
    {
        var diameter = Math.Sqrt(4 * element.Area / Math.PI);
        var resistance = 32 * conditions.Density * conditions.Viscosity * element.Length / (diameter * diameter * element.Area);
        return $"{Number(1e3 / resistance * LitresPerMinute)}*{difference}";
    }

    private string Open(FlowElement element) => element.Kind switch
    {
        FlowKind.Orifice or FlowKind.Track => "1",
        FlowKind.SpoolPort => Ramp(element.Position == 1 ? $"2*v(s{element.Element})-1" : $"1-2*v(s{element.Element})"),
        FlowKind.CheckSeat => Ramp($"1-({Pressure(element.A)}-{Pressure(element.B)})/{Number(FlowDefaults.BallBand)}"),
        FlowKind.TwoWaySeat => TwoWaySeat(element),
        FlowKind.FeedPort => Ramp($"-v(r{element.Element})"),
        FlowKind.DrainPort => Ramp($"v(r{element.Element})"),
        FlowKind.SpillPort => Ramp($"v(r{element.Element})-{element.Position}"),
        FlowKind.BypassPort => Ramp($"(({Pressure(element.A)}-{Pressure(element.B)})-{Number(-flow.Regulators[element.Element].Spring / 1e3)})/{Number(FlowDefaults.BypassBand)}"),
        _ => throw new NotSupportedException($"{element.Kind}"),
    };

    private string TwoWaySeat(FlowElement element)
    {
        var beyond = flow.Balls[element.Element]!.Beyond;
        var (here, other) = element.Position == 0 ? (beyond[0], beyond[1]) : (beyond[1], beyond[0]);
        return Ramp($"0.5+({Pressure(here)}-{Pressure(other)})/{Number(2 * FlowDefaults.BallBand)}");
    }

    /// <summary>How far a spool's forces move it, 0 to 1.</summary>
    private string Travel(int number)
    {
        var spool = flow.Spools[number];
        var forces = spool.Cells.Zip(spool.Factors, (cell, factor) => $"+{Number(factor * 1e3)}*{Pressure(cell)}");
        return Ramp($"(0{string.Concat(forces)}-({Number(spool.Preload)}))/{Number(spool.Range)}");
    }

    /// <summary>The voltage of r is the excess over the set pressure, in bands.</summary>
    private void Regulator(int number, FlowRegulator regulator, double before, double after, double at)
    {
        var spring = Number(regulator.Spring / 1e3);
        if (regulator.IsCommanded)
        {
            // Its whole feed is more than any feed has.
            Line($"Vq{number} q{number} 0 {Change(Math.Min(before, 1e5), Math.Min(after, 1e5), at)}");
            spring = $"v(q{number})";
        }

        var signals = regulator.Cells.Zip(regulator.Factors, (cell, factor) => $"+({Number(factor)})*{Pressure(cell)}");
        Line($"Br{number} r{number} 0 V=({Pressure(regulator.Regulated)}-max(0,{spring}{string.Concat(signals)}))/{Number(regulator.Band / 1e3)}");
    }

    /// <summary>The voltage of t is the share of the stroke; a capacitor on it gives its rate as a current.</summary>
    private void Piston(int number, FlowPiston piston, GearSolution from)
    {
        var full = piston.Rate * piston.Stroke;
        var force = $"({Number(piston.ApplyArea * 1e3)}*{Pressure(piston.Apply)}-{Number(piston.ReleaseArea * 1e3)}*{Pressure(piston.Release)}"
            + $"-({Number(piston.Preload)}))/{Number(full)}";
        Line($"Bf{number} f{number} 0 V={force}");
        var x = $"v(f{number})";
        var pack = double.IsInfinity(piston.PackRate) ? "0" : $"{Number(piston.Rate / piston.PackRate)}*{Rounded($"({x}-1)")}";
        Line($"Bt{number} t{number} 0 V={Rounded(x)}-{Rounded($"({x}-1)")}+{pack}");
        Line($"Vt{number} t{number} u{number} 0");
        var start = ((piston.ApplyArea * Start(from, piston.Apply)) - (piston.ReleaseArea * Start(from, piston.Release))) * 1e3;
        var share = (start - piston.Preload) / full;
        share = Rounded(share) - Rounded(share - 1) + (piston.Rate / piston.PackRate * Rounded(share - 1));
        Line($"Ct{number} u{number} 0 {Number(Charge)} ic={Number(share)}");
        // Cubic metres a second to litres a minute.
        if (piston.Apply > 0) Line($"Fa{number} c{piston.Apply} 0 Vt{number} {Number(piston.ApplyArea * piston.Stroke * LitresPerMinute / Charge)}");
        if (piston.Release > 0) Line($"Fr{number} 0 c{piston.Release} Vt{number} {Number(piston.ReleaseArea * piston.Stroke * LitresPerMinute / Charge)}");
    }

    /// <summary>0 below 0, x above, a parabola over a fiftieth each way: the library goes from the one to the other at once, which the simulator's steps do not survive.</summary>
    private static string Rounded(string x) => $"({x} <= -0.02 ? 0 : ({x} >= 0.02 ? {x} : ({x}+0.02)*({x}+0.02)*12.5))";

    private static double Rounded(double x) => x <= -0.02 ? 0 : x >= 0.02 ? x : (x + 0.02) * (x + 0.02) * 12.5;
}
