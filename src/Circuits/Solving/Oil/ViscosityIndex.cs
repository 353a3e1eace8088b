namespace Circuits.Solving.Oil;

/// <summary>
/// Viscosity index by ASTM D2270 (ISO 2909): how little an oil thins between 40 and 100 degC, against two reference oils
/// that are as thick at 100 degC. Their 40 degC viscosities, L (index 0) and H (index 100), come from the standard's
/// quadratic formulas; the coefficients are from memory, tests hold them to the standard's worked examples.
/// Range: 2 mm2/s and more at 100 degC; the first formula is carried on below that, so that thin oils have a curve too.
/// The formulas' ranges meet to 0.2 %, which is half a point of index.
/// </summary>
internal static class ViscosityIndex
{
    // At 1 mm2/s the index has a pole.
    private const double Thinnest = 1.05e-6;

    private const double Thickest = 1e-3;

    // From y mm2/s on: L = a y2 + b y + c, H = d y2 + e y + f.
    private static readonly (double From, double A, double B, double C, double D, double E, double F)[] References =
    [
        (2.0, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077),
        (3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183),
        (4.4, 2.5000, -7.2143, 13.812, 0.82143, 1.5679, 0.119),
        (5.0, 0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557),
        (6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656),
        (7.0, 0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610),
        (7.7, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240),
        (9.0, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810),
        (12, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490),
        (15, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930),
        (18, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730),
        (22, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230),
        (28, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750),
        (40, 0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620),
        (55, 0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940),
        (70, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947),
    ];

    /// <summary>The index, a plain number: about 100 for plain mineral oil, 150 and more for oils with improvers.</summary>
    /// <param name="at40">Kinematic viscosity at 40 degC, m2/s, above that at 100.</param>
    /// <param name="at100">Kinematic viscosity at 100 degC, m2/s, above 1e-6.</param>
    public static double Of(double at40, double at100)
    {
        var (u, y) = (at40 * 1e6, at100 * 1e6);
        var (l, h) = ReferencesAt(y);
        if (u >= h) return 100 * (l - u) / (l - h);
        var n = Math.Log10(h / u) / Math.Log10(y);
        return ((Math.Pow(10, n) - 1) / 0.00715) + 100;
    }

    /// <summary>Kinematic viscosity at 100 degC, m2/s, of an oil whose index is known; found by bisection, not for inner loops.</summary>
    /// <param name="at40">Kinematic viscosity at 40 degC, m2/s.</param>
    /// <param name="index">The index.</param>
    public static double ViscosityAt100(double at40, double index)
    {
        var (low, high) = (Thinnest, Math.Clamp(at40, Thinnest, Thickest));
        // The thicker an oil stays at 100 degC, the higher its index.
        for (var halving = 0; halving < 60; halving++)
        {
            var middle = (low + high) / 2;
            if (Of(at40, middle) < index)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }

    /// <summary>L and H, mm2/s.</summary>
    private static (double L, double H) ReferencesAt(double y)
    {
        var row = References.Length - 1;
        while (row > 0 && y < References[row].From) row--;
        var (_, a, b, c, d, e, f) = References[row];
        return ((((a * y) + b) * y) + c, (((d * y) + e) * y) + f);
    }
}
