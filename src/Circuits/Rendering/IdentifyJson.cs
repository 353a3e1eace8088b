using System.Collections.Immutable;
using System.Text.Json;
using Circuits.Model;
using Circuits.Studies.Identify;

namespace Circuits.Rendering;

/// <summary>An identification for programs: the document <c>circuits.identify/1</c>.</summary>
public static class IdentifyJson
{
    private const int Places = 4;

    /// <summary>Writes the document.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="report">The report.</param>
    public static void Write(Utf8JsonWriter json, Identification report)
    {
        json.WriteStartObject();
        json.WriteString("schema", "circuits.identify/1");
        json.WriteString("unit", report.Unit.Name);
        json.WriteString("data", Words.Of(report.Unit.Data));
        json.Rounded("toleranceMm", report.Tolerance, Places);
        Each(json, "observations", report.Observations, observation => Told(json, observation));
        Each(json, "parts", report.Parts, part => Part(json, report, part));
        json.WriteStartObject("matchedSets");
        json.Names("possible", report.PossibleSets);
        Each(json, "excluded", report.ExcludedSets, set =>
        {
            json.WriteString("set", set.Set);
            json.Names("by", set.Parts);
        });
        json.WriteEndObject();
        json.Names("fits", report.Fits);
        json.WriteEndObject();
    }

    private static void Told(Utf8JsonWriter json, Observation observation)
    {
        json.WriteString("kind", Word(observation.Kind));
        json.WriteString("text", observation.Text);
        json.WriteString("part", observation.Part);
        json.WriteString("meaning", observation.Meaning);
    }

    private static void Part(Utf8JsonWriter json, Identification report, PartIdentity part)
    {
        json.WriteString("part", part.Part.Name);
        json.WriteString("kind", Word(part.Part.Kind));
        json.WriteString("status", Word(part.Status));
        json.Names("revisions", part.Part.Revisions.Select(revision => revision.Name));
        Revisions(json, "remaining", part, part.Remaining);
        Each(json, "excluded", part.Excluded, revision => Excluded(json, part, revision));
        Revisions(json, "nearest", part, part.Nearest.Select(revision => revision.Revision));
        Each(json, "lookAlikes", part.Alike, alike =>
        {
            Revisions(json, "revisions", part, alike.Revisions);
            json.Names("tooClose", alike.TooClose.Select(row => row.Trait.Phrase));
            json.Names("unseen", alike.Unseen);
        });
        Each(json, "steps", part.Steps, step => Question(json, report, part, step));
        Each(json, "differences", part.Differing(report.Tolerance), row =>
        {
            Named(json, report, row.Trait);
            json.WriteStartObject("answers");
            foreach (var revision in part.Remaining)
            {
                json.WritePropertyName(part.Part.Revisions[revision].Name);
                Value(json, row.Answers[revision]);
            }

            json.WriteEndObject();
        });
    }

    private static void Excluded(Utf8JsonWriter json, PartIdentity part, ExcludedRevision revision)
    {
        json.WriteString("revision", part.Part.Revisions[revision.Revision].Name);
        Each(json, "by", revision.By, observation =>
        {
            Told(json, observation);
            json.WritePropertyName("onRevision");
            Value(json, observation.Row.Answers[revision.Revision]);
        });
    }

    private static void Question(Utf8JsonWriter json, Identification report, PartIdentity part, Step step)
    {
        json.WriteNumber("step", step.Number);
        Named(json, report, step.Row.Trait);
        Each(json, "outcomes", step.Outcomes, outcome =>
        {
            json.WritePropertyName("answer");
            Value(json, outcome.Answer);
            Revisions(json, "revisions", part, outcome.Revisions);
            if (outcome.Next is { } next) json.WriteNumber("next", next);
            else json.WriteNull("next");
        });
        json.Names("same", step.Same.Select(row => report.Reader.Spelled(row.Trait, row.Trait.Phrase)));
    }

    private static void Named(Utf8JsonWriter json, Identification report, Trait trait)
    {
        json.WriteString("phrase", trait.Means == Means.Count ? trait.Phrase : report.Reader.Spelled(trait, trait.Phrase));
        json.WriteString("how", BenchWords.Of(trait.Means).Replace(' ', '-'));
        json.WriteString("detail", trait.Detail);
    }

    /// <summary>True or false, a count, a list of sizes (width, and length where there is one, in millimetres), or null when not given.</summary>
    private static void Value(Utf8JsonWriter json, Answer answer)
    {
        switch (answer)
        {
            case Answer.YesNo yes:
                json.WriteBooleanValue(yes.Value);
                break;
            case Answer.Number number:
                json.WriteNumberValue(number.Value);
                break;
            case Answer.Sizes sizes:
                json.WriteStartArray();
                foreach (var size in sizes.All)
                {
                    json.WriteStartObject();
                    json.Rounded("widthMm", size.Width, Places);
                    json.Rounded("lengthMm", size.Length, Places);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                break;
            default:
                json.WriteNullValue();
                break;
        }
    }

    private static void Revisions(Utf8JsonWriter json, string field, PartIdentity part, IEnumerable<int> revisions) =>
        json.Names(field, revisions.Select(revision => part.Part.Revisions[revision].Name));

    private static void Each<T>(Utf8JsonWriter json, string field, ImmutableArray<T> items, Action<T> write)
    {
        json.WriteStartArray(field);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Word(ObservationKind kind) => kind switch
    {
        ObservationKind.Seen => "seen",
        ObservationKind.NotSeen => "not-seen",
        _ => "measured",
    };

    private static string Word(PartStatus status) => status switch
    {
        PartStatus.Single => "single",
        PartStatus.Settled => "settled",
        PartStatus.Alike => "alike",
        PartStatus.Open => "open",
        _ => "unknown",
    };

    private static string Word(PartKind kind) => kind switch
    {
        PartKind.Casting => "casting",
        PartKind.Sheet => "sheet",
        PartKind.BallSet => "ball-set",
        PartKind.SolenoidPack => "solenoid-pack",
        PartKind.Drum => "drum",
        _ => "other",
    };
}
