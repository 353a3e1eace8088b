using System.Net;

namespace Circuits.Rendering.Pages;

/// <summary>
/// Writes HTML. Text and values are made safe: what acts in a terminal shows as an escape, what acts in HTML as a character reference;
/// names that run from right to left stay within themselves (<c>bdi</c>).
/// </summary>
/// <param name="to">What it is written to.</param>
/// <param name="units">The units of quantities within text.</param>
internal sealed class HtmlWriter(TextWriter to, UnitSystem units)
{
    private readonly Stack<string> open = new();

    /// <summary>Begins an element.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="attributes">Its attributes; those without a value are left out.</param>
    public void Begin(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        open.Push(name);
        if (name is not ("p" or "li" or "td" or "th" or "h1" or "h2" or "h3" or "a" or "dt" or "dd" or "strong" or "code" or "caption" or "summary" or "bdi" or "title")) to.Write('\n');
    }

    /// <summary>Ends the element begun last.</summary>
    public void End()
    {
        to.Write("</");
        to.Write(open.Pop());
        to.Write(">\n");
    }

    /// <summary>An element that holds nothing and has no end.</summary>
    public void Void(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        to.Write('\n');
    }

    /// <summary>An element that holds text alone.</summary>
    public void Leaf(string name, string text, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(name, attributes);
        Text(text);
        End();
    }

    /// <summary>Text.</summary>
    public void Text(string text) => to.Write(Safe(text));

    /// <summary>Markup that is safe already.</summary>
    public void Raw(string markup)
    {
        to.Write(markup);
        to.Write('\n');
    }

    /// <summary>Markup that someone else writes.</summary>
    public void Raw(Action<TextWriter> write)
    {
        write(to);
        to.Write('\n');
    }

    private void Start(string name, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        to.Write('<');
        to.Write(name);
        foreach (var (key, value) in attributes)
        {
            if (value is null) continue;
            to.Write(' ');
            to.Write(key);
            to.Write("=\"");
            to.Write(Safe(value));
            to.Write('"');
        }

        to.Write('>');
    }

    private string Safe(string text) => WebUtility.HtmlEncode(Printable.Of(Measures.Restate(text, units)));
}
