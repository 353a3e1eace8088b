using System.Globalization;
using System.Text;

namespace Circuits.Rendering;

/// <summary>Makes text from files safe to print: a name must not move the cursor or reorder a line.</summary>
public static class Printable
{
    /// <summary>
    /// The text with every control, format, separator and unpaired character written as an escape (<c>\u001B</c>),
    /// so that it shows instead of acting.
    /// </summary>
    /// <param name="text">Any text.</param>
    public static string Of(string text)
    {
        StringBuilder? safe = null;
        var done = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var pair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            if (!Acts(CharUnicodeInfo.GetUnicodeCategory(text, i)))
            {
                if (pair) i++;
                continue;
            }

            safe ??= new StringBuilder(text.Length + 8);
            safe.Append(text, done, i - done);
            Escape(safe, text[i]);
            if (pair) Escape(safe, text[++i]);
            done = i + 1;
        }

        return safe is null ? text : safe.Append(text, done, text.Length - done).ToString();
    }

    private static void Escape(StringBuilder safe, char unit) =>
        safe.Append(CultureInfo.InvariantCulture, $"\\u{(int)unit:X4}");

    private static bool Acts(UnicodeCategory category) => category is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or
        UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
