using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving.Oil;

namespace Circuits.Solving.Flow;

/// <summary>What the pump gives against the pressure in its passage.</summary>
/// <param name="Given">At no pressure, m3/s.</param>
/// <param name="Relief">It never goes above this, Pa: what it gives falls to nothing within a hundredth of it.</param>
/// <param name="Slip">What it gives less per pascal, m3/s.</param>
internal readonly record struct PumpCurve(double Given, double Relief, double Slip = 0)
{
    /// <summary>What it gives at a pressure, m3/s, and how that changes with it, m3/s per Pa.</summary>
    /// <param name="pressure">Pa.</param>
    public (double Rate, double Slope) At(double pressure)
    {
        var band = Relief / 100;
        var (rate, slope) = (Given - (Slip * pressure), -Slip);
        if (pressure <= Relief - band || rate <= 0) return (rate, slope);
        var left = (Relief - pressure) / band;
        return (rate * left, (slope * left) - (rate / band));
    }
}

/// <summary>Oil and pump as they are while a network is solved.</summary>
/// <param name="Density">kg/m3.</param>
/// <param name="Viscosity">Kinematic, m2/s.</param>
/// <param name="Pump">The pump's curve.</param>
internal sealed record FlowConditions(double Density, double Viscosity, PumpCurve Pump)
{
    /// <summary>Gauge pressure at which the oil's stiffness is taken, Pa: that of a clutch that holds.</summary>
    private const double StiffAt = 5e5;

    /// <summary>Bulk modulus of the oil with the air in it, Pa.</summary>
    public double Bulk { get; init; } = 7e8;

    /// <summary>Force that turning oil adds to the piston of each of the network's clutches, N; empty where nothing turns.</summary>
    public ImmutableArray<double> Heads { get; init; } = [];

    /// <summary>Dynamic viscosity, Pa s.</summary>
    public double DynamicViscosity => Density * Viscosity;

    public static FlowConditions None { get; } = new(850, 8e-6, default);

    /// <summary>A unit's oil at a temperature, and its pump at a speed.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="celsius">Oil temperature, degC.</param>
    /// <param name="revolutionsPerMinute">Pump speed; 0 or more.</param>
    /// <param name="assumptions">Takes what had to be assumed.</param>
    public static FlowConditions Of(Unit unit, double celsius, double revolutionsPerMinute, ICollection<Assumption> assumptions)
    {
        var oils = OilOfUnit.Read(unit, assumptions);
        var oil = oils.At(celsius);
        return new FlowConditions(oil.Density, oil.KinematicViscosity, PumpOf(unit, oils, celsius, revolutionsPerMinute, assumptions))
        {
            Bulk = oil.BulkModulusAt(StiffAt),
        };
    }

    /// <summary>A sharp hole in this oil; one without area passes nothing.</summary>
    /// <param name="area">m2.</param>
    /// <param name="slot">Width and length of a slot, m; null for a round hole.</param>
    public OrificeCurve Hole(double area, (double Width, double Length)? slot = null)
    {
        if (!(area > 0)) return new OrificeCurve(0, 1);
        return slot is { } sides ? SharpOrifice.SizedSlot(area, sides.Width, sides.Length, Density, Viscosity) : SharpOrifice.Sized(area, Density, Viscosity);
    }

    /// <summary>Flow along a smooth track of round section, laminar or turbulent.</summary>
    /// <param name="area">Cross-section, m2.</param>
    /// <param name="length">m.</param>
    /// <param name="difference">Pa.</param>
    public LinkFlow Track(double area, double length, double difference) =>
        LineFriction.Flow(area, SharpOrifice.DiameterOf(area), length, difference, Density, Viscosity);

    private static PumpCurve PumpOf(Unit unit, HydraulicOil oils, double celsius, double revolutionsPerMinute, ICollection<Assumption> assumptions)
    {
        if (unit.Pump is not { } pump) return default;
        var displacement = pump.Displacement?.MillilitresPerRevolution ?? Assumed(FlowDefaults.Displacement, Phrase.Of($"{new Displacement(FlowDefaults.Displacement)} for the pump: no displacement given"));
        var efficiency = pump.Efficiency ?? Assumed(FlowDefaults.Efficiency, Phrase.Of($"{new Share(FlowDefaults.Efficiency)} as the pump's volumetric efficiency: none given"));
        var relief = pump.Relief?.Kilopascals ?? Stacking.Defaults.PumpRelief;
        var (turn, turns) = (displacement * 1e-6, revolutionsPerMinute / 60);
        if (pump.MeasuredAt is not { } test) return new PumpCurve(turn * turns * efficiency, relief * 1e3);

        // What slips back hangs on pressure and on how thin the oil is, not on speed.
        var tested = oils.At(test.Temperature?.DegreesCelsius ?? OilOfUnit.Temperature(unit, assumptions));
        var slip = PumpLaw.Slip(turn, efficiency, test.Speed.RevolutionsPerMinute / 60, test.Pressure.Kilopascals * 1e3, tested.Density * tested.KinematicViscosity);
        var now = oils.At(celsius);
        var given = PumpLaw.Given(turn, turns, slip, 0, now.Density * now.KinematicViscosity);
        return new PumpCurve(given.Flow, relief * 1e3, -given.Slope);

        double Assumed(double value, Phrase what)
        {
            assumptions.Add(new Assumption($"assumed {what}", pump.Place));
            return value;
        }
    }
}
