using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Studies.Remedies;

namespace Circuits.Rendering;

/// <summary>What would make an assembly right, for programs: the document <c>circuits.remedy/1</c>.</summary>
public static class RemedyJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, RemedyReport report)
    {
        json.WriteStartObject();
        json.Assembly("circuits.remedy/1", report.Before.Assembly, report.Before.NearestMatched);
        json.WriteString("verdict", Words.Of(report.Before.Verdict));
        json.WriteBoolean("right", report.IsRight);
        json.WriteStartObject("parts");
        if (report.PartSearch.Fewest is { } fewest) json.WriteNumber("fewest", fewest);
        else json.WriteNull("fewest");
        json.WriteNumber("tried", report.PartSearch.Tried);
        json.WriteNumber("depth", report.PartSearch.Depth);
        json.WriteBoolean("complete", report.PartSearch.Complete);
        Remedies(json, report.Parts);
        json.WriteEndObject();
        json.WriteStartObject("bench");
        json.WriteStartObject("tried");
        json.WriteNumber("balls", report.BenchSearch.Balls);
        json.WriteNumber("plugs", report.BenchSearch.Plugs);
        json.WriteNumber("holes", report.BenchSearch.Holes);
        json.WriteNumber("pairs", report.BenchSearch.Pairs);
        json.WriteNumber("possiblePairs", report.BenchSearch.PossiblePairs);
        json.WriteEndObject();
        Remedies(json, report.Bench);
        json.WriteEndObject();
        json.Findings(report.Before.Findings, assemblies: false);
        json.Names("cautions", RemedyText.CautionsFor(report));
        json.WriteEndObject();
    }

    private static void Remedies(Utf8JsonWriter json, ImmutableArray<Remedy> remedies)
    {
        json.WriteStartArray("remedies");
        foreach (var remedy in remedies)
        {
            json.WriteStartObject();
            WhatIfJson.Changes(json, remedy.Changes);
            json.WriteBoolean("canBeUndone", remedy.CanBeUndone);
            json.Choice("assembly", remedy.After.Assembly.Choice);
            json.WriteString("matched", remedy.After.Assembly.Matched);
            json.WriteString("verdict", Words.Of(remedy.After.Verdict));
            json.Names("sizes", remedy.Sizes);
            json.Names("asIn", remedy.AsIn);
            json.Names("feels", remedy.After.Gears.Select(gear => gear.Drive?.Feels).OfType<string>().Where(feels => feels != "as it should").Distinct());
            json.Findings(remedy.Leaves, assemblies: false, "leaves");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
