namespace Circuits.Reading.Yaml;

/// <summary>Finds the bracket behind a syntax fault: one that is not closed, or is closed by the other kind.</summary>
internal static class OpenBracket
{
    /// <summary>The bracket's index, or null when the lines in question have their brackets in order.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="from">Where the outermost open bracket, or the line with the fault, begins.</param>
    /// <remarks>A bracket counts as not closed when a line indented no deeper than its own begins before it is.</remarks>
    public static int? Find(string text, int from)
    {
        var indent = Indent(text, text.LastIndexOf('\n', Math.Max(from - 1, 0)) + 1);
        var open = new Stack<int>();
        for (var at = from; at < text.Length; at++)
        {
            var c = text[at];
            if (c is '[' or '{')
                open.Push(at);
            else if (c is ']' or '}')
            {
                if (!open.TryPop(out var begin)) return null;
                if (text[begin] != (c == ']' ? '[' : '{')) return begin;
            }
            else if (c is '"' or '\'' && at > 0 && text[at - 1] is ' ' or ',' or '[' or '{')
                at = EndOfQuotes(text, at);
            else if (c == '#' && at > 0 && char.IsWhiteSpace(text[at - 1]))
                at = EndOfLine(text, at) - 1;
            else if (c == '\n' && !IsBlank(text, at + 1) && Indent(text, at + 1) <= indent)
                return open.TryPop(out var left) ? left : null;
        }

        return open.TryPop(out var last) ? last : null;
    }

    private static int EndOfQuotes(string text, int at)
    {
        var end = text.IndexOf(text[at], at + 1);
        return end < 0 ? text.Length : end;
    }

    private static int EndOfLine(string text, int at) => text.IndexOf('\n', at) is >= 0 and var end ? end : text.Length;

    private static int Indent(string text, int line)
    {
        var at = line;
        while (at < text.Length && text[at] == ' ') at++;
        return at - line;
    }

    private static bool IsBlank(string text, int line) => text.AsSpan(line, EndOfLine(text, line) - line).IsWhiteSpace() && EndOfLine(text, line) < text.Length;
}
