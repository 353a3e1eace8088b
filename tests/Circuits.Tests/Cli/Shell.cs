using System.Diagnostics;

namespace Circuits.Tests.Cli;

/// <summary>Runs programs, this one among them, as a shell does.</summary>
internal static class Shell
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    /// <summary>The program, as a shell calls it.</summary>
    public static string Program { get; } = $"'{Path.Combine(AppContext.BaseDirectory, "circuits")}'";

    /// <summary>Runs a command line and waits for its end.</summary>
    /// <param name="command">What the shell is to do.</param>
    /// <param name="folder">Where; the working directory when it is not given.</param>
    public static (int Exit, string Out, string Error) Run(string command, string folder = "")
    {
        using var shell = Start(command, folder);
        var error = shell.StandardError.ReadToEndAsync();
        var output = shell.StandardOutput.ReadToEndAsync();
        if (!shell.WaitForExit(Patience))
        {
            shell.Kill(entireProcessTree: true);
            throw new TimeoutException(command);
        }

        return (shell.ExitCode, output.Result, error.Result);
    }

    /// <summary>Starts a command line.</summary>
    /// <param name="command">What the shell is to do.</param>
    /// <param name="folder">Where.</param>
    public static Process Start(string command, string folder) => Process.Start(new ProcessStartInfo("/bin/bash", ["-c", command])
    {
        WorkingDirectory = folder,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
        RedirectStandardInput = true,
    })!;
}
