using Circuits.Laws;
using Circuits.Tests.Properties;
using CsCheck;

namespace Circuits.Tests.Laws;

/// <summary>What every law of flow must keep, whatever its numbers.</summary>
internal static class FlowLaw
{
    /// <summary>Pressure differences from a thousandth of a pascal to a hundred bar, spread evenly over the decades.</summary>
    public static readonly Gen<double> Difference = Decades(1e-3, 1e7);

    /// <summary>Kinematic viscosities from hot to very cold oil, m2/s.</summary>
    public static readonly Gen<double> Viscosity = Decades(2e-6, 4e-2);

    /// <summary>Diameters of holes, m.</summary>
    public static readonly Gen<double> Diameter = Decades(1e-4, 2e-2);

    /// <summary>Densities of oil, kg/m3.</summary>
    public static readonly Gen<double> Density = Gen.Double[750, 950];

    /// <summary>Numbers from <paramref name="low"/> to <paramref name="high"/>, as many in each decade.</summary>
    public static Gen<double> Decades(double low, double high) => Gen.Double[Math.Log(low), Math.Log(high)].Select(Math.Exp);

    /// <summary>Runs <paramref name="check"/> over random values, the same ones each time.</summary>
    public static void ForAll<T>(Gen<T> gen, Func<T, string?> check) =>
        Property.ForAll(gen, 300, check, _ => [], value => $"{value}");

    /// <summary>
    /// Odd; finite slope at zero and everywhere; rising; its slope is that of central differences.
    /// </summary>
    /// <param name="law">Flow at a pressure difference.</param>
    /// <param name="dp">A pressure difference above zero.</param>
    /// <returns>A fault in words, or null.</returns>
    public static string? Fault(Func<double, LinkFlow> law, double dp)
    {
        var (here, back, zero) = (law(dp), law(-dp), law(0));
        if (zero.Flow != 0) return $"flow without difference: {zero.Flow}";
        if (here.Flow != -back.Flow || here.Slope != back.Slope) return $"not odd: {here} and {back}";
        if (!(zero.Slope > 0 && double.IsFinite(zero.Slope))) return $"slope at zero: {zero.Slope}";
        if (!(here.Slope > 0 && double.IsFinite(here.Slope) && here.Flow > 0)) return $"not rising: {here}";
        var step = dp * 1e-4;
        var numeric = (law(dp + step).Flow - law(dp - step).Flow) / (2 * step);
        if (Math.Abs(numeric - here.Slope) > 1e-6 * here.Slope) return $"slope: {here.Slope}, by differences {numeric}";
        // Around zero, where the differences of a law that has a kink or a jump would show.
        var tiny = dp * 1e-9;
        return Math.Abs((law(tiny).Flow / tiny / zero.Slope) - 1) > 1e-2 && tiny < 1e-6 ? $"slope at zero: {zero.Slope}, by differences {law(tiny).Flow / tiny}" : null;
    }
}
