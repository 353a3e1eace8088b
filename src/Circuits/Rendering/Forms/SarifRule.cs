using System.Text.Json;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>A rule as a SARIF <c>reportingDescriptor</c>: what <c>explain</c> tells is its help.</summary>
internal static class SarifRule
{
    /// <summary>Writes the descriptor; of a rule that the catalogue lacks, the name alone.</summary>
    public static void Write(Utf8JsonWriter json, string name, Rule? rule)
    {
        json.WriteStartObject();
        json.WriteString("id", name);
        if (rule is not null)
        {
            Text(json, "shortDescription", FirstSentence(rule.Meaning));
            Text(json, "fullDescription", rule.Meaning);
            json.WriteStartObject("help");
            json.WriteString("text", $"{rule.Meaning}\n\nOn the road: {rule.OnTheRoad}\n\nExample:\n{rule.Example.TrimEnd()}\n\nTo mend it: {rule.Mend}");
            json.WriteString("markdown", Markdown(rule));
            json.WriteEndObject();
            json.WriteStartObject("defaultConfiguration");
            json.WriteString("level", Words.Of(rule.Severity));
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static string Markdown(Rule rule)
    {
        var example = string.Join('\n', rule.Example.TrimEnd().Split('\n').Select(line => "    " + line));
        return $"{rule.Meaning}\n\n**On the road.** {rule.OnTheRoad}\n\n**Example**\n\n{example}\n\n**To mend it.** {rule.Mend}\n";
    }

    private static string FirstSentence(string text)
    {
        var end = text.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? text : text[..(end + 1)];
    }

    private static void Text(Utf8JsonWriter json, string field, string text)
    {
        json.WriteStartObject(field);
        json.WriteString("text", text);
        json.WriteEndObject();
    }
}
