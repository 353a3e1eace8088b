using System.Globalization;
using System.Text;

namespace Circuits.Rendering;

/// <summary>Text and numbers for SVG and HTML: text stays text, whatever it holds.</summary>
internal static class Markup
{
    /// <summary>A number with at most two decimals.</summary>
    /// <param name="value">The number.</param>
    public static string Number(double value)
    {
        var text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>The text with what would act, and what XML cannot hold even escaped, written as an escape: as it is seen.</summary>
    /// <param name="text">Any text.</param>
    public static string Safe(string text) =>
        Printable.Of(text).Replace("\uFFFE", "\\uFFFE", StringComparison.Ordinal).Replace("\uFFFF", "\\uFFFF", StringComparison.Ordinal);

    /// <summary>The same as markup holds it: what markup is made of written as entities.</summary>
    /// <param name="text">Any text.</param>
    public static string Text(string text)
    {
        var safe = Safe(text);
        if (safe.AsSpan().IndexOfAny("&<>\"'") < 0) return safe;
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
                _ => escaped.Append(letter),
            };
        }

        return escaped.ToString();
    }
}
