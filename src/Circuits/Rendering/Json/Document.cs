using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering.Json;

/// <summary>
/// A result as programs read it. Each property of a document is a field: its name, its description, its range, and where its value comes from.
/// Both the JSON and its schema are made from that; what is written here is a contract with scripts.
/// </summary>
public abstract class Document
{
    private readonly string name;

    internal Document(string name) => this.name = name;

    /// <summary>The document's name and version.</summary>

    [JsonPropertyOrder(-40)]
    public string Schema => SchemaOf(name);

    /// <summary>The name and version of the documents of that name.</summary>
    internal static string SchemaOf(string name) => $"circuits.{name}/{(Judging.Contains(name) ? 2 : 1)}";

    /// <summary>Documents with verdicts; their second version says what those rest on.</summary>
    private static readonly string[] Judging = ["check", "diagnose", "gears", "hazards", "matrix", ShardDocument.Name, "remedy", "what-if", ManyRowDocument.Name];
}

/// <summary>A document on one assembly.</summary>
internal abstract class AssemblyDocument(string name, Assembly assembly) : Document(name)
{
    [JsonPropertyOrder(-30), Description("The unit's name.")]
    public string Unit => assembly.Unit.Name;

    [JsonPropertyOrder(-30), Description("Where the file's numbers come from.")]
    public DataOrigin Data => assembly.Unit.Data;

    [JsonPropertyOrder(-30), Description("Part to revision, in the order of the file; before any change.")]
    public IReadOnlyDictionary<string, string> Assembly => Fields.Of(assembly.Choice);

    [JsonPropertyOrder(-30), Description("The matched set that the assembly is, or null.")]
    public string? Matched => assembly.Matched;
}

/// <summary>A document on one assembly that is held against matched sets.</summary>
internal abstract class JudgedDocument(string name, Assembly assembly, ImmutableArray<string> nearest) : AssemblyDocument(name, assembly)
{
    [JsonPropertyOrder(-20), Description("The matched sets that share most parts with it.")]
    public IEnumerable<string> NearestMatched => nearest;
}

/// <summary>A document with verdicts.</summary>
internal abstract class VerdictDocument(string name, Assembly assembly, ImmutableArray<string> nearest, JudgeMode mode) : JudgedDocument(name, assembly, nearest)
{
    [JsonPropertyOrder(-10), Description(Modes)]
    public JudgeMode Mode => mode;

    /// <summary>What the field says of itself.</summary>
    public const string Modes = "What verdicts rest on: full is settled flow at the unit's conditions, quick the static answer alone.";
}
