using System.Globalization;
using System.Text;

namespace Circuits.Rendering.Drawing;

/// <summary>Text in drawings: how wide it is at most, and how it is written so that a name stays text.</summary>
internal static class DrawnText
{
    /// <summary>What drawings are lettered in: the widest of common sans-serif faces first, since widths are reckoned for it.</summary>
    public const string Family = "'DejaVu Sans',Verdana,Arial,sans-serif";

    private const int LongestName = 26;

    /// <summary>The most that a text takes at a size, in the drawing's units. Reckoned for a wide face, so that any other takes less.</summary>
    /// <param name="text">The text, as it is drawn.</param>
    /// <param name="size">The size of the type.</param>
    /// <param name="bold">Whether it is bold.</param>
    public static double Width(string text, double size, bool bold = false)
    {
        var ems = 0.0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is >= ' ' and <= '~')
            {
                ems += Ascii(text[i]);
                continue;
            }

            // Pictures are wider than the two cells that a terminal gives them.
            var pair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length;
            ems += pair ? 1.4 : Cells.Of(text[i].ToString()) switch { 0 => 0.25, 1 => 0.85, _ => 1.1 };
            if (pair) i++;
        }

        return ems * size * (bold ? 1.14 : 1.02);
    }

    /// <summary>A name short enough to draw; the whole of it stands in the text alternative.</summary>
    /// <param name="name">A name from a file.</param>
    /// <param name="most">The most cells that it may take.</param>
    public static string Short(string name, int most = LongestName)
    {
        var safe = Markup.Safe(name);
        if (Cells.Of(safe) <= most) return safe;
        var kept = new StringBuilder();
        var width = 0;
        var letters = StringInfo.GetTextElementEnumerator(safe);
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();
            width += Math.Max(Cells.Of(letter), letter.Length > 4 ? letter.Length : 0);
            if (width > most - 1) break;
            kept.Append(letter);
        }

        return kept.Append('…').ToString();
    }

    // Advance widths of a wide sans-serif face, rounded up by class.
    private static double Ascii(char letter) => letter switch
    {
        'i' or 'j' or 'l' or '\'' or ' ' or '.' or ',' or '|' => 0.34,
        'f' or 't' or 'r' or '-' or ':' or ';' or '!' or 'I' or 'J' or '(' or ')' or '[' or ']' or '/' or '\\' or '"' => 0.46,
        'm' or 'W' or '@' or '%' => 1.01,
        'w' or 'M' or 'O' or 'Q' or '+' or '=' or '<' or '>' or '~' or '#' or '^' => 0.87,
        >= 'A' and <= 'Z' => 0.78,
        _ => 0.65,
    };
}
