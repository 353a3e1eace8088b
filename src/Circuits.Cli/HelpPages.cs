using System.CommandLine;
using System.CommandLine.Help;
using System.Text;

namespace Circuits.Cli;

/// <summary>The help pages: what the parser knows, then examples.</summary>
internal static class HelpPages
{
    /// <summary>Whether the command line asks for help.</summary>
    public static bool AskedFor(ParseResult parsed) => parsed.Action is HelpAction;

    /// <summary>Writes the page of the verb that the command line names, or of the program.</summary>
    public static void Write(ParseResult parsed, Verb[] verbs, Surroundings world)
    {
        ((HelpAction)parsed.Action!).MaxWidth = world.OutIsTerminal ? world.TerminalWidth : 80;
        using var parts = new StringWriter { NewLine = "\n" };
        parsed.Invoke(new InvocationConfiguration { Output = parts, Error = TextWriter.Null });
        var verb = Array.Find(verbs, verb => verb.Command == parsed.CommandResult.Command);
        var page = new StringBuilder();
        foreach (var line in parts.ToString().TrimEnd().Split('\n')) page.Append(line.TrimEnd()).Append('\n');
        page.Append("\nExamples:\n");
        foreach (var line in verb?.Examples ?? [.. verbs.Select(any => any.Examples[0])]) page.Append("  ").Append(line).Append('\n');
        if (verb is null)
        {
            page.Append("\nExit codes:\n  0 all as expected\n  1 findings of error level\n"
                + "  2 could not run: usage, unreadable or invalid file\n  130 interrupted\n");
        }

        world.Print(page.ToString());
    }
}
