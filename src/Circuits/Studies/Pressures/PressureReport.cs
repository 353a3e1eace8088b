using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.Sensitivity;

namespace Circuits.Studies.Pressures;

/// <summary>Under what conditions pressures are asked for.</summary>
/// <param name="Name">The speed's name in the file (<c>idle</c>), or empty.</param>
/// <param name="Celsius">Oil temperature, degC.</param>
/// <param name="RevolutionsPerMinute">Pump speed, rpm.</param>
public sealed record OperatingPoint(string Name, double Celsius, double RevolutionsPerMinute);

/// <summary>Steady pressures and flows of one assembly.</summary>
/// <param name="Assembly">The assembly.</param>
/// <param name="NearestMatched">The matched sets that share most parts with it.</param>
/// <param name="Taps">The gauge ports, in the order of the file.</param>
/// <param name="Points">The conditions, in the order asked.</param>
/// <param name="Assumptions">What was assumed, as a sentence each.</param>
/// <param name="Findings">Gears for which there is no answer.</param>
public sealed record PressureReport(
    Assembly Assembly, ImmutableArray<string> NearestMatched, ImmutableArray<Tap> Taps, ImmutableArray<PressurePoint> Points,
    ImmutableArray<Phrase> Assumptions, ImmutableArray<Finding> Findings)
{
    /// <summary>How far the pressures spread within the tolerances of sizes; null when it was not asked for.</summary>
    public PressureSpread? Spread { get; init; }

    /// <summary>The missing sizes that matter to the gauge pressures (kPa), most first.</summary>
    public ImmutableArray<SizeEffect> Matters { get; init; } = [];
}

/// <summary>Every gear under one condition.</summary>
/// <param name="At">The condition.</param>
/// <param name="Gears">The gears, in the order of the file.</param>
public sealed record PressurePoint(OperatingPoint At, ImmutableArray<PressureGear> Gears);

/// <summary>One gear under one condition. When it did not converge, all lists are empty and all numbers 0.</summary>
/// <param name="Gear">The gear's name.</param>
/// <param name="Converged">Whether every passage's balance is met.</param>
/// <param name="Residual">The largest imbalance, as a fraction of what the pump gives.</param>
/// <param name="Worst">The passage that has it.</param>
public sealed record PressureGear(string Gear, bool Converged, double Residual, string Worst)
{
    /// <summary>What the pump gives, L/min.</summary>
    public double PumpLitresPerMinute { get; init; }

    /// <summary>Pressure at the pump, kPa.</summary>
    public double LineKilopascals { get; init; }

    /// <summary>What the line regulators spill, L/min: what nothing before them needs. None means that line pressure is not held.</summary>
    public double SpilledLitresPerMinute { get; init; }

    /// <summary>For each gauge port its pressure, kPa; null where this assembly lacks the passage.</summary>
    public ImmutableArray<double?> Taps { get; init; } = [];

    /// <summary>Every passage's pressure, in the order of the network.</summary>
    public ImmutableArray<SteadyPressure> Passages { get; init; } = [];

    /// <summary>What flows, largest first; what carries less than a ten-thousandth of the pump's oil is left out.</summary>
    public ImmutableArray<SteadyRate> Flows { get; init; } = [];

    /// <summary>Where oil returns to sump, largest first; together what the pump and outside pressures give.</summary>
    public ImmutableArray<SteadyRate> Budget { get; init; } = [];
}

/// <summary>A passage's steady pressure.</summary>
/// <param name="Passage">Its full name.</param>
/// <param name="Kilopascals">Gauge pressure.</param>
public sealed record SteadyPressure(string Passage, double Kilopascals);

/// <summary>What flows through an element.</summary>
/// <param name="Element">The element.</param>
/// <param name="From">Where the oil comes from.</param>
/// <param name="To">Where it goes.</param>
/// <param name="LitresPerMinute">How much; 0 or more.</param>
/// <param name="Place">The line to look at.</param>
public sealed record SteadyRate(string Element, string From, string To, double LitresPerMinute, Place Place);
