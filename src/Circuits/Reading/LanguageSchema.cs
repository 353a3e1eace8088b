namespace Circuits.Reading;

/// <summary>The JSON Schema (draft 2020-12) of the circuit language.</summary>
public static class LanguageSchema
{
    private const string Resource = "schemas/circuit-file.json";

    /// <summary>
    /// The schema's text. It describes the shape of circuit files, for editors and outside checks; names, and what only
    /// the whole file shows, are the reader's to check.
    /// </summary>
    public static string Text
    {
        get
        {
            using var stream = typeof(LanguageSchema).Assembly.GetManifestResourceStream(Resource)!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }
    }
}
