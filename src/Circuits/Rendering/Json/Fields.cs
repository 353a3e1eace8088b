using System.ComponentModel;
using Circuits.Findings;

namespace Circuits.Rendering.Json;

/// <summary>How values become fields.</summary>
internal static class Fields
{
    /// <summary>An object whose fields are named by the file, in order.</summary>
    public static IReadOnlyDictionary<string, T> Of<T>(IEnumerable<KeyValuePair<string, T>> fields) => new OrderedDictionary<string, T>(fields);

    /// <summary>A number with a sensible count of places, so that rounding errors do not show and no zero is below zero.</summary>
    public static double Rounded(double value, int places) => Math.Round(value, places) + 0.0;

    /// <summary>The same, or null.</summary>
    public static double? Rounded(double? value, int places) => value is { } number ? Rounded(number, places) : null;
}

/// <summary>The least and the greatest value of a number, or count of items of a list.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class BoundsAttribute(double least, double most = double.PositiveInfinity) : Attribute
{
    public double Least => least;
    public double Most => most;
}

/// <summary>The only value that there is.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class OnlyAttribute(string? value) : Attribute
{
    public string? Value => value;
}

/// <summary>What a text looks like, as a regular expression.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class PatternAttribute(string expression) : Attribute
{
    public string Expression => expression;
}

/// <summary>What stands at a place in a file. Fields that come after the place have an order above zero.</summary>
internal abstract class Placed(Place? place)
{
    [Description("The file, as it was named on the command line or in the unit file; null when it stands in no file.")] public string? File => Known?.File;
    [Bounds(1), Description("The line, from 1; null when the whole file is meant.")] public int? Line => Known is { Line: > 0 } at ? at.Line : null;
    [Bounds(1), Description("The column, from 1; null when the whole line is meant.")] public int? Column => Known is { Column: > 0 } at ? at.Column : null;

    private Place? Known => place is { File.Length: > 0 } ? place : null;
}
