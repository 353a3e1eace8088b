using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>How much oil each cell holds above what it holds without pressure, and how that changes. One thread.</summary>
internal sealed class Store
{
    /// <summary>
    /// Oil cannot pull: below this gauge pressure, Pa, a void opens in it, which has to be filled again before pressure comes back. A perfect vacuum lies at
    /// -101.3 kPa (ISO 2533); what air and vapour come out before does not change who holds what (common practice, no source).
    /// </summary>
    private const double Void = -1e5;

    /// <summary>A cell that is all void lies so much lower, Pa.</summary>
    private const double VoidBand = 1e3;

    private readonly FlowNetwork flow;
    private readonly PistonStates pistons;
    private readonly double[] compliance;
    private readonly double[] hollow;

    /// <summary>The store of a network.</summary>
    /// <param name="flow">The network.</param>
    /// <param name="pistons">Which law its pistons follow.</param>
    public Store(FlowNetwork flow, PistonStates pistons)
    {
        (this.flow, this.pistons) = (flow, pistons);
        compliance = new double[flow.Cells];
        hollow = new double[flow.Cells];
        for (var cell = 1; cell < flow.Cells; cell++) hollow[cell] = flow.Volumes[cell] / VoidBand;
        foreach (var piston in flow.Pistons)
        {
            hollow[piston.Apply] += piston.ApplyArea * piston.Stroke / VoidBand;
            hollow[piston.Release] += piston.ReleaseArea * piston.Stroke / VoidBand;
        }

        Held = new double[flow.Cells];
    }

    /// <summary>What each cell holds, m3, at the pressures last given.</summary>
    public double[] Held { get; }

    /// <summary>Sets the oil's stiffness.</summary>
    public void Set(FlowConditions conditions)
    {
        for (var cell = 1; cell < compliance.Length; cell++) compliance[cell] = flow.Volumes[cell] / conditions.Bulk;
    }

    /// <summary>Fills <see cref="Held"/>.</summary>
    /// <param name="pressure">Of each cell, Pa.</param>
    public void Fill(double[] pressure)
    {
        Held[0] = 0;
        for (var cell = 1; cell < Held.Length; cell++) Held[cell] = Oil(cell, pressure[cell]);
        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var travel = pistons.At(i, pressure).Share * piston.Stroke;
            Held[piston.Apply] += piston.ApplyArea * travel;
            Held[piston.Release] -= piston.ReleaseArea * travel;
        }
    }

    /// <summary>Oil in a cell beside what moves its pistons, m3; less than zero by the void in it.</summary>
    private double Oil(int cell, double pressure) =>
        pressure < Void ? (compliance[cell] * Void) + (hollow[cell] * (pressure - Void)) : compliance[cell] * pressure;

    /// <summary>Takes the change of what is held with pressure, times a rate, from the system's entries.</summary>
    /// <param name="balance">The balance with pressures and system.</param>
    /// <param name="rate">1/s.</param>
    public void TakeSlopes(FlowBalance balance, double rate)
    {
        var values = balance.System.Values;
        for (var cell = 1; cell < Held.Length; cell++)
        {
            if (!balance.IsPinned(cell)) values[cell - 1] -= rate * (balance.Pressure[cell] < Void ? hollow[cell] : compliance[cell]);
        }

        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var slope = rate * pistons.At(i, balance.Pressure).Slope * piston.Stroke;
            if (slope == 0) continue;
            var (apply, release) = (piston.ApplyArea, piston.ReleaseArea);
            if (!balance.IsPinned(piston.Apply))
            {
                Take(piston.Places[0], slope * apply * apply);
                Take(piston.Places[1], -slope * apply * release);
            }

            if (balance.IsPinned(piston.Release)) continue;
            Take(piston.Places[2], -slope * release * apply);
            Take(piston.Places[3], slope * release * release);
        }

        void Take(int place, double amount)
        {
            if (place >= 0) values[place] -= amount;
        }
    }
}
