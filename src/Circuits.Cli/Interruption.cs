using System.Runtime.InteropServices;

namespace Circuits.Cli;

/// <summary>
/// Listens for whoever breaks a command off (Ctrl-C, a system that shuts down, a terminal that goes away), from when someone asks:
/// listening takes a thread of its own.
/// </summary>
/// <param name="outputs">What must be put away before the program ends.</param>
internal sealed class Interruption(OutputFiles outputs) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly CancellationTokenSource interrupted = new();
    private readonly List<PosixSignalRegistration> registrations = [];

    /// <summary>What the program returns once it is broken off.</summary>
    public int Exit { get; private set; } = ExitCode.Interrupted;

    /// <summary>Begins to listen.</summary>
    /// <returns>Set when the command is broken off.</returns>
    public CancellationToken Listen()
    {
        if (registrations.Count == 0)
        {
            Register(PosixSignal.SIGINT, ExitCode.Interrupted);
            Register(PosixSignal.SIGTERM, ExitCode.Terminated);
            Register(PosixSignal.SIGHUP, ExitCode.HungUp);
        }

        return interrupted.Token;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var registration in registrations) registration.Dispose();
        interrupted.Dispose();
    }

    private void Register(PosixSignal signal, int exit) => registrations.Add(PosixSignalRegistration.Create(signal, context =>
    {
        context.Cancel = true;

        // The first one lets the command end by itself; a command that hangs, or a second one, ends at once.
        if (interrupted.IsCancellationRequested) End(exit);
        Exit = exit;
        interrupted.Cancel();
        _ = Task.Delay(Patience).ContinueWith(_ => End(exit), TaskScheduler.Default);
    }));

    private void End(int exit)
    {
        outputs.Dispose();
        Environment.Exit(exit);
    }
}
