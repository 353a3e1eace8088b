using Circuits.Laws;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>
/// The hole that stands for a narrow gap where pressures are found without the oil's thickness. Both pass the same at one pressure; a gap
/// passes less below it and more above than the hole does.
/// </summary>
internal static class GapHole
{
    /// <summary>The pressure difference at which both pass the same, kPa: about what holds a clutch.</summary>
    public const double At = 500;

    /// <summary>Hot oil: 7 mm2/s at 820 kg/m3 (common practice, no source).</summary>
    private const double Density = 820;

    private const double Viscosity = 7e-6;

    /// <summary>The hole's area, mm2.</summary>
    /// <param name="gap">The gap.</param>
    public static double Area(Shape.Gap gap) =>
        1e6 * Flow(gap, 1e3 * At, Density * Viscosity, Density).Flow / (SharpOrifice.Discharge * Math.Sqrt(2 * 1e3 * At / Density));

    /// <summary>What flows along a gap, m3/s.</summary>
    /// <param name="gap">The gap.</param>
    /// <param name="difference">Pressure difference, Pa.</param>
    /// <param name="dynamicViscosity">Pa s.</param>
    /// <param name="density">kg/m3.</param>
    public static LinkFlow Flow(Shape.Gap gap, double difference, double dynamicViscosity, double density)
    {
        var (height, length) = (gap.Height.Millimetres / 1e3, gap.Length.Millimetres / 1e3);
        var laminar = gap is Shape.RoundGap round
            ? Leakage.Annular(round.Diameter.Millimetres / 1e3, height, length, round.Eccentricity, difference, dynamicViscosity)
            : Leakage.Slot(gap.Width.Millimetres / 1e3, height, length, difference, dynamicViscosity);
        return Leakage.WithInertia(laminar, gap.Area!.Value.SquareMillimetres / 1e6, difference, density);
    }
}
