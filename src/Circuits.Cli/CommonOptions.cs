using System.CommandLine;
using Circuits.Rendering;

namespace Circuits.Cli;

/// <summary>The arguments and options that verbs share.</summary>
internal sealed class CommonOptions
{
    public CommonOptions()
    {
        Completes.FromUnit(Fit, Files, unit => TargetWords.Of(unit, "fit"));
        Completes.FromUnit(Gear, Files, unit => unit.Gears.Select(gear => gear.Name));
        Completes.With(Units, "si", "shop");
    }

    public Argument<string[]> Files { get; } = new("FILE")
    {
        Arity = ArgumentArity.OneOrMore,
        Description = "Circuit files, one unit each.",
    };

    /// <summary>For verbs that work on one unit at a time.</summary>
    public Argument<string?> File { get; } = new("FILE")
    {
        Arity = ArgumentArity.ExactlyOne,
        Description = "A circuit file.",
    };

    public Option<string[]> Fit { get; } = new("--fit")
    {
        HelpName = "part=revision | set",
        Description = "The parts that are fitted: a matched set's name, or single revisions laid over the first matched set. "
            + "May be repeated; several go with commas.",
    };

    public Option<string[]> Gear { get; } = new("--gear")
    {
        HelpName = "gear",
        Description = "Only these gears, in detail. May be repeated; several go with commas.",
    };

    /// <summary>For verbs whose result is more than findings.</summary>
    public FormatOption Format { get; } = new(OutputFormat.Text, OutputFormat.Json);

    /// <summary>For verbs that have findings: these formats come with <see cref="UnitAnswer.Findings"/>.</summary>
    public FormatOption FindingsFormat { get; } = new(
        OutputFormat.Text, OutputFormat.Json, OutputFormat.Sarif, OutputFormat.JUnit, OutputFormat.Annotations);

    public Option<string?> Output { get; } = new("--output", "-o")
    {
        HelpName = "FILE",
        Description = "Write the result to this file, whole or not at all, instead of standard output.",
    };

    public Option<string?> Units { get; } = new("--units")
    {
        HelpName = "si | shop",
        Description = "Units of text: si (kPa, mm; unless given) or shop (psi, in). Other formats are always SI.",
    };
}

/// <summary>Turns option words into values.</summary>
internal static class OptionWords
{
    /// <summary>The units that a word names; SI when there is none.</summary>
    /// <exception cref="UserError">No units have that name.</exception>
    public static UnitSystem Units(string? word) => word switch
    {
        null or "si" => UnitSystem.Si,
        "shop" => UnitSystem.Shop,
        _ => throw UserError.Unknown("system of units", word, ["si", "shop"]),
    };

    /// <summary>The items of an option that may be repeated and may hold lists with commas.</summary>
    public static IReadOnlyList<string> Items(string[]? values) =>
        [.. (values ?? []).SelectMany(value => value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))];
}
