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
}

/// <summary>The option <c>--format</c>, with the formats that a verb has.</summary>
internal sealed class FormatOption : Option<string?>
{
    private readonly ImmutableArray<OutputFormat> formats;

    /// <param name="formats">The formats, the first one unless the user names another.</param>
    public FormatOption(params ImmutableArray<OutputFormat> formats) : base("--format")
    {
        this.formats = formats;
        HelpName = formats.Length > 2 ? "format" : string.Join(" | ", Words);
        Description = $"The format of the result; {Words.First()} unless given."
            + (formats.Length > 2 ? $" Also: {string.Join(", ", Words.Skip(1))}." : "");
    }

    /// <summary>The words that name the formats.</summary>
    public IEnumerable<string> Words => formats.Select(format => format.ToString().ToLowerInvariant());

    /// <summary>The format that the command line asks for; text from a verb without formats.</summary>
    /// <exception cref="UserError">The verb has no format of that name.</exception>
    public static OutputFormat Of(ParseResult parsed)
    {
        if (parsed.CommandResult.Command.Options.OfType<FormatOption>().FirstOrDefault() is not { } option) return OutputFormat.Text;
        if (parsed.GetValue(option) is not { } word) return option.formats[0];
        var at = option.Words.ToList().IndexOf(word);
        return at >= 0 ? option.formats[at] : throw UserError.Unknown("format", word, [.. option.Words]);
    }
}
