using Circuits.Findings;

namespace Circuits.Reading.Yaml;

/// <summary>Turns the parser's complaint into a finding that says what to look for.</summary>
/// <param name="text">The file's text.</param>
/// <param name="file">The file's name in places.</param>
internal sealed class SyntaxFault(string text, string file)
{
    /// <summary>The finding.</summary>
    /// <param name="place">Where the parser's trouble began.</param>
    /// <param name="message">What the parser said; empty when it said nothing.</param>
    /// <param name="bracket">Where the outermost open bracket stands, or null.</param>
    public Finding Finding(Place place, string message, Place? bracket)
    {
        if (message.Contains(" tab", StringComparison.Ordinal) && FirstTab(place.Line) is { } tab)
            return FileRules.TabIndentation.At(tab, $"A tab in the indentation", "Indent with spaces.");
        if (message.Contains("quoted scalar", StringComparison.Ordinal)) return Quotes(place, message);
        var from = bracket is { } outer ? LineStart(outer.Line) + outer.Column - 1 : LineStart(place.Line);
        if (OpenBracket.Find(text, Math.Min(from, text.Length)) is { } open) return Bracket(open);
        if (bracket is { } within) return FileRules.NotYaml.At(within, $"Something inside this bracket is out of place", "Check its commas and colons.");
        return FileRules.NotYaml.At(place, Said(place, message, out var help), help);
    }

    private Finding Bracket(int open)
    {
        var end = text.IndexOf('\n', open) is >= 0 and var line ? line : text.Length;
        if (UnquotedDrill.LastBetween(text, open, end) is var (index, number))
            return FileRules.UnquotedDrill.At(PlaceOf(index), UnquotedDrill.Message(number), UnquotedDrill.Help(number));
        var close = text[open] == '[' ? ']' : '}';
        return FileRules.NotYaml.At(PlaceOf(open), $"This {text[open]} is not closed", $"Add the {close} where its list ends.");
    }

    private static Finding Quotes(Place place, string message)
    {
        return message.Contains("escape", StringComparison.Ordinal)
            ? FileRules.NotYaml.At(place, $"An unknown \\ escape in double quotes", "Use single quotes, or write \\\\.")
            : FileRules.NotYaml.At(place, $"The quote that opens here does not close", "Add the closing quote.");
    }

    private Phrase Said(Place place, string message, out string help)
    {
        var content = Line(place.Line);
        if (message.Contains("invalid mapping", StringComparison.Ordinal))
        {
            var inValue = content.AsSpan(0, Math.Clamp(place.Column - 1, 0, content.Length)).Contains(": ", StringComparison.Ordinal);
            help = inValue
                ? "Put a value that has a colon in it in quotes."
                : "Check the line before: is a colon missing, or the space after it, or is this line indented too far?";
            return inValue ? Phrase.Of($"A second colon in this line") : Phrase.Of($"A key where none can stand");
        }

        if (message.Contains("expected key", StringComparison.Ordinal) || message.Contains("'-' indicator", StringComparison.Ordinal))
        {
            if (!content.Contains(':', StringComparison.Ordinal))
            {
                help = "Write key: value.";
                return Phrase.Of($"This line has no colon");
            }

            help = content.Contains(": ", StringComparison.Ordinal) || content.TrimEnd().EndsWith(':')
                ? "Check its indentation, and stray quotes."
                : "Write a space after the colon.";
            return Phrase.Of($"This line does not fit the ones above it");
        }

        if (message.Contains("start any token", StringComparison.Ordinal))
        {
            help = "Put the value in quotes.";
            return Phrase.Of($"A value cannot begin with this character");
        }

        var cut = message.Split('\n')[0].TrimEnd('.', ' ', '\r');
        help = "Check the punctuation and indentation here and on the line before.";
        return cut.Length == 0 ? Phrase.Of($"Not YAML") : Phrase.Of($"Not YAML: {cut}");
    }

    private Place? FirstTab(int fromLine)
    {
        var at = LineStart(fromLine);
        for (var line = fromLine; at < text.Length; line++)
        {
            var end = text.IndexOf('\n', at) is >= 0 and var found ? found : text.Length;
            var content = text.AsSpan(at, end - at);
            var indent = content[..(content.Length - content.TrimStart(" \t").Length)];
            if (indent.IndexOf('\t') is >= 0 and var tab) return new Place(file, line, tab + 1);
            at = end + 1;
        }

        return null;
    }

    private string Line(int line)
    {
        var start = LineStart(line);
        var end = text.IndexOf('\n', start) is >= 0 and var found ? found : text.Length;
        return text[start..end];
    }

    private int LineStart(int line)
    {
        var at = 0;
        for (var seen = 1; seen < line; seen++)
        {
            var end = text.IndexOf('\n', at);
            if (end < 0) return text.Length;
            at = end + 1;
        }

        return at;
    }

    private Place PlaceOf(int index)
    {
        var before = text.AsSpan(0, index);
        return new(file, before.Count('\n') + 1, index - before.LastIndexOf('\n'));
    }
}
