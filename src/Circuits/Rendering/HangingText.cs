using Spectre.Console;
using Spectre.Console.Rendering;

namespace Circuits.Rendering;

/// <summary>
/// A paragraph that hangs beside a mark: <c>error rule: message</c>, with later lines below the message. Pages are made of
/// hundreds of these; a table for each would cost more than solving the unit.
/// </summary>
/// <param name="indent">Blanks before the mark.</param>
/// <param name="mark">The mark; empty for a plain paragraph.</param>
/// <param name="markStyle">The mark's style.</param>
/// <param name="pieces">The text, in pieces of a style each.</param>
internal sealed class HangingText(int indent, string mark, Style markStyle, IReadOnlyList<(string Text, Style Style)> pieces) : Renderable
{
    private const int Step = 2;

    protected override IEnumerable<Segment> Render(RenderOptions options, int maxWidth)
    {
        var segments = new List<Segment>();
        // Beside a mark as long as a sentence nothing could hang: it begins the text then.
        var hangs = mark.Length == 0 || Cells.Of(mark) <= maxWidth / 2;
        var hang = indent + (mark.Length == 0 ? 0 : hangs ? Cells.Of(mark) + 1 : Step);
        if (indent > 0) segments.Add(new Segment(new string(' ', indent)));
        if (mark.Length > 0 && hangs)
        {
            segments.Add(new Segment(mark, markStyle));
            segments.Add(new Segment(" "));
        }
        else if (mark.Length > 0)
        {
            segments.Add(new Segment(new string(' ', Step)));
        }

        var at = hang;
        foreach (var (text, style) in hangs ? pieces : [(mark + " ", markStyle), .. pieces])
        {
            foreach (var (blanks, word) in Words(text))
            {
                var width = Cells.Of(word);
                if (at > hang && at + blanks + width > maxWidth) Break();
                else if (blanks > 0 && at > hang) Put(new string(' ', blanks), blanks, style);
                foreach (var part in Cells.Cut(word, Math.Max(1, maxWidth - hang)))
                {
                    var partWidth = Cells.Of(part);
                    if (at > hang && at + partWidth > maxWidth) Break();
                    Put(part, partWidth, style);
                }
            }
        }

        segments.Add(Segment.LineBreak);
        return segments;

        void Break()
        {
            segments.Add(Segment.LineBreak);
            if (hang > 0) segments.Add(new Segment(new string(' ', hang)));
            at = hang;
        }

        void Put(string text, int width, Style style)
        {
            segments.Add(new Segment(text, style));
            at += width;
        }
    }

    // Each word with the blanks before it; blanks at the end belong to an empty last word.
    private static IEnumerable<(int Blanks, string Word)> Words(string text)
    {
        for (var i = 0; i < text.Length;)
        {
            var start = i;
            while (i < text.Length && text[i] == ' ') i++;
            var word = i;
            while (i < text.Length && text[i] != ' ') i++;
            yield return (word - start, text[word..i]);
        }
    }
}
