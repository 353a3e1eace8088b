namespace Circuits.Rendering.Pages;

/// <summary>The style sheet and the script that stand in every page.</summary>
internal static class PageAssets
{
    /// <summary>The style sheet.</summary>
    public static string Style => Read("pages/report.css");

    /// <summary>The script.</summary>
    public static string Script => Read("pages/report.js");

    private static string Read(string name)
    {
        using var stream = typeof(PageAssets).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
