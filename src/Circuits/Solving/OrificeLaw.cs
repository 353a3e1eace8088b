using System.Numerics;

namespace Circuits.Solving;

/// <summary>
/// The law of a static orifice: flow is area times the root of the pressure difference (constants cancel where only
/// pressures are asked for), rounded off within <c>softness</c> of zero so that it has a slope everywhere.
/// </summary>
internal static class OrificeLaw
{
    /// <summary>Flow per area for a pressure difference, both in kPa terms, odd and rising; and its slope. They share their roots.</summary>
    public static (double Flow, double Slope) At(double difference, double softness)
    {
        var square = (difference * difference) + (softness * softness);
        var root = Math.Sqrt(Math.Sqrt(square));
        return (difference / root, ((0.5 * difference * difference) + (softness * softness)) / (square * root));
    }

    /// <summary>The same for many, several at a time: the very same numbers.</summary>
    /// <param name="differences">Pressure differences.</param>
    /// <param name="softness">As for one.</param>
    /// <param name="flows">Flows per area; may be where the differences are.</param>
    /// <param name="slopes">Slopes.</param>
    public static void At(ReadOnlySpan<double> differences, double softness, Span<double> flows, Span<double> slopes)
    {
        var soft = new Vector<double>(softness * softness);
        var i = 0;
        for (; i <= differences.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var difference = new Vector<double>(differences[i..]);
            var square = (difference * difference) + soft;
            var root = Vector.SquareRoot(Vector.SquareRoot(square));
            (difference / root).CopyTo(flows[i..]);
            (((0.5 * difference * difference) + soft) / (square * root)).CopyTo(slopes[i..]);
        }

        for (; i < differences.Length; i++) (flows[i], slopes[i]) = At(differences[i], softness);
    }
}
