using System.Collections.Immutable;
using System.ComponentModel;
using System.Reflection;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Circuits.Rendering.Json;

/// <summary>The JSON Schemas (draft 2020-12) of the documents that this program writes, made from the documents' own classes.</summary>
public static class JsonSchemas
{
    // Verbs that take several files write an array of documents then; the lines of a matrix are documents of their own.
    private static readonly ImmutableArray<(string Name, Type Document, bool Many)> All =
    [
        ("air-check", typeof(AirCheckDocument), true), ("check", typeof(CheckDocument), true), ("diagnose", typeof(DiagnoseDocument), true),
        ("explain", typeof(ExplainDocument), false), ("gears", typeof(GearsDocument), true), ("hazards", typeof(HazardsDocument), true),
        ("identify", typeof(IdentifyDocument), false), ("matrix", typeof(MatrixDocument), false), ("pressures", typeof(PressuresDocument), true),
        ("remedy", typeof(RemedyDocument), true), ("shifts", typeof(ShiftsDocument), true), ("size", typeof(SizeDocument), true),
        ("trace", typeof(TraceDocument), true), ("what-if", typeof(WhatIfDocument), true),
    ];

    /// <summary>The documents that have a schema, by the verb that writes them.</summary>
    public static ImmutableArray<string> Names { get; } = [.. All.Select(each => each.Name)];

    /// <summary>The schema of that name, or null when there is none.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    public static string? Find(string name)
    {
        if (!Names.Contains(name)) return null;
        var (_, document, many) = All[Names.IndexOf(name)];
        var parts = new JsonObject { ["report"] = Of(document, "report", name) };
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:circuits:{name}:1",
            ["title"] = $"circuits {name}",
            ["description"] = document.GetCustomAttribute<DescriptionAttribute>()!.Description,
        };
        if (document == typeof(MatrixDocument))
        {
            parts["row"] = Of(typeof(MatrixRowFields), "row", name);
            parts["shardHead"] = Of(typeof(ShardDocument), "shardHead", ShardDocument.Name);
            parts["shardRow"] = Of(typeof(ShardRowFields), "shardRow", name);
            schema["oneOf"] = new JsonArray([.. parts.Select(part => Reference(part.Key))]);
        }
        else if (document == typeof(WhatIfDocument))
        {
            parts["row"] = Of(typeof(ManyRowDocument), "row", ManyRowDocument.Name);
            var several = new JsonObject { ["description"] = "One document a file, when several files were named.", ["type"] = "array", ["items"] = Reference("report") };
            schema["anyOf"] = new JsonArray(Reference("report"), several, Reference("row"));
        }
        else if (many)
        {
            var several = new JsonObject { ["description"] = "One document a file, when several files were named.", ["type"] = "array", ["items"] = Reference("report") };
            schema["anyOf"] = new JsonArray(Reference("report"), several);
        }
        else
        {
            schema["$ref"] = "#/$defs/report";
        }

        schema["$defs"] = parts;
        return JsonText.Of(json => schema.WriteTo(json));
    }

    private static JsonObject Reference(string part) => new() { ["$ref"] = $"#/$defs/{part}" };

    private static JsonNode Of(Type type, string part, string name) => JsonSchemaExporter.GetJsonSchemaAsNode(
        DocumentContext.Own.GetTypeInfo(type)!, new JsonSchemaExporterOptions { TransformSchemaNode = (at, node) => Complete(at, node, part, name) });

    // What the exporter does not see: what our converters write, which fields are always there, and what the attributes say.
    private static JsonObject Complete(JsonSchemaExporterContext at, JsonNode node, string part, string name)
    {
        var own = Described(at.TypeInfo.Type);
        var schema = own ?? node.AsObject();
        if (own is null && (string?)schema["$ref"] is { } path) schema["$ref"] = $"#/$defs/{part}{path[1..]}";
        if (at.TypeInfo.ElementType is { } element && Described(element) is { } each)
            schema[at.TypeInfo.Kind == JsonTypeInfoKind.Dictionary ? "additionalProperties" : "items"] = each;
        if (schema["properties"] is JsonObject)
            schema["required"] = new JsonArray([.. at.TypeInfo.Properties.Where(IsAlwaysThere).Select(property => JsonValue.Create(property.Name))]);
        MakeNullable(schema, at.PropertyInfo is { IsGetNullable: true });
        if (at.PropertyInfo?.AttributeProvider is not { } field) return schema;
        if (at.PropertyInfo.DeclaringType == typeof(Document)) schema = new JsonObject { ["const"] = Document.SchemaOf(name) };
        if (Of<OnlyAttribute>(field) is { } only) schema = new JsonObject { ["const"] = only.Value };
        if (Of<BoundsAttribute>(field) is { } bounds) Bound(schema, at.TypeInfo.Kind, bounds);
        if (Of<PatternAttribute>(field) is { } pattern) schema["pattern"] = pattern.Expression;
        if (Of<DescriptionAttribute>(field) is { } description)
        {
            schema.Remove("description");
            schema.Insert(0, "description", description.Description);
        }

        return schema;
    }

    /// <summary>What a converter of our own writes for values of a type, or null where none does.</summary>
    private static JsonObject? Described(Type type) =>
        (DocumentContext.Own.GetTypeInfo(Nullable.GetUnderlyingType(type) ?? type)?.Converter as IDescribed)?.Schema();

    private static void MakeNullable(JsonObject schema, bool nullable)
    {
        if (schema["type"] is not { } type) return;
        var word = (string)(type is JsonArray several ? several[0] : type)!;
        schema["type"] = nullable ? new JsonArray(word, "null") : word;
        if (nullable && schema["enum"] is JsonArray words) words.Add((JsonNode?)null);
    }

    // Of a number itself, of the items of a list, of the items of each list in an object of lists.
    private static void Bound(JsonObject schema, JsonTypeInfoKind kind, BoundsAttribute bounds)
    {
        var of = kind == JsonTypeInfoKind.Dictionary ? schema["additionalProperties"]!.AsObject() : schema;
        of[kind == JsonTypeInfoKind.None ? "minimum" : "minItems"] = bounds.Least;
        if (double.IsFinite(bounds.Most)) of[kind == JsonTypeInfoKind.None ? "maximum" : "maxItems"] = bounds.Most;
    }

    private static bool IsAlwaysThere(JsonPropertyInfo property) => Of<JsonIgnoreAttribute>(property.AttributeProvider!) is null;

    private static T? Of<T>(ICustomAttributeProvider field)
        where T : Attribute => field.GetCustomAttributes(typeof(T), true).OfType<T>().FirstOrDefault();
}
