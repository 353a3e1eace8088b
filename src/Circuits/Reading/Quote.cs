using System.Text;

namespace Circuits.Reading;

/// <summary>Puts words of the file into messages.</summary>
internal static class Quote
{
    private const int Longest = 40;

    /// <summary>The text in quotes: on one line, without control characters, cut when long.</summary>
    public static string Text(string text)
    {
        var result = new StringBuilder("'");
        foreach (var rune in text.EnumerateRunes())
        {
            if (result.Length > Longest) return result.Append("...'").ToString();
            result.Append(Rune.IsControl(rune) ? " " : rune.ToString());
        }

        return result.Append('\'').ToString();
    }

    /// <summary>The text without line ends and unprintable characters, which names in it may have.</summary>
    public static string OnOneLine(string text)
    {
        if (!text.Any(Breaks)) return text;
        return string.Create(text.Length, text, (span, from) =>
        {
            for (var i = 0; i < span.Length; i++) span[i] = Breaks(from[i]) ? ' ' : from[i];
        });

        static bool Breaks(char c) => char.IsControl(c) || c is (>= '\u2028' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
    }

    /// <summary>Words as a list: <c>a, b or c</c>; cut when there are many.</summary>
    public static string Any(IEnumerable<string> words)
    {
        var all = words.Take(13).ToList();
        if (all.Count == 13) return string.Join(", ", all.Take(12)) + ", ...";
        return all.Count < 2 ? string.Concat(all) : string.Join(", ", all.SkipLast(1)) + " or " + all[^1];
    }

    /// <summary>The help that names the word that was probably meant, or else every word there is.</summary>
    public static string Meant(string? close, string what, IEnumerable<string> words)
    {
        if (close is not null) return $"Did you mean {close}?";
        var known = Any(words);
        return known.Length == 0 ? $"This file has no {what}." : $"Known: {known}.";
    }
}
