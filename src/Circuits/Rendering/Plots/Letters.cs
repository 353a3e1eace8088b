using System.Globalization;
using System.Text;

namespace Circuits.Rendering.Plots;

/// <summary>
/// How wide text is in a plot. The advances are those of a wide sans-serif, so that text which a viewer sets in a face of its own takes no more
/// room than was kept for it.
/// </summary>
internal static class Letters
{
    /// <summary>From one line to the next as a share of the size.</summary>
    public const double Line = 1.2;

    /// <summary>How far above the line of writing a line of text begins, as a share of the size.</summary>
    public const double Rise = 0.95;

    // From space to tilde, in hundredths of the size.
    private static ReadOnlySpan<byte> Advances =>
    [
        32, 40, 46, 84, 64, 95, 78, 28, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 53,
        100, 68, 69, 70, 77, 63, 58, 78, 75, 30, 30, 66, 56, 86, 75, 79, 60, 79, 70, 64, 61, 73, 68, 99, 69, 61, 69, 39, 34, 39, 84, 50,
        50, 61, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 97, 64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
    ];

    /// <summary>How wide a line of text is, as a multiple of the size; a wide letter of another script counts as one size.</summary>
    /// <param name="text">One line.</param>
    public static double Width(string text) => Elements(text).Sum(Advance);

    /// <summary>The text, shortened with three dots where it is wider than there is room.</summary>
    /// <param name="text">One line.</param>
    /// <param name="size">The size.</param>
    /// <param name="room">The room, in the unit of the size.</param>
    public static string Fit(string text, double size, double room)
    {
        if (Width(text) * size <= room) return text;
        var kept = new StringBuilder();
        var left = (room / size) - Width("...");
        foreach (var element in Elements(text))
        {
            left -= Advance(element);
            if (left < 0) break;
            kept.Append(element);
        }

        return kept.Append("...").ToString();
    }

    private static double Advance(string element) => element is [>= ' ' and <= '~' and var letter]
        ? Advances[letter - ' '] / 100.0
        : Cells.Of(element) switch { 0 => 0, 1 => 0.68, _ => 1.05 };

    private static IEnumerable<string> Elements(string text)
    {
        var elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext()) yield return elements.GetTextElement();
    }
}
