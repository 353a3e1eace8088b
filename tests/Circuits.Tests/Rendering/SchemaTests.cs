using System.Text.Json;
using System.Text.Json.Nodes;
using Circuits.Judging;
using Circuits.Rendering.Json;
using Circuits.Tests.Cli;
using Json.Schema;
using Xunit;

namespace Circuits.Tests.Rendering;

/// <summary>Schemas say no: every document of the cases, spoilt at every place in every way, is refused.</summary>
public sealed class SchemaTests
{
    // Objects whose fields are named by the circuit file; all others have the fields of the contract.
    private static readonly HashSet<(string Schema, string Field)> Maps = [("check", "gears"), ("matrix", "parts"), ("matrix", "revisions"), ("matrix", "gears"), ("identify", "answers"), ("what-if-row", "gears"), ("what-if-row", "changesOfGear")];

    /// <summary>Fields of words out of a list; elsewhere the same name may stand for any text.</summary>
    private static readonly HashSet<string> Worded =
    [
        "schema", "data", "verdict", "state", "joinedTo", "role", "move", "sign", "status", "how",
        "gears/positions/kind", "shifts/kind", "tests/kind", "connections/kind", "observations/kind", "parts/kind",
        "findings/severity", "newFindings/severity", "rules/severity", "time", "size/outcome",
    ];

    public static TheoryData<string> Names() => [.. JsonSchemas.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_spoilt_document_is_refused(string name)
    {
        var schema = JsonSchema.FromText(JsonSchemas.Find(name)!, new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        var seen = new HashSet<string>();
        foreach (var text in Examples(name))
        {
            var document = JsonNode.Parse(text)!;
            var kind = document is JsonObject root ? string.Join(' ', root.Select(field => field.Key)) : "";
            Assert.True(IsValid(schema, document), text);
            foreach (var (what, node, spoil) in Spoilings(Row(document) ?? name, document, ""))
            {
                if (!seen.Add(kind + what)) continue;
                var undo = spoil();
                Assert.False(IsValid(schema, document), $"{name}: accepted with {what} at {node}");
                undo();
            }

            Assert.True(IsValid(schema, document), "the document was not put back");
        }

        Assert.True(seen.Count > 10, "too little was tried");
    }

    /// <summary>Documents that are lines of many have maps where others have lists.</summary>
    private static string? Row(JsonNode document) => document is JsonObject root && root["schema"]?.ToString().StartsWith("circuits.what-if-row/", StringComparison.Ordinal) == true ? "what-if-row" : null;

    private static IEnumerable<string> Examples(string name) => name == "explain" ? [JsonText.Of(Documents.Of(RuleCatalogue.All))]
        : Directory.EnumerateDirectories(CommandCase.Root).Order(StringComparer.Ordinal).Select(folder => CommandCase.Named(Path.GetFileName(folder)))
            .Where(it => it.Command.Contains($"circuits {name} ", StringComparison.Ordinal) && it.Command.Contains("--format json", StringComparison.Ordinal))
            .SelectMany(it => it.Command.Contains("--format jsonl", StringComparison.Ordinal) ? it.Expected().Out.Split('\n').Take(2) : [it.Expected().Out])
            .Where(text => text.Length > 0);

    // Places that differ by an index alone count as one; each change is made when it is asked for, and hands back how to undo it.
    private static IEnumerable<(string What, string Path, Func<Action> Spoil)> Spoilings(string schema, JsonNode? node, string path)
    {
        if (node is JsonArray list)
        {
            foreach (var item in list.ToList())
            {
                foreach (var spoiling in Spoilings(schema, item, path)) yield return spoiling;
            }
        }

        if (node is not JsonObject fields) yield break;
        var name = path[(path.LastIndexOf('/') + 1)..];
        var map = name == "assembly" || Maps.Contains((schema, name));
        yield return ($"{path}: an unknown field", node.GetPath(), () =>
        {
            fields["unknown"] = new JsonObject { ["unknown"] = new JsonArray(new JsonArray()) };
            return () => fields.Remove("unknown");
        }
        );
        foreach (var (field, value) in fields.ToList())
        {
            var at = map ? $"{path}/*" : $"{path}/{field}";
            if (!map && field != "then")
            {
                yield return ($"{at}: missing", node.GetPath(), () =>
                {
                    var place = fields.IndexOf(field);
                    fields.Remove(field);
                    return () => fields.Insert(place, field, value);
                }
                );
            }

            yield return ($"{at}: of the wrong type", node.GetPath(), () => Replace(fields, field, new JsonObject { ["unknown"] = new JsonArray(new JsonArray()) }, value));
            if (value is JsonValue word && word.GetValueKind() == JsonValueKind.String && (Worded.Contains(field) || Worded.Any(worded => worded.Contains('/') && $"{schema}{at}".EndsWith(worded, StringComparison.Ordinal))))
                yield return ($"{at}: an unknown word", node.GetPath(), () => Replace(fields, field, "no-such-word", value));
            foreach (var spoiling in Spoilings(schema, value, at)) yield return spoiling;
        }
    }

    private static Action Replace(JsonObject fields, string field, JsonNode other, JsonNode? value)
    {
        fields[field] = other;
        return () => fields[field] = value;
    }

    private static bool IsValid(JsonSchema schema, JsonNode document) => schema.Evaluate(JsonDocument.Parse(document.ToJsonString()).RootElement).IsValid;
}
