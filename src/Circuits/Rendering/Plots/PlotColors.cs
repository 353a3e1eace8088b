using System.Collections.Immutable;
using OxyPlot;

namespace Circuits.Rendering.Plots;

/// <summary>The colours of plots. Each pair of line colours stays apart for the three kinds of colour blindness, and a line's dashes say the same again.</summary>
internal static class PlotColors
{
    public static readonly OxyColor Paper = OxyColor.FromRgb(0xff, 0xff, 0xff);
    public static readonly OxyColor Ink = OxyColor.FromRgb(0x1d, 0x23, 0x2b);
    public static readonly OxyColor Faint = OxyColor.FromRgb(0x5a, 0x63, 0x6e);
    public static readonly OxyColor Grid = OxyColor.FromRgb(0xdf, 0xe3, 0xe8);

    /// <summary>Lines, in the order in which they are given out.</summary>
    public static readonly ImmutableArray<OxyColor> Lines =
    [
        OxyColor.FromRgb(0x14, 0x4f, 0x9c), OxyColor.FromRgb(0xcf, 0x5c, 0x00), OxyColor.FromRgb(0x0e, 0x8f, 0x8a),
        OxyColor.FromRgb(0x8c, 0x22, 0x5f), OxyColor.FromRgb(0x6d, 0x6a, 0x1f), OxyColor.FromRgb(0x2b, 0x2b, 0x2b),
    ];

    /// <summary>Dashes that go with the lines, as multiples of the line's thickness.</summary>
    public static readonly ImmutableArray<ImmutableArray<double>> Dashes = [[], [6, 2.5], [1.5, 2], [8, 2, 1.5, 2], [4, 2], [10, 3]];

    public static readonly OxyColor Fine = OxyColor.FromRgb(0xee, 0xf3, 0xf8);
    public static readonly OxyColor Weak = OxyColor.FromRgb(0xf6, 0xd9, 0x8a);
    public static readonly OxyColor Unwanted = OxyColor.FromRgb(0xe0, 0x8e, 0x45);
    public static readonly OxyColor Lost = OxyColor.FromRgb(0x4a, 0x37, 0x7a);
    public static readonly OxyColor Unsettled = OxyColor.FromRgb(0x1d, 0x23, 0x2b);

    /// <summary>A name for each colour, by which a page may give it another; null for a colour of none.</summary>
    public static string? NameOf(OxyColor color)
    {
        if (color == Paper) return "paper";
        if (color == Ink) return "ink";
        if (color == Faint) return "faint";
        if (color == Grid) return "grid";
        var line = Lines.IndexOf(color);
        return line < 0 ? null : FormattableString.Invariant($"line{line}");
    }
}
