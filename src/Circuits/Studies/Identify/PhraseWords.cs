using System.Globalization;
using System.Text.RegularExpressions;

namespace Circuits.Studies.Identify;

/// <summary>Brings phrases to a form in which those that mean the same are the same.</summary>
internal static partial class PhraseWords
{
    private static readonly string[] Numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>The phrase with single blanks, and without the quotes around it; one of quotes alone stays as it is.</summary>
    public static string Collapse(string text)
    {
        var single = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return single.Trim('"', '\'', '\u201C', '\u201D') is { Length: > 0 } bare ? bare : single;
    }

    /// <summary>The phrase in small letters, with plain hyphens, without articles, the word "location" and a stop at its end.</summary>
    public static string Normal(string text)
    {
        var words = Collapse(text).ToLowerInvariant().Replace('\u2013', '-').Replace('\u2014', '-').TrimEnd('.', '?', '!', ' ');
        words = Article().Replace(words, "");
        words = LocationWord().Replace(words, "");
        words = HyphenGap().Replace(words, "-");
        return string.Join(' ', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The text without what stands in brackets at its end.</summary>
    public static string WithoutBracket(string text) => Bracket().Replace(text, "");

    /// <summary>The number at the head of the words, in digits or as a word, and what follows it; null when there is none.</summary>
    public static (int Number, string What)? Count(string words)
    {
        var blank = words.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0) return null;
        var (head, rest) = (words[..blank], words[(blank + 1)..]);
        if (int.TryParse(head, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return (number, rest);
        var word = Array.IndexOf(Numbers, head);
        return word < 0 ? null : (word, rest);
    }

    [GeneratedRegex(@"^(?:a|an|the) ", RegexOptions.CultureInvariant)]
    private static partial Regex Article();

    [GeneratedRegex(@"\b(?:locations?|loc\.?)(?= |$)", RegexOptions.CultureInvariant)]
    private static partial Regex LocationWord();

    [GeneratedRegex(@" - ", RegexOptions.CultureInvariant)]
    private static partial Regex HyphenGap();

    [GeneratedRegex(@"\s*\([^()]*\)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Bracket();
}
