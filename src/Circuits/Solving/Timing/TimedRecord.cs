using Circuits.Solving.Flow;

namespace Circuits.Solving.Timing;

/// <summary>What a run in time came past: line pressure, and each clutch's pressure, stroke and clamping force.</summary>
internal sealed class TimedRecord
{
    private readonly FlowNetwork flow;
    private readonly FlowBalance balance;
    private readonly List<double> seconds = [];
    private readonly List<double> line = [];

    public TimedRecord(FlowNetwork flow, FlowBalance balance, PistonStates pistons)
    {
        (this.flow, this.balance) = (flow, balance);
        Clutches = [.. flow.Pistons.Index().Where(pair => pair.Item.Clutch >= 0).Select(pair => new ClutchRecord(pair.Item, pair.Index, pistons))];
    }

    /// <summary>Time of each sample since the shift began, s; rising.</summary>
    public IReadOnlyList<double> Seconds => seconds;

    /// <summary>Pressure at the pump, Pa.</summary>
    public IReadOnlyList<double> Line => line;

    /// <summary>Every clutch that this assembly has a chamber for.</summary>
    public IReadOnlyList<ClutchRecord> Clutches { get; }

    /// <summary>Adds a sample of the balance as it stands.</summary>
    public void Add(double time)
    {
        seconds.Add(time);
        line.Add(flow.Pump < 0 ? 0 : balance.Pressure[flow.Pump]);
        foreach (var clutch in Clutches) clutch.Add(balance.Pressure);
    }
}

/// <summary>One clutch over time.</summary>
/// <param name="piston">Its piston.</param>
/// <param name="number">The piston's number.</param>
/// <param name="pistons">Which law it follows.</param>
internal sealed class ClutchRecord(FlowPiston piston, int number, PistonStates pistons)
{
    private readonly List<double> pressure = [];
    private readonly List<double> release = [];
    private readonly List<double> stroke = [];
    private readonly List<double> clamp = [];

    public FlowPiston Piston => piston;

    /// <summary>Apply pressure, Pa.</summary>
    public IReadOnlyList<double> Pressure => pressure;

    /// <summary>Pressure behind the piston, Pa.</summary>
    public IReadOnlyList<double> Release => release;

    /// <summary>Share of the stroke: 0 at the stop, 1 where the plates touch and a little more as they yield.</summary>
    public IReadOnlyList<double> Stroke => stroke;

    /// <summary>What presses on the plates, N.</summary>
    public IReadOnlyList<double> Clamp => clamp;

    public void Add(double[] pressures)
    {
        pressure.Add(pressures[piston.Apply]);
        release.Add(pressures[piston.Release]);
        stroke.Add(pistons.ShareOf(number, pressures));
        clamp.Add(pistons.ClampOf(number, pressures));
    }
}
