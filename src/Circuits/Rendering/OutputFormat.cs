namespace Circuits.Rendering;

/// <summary>The formats of results.</summary>
public enum OutputFormat
{
    /// <summary>A page for people.</summary>
    Text,

    /// <summary>A document for programs.</summary>
    Json,

    /// <summary>Findings alone, as SARIF 2.1.0.</summary>
    Sarif,

    /// <summary>Findings alone, as JUnit XML.</summary>
    JUnit,

    /// <summary>Findings alone, as workflow annotation lines.</summary>
    Annotations,

    /// <summary>A JSON object a line.</summary>
    Jsonl,

    /// <summary>Comma-separated values.</summary>
    Csv,

    /// <summary>A page as Markdown.</summary>
    Markdown,

    /// <summary>A page for browsers.</summary>
    Html,
}
