using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Sizes behind the keys of an element; null when the key is not there, or with a finding when it is wrong.</summary>
internal static class FieldSizes
{
    public static Length? Length(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Length(value) : null;

    public static Area? Area(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Area(value) : null;

    public static Pressure? Pressure(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Pressure(value) : null;

    public static Force? Force(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Force(value) : null;

    public static SpringRate? SpringRate(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new SpringRate(value) : null;

    public static Volume? Volume(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Volume(value) : null;

    public static Displacement? Displacement(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Displacement(value) : null;

    public static Flow? Flow(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Flow(value) : null;

    public static Speed? Speed(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Speed(value) : null;

    public static Temperature? Temperature(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Temperature(value) : null;

    public static Torque? Torque(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Torque(value) : null;

    public static Duration? Duration(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Duration(value) : null;

    public static Density? Density(this Fields fields, string key, PlausibleRange range) =>
        fields.Size(key, range) is { } value ? new Density(value) : null;

    /// <summary>A fraction, as <c>0.85</c> or <c>85 %</c>.</summary>
    public static double? Fraction(this Fields fields, string key, PlausibleRange range) => fields.Size(key, range);

    /// <summary>A plain number.</summary>
    public static double? Number(this Fields fields, string key, PlausibleRange range) =>
        fields.Find(key) is { } node ? Sizes.Number(node, range, fields.What(key), fields.Findings) : null;

    /// <summary>A whole number.</summary>
    public static int? Count(this Fields fields, string key, PlausibleRange range) =>
        fields.Find(key) is { } node ? Sizes.Count(node, range, fields.What(key), fields.Findings) : null;

    /// <summary>Reports the key as missing when it is not there.</summary>
    public static T? Needed<T>(this T? value, Fields fields, string key)
        where T : struct
    {
        if (!fields.Has(key))
            fields.Findings.Add(ShapeRules.MissingKey.At(fields.Place, $"{fields.Element} lacks the key {key}", $"Add {key}: ..."));
        return value;
    }

    private static double? Size(this Fields fields, string key, PlausibleRange range) =>
        fields.Find(key) is { } node ? Sizes.Read(node, range, fields.What(key), fields.Findings) : null;
}
