using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads accumulators.</summary>
internal static class AccumulatorReader
{
    /// <summary>The accumulator, or null with findings.</summary>
    public static Accumulator? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var at = fields.Need("at") is { } node ? part.Passages.Find(node, fields.What("at")) : null;
        var back = fields.Find("back") is { } behind ? part.Passages.Find(behind, fields.What("back"), sump: true) : null;
        var (area, spring, rate, stroke) = (fields.Area("area"), fields.Force("spring"), fields.SpringRate("rate"), fields.Length("stroke"));
        if (at is not { } filled) return null;
        if (back is { } rear && rear.Name == filled.Name)
            part.Findings.Add(NameRules.NamedTwice.At(rear.Place, $"{fields.Element} has {rear.Name} on both sides of its piston", "Name two passages."));
        return new Accumulator(key.Text, filled, back is { Name.IsExhaust: true } ? null : back, key.Place)
        {
            Area = area,
            Spring = spring,
            Rate = rate,
            Stroke = stroke,
        };
    }
}
