using System.CommandLine;
using System.CommandLine.Help;

namespace Circuits.Cli;

/// <summary>The help pages: what the parser knows, then examples.</summary>
internal static class HelpPages
{
    /// <summary>Whether the command line asks for help.</summary>
    public static bool AskedFor(ParseResult parsed) => parsed.Action is HelpAction;

    /// <summary>Writes the page of the verb that the command line names, or of the program.</summary>
    public static void Write(ParseResult parsed, IReadOnlyList<Verb> verbs, Surroundings world)
    {
        ((HelpAction)parsed.Action!).MaxWidth = world.OutIsTerminal ? world.TerminalWidth : 80;
        using var page = new StringWriter { NewLine = "\n" };
        parsed.Invoke(new InvocationConfiguration { Output = page, Error = world.Error });
        foreach (var line in page.ToString().TrimEnd().Split('\n')) world.Out.Write(line.TrimEnd() + "\n");

        var verb = verbs.FirstOrDefault(verb => verb.Command == parsed.CommandResult.Command);
        world.Out.Write("\nExamples:\n");
        foreach (var line in verb?.Examples ?? [.. verbs.Select(any => any.Examples[0])]) world.Out.Write($"  {line}\n");
        if (verb is null)
        {
            world.Out.Write("\nExit codes:\n  0 all as expected\n  1 findings of error level\n"
                + "  2 could not run: usage, unreadable or invalid file\n  130 interrupted\n");
        }
    }
}
