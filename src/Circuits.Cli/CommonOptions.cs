using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Rendering;

namespace Circuits.Cli;

/// <summary>The arguments and options that verbs share, each made when a verb first takes it: most take few of them.</summary>
internal sealed class CommonOptions
{
    public Argument<string[]> Files => field ??= new("FILE")
    {
        Arity = ArgumentArity.OneOrMore,
        Description = "Circuit files, one unit each.",
    };

    /// <summary>For verbs that work on one unit at a time.</summary>
    public Argument<string?> File => field ??= new("FILE")
    {
        Arity = ArgumentArity.ExactlyOne,
        Description = "A circuit file.",
    };

    public Option<string[]> Fit => field ??= Completes.FromUnit(
        new Option<string[]>("--fit")
        {
            HelpName = "part=revision | set",
            Description = "The parts that are fitted: a matched set's name, or single revisions laid over the first matched set. "
                + "May be repeated; several go with commas.",
        },
        Files, unit => TargetWords.Of(unit, "fit"));

    public Option<string[]> Gear => field ??= Completes.FromUnit(
        new Option<string[]>("--gear")
        {
            HelpName = "gear",
            Description = "Only these gears, in detail. May be repeated; several go with commas.",
        },
        Files, unit => unit.Gears.Select(gear => gear.Name));

    /// <summary>For verbs whose result is more than findings.</summary>
    public FormatOption Format => field ??= new(OutputFormat.Text, OutputFormat.Json);

    /// <summary>For verbs that have findings: these formats come with <see cref="UnitAnswer.Findings"/>.</summary>
    public FormatOption FindingsFormat => field ??= new(
        OutputFormat.Text, OutputFormat.Json, OutputFormat.Sarif, OutputFormat.JUnit, OutputFormat.Annotations);

    public Option<bool> Quick => field ??= new("--quick")
    {
        Description = "Judges by the static answer alone, and says so: a pump that always gives enough. Flow may show a gear bad that it calls good.",
    };

    public Option<string?> Output => field ??= new("--output", "-o")
    {
        HelpName = "FILE",
        Description = "Write the result to this file, whole or not at all, instead of standard output.",
    };

    public Option<string?> Units => field ??= Completes.With(
        new Option<string?>("--units")
        {
            HelpName = "si | shop",
            Description = "Units of text: si (kPa, mm; unless given) or shop (psi, in). Other formats are always SI.",
        },
        "si", "shop");
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

    /// <summary>Words, each once, where it comes first.</summary>
    public static ImmutableArray<string> EachOnce(List<string> words)
    {
        var met = new HashSet<string>();
        var first = ImmutableArray.CreateBuilder<string>(words.Count);
        foreach (var word in words)
        {
            if (met.Add(word)) first.Add(word);
        }

        return first.DrainToImmutable();
    }

    /// <summary>The items of an option that may be repeated and may hold lists with commas.</summary>
    public static ImmutableArray<string> Items(string[]? values)
    {
        var items = ImmutableArray.CreateBuilder<string>();
        foreach (var value in values ?? []) items.AddRange(value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
        return items.ToImmutable();
    }
}
