using Circuits.Solving;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>The legend of a circuit drawing: every state of oil, every mark, and every kind of symbol that the drawing has.</summary>
internal static class Legend
{
    private static readonly double Column = 88 + Palette.Looks.Select(Palette.MeaningOf).Concat(Enum.GetValues<SymbolKind>().Select(MeaningOf))
        .Append("a charted clutch's oil stops here").Max(words => DrawnText.Width(words, DiagramSizes.Type));

    private const double RowHeight = 46;

    /// <summary>How high the legend is at a width.</summary>
    public static double HeightOf(Diagram diagram, GearView view, double width) => 26 + (Math.Ceiling(Items(diagram, view) / (double)Columns(width)) * RowHeight);

    /// <summary>The least width that it takes.</summary>
    public static double LeastWidth => Column + 32;

    /// <summary>Writes it with its upper edge at a height.</summary>
    public static void Write(SvgWriter svg, Diagram diagram, GearView view, string prefix, double top, double width)
    {
        svg.Begin("g", ("class", "legend"));
        svg.Line($"M16 {top:0.#}H{width - 16:0.#}", "idle");
        svg.Text(16, top + 18, "Legend", "name");
        var count = 0;
        foreach (var look in Palette.Looks)
        {
            var (x, y) = Next();
            svg.Box(x, y + 6, 22, 22, "fig", fill: null);
            svg.Empty("rect", ("x", Markup.Number(x)), ("y", Markup.Number(y + 6)), ("width", "22"), ("height", "22"), ("fill", $"url(#{prefix}{Palette.WordOf(look)})"), ("data-legend", Palette.WordOf(look)));
            CircuitDrawing.Stroke(svg, SvgWriter.Path($"M{x + 26:0.#} {y + 17:0.#}h38"), look);
            svg.Text(x + 72, y + 21, Palette.MeaningOf(look));
        }

        foreach (var (style, words) in Marks(view))
        {
            var (x, y) = Next();
            CircuitDrawing.Frame(svg, style, x + 8, y + 5, 44, 24);
            svg.Text(x + 72, y + 21, words);
        }

        foreach (var kind in Kinds(diagram))
        {
            var (x, y) = Next();
            var sample = diagram.Symbols.First(symbol => symbol.Kind == kind);
            svg.Begin("g", ("data-legend", WordOf(kind)), ("transform", Scale(sample, x, y)));
            DrawSample(svg, sample, view.Solution, prefix);
            svg.End();
            svg.Text(x + 72, y + 21, MeaningOf(kind));
        }

        svg.End();

        (double X, double Y) Next() => Place(count++, top, width);
    }

    /// <summary>The room of each entry.</summary>
    public static IEnumerable<(double X, double Y, double Width, double Height)> Boxes(Diagram diagram, GearView view, double top, double width) =>
        Enumerable.Range(0, Items(diagram, view)).Select(count => Place(count, top, width)).Select(place => (place.X, place.Y, Column, RowHeight));

    /// <summary>What a kind of symbol is called, as data carry it.</summary>
    public static string WordOf(SymbolKind kind) => kind switch
    {
        SymbolKind.Pump => "pump",
        SymbolKind.Passage => "passage",
        SymbolKind.Meeting => "opening",
        SymbolKind.Orifice => "orifice",
        SymbolKind.Joined => "joined",
        SymbolKind.Leak => "leak",
        SymbolKind.Ball => "ball",
        SymbolKind.Valve => "valve",
        SymbolKind.Lever => "manual-valve",
        SymbolKind.Spilling => "spilling-regulator",
        SymbolKind.Reducing => "reducing-regulator",
        SymbolKind.Switch => "switching-solenoid",
        SymbolKind.PressureSolenoid => "pressure-solenoid",
        SymbolKind.Stuck => "stuck-regulator",
        SymbolKind.Screen => "screen",
        SymbolKind.Accumulator => "accumulator",
        SymbolKind.Clutch => "clutch",
        SymbolKind.Metal => "metal",
    };

    private static string MeaningOf(SymbolKind kind) => kind switch
    {
        SymbolKind.Pump => "pump",
        SymbolKind.Passage => "passage, with its pressure",
        SymbolKind.Meeting => "opening between several",
        SymbolKind.Orifice => "hole or slot (orifice)",
        SymbolKind.Joined => "joined, no restriction",
        SymbolKind.Leak => "leak",
        SymbolKind.Ball => "ball: on a seat, or free",
        SymbolKind.Valve => "valve: moved above, at rest below",
        SymbolKind.Lever => "manual valve, in its position",
        SymbolKind.Spilling => "regulator that spills (relief)",
        SymbolKind.Reducing => "regulator that reduces",
        SymbolKind.Switch => "solenoid that switches",
        SymbolKind.PressureSolenoid => "solenoid that holds a pressure",
        SymbolKind.Stuck => "regulator that has stuck",
        SymbolKind.Screen => "screen or filter, with any bypass",
        SymbolKind.Accumulator => "accumulator",
        SymbolKind.Clutch => "clutch or brake, with its spring",
        SymbolKind.Metal => "metal: oil stops here",
    };

    private static (double X, double Y) Place(int count, double top, double width)
    {
        var columns = Columns(width);
        return (16 + (count % columns * Column), top + 26 + (count / columns * RowHeight));
    }

    private static int Columns(double width) => Math.Max(1, (int)((width - 32) / Column));

    private static int Items(Diagram diagram, GearView view) => Palette.Looks.Length + Marks(view).Count() + Kinds(diagram).Count();

    private static IEnumerable<SymbolKind> Kinds(Diagram diagram) => diagram.Symbols.Select(symbol => symbol.Kind).Distinct().Order();

    private static IEnumerable<(string Style, string Words)> Marks(GearView view)
    {
        if (view.Against is { } against) yield return ("ring", $"differs from {DrawnText.Short(against, 22)}");
        if (!view.Report.CrossFeeds.IsEmpty) yield return ("entry", "foreign oil enters here");
        if (view.Report.Clutches.Any(clutch => clutch.StoppedAt is not null)) yield return ("stop", "a charted clutch's oil stops here");
    }

    private static string Scale(Symbol sample, double x, double y)
    {
        var scale = Math.Min(1, Math.Min(64 / sample.FigureWidth, 34 / sample.FigureHeight));
        var (left, top) = (x + ((64 - (sample.FigureWidth * scale)) / 2), y + ((34 - (sample.FigureHeight * scale)) / 2));
        return SvgWriter.Path($"translate({left:0.##} {top:0.##}) scale({scale:0.###}) translate({-sample.FigureX:0.##} {-sample.FigureY:0.##})");
    }

    private static void DrawSample(SvgWriter svg, Symbol sample, GearSolution solution, string prefix)
    {
        if (sample.Kind == SymbolKind.Passage)
        {
            svg.Box(sample.X, sample.Y, sample.Width, sample.Height, "fig", round: 4);
            svg.Box(sample.X + 3, sample.Y + 3, DiagramSizes.Band - 2, sample.Height - 6, fill: $"url(#{prefix}supply)");
            return;
        }

        new Figures(svg, solution, lettered: false).Draw(sample);
    }
}
