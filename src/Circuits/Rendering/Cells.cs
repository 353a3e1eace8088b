using System.Globalization;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>How wide text is on a terminal.</summary>
internal static class Cells
{
    /// <summary>The cells that a text takes; nearly all text is ASCII, where it is the count of characters.</summary>
    public static int Of(string text)
    {
        foreach (var letter in text)
        {
            if (letter is < ' ' or > '~') return text.GetCellWidth();
        }

        return text.Length;
    }

    /// <summary>The text in parts of at most a width; no letter is cut in two.</summary>
    public static IEnumerable<string> Cut(string text, int width)
    {
        while (Of(text) > width)
        {
            var letters = new StringInfo(text);
            var take = Enumerable.Range(1, letters.LengthInTextElements)
                .TakeWhile(count => Of(letters.SubstringByTextElements(0, count)) <= width).LastOrDefault(1);
            var head = letters.SubstringByTextElements(0, take);
            yield return head;
            text = text[head.Length..];
        }

        if (text.Length > 0) yield return text;
    }
}
