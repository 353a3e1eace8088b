using System.Collections.Frozen;
using Circuits.Findings;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Guesses the unit that was meant by one the language does not know.</summary>
internal static class UnitHint
{
    // Spellings that are usual elsewhere and too far from ours to be found as slips.
    private static readonly FrozenDictionary<string, string> Usual = new Dictionary<string, string>
    {
        ["\""] = "in",
        ["''"] = "in",
        ["inch"] = "in",
        ["inches"] = "in",
        ["millimeter"] = "mm",
        ["millimetre"] = "mm",
        ["µm"] = "um",
        ["μm"] = "um",
        ["micron"] = "um",
        ["mm²"] = "mm2",
        ["mm^2"] = "mm2",
        ["sq mm"] = "mm2",
        ["cm²"] = "cm2",
        ["cm^2"] = "cm2",
        ["in²"] = "in2",
        ["in^2"] = "in2",
        ["sq in"] = "in2",
        ["lb"] = "lbf",
        ["lbs"] = "lbf",
        ["lb/in"] = "lbf/in",
        ["lbs/in"] = "lbf/in",
        ["°C"] = "degC",
        ["C"] = "degC",
        ["ºC"] = "degC",
        ["°F"] = "degF",
        ["F"] = "degF",
        ["ºF"] = "degF",
        ["ml"] = "mL",
        ["cm³"] = "cm3",
        ["cm^3"] = "cm3",
        ["ccm"] = "cm3",
        ["l"] = "L",
        ["in³"] = "in3",
        ["in^3"] = "in3",
        ["cc/rev"] = "cm3/rev",
        ["cm³/rev"] = "cm3/rev",
        ["cm3"] = "cm3/rev",
        ["cc"] = "cm3/rev",
        ["mL"] = "mL/rev",
        ["1/min"] = "rpm",
        ["min-1"] = "rpm",
        ["r/min"] = "rpm",
        ["rev/min"] = "rpm",
        ["N.m"] = "Nm",
        ["N m"] = "Nm",
        ["N·m"] = "Nm",
        ["N*m"] = "Nm",
        ["ft-lb"] = "lbf.ft",
        ["ft.lbf"] = "lbf.ft",
        ["ft lb"] = "lbf.ft",
        ["lb-ft"] = "lbf.ft",
        ["lb.ft"] = "lbf.ft",
        ["sec"] = "s",
        ["msec"] = "ms",
        ["amp"] = "A",
        ["amps"] = "A",
        ["mm²/s"] = "mm2/s",
        ["mm^2/s"] = "mm2/s",
        ["kg/m³"] = "kg/m3",
        ["kg/m^3"] = "kg/m3",
        ["percent"] = "%",
        ["pct"] = "%",
        ["kgf/cm2"] = "bar",
        ["kg/cm2"] = "bar",
        ["PSI"] = "psi",
        ["lbf/in2"] = "psi",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The unit that was most likely meant, of the dimension wanted, or null.</summary>
    /// <param name="text">The unit as written.</param>
    /// <param name="dimension">The dimension wanted.</param>
    public static string? Find(string text, Dimension dimension)
    {
        if (Usual.TryGetValue(text, out var usual) && MeasureUnit.Find(usual)!.Dimension == dimension) return usual;
        return DidYouMean.Find(text, MeasureUnit.All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Symbol));
    }
}
