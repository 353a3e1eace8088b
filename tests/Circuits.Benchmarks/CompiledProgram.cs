using System.Diagnostics;
using Circuits.Tests;

namespace Circuits.Benchmarks;

/// <summary>The program compiled ahead of time, as users start it; measured where it was published into <c>artifacts/aot</c>.</summary>
internal static class CompiledProgram
{
    /// <summary>How often a command is run; the least time counts, since the first run also reads the program from disk.</summary>
    private const int Runs = 3;

    /// <summary>What to say where there is none.</summary>
    public const string Absent = "not measured compiled (dotnet publish src/Circuits.Cli -r linux-x64 -c Release -o artifacts/aot)";

    /// <summary>A demo unit's file.</summary>
    public static string Unit(string name) => Path.Combine(Repository.Root, "circuits", name, name + ".yaml");

    /// <summary>The least wall time of a command from start to end, s; null without the program.</summary>
    /// <param name="words">The command's words.</param>
    public static double? Seconds(params string[] words)
    {
        var program = Path.Combine(Repository.Root, "artifacts", "aot", "circuits");
        if (!File.Exists(program)) return null;
        var least = double.PositiveInfinity;
        for (var run = 0; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var said = process.StandardError.ReadToEndAsync();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            least = Math.Min(least, watch.Elapsed.TotalSeconds);
            if (process.ExitCode > 1) throw new InvalidOperationException($"circuits {string.Join(' ', words)}: {said.Result}");
        }

        return least;
    }
}
