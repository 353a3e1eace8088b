using Circuits.Findings;
using YamlDotNet.Core;

namespace Circuits.Reading.Yaml;

/// <summary>Turns the parser's complaint into a finding that says what to look for.</summary>
internal static class SyntaxFault
{
    /// <summary>The finding.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="file">The file's name in places.</param>
    /// <param name="start">Where the parser's trouble began.</param>
    /// <param name="end">Where it gave up.</param>
    /// <param name="message">What it said.</param>
    /// <param name="bracket">The innermost bracket that is still open, or null.</param>
    public static Finding Finding(
        string text, string file, Mark start, Mark end, string message, (Place Place, bool IsList)? bracket)
    {
        if (message.Contains(" tab", StringComparison.Ordinal) && FirstTab(text, start.Line) is var (line, column))
            return FileRules.TabIndentation.At(new Place(file, line, column), "A tab in the indentation", "Indent with spaces.");
        if (bracket is var (open, isList))
        {
            if (UnquotedDrill.LastBetween(text, Offset(text, open), (int)end.Index) is var (index, number))
                return FileRules.UnquotedDrill.At(PlaceOf(text, file, index), UnquotedDrill.Message(number), UnquotedDrill.Help(number));
            var (mark, close) = isList ? ('[', ']') : ('{', '}');
            return FileRules.NotYaml.At(
                open, $"This {mark} is not closed, or something inside it is out of place (near line {end.Line})", $"Check the commas, and the closing {close}.");
        }

        var (said, help) = Explain(message);
        return FileRules.NotYaml.At(new Place(file, (int)start.Line, (int)start.Column), said, help);
    }

    private static (string Said, string Help) Explain(string message)
    {
        if (message.Contains("invalid mapping", StringComparison.Ordinal))
            return ("A key where none can stand", "Check the line before: is a colon missing, or the space after it, or is this line indented too far?");
        if (message.Contains("expected key", StringComparison.Ordinal) || message.Contains("'-' indicator", StringComparison.Ordinal))
            return ("This line does not fit the ones above it", "Check the indentation, and stray quotes.");
        if (message.Contains("quoted scalar", StringComparison.Ordinal) && message.Contains("escape", StringComparison.Ordinal))
            return ("An unknown \\ escape in double quotes", "Use single quotes, or write \\\\.");
        if (message.Contains("quoted scalar", StringComparison.Ordinal))
            return ("A quote that opens here does not close where it should", "Add the closing quote.");
        if (message.Contains("start any token", StringComparison.Ordinal))
            return ("A value cannot begin with this character", "Put the value in quotes.");
        var cut = message.Split('\n')[0].TrimEnd('.', ' ', '\r');
        return (cut.Length == 0 ? "Not YAML" : $"Not YAML: {cut}", "Check the punctuation and indentation here and on the line before.");
    }

    private static (int Line, int Column)? FirstTab(string text, long fromLine)
    {
        var line = 1;
        var at = 0;
        while (at < text.Length)
        {
            var end = text.IndexOf('\n', at);
            if (end < 0) end = text.Length;
            var indent = text.AsSpan(at, end - at);
            indent = indent[..(indent.Length - indent.TrimStart(" \t").Length)];
            if (line >= fromLine && indent.IndexOf('\t') is var tab and >= 0) return (line, tab + 1);
            at = end + 1;
            line++;
        }

        return null;
    }

    private static int Offset(string text, Place place)
    {
        var at = 0;
        for (var line = 1; line < place.Line && at >= 0; line++) at = text.IndexOf('\n', at) + 1;
        return Math.Clamp(at + place.Column - 1, 0, text.Length);
    }

    private static Place PlaceOf(string text, string file, int index)
    {
        var before = text.AsSpan(0, index);
        return new(file, before.Count('\n') + 1, index - before.LastIndexOf('\n'));
    }
}
