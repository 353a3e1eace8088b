namespace Circuits.Rendering.Drawing;

/// <summary>Writes the elements of a drawing. Every text and attribute that comes from a file is escaped here.</summary>
internal sealed class SvgWriter(TextWriter to)
{
    private readonly Stack<string> open = new();

    /// <summary>Numbers and words, one after the other, as in a path.</summary>
    public static string Path(FormattableString path) => FormattableString.Invariant(path);

    /// <summary>Begins an element that holds others.</summary>
    public void Begin(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        to.Write('>');
        to.Write('\n');
        open.Push(name);
    }

    /// <summary>Ends the element begun last.</summary>
    public void End()
    {
        to.Write("</");
        to.Write(open.Pop());
        to.Write(">\n");
    }

    /// <summary>An element without content.</summary>
    public void Empty(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        to.Write("/>\n");
    }

    /// <summary>An element that holds text alone.</summary>
    public void Leaf(string name, string text, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        to.Write('>');
        to.Write(Markup.Text(text));
        to.Write("</");
        to.Write(name);
        to.Write(">\n");
    }

    /// <summary>An element whose content is known to be safe: a style sheet of ours.</summary>
    public void Raw(string name, string content, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(name, attributes);
        to.Write('>');
        to.Write(content);
        to.Write("</");
        to.Write(name);
        to.Write(">\n");
    }

    /// <summary>A line of lettering whose left end stands at a place.</summary>
    public void Text(double x, double y, string text, string? style = null, string? anchor = null) =>
        Leaf("text", text, ("x", Markup.Number(x)), ("y", Markup.Number(y)), ("class", style), ("text-anchor", anchor));

    /// <summary>A path.</summary>
    public void Line(FormattableString path, string? style = null) => Empty("path", ("d", Path(path)), ("class", style));

    /// <summary>A rectangle.</summary>
    public void Box(double x, double y, double width, double height, string? style = null, double round = 0, string? fill = null) =>
        Empty(
            "rect", ("x", Markup.Number(x)), ("y", Markup.Number(y)), ("width", Markup.Number(width)), ("height", Markup.Number(height)),
            ("rx", round > 0 ? Markup.Number(round) : null), ("class", style), ("fill", fill));

    /// <summary>A circle.</summary>
    public void Circle(double x, double y, double radius, string? style = null) =>
        Empty("circle", ("cx", Markup.Number(x)), ("cy", Markup.Number(y)), ("r", Markup.Number(radius)), ("class", style));

    private void Start(string name, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        to.Write('<');
        to.Write(name);
        foreach (var (attribute, value) in attributes)
        {
            if (value is null) continue;
            to.Write(' ');
            to.Write(attribute);
            to.Write("=\"");
            to.Write(Markup.Text(value));
            to.Write('"');
        }
    }
}
