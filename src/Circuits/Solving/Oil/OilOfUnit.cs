using Circuits.Findings;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Quantities;

namespace Circuits.Solving.Oil;

/// <summary>Makes the oil that a circuit file describes, and lists what had to be assumed.</summary>
internal static class OilOfUnit
{
    /// <summary>
    /// The oil. Two given points of viscosity go before the grade; a grade alone is its midpoint at 40 degC (ISO 3448) and a
    /// viscosity index.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <param name="assumptions">Takes what was assumed.</param>
    public static HydraulicOil Read(Unit unit, ICollection<Assumption> assumptions)
    {
        var fluid = unit.Fluid;
        var density = fluid?.Density?.KilogramsPerCubicMetre;
        if (density is null) Assume(unit, assumptions, $"{new Density(OilDefaults.Density)} at {new Temperature(15)} for the oil: no density given");
        return new HydraulicOil(Curve(unit, assumptions), density ?? OilDefaults.Density, OilDefaults.Air);
    }

    /// <summary>The working temperature, degC.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="assumptions">Takes what was assumed.</param>
    public static double Temperature(Unit unit, ICollection<Assumption> assumptions)
    {
        if (unit.Fluid?.Temperature is { } given) return given.DegreesCelsius;
        Assume(unit, assumptions, $"{new Temperature(OilDefaults.Temperature)} for the oil: no temperature given");
        return OilDefaults.Temperature;
    }

    private static ViscosityCurve Curve(Unit unit, ICollection<Assumption> assumptions)
    {
        if (unit.Fluid is { Viscosities: [var cool, var hot] })
        {
            return ViscosityCurve.Through(
                cool.Temperature.DegreesCelsius, cool.Viscosity.SquareMillimetresPerSecond * 1e-6,
                hot.Temperature.DegreesCelsius, hot.Viscosity.SquareMillimetresPerSecond * 1e-6);
        }

        var grade = unit.Fluid?.Grade;
        if (grade is null) Assume(unit, assumptions, $"ISO VG {new Ratio(OilDefaults.Grade)} for the oil: no grade given");
        var index = unit.Fluid?.ViscosityIndex;
        if (index is null) Assume(unit, assumptions, $"a viscosity index of {new Ratio(OilDefaults.Index)} for the oil: no index and no second viscosity given");
        return OfGrade(grade ?? OilDefaults.Grade, index ?? OilDefaults.Index);
    }

    /// <summary>The curve of an ISO viscosity grade with a viscosity index.</summary>
    /// <param name="grade">The grade: mm2/s at 40 degC.</param>
    /// <param name="index">The index.</param>
    public static ViscosityCurve OfGrade(double grade, double index)
    {
        var at40 = GradeMidpoint(grade) * 1e-6;
        return ViscosityCurve.Through(40, at40, 100, ViscosityIndex.ViscosityAt100(at40, index));
    }

    // ISO 3448 names its four thinnest grades by rounded midpoints.
    private static double GradeMidpoint(double grade) => grade switch { 2 => 2.2, 3 => 3.2, 5 => 4.6, 7 => 6.8, _ => grade };

    private static void Assume(Unit unit, ICollection<Assumption> assumptions, PhraseBuilder text) =>
        assumptions.Add(new Assumption($"assumed {text.ToPhrase()}", unit.Fluid?.Place ?? unit.Place));
}
