using System.Text.Json;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Rendering.Json;

namespace Circuits.Rendering;

/// <summary>
/// Findings as SARIF 2.1.0 (OASIS Standard, Static Analysis Results Interchange Format). Rule names are rule ids; what
/// <c>explain</c> tells of a rule is its help.
/// </summary>
public static class SarifText
{
    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
    private const string RootId = "SRCROOT";

    /// <summary>The log: one run.</summary>
    /// <param name="reports">What was found, file by file.</param>
    /// <param name="context">What to say of the run.</param>
    public static string Of(IReadOnlyList<FindingReport> reports, FormContext context) =>
        JsonText.Of(json => Log(json, reports, context));

    private static void Log(Utf8JsonWriter json, IReadOnlyList<FindingReport> reports, FormContext context)
    {
        json.WriteStartObject();
        json.WriteString("$schema", Schema);
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        var rules = reports.SelectMany(report => report.Findings).Select(finding => finding.Rule).Distinct().Order(StringComparer.Ordinal).ToList();
        Tool(json, rules, context);
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", reports.All(report => report.Unit is not null));
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteStartObject("automationDetails");
        json.WriteString("id", $"circuits {context.Verb}/");
        json.WriteEndObject();
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(RootId);
        Message(json, "description", "The folder that the command ran in; the top of the checkout where files are named from there.");
        json.WriteEndObject();
        json.WriteEndObject();

        // Places count what a text in memory is made of: a letter outside the basic plane is two columns.
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartArray("results");
        var seen = new Dictionary<string, int>();
        foreach (var report in reports)
        {
            foreach (var finding in report.Findings) Result(json, report, finding, rules, seen, context);
        }

        json.WriteEndArray();
        json.WriteStartObject("properties");
        json.WriteStartArray("units");
        foreach (var report in reports)
        {
            json.WriteStartObject();
            json.WriteString("file", ArtifactPath.Of(report.File, context.Root));
            json.WriteString("unit", report.Unit?.Name);
            json.WriteString("data", report.Unit is { } unit ? Words.Of(unit.Data) : null);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Tool(Utf8JsonWriter json, List<string> rules, FormContext context)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "circuits");
        json.WriteString("version", context.Version);
        json.WriteString("semanticVersion", context.Version);
        json.WriteStartArray("rules");
        foreach (var name in rules) SarifRule.Write(json, name, RuleCatalogue.Find(name));
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Result(
        Utf8JsonWriter json, FindingReport report, Finding finding, List<string> rules, Dictionary<string, int> seen, FormContext context)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Rule);
        json.WriteNumber("ruleIndex", rules.IndexOf(finding.Rule));
        json.WriteString("level", Words.Of(finding.Severity));
        Message(json, "message", Sentences(finding, context.Units));
        json.WriteStartArray("locations");
        var place = finding.Place.File.Length > 0 ? finding.Place : new Place(report.File, 0, 0);
        json.WriteStartObject();
        Physical(json, place, context);
        json.WriteEndObject();
        json.WriteEndArray();
        Related(json, finding, context);
        json.WriteStartObject("partialFingerprints");
        json.WriteString(Fingerprint.Name, Fingerprint.Of(finding, ArtifactPath.Of(place.File, context.Root), seen));
        json.WriteEndObject();
        if (finding.Gear is not null || !finding.Assembly.IsEmpty)
        {
            json.WriteStartObject("properties");
            if (finding.Gear is { } gear) json.WriteString("gear", gear);
            if (!finding.Assembly.IsEmpty) Assembly(json, finding);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Related(Utf8JsonWriter json, Finding finding, FormContext context)
    {
        var places = finding.Related.Where(related => related.Place.File.Length > 0).ToList();
        if (places.Count == 0) return;
        json.WriteStartArray("relatedLocations");
        for (var i = 0; i < places.Count; i++)
        {
            json.WriteStartObject();
            json.WriteNumber("id", i + 1);
            Physical(json, places[i].Place, context);
            Message(json, "message", PhraseWords.Of(places[i].Message, context.Units));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Physical(Utf8JsonWriter json, Place place, FormContext context)
    {
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        if (ArtifactPath.Below(place.File, context.Root) is { } relative)
        {
            json.WriteString("uri", string.Join('/', relative.Split('/').Select(Uri.EscapeDataString)));
            json.WriteString("uriBaseId", RootId);
        }
        else
        {
            json.WriteString("uri", "file://" + string.Join('/', ArtifactPath.Of(place.File, context.Root).Split('/').Select(Uri.EscapeDataString)));
        }

        json.WriteEndObject();
        if (place.Line > 0)
        {
            json.WriteStartObject("region");
            json.WriteNumber("startLine", place.Line);
            if (place.Column > 0) json.WriteNumber("startColumn", place.Column);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static string Sentences(Finding finding, UnitSystem units)
    {
        var message = PhraseWords.Of(finding.Message, units) + ".";
        return finding.Help is { } help ? $"{message} {help}" : message;
    }

    private static void Assembly(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject("assembly");
        foreach (var (part, revision) in finding.Assembly) json.WriteString(part, revision);
        json.WriteEndObject();
    }

    private static void Message(Utf8JsonWriter json, string field, string text)
    {
        json.WriteStartObject(field);
        json.WriteString("text", text);
        json.WriteEndObject();
    }
}
