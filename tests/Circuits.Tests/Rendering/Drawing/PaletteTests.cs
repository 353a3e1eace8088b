using System.Globalization;
using Circuits.Rendering.Drawing;
using Xunit;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>The colours of oil stay apart for eyes that lack a receptor.</summary>
public class PaletteTests
{
    /// <summary>
    /// Distances in CIELAB (ISO/CIE 11664-4) of all pairs of colours, as they are and as seen without red, green or blue receptors
    /// (matrices of Machado, Oliveira and Fernandes, 2009, severity 1; from memory). A just noticeable difference is about 2.3.
    /// </summary>
    [Theory]
    [InlineData("normal", 1, 0, 0, 0, 1, 0, 0, 0, 1)]
    [InlineData("protan", 0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998)]
    [InlineData("deutan", 0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881)]
    [InlineData("tritan", 1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900)]
    public void All_pairs_of_colours_are_told_apart(string eyes, double a, double b, double c, double d, double e, double f, double g, double h, double i)
    {
        var seen = Palette.Looks.Select(look => (Word: Palette.WordOf(look), Lab: Lab(Linear(Palette.ColourOf(look)), [a, b, c, d, e, f, g, h, i]))).ToList();
        foreach (var one in seen)
        {
            foreach (var other in seen.Where(other => string.CompareOrdinal(other.Word, one.Word) > 0))
                Assert.True(Distance(one.Lab, other.Lab) > 20, $"{eyes}: {one.Word} and {other.Word} lie {Distance(one.Lab, other.Lab):0} apart");
        }
    }

    private static double Distance(double[] a, double[] b) => Math.Sqrt(a.Zip(b, (x, y) => (x - y) * (x - y)).Sum());

    private static double[] Linear(string colour) =>
    [
        .. new[] { 1, 3, 5 }.Select(at => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(value => value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4)),
    ];

    private static double[] Lab(double[] rgb, double[] eye)
    {
        double[] seen = [.. Enumerable.Range(0, 3).Select(row => Math.Clamp((eye[3 * row] * rgb[0]) + (eye[(3 * row) + 1] * rgb[1]) + (eye[(3 * row) + 2] * rgb[2]), 0, 1))];

        // sRGB to CIE XYZ (IEC 61966-2-1), by the white of D65.
        var x = F(((0.4124 * seen[0]) + (0.3576 * seen[1]) + (0.1805 * seen[2])) / 0.9505);
        var y = F((0.2126 * seen[0]) + (0.7152 * seen[1]) + (0.0722 * seen[2]));
        var z = F(((0.0193 * seen[0]) + (0.1192 * seen[1]) + (0.9505 * seen[2])) / 1.089);
        return [(116 * y) - 16, 500 * (x - y), 200 * (y - z)];

        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
    }
}
