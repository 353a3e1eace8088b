using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Sizes behind the keys of an element; null when the key is not there, or with a finding when it is wrong.</summary>
internal static class FieldSizes
{
    public static Length? Length(this Fields fields, string key) =>
        fields.Size(key, Dimension.Length, SizeRange.Positive) is { } value ? new Length(value) : null;

    public static Area? Area(this Fields fields, string key) =>
        fields.Size(key, Dimension.Area, SizeRange.Positive) is { } value ? new Area(value) : null;

    public static Pressure? Pressure(this Fields fields, string key) =>
        fields.Size(key, Dimension.Pressure, SizeRange.ZeroOrMore) is { } value ? new Pressure(value) : null;

    public static Force? Force(this Fields fields, string key) =>
        fields.Size(key, Dimension.Force, SizeRange.ZeroOrMore) is { } value ? new Force(value) : null;

    public static SpringRate? SpringRate(this Fields fields, string key) =>
        fields.Size(key, Dimension.SpringRate, SizeRange.ZeroOrMore) is { } value ? new SpringRate(value) : null;

    public static Volume? Volume(this Fields fields, string key) =>
        fields.Size(key, Dimension.Volume, SizeRange.Positive) is { } value ? new Volume(value) : null;

    public static Displacement? Displacement(this Fields fields, string key) =>
        fields.Size(key, Dimension.Displacement, SizeRange.Positive) is { } value ? new Displacement(value) : null;

    public static Speed? Speed(this Fields fields, string key) =>
        fields.Size(key, Dimension.Speed, SizeRange.Positive) is { } value ? new Speed(value) : null;

    public static Temperature? Temperature(this Fields fields, string key) =>
        fields.Size(key, Dimension.Temperature, SizeRange.AboveAbsoluteZero) is { } value ? new Temperature(value) : null;

    public static Torque? Torque(this Fields fields, string key) =>
        fields.Size(key, Dimension.Torque, SizeRange.Positive) is { } value ? new Torque(value) : null;

    public static Duration? Duration(this Fields fields, string key) =>
        fields.Size(key, Dimension.Duration, SizeRange.Positive) is { } value ? new Duration(value) : null;

    public static Density? Density(this Fields fields, string key) =>
        fields.Size(key, Dimension.Density, SizeRange.Positive) is { } value ? new Density(value) : null;

    /// <summary>A fraction, as <c>0.85</c> or <c>85 %</c>.</summary>
    public static double? Fraction(this Fields fields, string key) => fields.Size(key, Dimension.Fraction, SizeRange.Fraction);

    /// <summary>A plain number.</summary>
    public static double? Number(this Fields fields, string key, SizeRange range) =>
        fields.Find(key) is { } node ? Sizes.Number(node, range, fields.What(key), fields.Findings) : null;

    /// <summary>A whole number from <paramref name="least"/> up.</summary>
    public static int? Count(this Fields fields, string key, int least) =>
        fields.Find(key) is { } node ? Nodes.Count(node, least, fields.What(key), fields.Findings) : null;

    /// <summary>Reports the key as missing when it is not there.</summary>
    public static T? Needed<T>(this T? value, Fields fields, string key)
        where T : struct
    {
        if (!fields.Has(key))
            fields.Findings.Add(ShapeRules.MissingKey.At(fields.Place, $"{fields.Element} lacks the key {key}", $"Add {key}: ..."));
        return value;
    }

    private static double? Size(this Fields fields, string key, Dimension dimension, SizeRange range) =>
        fields.Find(key) is { } node ? Sizes.Read(node, dimension, range, fields.What(key), fields.Findings) : null;
}
