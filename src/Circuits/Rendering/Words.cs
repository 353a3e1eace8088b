using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Solving;

namespace Circuits.Rendering;

/// <summary>The words that text and JSON use for the values of enumerations; part of the contract with scripts.</summary>
public static class Words
{
    /// <summary>A verdict: <c>as-charted</c>, <c>weak</c>, <c>unwanted</c>, <c>lost</c> or <c>never-settles</c>.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(Verdict verdict) => VerdictText.Of(verdict);

    /// <summary>What verdicts rest on: <c>full</c> or <c>quick</c>.</summary>
    /// <param name="mode">The mode.</param>
    public static string Of(JudgeMode mode) => mode == JudgeMode.Full ? "full" : "quick";

    /// <summary>A clutch's state: <c>released</c>, <c>weak</c>, <c>applied</c> or <c>trapped</c>.</summary>
    /// <param name="state">The state.</param>
    public static string Of(ClutchState state) => state switch
    {
        ClutchState.Released => "released",
        ClutchState.Weak => "weak",
        ClutchState.Applied => "applied",
        _ => "trapped",
    };

    /// <summary>What oil is joined to: <c>supply</c>, <c>exhaust</c>, <c>between</c> or <c>trapped</c>.</summary>
    /// <param name="state">The state.</param>
    public static string Of(OilState state) => state switch
    {
        OilState.Supply => "supply",
        OilState.Exhaust => "exhaust",
        OilState.Between => "between",
        _ => "trapped",
    };

    /// <summary>A kind of element: <c>valve</c>, <c>ball</c>, <c>regulator</c> or <c>solenoid</c>.</summary>
    /// <param name="kind">The kind.</param>
    public static string Of(PositionKind kind) => kind switch
    {
        PositionKind.Valve => "valve",
        PositionKind.Ball => "ball",
        PositionKind.Regulator => "regulator",
        PositionKind.Solenoid => "solenoid",
        PositionKind.Screen => "screen",
    };

    /// <summary>How grave a finding is: <c>note</c>, <c>warning</c> or <c>error</c>.</summary>
    /// <param name="severity">The severity.</param>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Note => "note",
        Severity.Warning => "warning",
        _ => "error",
    };

    /// <summary>Where numbers come from: <c>invented</c>, <c>measured</c> or <c>published</c>.</summary>
    /// <param name="data">The origin.</param>
    public static string Of(DataOrigin data) => data switch
    {
        DataOrigin.Invented => "invented",
        DataOrigin.Measured => "measured",
        _ => "published",
    };

    /// <summary>A count with its noun: <c>1 error</c>, <c>2 errors</c>.</summary>
    /// <param name="count">How many.</param>
    /// <param name="noun">The noun in the singular; its plural takes an s.</param>
    public static string Count(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    /// <summary>A count with its noun: <c>1 assembly</c>, <c>2 assemblies</c>.</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The noun in the singular.</param>
    /// <param name="many">The noun in the plural.</param>
    public static string Count(long count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>A shard of a matrix: <c>2 of 4</c>.</summary>
    /// <param name="shard">The shard.</param>
    public static string ShardOf(Matrix.MatrixShard shard) => string.Create(CultureInfo.InvariantCulture, $"{shard.Number} of {shard.Of}");

    /// <summary>An assembly as a reader names it: <c>body 2, plate 1</c>, parts of a single revision left out.</summary>
    /// <param name="assembly">The assembly.</param>
    public static string Of(Assembly assembly)
    {
        var chosen = assembly.Unit.Parts.Zip(assembly.Revisions)
            .Where(pair => pair.First.Revisions.Length > 1)
            .Select(pair => $"{pair.First.Name} {pair.Second.Name}");
        var text = string.Join(", ", chosen);
        return text.Length > 0 ? text : "every part has one revision";
    }
}
