using System.Diagnostics;
using System.Globalization;

namespace Circuits.Tests.Outside;

/// <summary>Runs netlists with ngspice, a circuit simulator (BSD licence; Debian package ngspice).</summary>
internal static class SpiceProgram
{
    public const string Absent = "ngspice is not installed; on Debian: apt-get install ngspice";

    private static readonly Lazy<bool> Found = new(() =>
    {
        try
        {
            using var process = Process.Start(Info("--version"))!;
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output.Contains("ngspice", StringComparison.Ordinal);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    });

    public static bool IsInstalled => Found.Value;

    /// <summary>What a netlist with a control section prints.</summary>
    /// <param name="netlist">The netlist. It runs in a folder of its own, of which every file comes back as well.</param>
    public static (string Output, Dictionary<string, string> Files) Run(string netlist)
    {
        var folder = Directory.CreateTempSubdirectory("circuits-spice-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "netlist.cir"), netlist);
            using var process = Process.Start(Info("-n -b netlist.cir", folder.FullName))!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            var files = folder.EnumerateFiles().ToDictionary(found => found.Name, found => File.ReadAllText(found.FullName));
            return (output + errors.Result, files);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The values that <c>print</c> wrote, by name, without what follows in brackets.</summary>
    public static Dictionary<string, double> Values(string output)
    {
        var values = new Dictionary<string, double>();
        foreach (var line in output.Split('\n'))
        {
            if (line.Split(" = ") is [var name, var text] && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
                values[name.Split('[')[0].Trim()] = value;
        }

        return values;
    }

    private static ProcessStartInfo Info(string arguments, string folder = "") => new("ngspice", arguments)
    {
        WorkingDirectory = folder,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
        UseShellExecute = false,
    };
}
