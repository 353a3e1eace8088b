using System.CommandLine;

namespace Circuits.Cli;

/// <summary>A verb: its part of the command line, lines that show its use, and what it does.</summary>
internal sealed class Verb
{
    /// <summary>A verb.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="description">One or two sentences for the help pages.</param>
    /// <param name="symbols">Its arguments and options, in the order of the help page.</param>
    /// <param name="examples">Command lines that show its use.</param>
    /// <param name="run">Does it; returns the exit code.</param>
    public Verb(string name, string description, Symbol[] symbols, IReadOnlyList<string> examples, Func<Session, int> run)
    {
        Command = new Command(name, description);
        foreach (var symbol in symbols)
        {
            if (symbol is Argument argument) Command.Arguments.Add(argument);
            else Command.Options.Add((Option)symbol);
            if (symbol is FormatOption { Plain: { } plain }) Command.Options.Add(plain);
        }

        Examples = examples;
        Run = run;
    }

    /// <summary>Its arguments and options, for the parser.</summary>
    public Command Command { get; }

    /// <summary>Command lines that show its use.</summary>
    public IReadOnlyList<string> Examples { get; }

    /// <summary>Does it; returns the exit code.</summary>
    public Func<Session, int> Run { get; }
}
