using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Reads the oil.</summary>
internal static class FluidReader
{
    private const string Prefix = "ISO VG ";

    // ISO 3448.
    private static readonly int[] Grades = [2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200];

    /// <summary>The oil, or null when the node is no mapping.</summary>
    public static Fluid? Read(YamlNode node, Place place, FindingList findings)
    {
        if (Fields.Open(node, "fluid", place, findings) is not { } fields) return null;
        var fluid = new Fluid(Grade(fields), fields.Temperature("temperature", OilRanges.Temperature), Viscosities(fields), fields.Density("density", OilRanges.Density), place)
        {
            ViscosityIndex = fields.Number("viscosity-index", OilRanges.ViscosityIndex),
        };
        fields.Close();
        return fluid;
    }

    private static int? Grade(Fields fields)
    {
        if (fields.Text("grade") is not { } text) return null;
        if (text.Text.StartsWith(Prefix, StringComparison.Ordinal)
            && int.TryParse(text.Text.AsSpan(Prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var grade)
            && Grades.Contains(grade))
            return grade;
        fields.Findings.Add(ShapeRules.UnknownWord.At(
            text.Place, $"{fields.What("grade")} must be an ISO viscosity grade, found {text.Describe()}", $"Write {Prefix}32, say; grades: {string.Join(", ", Grades)}."));
        return null;
    }

    private static ImmutableArray<ViscosityPoint> Viscosities(Fields fields)
    {
        var points = PointTable.Read(fields, "viscosities", OilRanges.Temperature, OilRanges.Viscosity, fields.Findings);
        if (points.IsEmpty) return [];
        if (points.Length != 2 || points[1].Second >= points[0].Second)
        {
            fields.Findings.Add(SizeRules.TableOrder.At(
                fields.PlaceOf("viscosities"), $"{fields.What("viscosities")} must be two points, the hotter one thinner", "Write [[40 degC, 32 mm2/s], [100 degC, 5.4 mm2/s]]."));
            return [];
        }

        return [.. points.Select(point => new ViscosityPoint(new Temperature(point.First), new Viscosity(point.Second)))];
    }
}
