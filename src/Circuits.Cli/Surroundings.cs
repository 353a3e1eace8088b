using Circuits.Reading;

namespace Circuits.Cli;

/// <summary>Everything outside that a command may look at; tests give their own.</summary>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record Surroundings(TextWriter Out, TextWriter Error)
{
    private CancellationToken? interrupted;

    /// <summary>Whether standard output is a terminal.</summary>
    public bool OutIsTerminal { get; init; }

    /// <summary>Whether standard error is a terminal that can take a line back, so that progress may be shown on it.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>The terminal's width in cells.</summary>
    public int TerminalWidth { get; init; } = 80;

    /// <summary>The value of an environment variable, or null.</summary>
    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>
    /// Begins to listen for the user who breaks the command off. Until then breaking off ends the program at once; what works long, or
    /// writes, asks first.
    /// </summary>
    public Func<CancellationToken> Listen { get; init; } = static () => CancellationToken.None;

    /// <summary>What the program returns when it was broken off.</summary>
    public Func<int> InterruptedExit { get; init; } = static () => ExitCode.Interrupted;

    /// <summary>Where files are written, and what was read is remembered.</summary>
    public OutputFiles Outputs { get; init; } = new(new InputFiles());

    /// <summary>Set when the user breaks the command off, once anyone listens.</summary>
    public CancellationToken Interrupted => interrupted ??= Listen();

    /// <summary>Whether the user has broken the command off.</summary>
    public bool IsInterrupted => interrupted is { IsCancellationRequested: true };

    /// <summary>Whether text on the terminal may be coloured: it is one, it can, and the user did not say no.</summary>
    public bool Color => OutIsTerminal && string.IsNullOrEmpty(Variable("NO_COLOR")) && Variable("TERM") != "dumb";

    /// <summary>Whether box characters may be drawn: always, unless the terminal names an encoding that lacks them.</summary>
    public bool Unicode
    {
        get
        {
            if (!OutIsTerminal) return true;
            var locale = FirstSet("LC_ALL", "LC_CTYPE", "LANG");
            var dot = locale.IndexOf('.', StringComparison.Ordinal);
            return dot < 0 || locale[dot..].Replace("-", "", StringComparison.Ordinal).StartsWith(".utf8", StringComparison.OrdinalIgnoreCase);
        }
    }

    /// <summary>Writes a result to standard output.</summary>
    /// <exception cref="UserError">It cannot be written: a full disk, a closed stream.</exception>
    public void Print(string text)
    {
        try
        {
            Out.Write(text);
            Out.Flush();
        }
        catch (IOException fault)
        {
            throw new UserError(UserError.Output, $"cannot write the result: {FileFault.WhyNotWritten(fault)}");
        }
        catch (UnauthorizedAccessException)
        {
            throw new UserError(UserError.Output, "cannot write the result: standard output is closed");
        }
    }

    /// <summary>Writes a diagnostic to standard error. When even that fails there is nobody left to tell; the exit code stays.</summary>
    public void Tell(string text)
    {
        try
        {
            Error.Write(text);
            Error.Flush();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
        }
    }

    private string FirstSet(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (Variable(name) is { Length: > 0 } value) return value;
        }

        return "";
    }
}
