using System.Diagnostics;

namespace Circuits.Tests.Rendering.Drawing;

/// <summary>A real browser (Debian packages <c>chromium</c> and <c>poppler-utils</c>), to see drawings as users do.</summary>
internal static class Browser
{
    private static readonly Lazy<bool> Found = new(() => Runs("chromium", "--version") && Runs("pdftocairo", "-v"));

    /// <summary>What a test that is skipped says.</summary>
    public const string Absent = "chromium and pdftocairo are not installed (Debian: chromium, poppler-utils)";

    /// <summary>Whether both programs are there.</summary>
    public static bool IsInstalled => Found.Value;

    /// <summary>Prints a page to PDF, and gives the first page of that back as SVG, in points.</summary>
    public static string Print(string file)
    {
        var pdf = file + ".pdf";
        Run("chromium", ["--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", $"--print-to-pdf={pdf}", "file://" + file]);
        return Run("pdftocairo", ["-svg", "-f", "1", "-l", "1", pdf, "-"]);
    }

    /// <summary>A page's document after its scripts have run.</summary>
    public static string Open(string file) => Run("chromium", ["--headless", "--no-sandbox", "--disable-gpu", "--dump-dom", "file://" + file]);

    private static bool Runs(string program, string argument)
    {
        try
        {
            Run(program, [argument]);
            return true;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static string Run(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = error.Result;
        return output;
    }
}
