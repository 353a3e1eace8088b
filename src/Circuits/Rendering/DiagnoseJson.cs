using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Model;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;
using Circuits.Studies.Faults;

namespace Circuits.Rendering;

/// <summary>A diagnosis for programs: the document <c>circuits.diagnose/1</c>.</summary>
public static class DiagnoseJson
{
    private const int MostTests = 20;

    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The diagnosis.</param>
    /// <param name="advice">Tests; null where there is nothing to tell apart.</param>
    /// <param name="depth">How many tests deep the plan is; 0 for none.</param>
    public static void Write(Utf8JsonWriter json, DiagnosisReport report, TestAdvice? advice, int depth)
    {
        json.WriteStartObject();
        var unit = report.Assembly.Unit;
        json.Assembly("circuits.diagnose/1", report.Assembly, [.. report.Assembly.NearestOf(unit.Matched, set => Assembly.Of(unit, set)).Select(set => set.Name)]);
        json.WriteStartArray("evidence");
        foreach (var item in report.Evidence)
        {
            json.WriteStartObject();
            json.WriteString("text", item.Text);
            json.WriteString("meaning", item.Meaning);
            json.WriteBoolean("asItShould", item.Degree([], report.Sound) > 0);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("contradictions");
        foreach (var pair in report.Contradictions)
        {
            json.WriteStartObject();
            json.WriteString("first", pair.First.Text);
            json.WriteString("second", pair.Second.Text);
            json.WriteString("why", pair.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteBoolean("soundExplains", report.SoundExplains);
        json.WriteNumber("faults", report.Faults);
        json.WriteNumber("pairs", report.Pairs);
        json.WriteBoolean("pairsComplete", report.PairsComplete);
        Classes(json, "explaining", report.Explaining, report);
        Classes(json, "near", report.Near, report);
        json.Names("conflict", report.Conflict.Select(item => item.Text));
        json.WriteBoolean("flowing", report.Flowing);
        Tests(json, report, advice, depth);
        json.Names("lookAlikes", report.LookAlikes);
        json.Names("silent", report.Silent.Select(fault => fault.Code));
        json.Findings(DiagnosisFindings.Of(report), assemblies: false);
        json.Names("cautions", [Cautions.Measuring, Cautions.WhoDecides]);
        json.WriteEndObject();
    }

    private static void Classes(Utf8JsonWriter json, string field, ImmutableArray<CandidateClass> classes, DiagnosisReport report)
    {
        json.WriteStartArray(field);
        foreach (var known in classes)
        {
            json.WriteStartObject();
            json.Rounded("share", known.Share, 4);
            json.WriteStartArray("candidates");
            foreach (var candidate in known.Members) Of(json, candidate, report);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Of(Utf8JsonWriter json, Candidate candidate, DiagnosisReport report)
    {
        json.WriteStartObject();
        json.WriteStartArray("faults");
        foreach (var fault in candidate.Faults) Of(json, fault);
        json.WriteEndArray();
        json.Rounded("score", candidate.Score, 4);
        json.Names("explains", CandidateWords.Explains(candidate, report));
        json.Names("notTold", CandidateWords.Expects(candidate, report));
        json.Names("against", CandidateWords.Contradicts(candidate, report));
        json.Rounded("kilopascalsOffReadings", candidate.FromReadings(report.Evidence), 1);
        json.WriteEndObject();
    }

    private static void Of(Utf8JsonWriter json, Fault fault)
    {
        json.WriteStartObject();
        json.WriteString("code", fault.Code);
        json.WriteString("kind", FaultKinds.Of(fault.Kind).Word);
        json.WriteString("element", fault.Element);
        json.WriteString("name", fault.Name);
        json.Rounded("weight", fault.Weight, 6);
        json.PlaceFields(fault.Place);
        json.WriteEndObject();
    }

    private static void Tests(Utf8JsonWriter json, DiagnosisReport report, TestAdvice? advice, int depth)
    {
        var codes = advice is null ? [] : advice.Candidates.Select(candidate => candidate.Mechanical ?? string.Join(" + ", candidate.Faults.Select(fault => fault.Code))).ToImmutableArray();
        json.WriteStartArray("tests");
        foreach (var test in advice is null ? [] : advice.Best().Take(MostTests)) Of(json, test, codes, null);
        json.WriteEndArray();
        json.WritePropertyName("plan");
        if (advice is null || depth <= 0 || report.Explaining.IsEmpty) json.WriteNullValue();
        else Step(json, advice.Plan(depth), codes);
    }

    private static void Step(Utf8JsonWriter json, PlanStep step, ImmutableArray<string> codes)
    {
        if (step.Test is { } test)
        {
            Of(json, test, codes, step.Branches);
            return;
        }

        json.WriteStartObject();
        json.Names("remain", step.Remaining.Select(index => codes[index]));
        json.WriteEndObject();
    }

    private static void Of(Utf8JsonWriter json, WeighedTest test, ImmutableArray<string> codes, ImmutableArray<PlanStep>? branches)
    {
        json.WriteStartObject();
        json.WriteString("kind", TestCosts.Kinds[(int)test.Kind].Word);
        json.WriteString("do", test.Text);
        json.Rounded("cost", test.Cost, 3);
        json.Rounded("bits", test.Bits, 4);
        json.WriteStartArray("outcomes");
        for (var i = 0; i < test.Outcomes.Length; i++)
        {
            var outcome = test.Outcomes[i];
            json.WriteStartObject();
            json.WriteString("outcome", outcome.Text);
            json.Rounded("share", outcome.Share, 4);
            json.Names("remain", outcome.Members.Select(index => codes[index]));
            if (branches is { } steps)
            {
                json.WritePropertyName("then");
                Step(json, steps[i], codes);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
