using System.CommandLine;
using System.CommandLine.Completions;
using Circuits.Model;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>Says what a shell may offer for an option or argument.</summary>
internal static class Completes
{
    /// <summary>Offers fixed words.</summary>
    public static TOption With<TOption>(TOption option, params IReadOnlyList<string> words) where TOption : Option
    {
        option.CompletionSources.Add(_ => Items(words));
        return option;
    }

    /// <summary>Offers fixed words.</summary>
    public static Argument<T> With<T>(Argument<T> argument, Func<IEnumerable<string>> words)
    {
        // The help page would list the words in place of the name.
        argument.HelpName = argument.Name;
        argument.CompletionSources.Add(_ => Items(words()));
        return argument;
    }

    /// <summary>Offers names out of the first circuit file on the command line, also behind a comma.</summary>
    /// <param name="option">The option.</param>
    /// <param name="files">The argument that names circuit files.</param>
    /// <param name="names">The names.</param>
    public static TOption FromUnit<TOption>(TOption option, Argument files, Func<Unit, IEnumerable<string>> names) where TOption : Option
    {
        option.CompletionSources.Add(context =>
        {
            var file = context.ParseResult.GetResult(files)?.Tokens.Select(token => token.Value).FirstOrDefault(File.Exists);
            if (file is null || CircuitReader.ReadFile(file).Unit is not { } unit) return [];
            var done = context.WordToComplete[..(context.WordToComplete.LastIndexOf(',') + 1)];
            return Items(names(unit).Select(name => done + name));
        });
        return option;
    }

    private static IEnumerable<CompletionItem> Items(IEnumerable<string> words) => words.Select(word => new CompletionItem(word));
}
