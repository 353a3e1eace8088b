using System.Text;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>A sheet, as a page and as Markdown.</summary>
internal static class SheetText
{
    /// <summary>The page; every line ends with a newline.</summary>
    public static string Page(SheetContent sheet, TextOptions options)
    {
        var page = new Page(options);
        page.Line(sheet.Title, Rendering.Page.Strong);
        page.Blank();
        var width = sheet.Head.Max(pair => pair.Key.Length);
        foreach (var (name, value) in sheet.Head) page.Item(name.PadRight(width), value, indent: 0);
        foreach (var section in sheet.Sections)
        {
            page.Heading(section.Title);
            foreach (var line in section.Lines) page.Item("-", line.Text, indent: 2 + (2 * line.Depth));
            if (section.Table is not { } content) continue;
            var table = Rendering.Page.Table();
            for (var i = 0; i < content.Heads.Length; i++) table.AddColumn(page.Column(content.Heads[i], wrap: i == content.Heads.Length - 1));
            foreach (var row in content.Rows) table.AddRow([.. row.Select(cell => page.Cell(cell))]);
            page.Put(table, indent: 2);
        }

        return page.ToString();
    }

    /// <summary>The same as Markdown (CommonMark 0.31, with the pipe tables that most readers of it know).</summary>
    public static string Markdown(SheetContent sheet, UnitSystem units)
    {
        var text = new StringBuilder();
        text.Append("# ").Append(Line(sheet.Title)).Append("\n\n");
        foreach (var (name, value) in sheet.Head) text.Append("- **").Append(Inline(name)).Append(":** ").Append(Inline(value)).Append('\n');
        foreach (var section in sheet.Sections)
        {
            text.Append("\n## ").Append(Line(section.Title)).Append("\n\n");
            foreach (var line in section.Lines) text.Append(' ', 2 * line.Depth).Append("- ").Append(Line(line.Text)).Append('\n');
            if (section.Table is not { } table) continue;
            if (section.Lines.Length > 0) text.Append('\n');
            Row(table.Heads);
            text.Append('|').AppendJoin("|", table.Heads.Select(_ => " --- ")).Append("|\n");
            foreach (var row in table.Rows) Row(row);
        }

        return text.ToString();

        void Row(IEnumerable<string> cells) => text.Append("| ").AppendJoin(" | ", cells.Select(Inline)).Append(" |\n");

        string Inline(string value) => Escaped(Printable.Of(value));

        string Line(string value) => LikeAList(value) is >= 0 and var at ? Inline(value[..at]) + '\\' + Inline(value[at..]) : Inline(value);
    }

    /// <summary>Where a line would pass for an item of a list: before its sign, or behind its digits. -1 where it would not.</summary>
    private static int LikeAList(string value)
    {
        var digits = value.TakeWhile(char.IsAsciiDigit).Count();
        var sign = value.AsSpan(digits);
        return digits > 0 ? (sign is ['.' or ')', ..] ? digits : -1) : sign is ['-' or '+' or '=', ..] ? 0 : -1;
    }

    /// <summary>Text that Markdown takes for text: its own marks, and those of HTML, stand as they are.</summary>
    private static string Escaped(string value)
    {
        var text = new StringBuilder(value.Length + 8);
        foreach (var letter in value)
        {
            if (letter is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' or '&' or '~') text.Append('\\');
            text.Append(letter);
        }

        return text.ToString();
    }
}
