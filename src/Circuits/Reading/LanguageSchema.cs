namespace Circuits.Reading;

/// <summary>The JSON Schemas (draft 2020-12) of what users write: circuit files and change sets.</summary>
public static class LanguageSchema
{
    /// <summary>
    /// The schema of circuit files. It describes their shape, for editors and outside checks; names, and what only the whole file shows, are
    /// the reader's to check.
    /// </summary>
    public static string Text => Read("circuit-file");

    /// <summary>The schema of change sets.</summary>
    public static string ChangeSet => Read("change-set");

    private static string Read(string name)
    {
        using var stream = typeof(LanguageSchema).Assembly.GetManifestResourceStream($"schemas/{name}.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
