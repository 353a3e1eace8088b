using Circuits.Laws;
using Circuits.Model;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>The laws of shapes that are no sharp holes.</summary>
internal static class OwnLaws
{
    /// <summary>A hole less deep than this share of its width is sharp: the law of a tube ends there.</summary>
    private const double Deep = 0.5;

    /// <summary>Whether a shape has a law of its own.</summary>
    public static bool Has(Shape? shape) => shape is Shape.Gap || (shape is Shape.Hole { Depth: { } depth } hole && depth.Millimetres >= Deep * hole.Diameter.Millimetres);

    /// <summary>Flow, m3/s, by oil and pressure difference, Pa.</summary>
    /// <param name="shape">A shape that has a law of its own.</param>
    public static Func<FlowConditions, double, LinkFlow> Of(Shape shape)
    {
        switch (shape)
        {
            case Shape.Gap gap:
                return (oil, difference) => GapHole.Flow(gap, difference, oil.DynamicViscosity, oil.Density);
            case Shape.Hole { Depth: { } depth } hole:
                var (diameter, deep) = (Metres(hole.Diameter.Millimetres), Metres(depth.Millimetres));
                return (oil, difference) => ShortTube.Flow(diameter, deep, difference, oil.Density, oil.Viscosity);
            default:
                throw new ArgumentOutOfRangeException(nameof(shape));
        }
    }

    private static double Metres(double millimetres) => millimetres / 1e3;
}
