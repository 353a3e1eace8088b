using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Rendering;

namespace Circuits.Cli;

/// <summary>The option <c>--format</c>, with the formats that a verb has.</summary>
internal sealed class FormatOption : Option<string?>
{
    private readonly ImmutableArray<OutputFormat> formats;
    private readonly string[] words;

    private readonly Option<bool> plain = new("--plain")
    {
        Description = "Text for screen readers and logs: one fact a line, nothing drawn.",
    };

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

    /// <summary>The option <c>--plain</c>, which goes wherever text is among the formats; else null.</summary>
    public Option<bool>? Plain => formats.Contains(OutputFormat.Text) ? plain : null;

    /// <summary>The words that name the formats.</summary>
    public IReadOnlyList<string> Words => words;

    /// <summary>The format that the command line asks for; text from a verb without formats.</summary>
    /// <exception cref="UserError">The verb has no format of that name.</exception>
    public static OutputFormat Of(ParseResult parsed)
    {
        if (Find(parsed) is not { } option) return OutputFormat.Text;
        if (parsed.GetValue(option) is not { } word) return option.formats[0];
        var at = Array.IndexOf(option.words, word);
        return at >= 0 ? option.formats[at] : throw UserError.Unknown("format", word, option.words);
    }

    /// <summary>Whether the command line names a format itself.</summary>
    public static bool IsGiven(ParseResult parsed) => Find(parsed) is { } option && parsed.GetValue(option) is not null;

    /// <summary>Whether the command line asks for plain text.</summary>
    /// <exception cref="UserError">The format is another one, which has no plain form.</exception>
    public static bool IsPlain(ParseResult parsed)
    {
        if (Find(parsed)?.Plain is not { } plain || !parsed.GetValue(plain)) return false;
        var format = Of(parsed);
        return format == OutputFormat.Text ? true
            : throw new UserError(UserError.Usage, $"--plain is a form of text, and --format {WordOf(format)} asks for another format", "Leave one of them out.");
    }

    private static FormatOption? Find(ParseResult parsed)
    {
        var options = parsed.CommandResult.Command.Options;
        for (var i = 0; i < options.Count; i++)
        {
            if (options[i] is FormatOption format) return format;
        }

        return null;
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
