using System.Buffers;
using System.Text;

namespace Circuits.Rendering.Plots;

/// <summary>Text for SVG and HTML: it stays text, whatever it holds.</summary>
internal static class Markup
{
    private static readonly SearchValues<char> Special = SearchValues.Create("&<>\"'\uFFFE\uFFFF");

    /// <summary>The text with what acts written as an escape, and what markup is made of as entities.</summary>
    /// <param name="text">Any text.</param>
    public static string Text(string text)
    {
        var safe = Printable.Of(text);
        if (safe.AsSpan().IndexOfAny(Special) < 0) return safe;
        var escaped = new StringBuilder(safe.Length + 16);
        foreach (var letter in safe)
        {
            _ = letter switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                // XML has no way to hold these two.
                '\uFFFE' or '\uFFFF' => escaped.Append('\uFFFD'),
                _ => escaped.Append(letter),
            };
        }

        return escaped.ToString();
    }
}
