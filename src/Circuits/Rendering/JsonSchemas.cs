using System.Collections.Immutable;
using System.Text;

namespace Circuits.Rendering;

/// <summary>The JSON Schemas (draft 2020-12) of the documents that this program writes.</summary>
public static class JsonSchemas
{
    /// <summary>The documents that have a schema, by the verb that writes them.</summary>
    public static ImmutableArray<string> Names { get; } = ["air-check", "changes", "check", "diagnose", "explain", "gears", "hazards", "identify", "matrix", "pressures", "remedy", "shifts", "size", "trace", "what-if"];

    /// <summary>The schema of that name, or null when there is none.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    public static string? Find(string name)
    {
        if (!Names.Contains(name)) return null;
        using var stream = typeof(JsonSchemas).Assembly.GetManifestResourceStream($"schemas/{name}.json")
            ?? throw new InvalidOperationException($"The schema {name} is not embedded.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
