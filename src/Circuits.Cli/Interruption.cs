using System.Runtime.InteropServices;

namespace Circuits.Cli;

/// <summary>Listens for the user who breaks a command off, from when someone asks: listening takes a thread of its own.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource interrupted = new();
    private PosixSignalRegistration? registration;

    /// <summary>Begins to listen.</summary>
    /// <returns>Set when the user breaks the command off.</returns>
    public CancellationToken Listen()
    {
        registration ??= PosixSignalRegistration.Create(PosixSignal.SIGINT, context =>
        {
            // The first one lets the command put its temporary file away; a command that hangs, or a second one, ends at once.
            if (interrupted.IsCancellationRequested) return;
            context.Cancel = true;
            interrupted.Cancel();
            _ = Task.Delay(TimeSpan.FromSeconds(1)).ContinueWith(_ => Environment.Exit(ExitCode.Interrupted), TaskScheduler.Default);
        });
        return interrupted.Token;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        registration?.Dispose();
        interrupted.Dispose();
    }
}
