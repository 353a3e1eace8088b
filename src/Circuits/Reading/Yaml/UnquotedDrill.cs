using System.Globalization;
using Circuits.Findings;

namespace Circuits.Reading.Yaml;

/// <summary>
/// Finds number drills without quotes. To YAML, <c>hole: #45</c> is an empty value and a remark; read so, it would remove
/// the hole instead of sizing it.
/// </summary>
internal static class UnquotedDrill
{
    /// <summary>The drill number that stands after an empty value on the same line, or null.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="index">Where the empty value stands.</param>
    public static int? After(string text, int index)
    {
        var at = Math.Min(index, text.Length);
        while (at < text.Length && text[at] == ' ') at++;
        return NumberAt(text, at);
    }

    /// <summary>The last unquoted drill between two positions, where a remark swallowed the end of a bracket; its index and number, or null.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="from">Where to begin.</param>
    /// <param name="to">Where to end.</param>
    public static (int Index, int Number)? LastBetween(string text, int from, int to)
    {
        for (var at = Math.Min(to, text.Length) - 1; at >= Math.Max(from, 2); at--)
        {
            if (text[at] == '#' && text[at - 1] == ' ' && text.AsSpan(0, at).TrimEnd(' ') is [.., ':' or ',' or '['] && NumberAt(text, at) is { } number)
                return (at, number);
        }

        return null;
    }

    public static Phrase Message(int number) => Phrase.Of($"#{number} without quotes is a remark to YAML, not a number drill");

    public static string Help(int number) => $"Write \"#{number}\".";

    private static int? NumberAt(string text, int at)
    {
        if (at >= text.Length || text[at] != '#') return null;
        var end = at + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end])) end++;
        var digits = text.AsSpan(at + 1, end - at - 1);
        var ends = end >= text.Length || text[end] is ' ' or ',' or ']' or '}' or '\r' or '\n' or '\t';
        return digits.Length is 1 or 2 && ends ? int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture) : null;
    }
}
