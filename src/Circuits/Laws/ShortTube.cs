namespace Circuits.Laws;

/// <summary>
/// A hole that is deep against its width, with sharp edges. dp = K rho v^2 / 2; with x = Re d / L, K = 2.28 + 64 / x for small x
/// and 1.5 + 13.74 / sqrt(x) for large. The published two pieces jump by 1.7 % of flow where they meet, at x = 50; here K goes over
/// from one to the other smoothly around x = 87, where they are closest. Odd, rising, smooth, with a finite slope at zero.
/// Source: M. G. Rabie, "Fluid Power Engineering", McGraw-Hill 2009, eqs 2.40 and 2.41, p. 28; the decimal points, lost in the copy
/// read, from memory of H. E. Merritt, "Hydraulic Control Systems", Wiley 1967. Range: L / d from about 0.5 up.
/// </summary>
internal static class ShortTube
{
    private const double Meeting = 87;
    private const double Sharpness = 8;

    /// <summary>Flow through the tube.</summary>
    /// <param name="diameter">m, above zero.</param>
    /// <param name="length">m, above zero.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="density">kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">m2/s, above zero.</param>
    public static LinkFlow Flow(double diameter, double length, double dp, double density, double kinematicViscosity)
    {
        var area = Math.PI / 4 * diameter * diameter;
        // With v = x unit, dp = scale K(x) x^2.
        var unit = kinematicViscosity * length / (diameter * diameter);
        var scale = density / 2 * unit * unit;
        var wanted = Math.Abs(dp) / scale;
        // Where K is highest, x is lowest: the root of 2.28 x^2 + 64 x, written so that small numbers keep their digits.
        var x = 2 * wanted / (64 + Math.Sqrt((64 * 64) + (4 * 2.28 * wanted)));
        var (loss, slope) = Loss(x);
        for (var iteration = 0; iteration < 30; iteration++)
        {
            var next = x - ((loss - wanted) / slope);
            if (Math.Abs(next - x) <= 1e-14 * x) break;
            x = next;
            (loss, slope) = Loss(x);
        }

        return new LinkFlow(Math.Sign(dp) * area * unit * x, area * unit / (scale * slope));
    }

    /// <summary>The discharge coefficient, 1 / sqrt(K).</summary>
    /// <param name="x">Reynolds number times diameter over length, above zero.</param>
    public static double Discharge(double x) => x / Math.Sqrt(Loss(x).Loss);

    /// <summary>K x^2 and its slope by x.</summary>
    private static (double Loss, double Slope) Loss(double x)
    {
        var (low, lowSlope) = ((2.28 * x * x) + (64 * x), (4.56 * x) + 64);
        if (x <= 0) return (low, lowSlope);
        var root = Math.Sqrt(x);
        var (high, highSlope) = (x * ((1.5 * x) + (13.74 * root)), (3 * x) + (1.5 * 13.74 * root));
        var weight = 1 / (1 + Math.Pow(x / Meeting, -Sharpness));
        var weightSlope = Sharpness / x * weight * (1 - weight);
        return (low + (weight * (high - low)), lowSlope + (weight * (highSlope - lowSlope)) + (weightSlope * (high - low)));
    }
}
