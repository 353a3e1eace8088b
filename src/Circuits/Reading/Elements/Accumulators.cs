using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Accumulators(YamlMapping content) => revision = revision with
    {
        Accumulators = Named(content, "accumulators", "accumulator", (key, fields) => AccumulatorReader.Read(key, fields, part), accumulator => (accumulator.Name, accumulator.Place)),
    };
}

internal sealed partial class Sections
{
    public void Accumulators(List<Section> all) => all.Add(new("accumulators", "accumulator"));
}

/// <summary>Reads accumulators.</summary>
internal static class AccumulatorReader
{
    /// <summary>The accumulator, or null with findings.</summary>
    public static Accumulator? Read(YamlScalar key, Fields fields, PartContext part)
    {
        var at = fields.Need("at") is { } node ? part.Passages.Find(node, fields.What("at")) : null;
        var back = fields.Find("back") is { } behind ? part.Passages.Find(behind, fields.What("back"), sump: true) : null;
        var (area, spring, rate, stroke) = (
            fields.Area("area", AccumulatorRanges.Area), fields.Force("spring", AccumulatorRanges.Spring),
            fields.SpringRate("rate", AccumulatorRanges.Rate), fields.Length("stroke", AccumulatorRanges.Stroke));
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
