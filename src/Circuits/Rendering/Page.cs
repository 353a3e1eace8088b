using System.Collections.Immutable;
using System.Text;
using Circuits.Findings;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Circuits.Rendering;

/// <summary>
/// A page of text for people: paragraphs, lists, tables and trees, wrapped to a width; or the same in plain lines. Every string
/// that goes in is made safe to print; no line ends in blanks.
/// </summary>
internal sealed class Page
{
    private readonly StringBuilder text = new();
    private readonly IAnsiConsole console;
    private readonly PlainLines? plain;

    public Page(TextOptions options)
    {
        Options = options;
        plain = options.Plain ? new PlainLines(text) : null;
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

    /// <summary>A cell in the given style.</summary>
    /// <param name="text">What it shows.</param>
    /// <param name="style">Its style.</param>
    /// <param name="spoken">What is read out instead, where the text is a mark.</param>
    public GridCell Cell(string text, Style? style = null, string? spoken = null) => new(Safe(text), style ?? Style.Plain, spoken is null ? null : Safe(spoken));

    /// <summary>Whether the page is read out rather than looked at.</summary>
    public bool IsPlain => plain is not null;

    public void Blank() => text.Append('\n');

    /// <summary>How it was and how it is now.</summary>
    public string Change(string was, string now) => was == now ? now : IsPlain ? $"{was}, then {now}" : $"{was} > {now}";

    /// <summary>Names with room behind them to write on paper.</summary>
    public void Blanks(params ReadOnlySpan<(string Name, int Width)> fields)
    {
        var line = new StringBuilder();
        foreach (var (name, width) in fields)
        {
            if (IsPlain) Line($"{name}:");
            else line.Append(line.Length > 0 ? "   " : "").Append(name).Append(' ').Append('_', width);
        }

        if (!IsPlain) Line(line.ToString());
    }

    /// <summary>A phrase in the page's units.</summary>
    /// <param name="phrase">What to say.</param>
    /// <param name="gearIsTold">Whether a heading names the gear.</param>
    public string Words(Phrase phrase, bool gearIsTold = false) => PhraseWords.Of(phrase, Options.Units, gearIsTold);

    public void Line(string text, Style? style = null, int indent = 0) => Item("", indent, null, (text, style ?? Plain));

    /// <summary>Text that must not be wrapped: something to copy.</summary>
    public void Verbatim(string text, int indent)
    {
        foreach (var line in text.TrimEnd('\n').Split('\n'))
            this.text.Append(' ', IsPlain ? 0 : indent).Append(Printable.Of(line)).Append('\n');
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
        if (plain is not null) plain.Item(Safe(mark), Joined(safe));
        else console.Write(new HangingText(indent, Safe(mark), markStyle ?? Plain, safe));
    }

    /// <summary>A table; columns are two blanks apart, and no lines are drawn.</summary>
    public static Grid Table() => new();

    /// <summary>A column of such a table.</summary>
    public GridColumn Column(string heading, bool right = false, bool wrap = false, int gap = 2) => Column([heading], heading, right, wrap, gap);

    /// <summary>A column whose heading takes several lines.</summary>
    public GridColumn Column(IEnumerable<string> heading, string name, bool right = false, bool wrap = false, int gap = 2) =>
        new([.. heading.Select(Safe)], Safe(name), right, wrap, gap);

    /// <summary>Short pieces one after the other, none of them broken between two lines.</summary>
    public void Flow(IEnumerable<string> pieces, Style style)
    {
        if (IsPlain)
        {
            foreach (var piece in pieces) Line(piece);
            return;
        }

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

    /// <summary>A table: as wide as it is, or in bands where it is too wide for the page; in plain lines, a record for each row.</summary>
    public void Put(Grid grid, int indent = 0)
    {
        if (plain is not null)
        {
            plain.Records([.. grid.Columns.Select(column => column.Name)], grid.Rows.Select(row => row.Select(cell => cell.Spoken ?? cell.Text).ToList()));
            return;
        }

        var bands = grid.Bands(Options.Width - indent, out var widths);
        for (var i = 0; i < bands.Length; i++)
        {
            if (i > 0) Blank();
            Put(Band(grid, bands[i], grid.Broken(bands[i], widths, Options.Width - indent)), indent);
        }
    }

    /// <summary>A tree: drawn, or as numbered lines.</summary>
    public void Put(Outline outline, int indent = 0)
    {
        if (plain is not null)
        {
            plain.Numbered("1", outline, line => Joined([.. line.Pieces.Select(piece => (Safe(piece.Text), piece.Style))]));
            return;
        }

        var tree = new Tree(Line(outline)) { Guide = Options.Unicode ? TreeGuide.Line : TreeGuide.Ascii };
        Add(tree, outline);
        Put(tree, indent);

        void Add(IHasTreeNodes parent, Outline of)
        {
            foreach (var below in of.Below)
            {
                var node = new TreeNode(Line(below));
                parent.Nodes.Add(node);
                Add(node, below);
            }
        }

        Paragraph Line(Outline of)
        {
            var paragraph = new Paragraph();
            foreach (var (text, style) in of.Pieces) paragraph.Append(Safe(text), style);
            return paragraph;
        }
    }

    private void Put(IRenderable piece, int indent) => console.Write(indent == 0 ? piece : new Padder(piece, new Padding(indent, 0, 0, 0)));

    private static Table Band(Grid grid, ImmutableArray<int> band, ImmutableArray<int>? widths)
    {
        var table = new Table { Border = TableBorder.None, Expand = false };
        foreach (var i in band)
        {
            var column = grid.Columns[i];
            table.AddColumn(new TableColumn(new Text(string.Join('\n', column.Heading), Faint))
            {
                NoWrap = !column.Wrap && widths is null,
                Width = widths?[i],
                Padding = new Padding(0, 0, i == band[^1] ? 0 : column.Gap, 0),
                Alignment = column.Right ? Justify.Right : Justify.Left,
            });
        }

        foreach (var row in grid.Rows) table.AddRow(band.Select(i => new Text(row[i].Text, row[i].Style)));
        return table;
    }

    public override string ToString()
    {
        var page = new StringBuilder();
        foreach (var line in text.ToString().TrimEnd('\n').Split('\n'))
            page.Append(line.AsSpan().TrimEnd(" \r")).Append('\n');
        return page.ToString();
    }

    private static string Joined(IEnumerable<(string Text, Style Style)> pieces) => string.Concat(pieces.Select(piece => piece.Text));

    private string Safe(string text) => Printable.Of(text);

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
