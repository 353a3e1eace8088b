using System.Diagnostics;

namespace Circuits.Tests.Outside;

/// <summary>Runs <c>reach.lp</c> and its other parts on facts with clingo, an answer-set solver (Potassco, MIT licence; Debian package gringo).</summary>
internal static class ClingoProgram
{
    public const string Absent = "clingo is not installed; on Debian: apt-get install gringo";

    private static readonly string Parts = string.Join(' ', new[] { "joints.lp", "reach.lp", "crossfeeds.lp" }
        .Select(part => $"\"{Path.Combine(Repository.Root, "tests", "Circuits.Tests", "Outside", part)}\""));

    private static readonly Lazy<bool> Found = new(() =>
    {
        try
        {
            return Run("--version", "").Contains("clingo version", StringComparison.Ordinal);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    });

    public static bool IsInstalled => Found.Value;

    /// <summary>The atoms that the program derives. It makes no choices, so there is one answer set, always.</summary>
    /// <exception cref="InvalidOperationException">Clingo refused the program or the facts, or found no answer set or several.</exception>
    public static IEnumerable<string> Derive(string facts)
    {
        var output = Run($"--outf=0 -V0 -Wno-atom-undefined --models=2 {Parts} -", facts);
        var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (lines is not [var atoms, "SATISFIABLE"]) throw new InvalidOperationException($"the program has {lines.Length - 1} answer sets");
        return atoms.Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    private static string Run(string arguments, string input)
    {
        using var process = Process.Start(new ProcessStartInfo("clingo", arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        })!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        if (errors.Result.Length > 0) throw new InvalidOperationException($"clingo: {errors.Result}");
        return output.Result;
    }
}
