namespace Circuits.Cli;

/// <summary>What the process tells its caller; part of the contract.</summary>
internal static class ExitCode
{
    /// <summary>All as expected.</summary>
    public const int Fine = 0;

    /// <summary>There are findings of error level.</summary>
    public const int Findings = 1;

    /// <summary>The command could not run: usage, an unreadable or invalid file, a fault of the program.</summary>
    public const int CouldNotRun = 2;

    /// <summary>The user broke it off (SIGINT). This and the next two are 128 and the signal's number, as shells have it.</summary>
    public const int Interrupted = 130;

    /// <summary>It was told to end (SIGTERM).</summary>
    public const int Terminated = 143;

    /// <summary>Its terminal went away (SIGHUP).</summary>
    public const int HungUp = 129;
}
