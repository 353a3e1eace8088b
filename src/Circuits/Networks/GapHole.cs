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

    /// <summary>Dynamic viscosity of hot oil, Pa s: 7 mm2/s at 820 kg/m3 (common practice, no source).</summary>
    private const double Viscosity = 5.7e-3;

    private const double Density = 820;

    /// <summary>Discharge coefficient of a sharp hole, pi / (pi + 2).</summary>
    private const double Discharge = 0.611;

    /// <summary>The hole's area, mm2.</summary>
    /// <param name="gap">The gap.</param>
    public static double Area(Shape.Gap gap)
    {
        // Laminar flow between walls: Q = w h^3 dp / (12 mu L); see Leakage.
        const double pascals = At * 1e3;
        var height = gap.Height.Millimetres / 1e3;
        var offset = gap is Shape.RoundGap round ? round.Eccentricity : 0;
        var flow = gap.Width.Millimetres * height * height * height * (1 + (1.5 * offset * offset)) * pascals / (12 * Viscosity * gap.Length.Millimetres);
        return 1e6 * flow / (Discharge * Math.Sqrt(2 * pascals / Density));
    }
}
