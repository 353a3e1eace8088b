using System.Text.Json;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>Rules for programs: the document <c>circuits.explain/1</c>.</summary>
public static class RulesJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="rules">The rules, in the order to write them.</param>
    public static void Write(Utf8JsonWriter json, IEnumerable<Rule> rules)
    {
        json.WriteStartObject();
        json.WriteString("schema", "circuits.explain/1");
        json.WriteStartArray("rules");
        foreach (var rule in rules)
        {
            json.WriteStartObject();
            json.WriteString("rule", rule.Name);
            json.WriteString("severity", Words.Of(rule.Severity));
            json.WriteString("meaning", rule.Meaning);
            json.WriteString("onTheRoad", rule.OnTheRoad);
            json.WriteString("example", rule.Example);
            json.WriteString("mend", rule.Mend);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
