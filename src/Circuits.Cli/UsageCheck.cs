using System.CommandLine;
using System.CommandLine.Parsing;

namespace Circuits.Cli;

/// <summary>Finds what is wrong with a command line as such, and says so in one line.</summary>
internal static class UsageCheck
{
    /// <summary>Returns when nothing is wrong.</summary>
    /// <exception cref="UserError">The first thing that is wrong.</exception>
    public static void Throw(ParseResult parsed, Command root)
    {
        var command = parsed.CommandResult.Command;
        if (UnknownOption(parsed) is { } option)
            throw UserError.Unknown("option", option, [.. command.Options.Select(known => known.Name).Concat(CommandLine.EverywhereOptions).Distinct()]);
        if (command == root)
        {
            var verbs = Verbs.Names.ToList();
            throw parsed.UnmatchedTokens is [var word, ..]
                ? UserError.Unknown("verb", word, verbs)
                : new UserError(UserError.Usage, "no verb", $"Verbs: {string.Join(", ", verbs)}. More: circuits --help");
        }

        if (parsed.UnmatchedTokens is [var extra, ..])
            throw new UserError(UserError.Usage, $"one argument too many: {extra}", $"See circuits {command.Name} --help");
        if (parsed.Errors is [var error, ..])
            throw new UserError(UserError.Usage, Sentence(error, command), $"See circuits {command.Name} --help");
    }

    private static string Sentence(ParseError error, Command command) => error.SymbolResult switch
    {
        OptionResult { Tokens.Count: 0 } option => $"option {option.Option.Name} lacks its value",
        OptionResult { Tokens.Count: > 1 } option => $"option {option.Option.Name} is given twice",
        ArgumentResult { Tokens.Count: 0 } argument => $"{command.Name} needs a {argument.Argument.Name}",
        _ => error.Message,
    };

    // The parser takes an unknown option for one more file.
    private static string? UnknownOption(ParseResult parsed)
    {
        var given = new HashSet<string>();
        foreach (var token in parsed.Tokens)
        {
            if (token.Type == TokenType.DoubleDash) break;
            given.Add(token.Value);
        }

        foreach (var child in parsed.CommandResult.Children)
        {
            if (child is not ArgumentResult argument) continue;
            foreach (var token in argument.Tokens)
            {
                if (IsOption(token.Value)) return token.Value;
            }
        }

        foreach (var word in parsed.UnmatchedTokens)
        {
            if (IsOption(word)) return word;
        }

        return null;

        bool IsOption(string word) => word.Length > 1 && word[0] == '-' && given.Contains(word);
    }
}
