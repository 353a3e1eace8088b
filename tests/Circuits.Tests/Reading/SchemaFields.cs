using System.Text.Json;
using System.Text.RegularExpressions;
using Circuits.Findings;
using Circuits.Reading;
using Circuits.Reading.Yaml;

namespace Circuits.Tests.Reading;

/// <summary>
/// The fields of the language that carry a number, as its JSON Schema has them, and where a file uses them. Knows the schema alone, so that a field that is new
/// there is new here.
/// </summary>
internal sealed class SchemaFields
{
    private static readonly string[] Plain = ["number", "ratio", "weight", "cost", "count"];

    private static readonly string[] Sizes =
    [
        "length", "area", "pressure", "force", "springRate", "volume", "displacement", "speed", "temperature", "torque", "time", "current", "viscosity", "density",
        "fraction", "slot",
    ];

    private readonly JsonElement root;
    private readonly HashSet<string> used = [];
    private readonly Dictionary<Place, Use> uses = [];

    public SchemaFields()
    {
        root = JsonDocument.Parse(LanguageSchema.Text).RootElement;
        Collect(root, "#");
    }

    /// <summary>A number in a file.</summary>
    /// <param name="Field">The field's pointer into the schema.</param>
    /// <param name="Kind">What kind of number it is, by the schema's word: <c>length</c>.</param>
    /// <param name="Scalar">The number as it stands in the file.</param>
    public sealed record Use(string Field, string Kind, YamlScalar Scalar);

    /// <summary>Pointers to every place of the schema where a number may stand.</summary>
    public HashSet<string> All { get; } = [];

    /// <summary>Those of them that the files walked so far use.</summary>
    public IReadOnlySet<string> Used => used;

    /// <summary>Every number in the files walked so far, each place once.</summary>
    public IEnumerable<Use> Uses => uses.Values;

    /// <summary>Walks a unit's file, and the files of its parts.</summary>
    public void Walk(string file)
    {
        Walk(Tree(file), root, "#", part => Walk(Tree(Path.Combine(Path.GetDirectoryName(file)!, part)), root.GetProperty("$defs").GetProperty("part"), "#/$defs/part", _ => { }));
    }

    /// <summary>What the schema says about a field: its own description, or that of what it stands in.</summary>
    public string DescriptionOf(string pointer)
    {
        var found = "";
        var at = root;
        foreach (var step in pointer.Split('/').Skip(1))
        {
            at = at.ValueKind == JsonValueKind.Array ? at[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)] : at.GetProperty(step);
            if (at.ValueKind == JsonValueKind.Object && at.TryGetProperty("description", out var own) && own.ValueKind == JsonValueKind.String) found = own.GetString()!;
        }

        return found;
    }

    private static YamlMapping Tree(string file) => YamlTree.Read(File.ReadAllText(file), file, new FindingList())!;

    /// <summary>The kind of number that a reference stands for, or null.</summary>
    private static string? KindOf(JsonElement schema)
    {
        if (!schema.TryGetProperty("$ref", out var reference) || reference.ValueKind != JsonValueKind.String) return null;
        var name = reference.GetString()!.Split('/')[^1].Replace("OrNull", "", StringComparison.Ordinal);
        return Sizes.Contains(name) || Plain.Contains(name) ? name : null;
    }

    private void Collect(JsonElement schema, string pointer)
    {
        if (schema.ValueKind == JsonValueKind.Array)
        {
            foreach (var (i, item) in schema.EnumerateArray().Index()) Collect(item, $"{pointer}/{i}");
        }

        if (schema.ValueKind != JsonValueKind.Object) return;
        if (KindOf(schema) is not null) All.Add(pointer);
        foreach (var member in schema.EnumerateObject())
        {
            // The kinds of number themselves are no fields.
            var name = member.Name.Replace("OrNull", "", StringComparison.Ordinal);
            if (pointer == "#/$defs" && (Sizes.Contains(name) || Plain.Contains(name))) continue;
            Collect(member.Value, $"{pointer}/{member.Name}");
        }
    }

    private void Walk(YamlNode node, JsonElement schema, string pointer, Action<string> part)
    {
        if (schema.ValueKind != JsonValueKind.Object) return;
        if (KindOf(schema) is { } kind)
        {
            if (node is YamlScalar { IsNull: false } scalar && Regex.IsMatch(scalar.Text, Pattern(kind)) && uses.TryAdd(scalar.Place, new Use(pointer, kind, scalar))) used.Add(pointer);
            return;
        }

        if (schema.TryGetProperty("$ref", out var reference))
        {
            var name = reference.GetString()!.Split('/')[^1];
            if (name == "partPath" && node is YamlScalar path) part(path.Text);
            else Walk(node, root.GetProperty("$defs").GetProperty(name), $"#/$defs/{name}", part);
        }

        foreach (var word in new[] { "then", "else" })
        {
            if (schema.TryGetProperty(word, out var branch)) Walk(node, branch, $"{pointer}/{word}", part);
        }

        foreach (var word in new[] { "anyOf", "oneOf", "allOf" })
        {
            if (!schema.TryGetProperty(word, out var branches)) continue;
            foreach (var (i, branch) in branches.EnumerateArray().Index()) Walk(node, branch, $"{pointer}/{word}/{i}", part);
        }

        if (node is YamlMapping mapping) Members(mapping, schema, pointer, part);
        if (node is not YamlSequence list) return;
        foreach (var (i, item) in list.Items.Index())
        {
            if (schema.TryGetProperty("prefixItems", out var firsts) && i < firsts.GetArrayLength()) Walk(item, firsts[i], $"{pointer}/prefixItems/{i}", part);
            else if (schema.TryGetProperty("items", out var items)) Walk(item, items, $"{pointer}/items", part);
        }
    }

    private void Members(YamlMapping mapping, JsonElement schema, string pointer, Action<string> part)
    {
        foreach (var (key, value) in mapping.Entries)
        {
            if (schema.TryGetProperty("properties", out var properties) && properties.TryGetProperty(key.Text, out var own)) Walk(value, own, $"{pointer}/properties/{key.Text}", part);
            else if (schema.TryGetProperty("additionalProperties", out var others)) Walk(value, others, $"{pointer}/additionalProperties", part);
        }
    }

    private string Pattern(string kind)
    {
        var schema = root.GetProperty("$defs").GetProperty(kind);
        while (!schema.TryGetProperty("pattern", out _)) schema = root.GetProperty("$defs").GetProperty(schema.GetProperty("$ref").GetString()!.Split('/')[^1]);
        return schema.GetProperty("pattern").GetString()!;
    }
}
