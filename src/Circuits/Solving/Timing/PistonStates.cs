using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>What a piston rests on.</summary>
internal enum PistonRegime
{
    /// <summary>Its stop at rest: it is empty.</summary>
    AtStop,

    /// <summary>Nothing but its spring.</summary>
    Moving,

    /// <summary>Its plates, or the stop at the end of its stroke.</summary>
    Touching,
}

/// <summary>
/// Which law each piston follows now. Within a regime its travel is straight in its force; a step in time ends where one changes, so that no
/// step goes over a corner. One thread.
/// </summary>
/// <param name="flow">The network.</param>
/// <param name="heads">What turning oil adds to each piston, N.</param>
internal sealed class PistonStates(FlowNetwork flow, double[] heads)
{
    /// <summary>A piston this near to where its regime ends, as a share of its stroke, is there.</summary>
    private const double Near = 1e-6;

    private readonly PistonRegime[] regimes = new PistonRegime[flow.Pistons.Length];
    private readonly double[] begin = new double[flow.Pistons.Length];
    private readonly bool[] leaves = new bool[flow.Pistons.Length];

    /// <summary>
    /// Whether pistons go round corners now, each from one regime into the next as pressures have it: in a step so short that it does not matter
    /// when in it that happens.
    /// </summary>
    public bool RoundCorners { get; set; }

    /// <summary>Puts every piston where pressures have it.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    public void Set(double[] pressure)
    {
        for (var i = 0; i < regimes.Length; i++)
        {
            var force = ForceOf(i, pressure);
            regimes[i] = force <= 0 ? PistonRegime.AtStop : force >= 1 ? PistonRegime.Touching : PistonRegime.Moving;
        }
    }

    /// <summary>How far it stands, as a share of its stroke (above 1 while plates yield), and how that changes with net force, 1/N.</summary>
    /// <param name="piston">Its number.</param>
    /// <param name="pressure">Of each cell, Pa.</param>
    public (double Share, double Slope) At(int piston, double[] pressure)
    {
        var it = flow.Pistons[piston];
        if (RoundCorners) return it.At(pressure, heads[piston]);
        if (regimes[piston] == PistonRegime.AtStop) return (0, 0);
        var force = ForceOf(piston, pressure);
        if (regimes[piston] == PistonRegime.Moving) return (force, 1 / it.Full);
        var give = it.Rate / it.PackRate;
        return (1 + (give * (force - 1)), give / it.Full);
    }

    /// <summary>The same as an observer sees it: 0 at its stop, 1 or more from contact on.</summary>
    /// <param name="piston">Its number.</param>
    /// <param name="pressure">Of each cell, Pa.</param>
    public double ShareOf(int piston, double[] pressure) => regimes[piston] switch
    {
        PistonRegime.AtStop => 0,
        PistonRegime.Moving => Math.Clamp(ForceOf(piston, pressure), 0, 1),
        _ => Math.Max(1, At(piston, pressure).Share),
    };

    /// <summary>What presses on the plates, N; none before they touch.</summary>
    /// <param name="piston">Its number.</param>
    /// <param name="pressure">Of each cell, Pa.</param>
    public double ClampOf(int piston, double[] pressure) =>
        regimes[piston] == PistonRegime.Touching ? flow.Pistons[piston].Clamp(pressure, heads[piston]) : 0;

    /// <summary>Remembers where pistons stand as a step begins.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    public void Begin(double[] pressure)
    {
        for (var i = 0; i < begin.Length; i++) begin[i] = ForceOf(i, pressure);
    }

    /// <summary>The part of a step after which the first piston leaves its regime; 1 where none does.</summary>
    /// <param name="pressure">Of each cell at the end of the step, Pa.</param>
    /// <param name="slope">Change of each cell's pressure over the step at the rate with which it began, Pa; null where that is not known.</param>
    public double FirstLeft(double[] pressure, double[]? slope)
    {
        var first = 1.0;
        for (var i = 0; i < regimes.Length; i++)
        {
            var end = ForceOf(i, pressure);
            var edge = end > begin[i] ? Above(regimes[i]) : Below(regimes[i]);
            leaves[i] = Math.Abs(end - edge) <= Near || (end > begin[i] ? end > edge : end < edge);
            if (!leaves[i] || Math.Abs(end - edge) <= Near) continue;
            var rate = slope is null ? end - begin[i] : RateOf(i, slope);
            first = Math.Min(first, Passing(begin[i], rate, end, edge + (Math.Sign(end - edge) * 0.3 * Near)));
        }

        return first;
    }

    /// <summary>Lets those that left their regime at the end of the step that was looked at last follow the next one's law.</summary>
    /// <returns>Whether any did.</returns>
    public bool Change(double[] pressure)
    {
        if (RoundCorners)
        {
            RoundCorners = false;
            Set(pressure);
            return true;
        }

        var changed = false;
        for (var i = 0; i < regimes.Length; i++)
        {
            if (!leaves[i]) continue;
            leaves[i] = false;
            var force = ForceOf(i, pressure);
            regimes[i] = regimes[i] != PistonRegime.Moving ? PistonRegime.Moving : force > 0.5 ? PistonRegime.Touching : PistonRegime.AtStop;
            changed = true;
        }

        return changed;
    }

    private static double Above(PistonRegime regime) => regime switch { PistonRegime.AtStop => 0, PistonRegime.Moving => 1, _ => double.PositiveInfinity };

    private static double Below(PistonRegime regime) => regime switch { PistonRegime.Touching => 1, PistonRegime.Moving => 0, _ => double.NegativeInfinity };

    /// <summary>Where the parabola through both ends, with a given slope at its start, passes a level between them.</summary>
    private static double Passing(double begin, double rate, double end, double level)
    {
        var (low, high) = (0.0, 1.0);
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            var value = begin + (rate * middle) + ((end - begin - rate) * middle * middle);
            if (value < level == end > level) low = middle;
            else high = middle;
        }

        return high;
    }

    /// <summary>Net force over that at the end of the stroke.</summary>
    private double ForceOf(int piston, double[] pressure) => flow.Pistons[piston].Force(pressure, heads[piston]) / flow.Pistons[piston].Full;

    private double RateOf(int piston, double[] slope)
    {
        var it = flow.Pistons[piston];
        return ((it.ApplyArea * slope[it.Apply]) - (it.ReleaseArea * slope[it.Release])) / it.Full;
    }
}
