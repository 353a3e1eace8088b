using System.Text;

namespace Circuits.Rendering.Html;

/// <summary>A page in one file: it needs no network, and nothing that is written into it acts as markup.</summary>
/// <param name="title">The page's title.</param>
internal sealed class HtmlPage(string title)
{
    private readonly StringBuilder body = new();

    /// <summary>An element with text in it.</summary>
    /// <param name="name">The element.</param>
    /// <param name="text">Any text.</param>
    /// <param name="attributes">Attributes, written as they are.</param>
    public HtmlPage Text(string name, string text, string attributes = "") =>
        Raw($"<{name}{(attributes.Length > 0 ? " " + attributes : "")}>{Markup.Text(text)}</{name}>\n");

    /// <summary>A list.</summary>
    /// <param name="items">Any text; a list of none is left out.</param>
    /// <param name="name">The element.</param>
    public HtmlPage List(IEnumerable<string> items, string name = "ul")
    {
        var all = items.ToList();
        if (all.Count == 0) return this;
        Raw($"<{name}>\n");
        foreach (var item in all) Text("li", item);
        return Raw($"</{name}>\n");
    }

    /// <summary>Markup as it is.</summary>
    /// <param name="markup">Markup that was made safe.</param>
    public HtmlPage Raw(string markup)
    {
        body.Append(markup);
        return this;
    }

    /// <summary>The page.</summary>
    public override string ToString() =>
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:\">\n"
        + $"<title>{Markup.Text(title)}</title>\n<style>\n{Resource("page.css")}</style>\n</head>\n<body>\n{body}</body>\n</html>\n";

    /// <summary>A file that goes into pages.</summary>
    /// <param name="name">Its name.</param>
    public static string Resource(string name)
    {
        using var stream = typeof(HtmlPage).Assembly.GetManifestResourceStream($"html/{name}") ?? throw new InvalidOperationException($"{name} is missing.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
