using System.Globalization;
using System.Text;

namespace Circuits.Rendering;

/// <summary>
/// A page to be read out, or by programs that read lines: one fact a line, each with its name; no columns, no drawn lines, no marks
/// that mean something by their looks alone. Lines are as long as they are.
/// </summary>
/// <param name="text">Where the lines go.</param>
internal sealed class PlainLines(StringBuilder text)
{
    private const string Nothing = "none";

    private string label = "";

    /// <summary>A line; text of several lines becomes one.</summary>
    public void Line(string line)
    {
        foreach (var word in line.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)) text.Append(word).Append(' ');
        if (text.Length > 0 && text[^1] == ' ') text.Length--;
        text.Append('\n');
    }

    /// <summary>An item of a list, with what its mark means.</summary>
    public void Item(string mark, string line)
    {
        // A mark of blanks stands below one that says what the lines are.
        if (mark.Length > 0 && string.IsNullOrWhiteSpace(mark)) mark = label;
        else label = mark;
        var name = Spoken(mark.Trim());
        Line(name.Length == 0 ? line : name[^1] is ':' or '.' ? $"{name} {line}" : $"{name}: {line}");
    }

    /// <summary>Rows as records: a line for every cell that says something, and an empty line between two.</summary>
    public void Records(IReadOnlyList<string> names, IEnumerable<IReadOnlyList<string>> rows)
    {
        var key = "";
        var first = true;
        foreach (var row in rows)
        {
            if (!first) text.Append('\n');
            first = false;
            for (var i = 0; i < row.Count; i++)
            {
                // A row that goes on with what the row above is about leaves its first cell empty.
                var cell = i == 0 && row[i].Length == 0 ? key : row[i];
                if (i == 0) key = cell;
                if (cell.Length > 0) Line($"{(names[i].Length > 0 ? names[i] + ": " : "")}{(cell == "-" ? Nothing : cell)}");
            }
        }
    }

    /// <summary>A tree as lines whose numbers say what stands below what: 1, 1.1, 1.2.</summary>
    public void Numbered(string number, Outline outline, Func<Outline, string> line)
    {
        Line($"{number} {line(outline)}");
        for (var i = 0; i < outline.Below.Count; i++) Numbered(string.Create(CultureInfo.InvariantCulture, $"{number}.{i + 1}"), outline.Below[i], line);
    }

    private static string Spoken(string mark) => mark switch
    {
        "[ ]" => "to tick",
        "=" => "then it is",
        ">" => "test",
        _ => mark.Any(char.IsLetterOrDigit) ? mark : "",
    };
}
