using System.CommandLine;
using System.CommandLine.Completions;

namespace Circuits.Cli;

/// <summary>
/// What may stand where the cursor is: the answer to <c>circuits [suggest] "LINE"</c>, which the completion scripts ask. The line
/// is what was typed up to the cursor, the program's name included.
/// </summary>
internal static class Suggestions
{
    /// <summary>The word that asks for suggestions.</summary>
    public const string Directive = "[suggest]";

    /// <summary>The suggestions, in order; none where only the shell knows, as of names of files.</summary>
    /// <param name="line">The line up to the cursor.</param>
    public static IReadOnlyList<string> For(string line)
    {
        var start = line.TrimStart();
        var program = start.IndexOf(' ', StringComparison.Ordinal);
        if (program < 0) return [];
        var rest = start[(program + 1)..];
        var word = rest[(rest.LastIndexOf(' ') + 1)..];

        // A value that is joined to its option: the parser is asked for it as a word of its own.
        var join = word.StartsWith("--", StringComparison.Ordinal) ? word.IndexOf('=', StringComparison.Ordinal) : -1;
        var before = join < 0 ? "" : word[..(join + 1)];
        if (join >= 0) rest = $"{rest[..^word.Length]}{word[..join]} {word[(join + 1)..]}";
        word = word[before.Length..];

        var options = new CommonOptions();
        var verb = rest.TrimStart().IndexOf(' ', StringComparison.Ordinal) is var end and > 0 ? rest.TrimStart()[..end] : "";
        var root = CommandLine.Root(Verbs.For([verb], options));
        var parsed = root.Parse(rest, new ParserConfiguration { ResponseFileTokenReplacer = null });

        return [.. Offered(parsed, root, rest, word).Where(item => item.StartsWith(word, StringComparison.Ordinal)).Select(item => before + item).Distinct()];
    }

    private static IEnumerable<string> Offered(ParseResult parsed, RootCommand root, string rest, string word)
    {
        var command = parsed.CommandResult.Command;
        var words = rest.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var previous = words.Length - (word.Length > 0 ? 2 : 1) is >= 0 and var at ? words[at] : "";
        if (command.Options.FirstOrDefault(known => known.Name == previous || known.Aliases.Contains(previous)) is { } option && option.ValueType != typeof(bool))
            return Values(option);

        // Options are offered to one who began to type one; else they would stand in the way of names of files.
        if (word.StartsWith('-')) return command.Options.Concat(command == root ? [] : root.Options).Where(known => !known.Hidden).Select(known => known.Name);
        if (command == root) return previous.Length == 0 ? root.Subcommands.Select(verb => verb.Name) : [];
        return command.Arguments.SelectMany(Values);

        IEnumerable<string> Values(Symbol symbol) =>
            symbol.GetCompletions(((TextCompletionContext)parsed.GetCompletionContext()).AtCursorPosition(rest.Length)).Select(item => item.Label);
    }
}
