using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Rendering.Drawing.Placing;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing;

/// <summary>
/// The circuit of an assembly as SVG, gear by gear. It is placed once: every symbol stands at the same place in every gear, so that
/// drawings can be laid over one another or exchanged. Each symbol and line carries what it stands for as data attributes:
/// <c>data-passage</c>, <c>data-circuit</c>, <c>data-element</c>, <c>data-look</c>, <c>data-kpa</c>, and <c>data-cell</c>, which all
/// passages share whose oil nothing restricts.
/// </summary>
public sealed class CircuitDrawing
{
    private const double Line = 18;
    private const double LegendGap = 8;

    /// <summary>How far a frame stands off a symbol at most: two marks stand one around the other.</summary>
    private const double WidestFrame = 10;
    private readonly Assembly assembly;
    private readonly Diagram diagram;
    private readonly UnitSystem units;

    private CircuitDrawing(Assembly assembly, Diagram diagram, UnitSystem units)
    {
        this.assembly = assembly;
        this.diagram = diagram;
        this.units = units;
    }

    internal Diagram Diagram => diagram;

    /// <summary>Places the circuit of an assembly, with room for what is lettered in any of the gears.</summary>
    /// <param name="views">The gears that will be drawn; at least one, of one assembly.</param>
    /// <param name="units">The units of pressures and sizes.</param>
    /// <exception cref="ArgumentException">There is no gear.</exception>
    public static CircuitDrawing Of(ImmutableArray<GearView> views, UnitSystem units)
    {
        if (views.IsEmpty) throw new ArgumentException("A drawing needs a gear.", nameof(views));
        var network = views[0].Solution.Network;
        var stops = views.SelectMany(view => view.Report.Clutches).Select(clutch => clutch.StoppedAt?.Element).OfType<string>().ToHashSet();
        var diagram = DiagramBuilder.Build(network, stops);
        Layering.Assign(diagram);
        foreach (var wire in diagram.Wires)
        {
            wire.Left.OnLeft = false;
            wire.Right.OnLeft = true;
        }

        SymbolSizes.Measure(diagram, [.. views.Select(view => new Lettering(view, units))]);
        var top = 14 + (views.Max(view => Header(network.Assembly, view, units).Count()) * Line);
        Placer.Place(diagram, top);
        return new CircuitDrawing(network.Assembly, diagram, units);
    }

    /// <summary>Writes one gear as an <c>svg</c> element.</summary>
    /// <param name="to">What it is written to.</param>
    /// <param name="view">One of the gears that the drawing was placed for.</param>
    /// <param name="prefix">What every id begins with, so that several drawings can stand in one page: letters, digits and hyphens.</param>
    public void Write(TextWriter to, GearView view, string prefix = "g-")
    {
        var svg = new SvgWriter(to);
        var (width, height) = Size(view);
        Begin(svg, view, prefix, width, height);
        svg.Begin("g", ("id", $"{prefix}whole"), ("class", "oil-circuit"));
        WriteWhole(svg, view, prefix);
        svg.End();
        svg.End();
    }

    /// <summary>The size of a gear's drawing, in its units.</summary>
    internal (double Width, double Height) Size(GearView view)
    {
        var header = Header(assembly, view, units).Max(row => DrawnText.Width(row.Text, row.Style == "head" ? 17 : DiagramSizes.Type, bold: true));
        var width = Math.Round(Math.Max(Math.Max(diagram.Width, Legend.LeastWidth), 32 + header));
        return (width, Math.Round(diagram.Height + LegendGap + Legend.HeightOf(diagram, view, width)));
    }

    /// <summary>What should not be cut where the drawing goes over several pages: symbols with their lettering and frames, rows of the head, the legend's entries.</summary>
    internal IEnumerable<(double X, double Y, double Width, double Height)> Boxes(GearView view)
    {
        const double frame = WidestFrame + 1;
        for (var i = 0; i < Header(assembly, view, units).Count(); i++) yield return (16, 24 + ((i - 1) * Line), 1, Line);
        foreach (var symbol in diagram.Symbols) yield return (symbol.X - frame, symbol.Y - frame, symbol.Width + (2 * frame), symbol.Height + (2 * frame));
        foreach (var entry in Legend.Boxes(diagram, view, diagram.Height + LegendGap, Size(view).Width)) yield return entry;
    }

    /// <summary>Begins an <c>svg</c> element of a size, with what the drawing needs.</summary>
    internal void Begin(SvgWriter svg, GearView view, string prefix, double width, double height, string unit = "", string page = "")
    {
        svg.Begin(
            "svg", ("xmlns", "http://www.w3.org/2000/svg"), ("class", "oil-circuit"), ("viewBox", SvgWriter.Path($"0 0 {width:0.##} {height:0.##}")),
            ("width", Markup.Number(width) + unit), ("height", Markup.Number(height) + unit), ("role", "img"), ("aria-labelledby", $"{prefix}title {prefix}desc"),
            ("data-gear", view.Gear), ("data-verdict", Words.Of(view.Report.Verdict)));
        svg.Leaf("title", Title(view) + page, ("id", $"{prefix}title"));
        svg.Leaf("desc", TextAlternative.Of(diagram, view, new Lettering(view, units), units), ("id", $"{prefix}desc"));
        svg.Raw("style", Palette.Style + (unit.Length == 0 ? "" : SvgWriter.Path($"@page{{size:{width:0.##}mm {height:0.##}mm;margin:0}}\n")));
        svg.Begin("defs");
        Palette.Patterns(svg, prefix);
        svg.End();
        svg.Box(0, 0, width, height, fill: "#FFFFFF");
    }

    /// <summary>Writes everything that the drawing of a gear shows.</summary>
    internal void WriteWhole(SvgWriter svg, GearView view, string prefix)
    {
        var lettering = new Lettering(view, units);
        var header = Header(assembly, view, units).ToList();
        for (var i = 0; i < header.Count; i++) svg.Text(16, 24 + (i * Line), header[i].Text, header[i].Style);
        foreach (var wire in diagram.Wires) WriteWire(svg, view, wire, prefix);
        var figures = new Figures(svg, view.Solution);
        foreach (var symbol in diagram.Symbols) WriteSymbol(svg, view, lettering, figures, symbol, prefix);
        Legend.Write(svg, diagram, view, prefix, diagram.Height + LegendGap, Size(view).Width);
    }

    /// <summary>Draws a line in a state's colour and pattern.</summary>
    internal static void Stroke(SvgWriter svg, string path, OilLook look)
    {
        svg.Empty("path", ("d", path), ("class", $"wire {Palette.WordOf(look)}"));
        if (look == OilLook.CrossFeed) svg.Empty("path", ("d", path), ("class", "core"));
    }

    /// <summary>Draws the frame of a mark: one of dashes where foreign oil enters, a double one where oil stops.</summary>
    internal static void Frame(SvgWriter svg, string style, double x, double y, double width, double height)
    {
        svg.Box(x, y, width, height, style, round: 7);
        if (style == "stop") svg.Box(x + 3, y + 3, width - 6, height - 6, style, round: 4);
    }

    /// <summary>What a gear's drawing is called.</summary>
    internal string Title(GearView view) => $"{assembly.Unit.Name}, gear {view.Gear}: {Words.Of(view.Report.Verdict)}";

    private static IEnumerable<LetteredRow> Header(Assembly assembly, GearView view, UnitSystem units)
    {
        yield return new LetteredRow($"{DrawnText.Short(assembly.Unit.Name, 40)}, gear {DrawnText.Short(view.Gear, 20)}: {Words.Of(view.Report.Verdict)}", "head");
        var names = assembly.Choice.Select(pair => $"{DrawnText.Short(pair.Key, 20)} {DrawnText.Short(pair.Value, 12)}").ToList();
        for (var i = 0; i < names.Count; i += 6) yield return new LetteredRow((i == 0 ? "Parts: " : "") + string.Join(", ", names.Skip(i).Take(6)));
        if (!assembly.Changes.IsEmpty) yield return new LetteredRow($"Changed: {DrawnText.Short(string.Join("; ", assembly.Changes.Select(change => PhraseWords.Of(change, units))), 90)}", "other");
        yield return new LetteredRow($"Data: {Words.Of(assembly.Unit.Data)}. {(view.Against is { } against ? $"Differences are told against {DrawnText.Short(against, 40)}." : assembly.Matched is { } matched ? $"This is matched set {DrawnText.Short(matched, 40)}." : "There is no matched set to hold it against.")}", "faint");
        yield return new LetteredRow(view.Report.DecidedAt is { } decided ? $"Pressures at {PhraseWords.Of(decided.At.InFull, units)}." : "Pressures of the static answer: those that the pump could hold.", "faint");
        if (!view.Report.Settled) yield return new LetteredRow("Never settles: it goes to and fro; this is one of its states.", "alarm");
        foreach (var feed in view.Report.CrossFeeds.Take(4))
            yield return new LetteredRow($"Foreign oil: {DrawnText.Short(feed.From, 30)} enters {DrawnText.Short(feed.Into, 30)} through {DrawnText.Short(feed.Through, 30)}", "alarm");
        if (view.Report.CrossFeeds.Length > 4) yield return new LetteredRow($"Foreign oil: {Words.Count(view.Report.CrossFeeds.Length - 4, "more way")} in, marked below", "alarm");
        if (view.Report.Drive is { } drive) yield return new LetteredRow($"The driver feels: {DrawnText.Short(FeelWords.Of(drive.Feel), 70)}");
    }

    private void WriteWire(SvgWriter svg, GearView view, Wire wire, string prefix)
    {
        var node = view.Solution.Network.Nodes[wire.Node];
        var look = view.Nodes[wire.Node].Look;
        var path = string.Join(' ', wire.Corners.Select((corner, i) => SvgWriter.Path($"{(i == 0 ? "M" : "L")}{corner.X:0.#} {corner.Y:0.#}")));
        var element = wire.A.Symbol.Kind == SymbolKind.Passage ? wire.B.Symbol : wire.A.Symbol;
        svg.Begin(
            "g", ("id", $"{prefix}w{diagram.Wires.IndexOf(wire).ToString(CultureInfo.InvariantCulture)}"), ("class", "line"), ("data-passage", node.Kind == NodeKind.Passage ? node.Name : null), ("data-circuit", node.Circuit),
            ("data-element", element.Name), ("data-link", wire.Link?.ToString(CultureInfo.InvariantCulture)), ("data-look", Palette.WordOf(look)),
            ("data-cell", view.Solution.CellAt(wire.Node).ToString(CultureInfo.InvariantCulture)));
        svg.Empty("path", ("d", path), ("class", "under"));
        Stroke(svg, path, look);
        svg.End();
    }

    private static void WriteSymbol(SvgWriter svg, GearView view, Lettering lettering, Figures figures, Symbol symbol, string prefix)
    {
        var isPassage = symbol.Kind == SymbolKind.Passage;
        var differs = view.Against is not null && lettering.Differs(symbol);
        var alarm = lettering.IsEntry(symbol) || lettering.IsStop(symbol);
        var node = isPassage || symbol.Kind == SymbolKind.Meeting ? symbol.Element : -1;
        svg.Begin(
            "g", ("id", $"{prefix}s{symbol.Index.ToString(CultureInfo.InvariantCulture)}"), ("class", $"symbol {Legend.WordOf(symbol.Kind)}{(differs ? " differs" : "")}{(alarm ? " marked" : "")}"),
            (isPassage ? "data-passage" : "data-element", symbol.Name), ("data-circuit", node >= 0 ? view.Solution.Network.Nodes[node].Circuit : null),
            ("data-look", node >= 0 ? Palette.WordOf(view.Nodes[node].Look) : null), ("data-kpa", node >= 0 ? Markup.Number(view.Nodes[node].Kilopascals) : null),
            ("data-cell", node >= 0 ? view.Solution.CellAt(node).ToString(CultureInfo.InvariantCulture) : null));
        svg.Leaf("title", TextAlternative.Of(symbol, view, lettering));
        if (isPassage)
        {
            WritePassage(svg, view, lettering, symbol, prefix, differs);
            svg.End();
            return;
        }

        figures.Draw(symbol);
        if (differs) svg.Box(symbol.X - 2, symbol.Y - 2, symbol.Width + 4, symbol.Height + 4, "ring", round: 5);
        if (lettering.IsEntry(symbol)) Mark("entry", 5);
        if (lettering.IsStop(symbol)) Mark("stop", lettering.IsEntry(symbol) ? WidestFrame : 5);
        var above = lettering.Above(symbol).ToList();
        for (var i = 0; i < above.Count; i++) WriteRow(svg, view, symbol, above[i], symbol.FigureY - 4 - ((above.Count - 1 - i) * DiagramSizes.Row));
        var below = lettering.Below(symbol).ToList();
        for (var i = 0; i < below.Count; i++) WriteRow(svg, view, symbol, below[i], symbol.FigureY + symbol.FigureHeight + 11 + (i * DiagramSizes.Row));
        svg.End();

        void Mark(string style, double off) => Frame(svg, style, symbol.X - off, symbol.Y - off, symbol.Width + (2 * off), symbol.Height + (2 * off));
    }

    private static void WritePassage(SvgWriter svg, GearView view, Lettering lettering, Symbol symbol, string prefix, bool differs)
    {
        svg.Box(symbol.X, symbol.Y, symbol.Width, symbol.Height, "fig", round: 4);
        if (differs) svg.Box(symbol.X - 2, symbol.Y - 2, symbol.Width + 4, symbol.Height + 4, "ring", round: 5);
        svg.Box(symbol.X + 2, symbol.Y + 2, DiagramSizes.Band, symbol.Height - 4, round: 2, fill: $"url(#{prefix}{Palette.WordOf(view.Nodes[symbol.Element].Look)})");
        var rows = lettering.Below(symbol).ToList();
        var first = symbol.Y + ((symbol.Height - (rows.Count * DiagramSizes.Row)) / 2) + 11;
        for (var i = 0; i < rows.Count; i++) svg.Text(symbol.X + DiagramSizes.Band + 6, first + (i * DiagramSizes.Row), rows[i].Text, rows[i].Style);
    }

    private static void WriteRow(SvgWriter svg, GearView view, Symbol symbol, LetteredRow row, double y)
    {
        if (row.Signal < 0)
        {
            svg.Text(symbol.X + (symbol.Width / 2), y, row.Text, row.Style is { } style ? $"{style} mid" : "mid");
            return;
        }

        // A pilot line that comes from far away ends here with the name of where it comes from.
        var width = DrawnText.Width(row.Text, DiagramSizes.Type) + SymbolSizes.Pilot;
        var x = symbol.X + ((symbol.Width - width) / 2);
        svg.Line($"M{x:0.#} {y - 4:0.#}h12", "pilot");
        svg.Empty("path", ("d", SvgWriter.Path($"M{x + 12:0.#} {y - 8:0.#}l7 4l-7 4z")), ("fill", Palette.ColourOf(view.Nodes[row.Signal].Look)), ("class", "signal"), ("data-passage", view.Solution.Network.Nodes[row.Signal].Name));
        svg.Text(x + SymbolSizes.Pilot, y, row.Text, row.Style);
    }
}
