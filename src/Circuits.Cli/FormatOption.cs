using System.Collections.Immutable;
using System.CommandLine;

namespace Circuits.Cli;

/// <summary>The formats of results.</summary>
internal enum OutputFormat
{
    Text,
    Json,
    Sarif,
    JUnit,
    Annotations,
    Jsonl,
    Csv,
    Markdown,
    Html,
}

/// <summary>The option <c>--format</c>, with the formats that a verb has.</summary>
internal sealed class FormatOption : Option<string?>
{
    private readonly ImmutableArray<OutputFormat> formats;
    private readonly string[] words;

    /// <param name="formats">The formats, the first one unless the user names another.</param>
    public FormatOption(params ImmutableArray<OutputFormat> formats) : base("--format")
    {
        this.formats = formats;
        words = new string[formats.Length];
        for (var i = 0; i < words.Length; i++) words[i] = WordOf(formats[i]);
        Completes.With(this, words);
        HelpName = words.Length > 2 ? "format" : string.Join(" | ", words);
        Description = $"The format of the result; {words[0]} unless given."
            + (words.Length > 2 ? $" Also: {string.Join(", ", words, 1, words.Length - 1)}." : "");
    }

    /// <summary>The words that name the formats.</summary>
    public IReadOnlyList<string> Words => words;

    /// <summary>The format that the command line asks for; text from a verb without formats.</summary>
    /// <exception cref="UserError">The verb has no format of that name.</exception>
    public static OutputFormat Of(ParseResult parsed)
    {
        if (parsed.CommandResult.Command.Options.OfType<FormatOption>().FirstOrDefault() is not { } option) return OutputFormat.Text;
        if (parsed.GetValue(option) is not { } word) return option.formats[0];
        var at = Array.IndexOf(option.words, word);
        return at >= 0 ? option.formats[at] : throw UserError.Unknown("format", word, option.words);
    }

    private static string WordOf(OutputFormat format) => format switch
    {
        OutputFormat.Text => "text",
        OutputFormat.Json => "json",
        OutputFormat.Sarif => "sarif",
        OutputFormat.JUnit => "junit",
        OutputFormat.Jsonl => "jsonl",
        OutputFormat.Csv => "csv",
        OutputFormat.Markdown => "markdown",
        OutputFormat.Html => "html",
        _ => "annotations",
    };
}
