using System.CommandLine;
using Circuits.Rendering.Plots;

namespace Circuits.Cli;

/// <summary>The option <c>--plot</c>: a picture of the result in a file of its own, beside the result.</summary>
internal sealed class PlotOption : Option<string?>
{
    public PlotOption(string what) : base("--plot")
    {
        HelpName = "FILE.svg";
        Description = $"Also draw {what} into this file, whole or not at all.";
    }

    /// <summary>The file to draw into, or null; refused, before any work, where it is none that can be drawn.</summary>
    /// <param name="session">The run.</param>
    /// <exception cref="UserError">It has another ending, it is read or written otherwise, or several files are named.</exception>
    public string? Check(Session session)
    {
        if (session.Parsed.GetValue(this) is not { } path) return null;
        if (!path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase))
            throw new UserError(UserError.Usage, $"--plot {path} does not end in .svg", $"Pictures are SVG: --plot {Path.ChangeExtension(path, ".svg")}.");
        if (session.Files.Length > 1) throw new UserError(UserError.Usage, "--plot takes one circuit file at a time");
        session.CheckOther("--plot", path);
        return path;
    }

    /// <summary>Draws, where it was asked for.</summary>
    /// <param name="session">The run.</param>
    /// <param name="path">What <see cref="Check"/> gave.</param>
    /// <param name="make">Makes the plot.</param>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(Session session, string? path, Func<Plot> make)
    {
        if (path is null) return;
        session.StopIfInterrupted();
        var plot = make();
        if (plot.Sheets == 0) throw new UserError(UserError.Usage, "--plot has nothing to draw");
        session.WriteFile(path, plot.Svg());
    }
}
