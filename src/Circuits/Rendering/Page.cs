using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Circuits.Rendering;

/// <summary>
/// A page of text for people: paragraphs, lists, tables and trees, wrapped to a width. Every string that goes in is made safe
/// to print; no line ends in blanks.
/// </summary>
internal sealed class Page
{
    private readonly StringBuilder text = new();
    private readonly IAnsiConsole console;

    public Page(TextOptions options)
    {
        Options = options;
        // Nothing here looks at the process: width, colour and encoding come from the options alone.
        console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = options.Color ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = options.Color ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
            EnvironmentVariables = [],
            Out = new Output(new StringWriter(text) { NewLine = "\n" }, options.Width),
        });
        console.Profile.Width = options.Width;
        console.Profile.Capabilities.Unicode = options.Unicode;
        console.Profile.Capabilities.Links = false;
    }

    public TextOptions Options { get; }

    public static Style Plain => Style.Plain;

    public static Style Strong { get; } = new(decoration: Decoration.Bold);

    public static Style Faint { get; } = new(decoration: Decoration.Dim);

    public static Style Good { get; } = new(Color.Green);

    public static Style Doubtful { get; } = new(Color.Yellow, decoration: Decoration.Bold);

    public static Style Bad { get; } = new(Color.Red, decoration: Decoration.Bold);

    /// <summary>A cell, or a piece of a page, in the given style.</summary>
    public Text Cell(string text, Style? style = null) => new(Safe(text), style ?? Style.Plain);

    /// <summary>A cell of several lines.</summary>
    public Text Cell(IEnumerable<string> lines, Style style) => new(string.Join('\n', lines.Select(Safe)), style);

    /// <summary>A cell of pieces in styles of their own.</summary>
    public Paragraph Pieces(params ReadOnlySpan<(string Text, Style Style)> pieces)
    {
        var paragraph = new Paragraph();
        foreach (var (text, style) in pieces) paragraph.Append(Safe(text), style);
        return paragraph;
    }

    public void Blank() => console.WriteLine();

    public void Line(string text, Style? style = null, int indent = 0) => Item("", indent, null, (text, style ?? Plain));

    /// <summary>Text that must not be wrapped: something to copy.</summary>
    public void Verbatim(string text, int indent)
    {
        foreach (var line in text.TrimEnd('\n').Split('\n'))
            this.text.Append(' ', indent).Append(Printable.Of(line)).Append('\n');
    }

    public void Heading(string text)
    {
        Blank();
        Line(text, Strong);
    }

    /// <summary>An item of a list: a mark, then text that wraps beside it.</summary>
    public void Item(string mark, string text, int indent = 2) => Item(mark, indent, null, (text, Plain));

    /// <summary>An item of a list: a mark, then pieces of text that wrap beside it.</summary>
    public void Item(string mark, int indent, Style? markStyle, params ReadOnlySpan<(string Text, Style Style)> pieces)
    {
        var safe = new (string, Style)[pieces.Length];
        for (var i = 0; i < pieces.Length; i++) safe[i] = (Safe(pieces[i].Text), pieces[i].Style);
        console.Write(new HangingText(indent, Safe(mark), markStyle ?? Plain, safe));
    }

    /// <summary>A table without lines; columns are two blanks apart.</summary>
    public static Table Table() => new() { Border = TableBorder.None, Expand = false };

    /// <summary>A column of such a table.</summary>
    public TableColumn Column(string heading, bool right = false, bool wrap = false, int gap = 2) => Column([heading], right, wrap, gap);

    /// <summary>A column whose heading takes several lines.</summary>
    public TableColumn Column(IEnumerable<string> heading, bool right = false, bool wrap = false, int gap = 2) => new(Cell(heading, Faint))
    {
        NoWrap = !wrap,
        Padding = new Padding(0, 0, gap, 0),
        Alignment = right ? Justify.Right : Justify.Left,
    };

    /// <summary>Short pieces one after the other, none of them broken between two lines.</summary>
    public void Flow(IEnumerable<string> pieces, Style style)
    {
        const string Gap = "   ";
        var line = "";
        foreach (var piece in pieces)
        {
            if (line.Length > 0 && Cells.Of(line + Gap + piece) > Options.Width)
            {
                Line(line, style);
                line = "";
            }

            line += line.Length > 0 ? Gap + piece : piece;
        }

        if (line.Length > 0) Line(line, style);
    }

    /// <summary>A table or a tree.</summary>
    public void Put(IRenderable piece, int indent = 0) =>
        console.Write(indent == 0 ? piece : new Padder(piece, new Padding(indent, 0, 0, 0)));

    public override string ToString()
    {
        var page = new StringBuilder();
        foreach (var line in text.ToString().TrimEnd('\n').Split('\n'))
            page.Append(line.AsSpan().TrimEnd(" \r")).Append('\n');
        return page.ToString();
    }

    private string Safe(string text) => Printable.Of(Measures.Restate(text, Options.Units));

    private sealed class Output(TextWriter writer, int width) : IAnsiConsoleOutput
    {
        public TextWriter Writer => writer;

        public bool IsTerminal => false;

        public int Width => width;

        public int Height => int.MaxValue;

        public void SetEncoding(Encoding encoding)
        {
        }
    }
}
