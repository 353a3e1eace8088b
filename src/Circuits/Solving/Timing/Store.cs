using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>How much oil each cell holds above what it holds without pressure, and how that changes. One thread.</summary>
internal sealed class Store
{
    private readonly FlowNetwork flow;
    private readonly double[] compliance;

    public Store(FlowNetwork flow)
    {
        this.flow = flow;
        compliance = new double[flow.Cells];
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
    public void Fill(double[] pressure, double[] heads)
    {
        Held[0] = 0;
        for (var cell = 1; cell < Held.Length; cell++) Held[cell] = compliance[cell] * pressure[cell];
        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var travel = piston.At(pressure, heads[i]).Share * piston.Stroke;
            Held[piston.Apply] += piston.ApplyArea * travel;
            Held[piston.Release] -= piston.ReleaseArea * travel;
        }
    }

    /// <summary>Takes the change of what is held with pressure, times a rate, from the system's entries.</summary>
    /// <param name="balance">The balance with pressures and system.</param>
    /// <param name="rate">1/s.</param>
    public void TakeSlopes(FlowBalance balance, double rate)
    {
        var values = balance.System.Values;
        for (var cell = 1; cell < Held.Length; cell++)
        {
            if (!balance.IsPinned(cell)) values[cell - 1] -= rate * compliance[cell];
        }

        for (var i = 0; i < flow.Pistons.Length; i++)
        {
            var piston = flow.Pistons[i];
            var slope = rate * piston.At(balance.Pressure, balance.Heads[i]).Slope * piston.Stroke;
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
