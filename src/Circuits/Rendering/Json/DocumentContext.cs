using System.Text.Json;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Hazards;
using Circuits.Studies.Identify;
using Circuits.Studies.Sizing;

namespace Circuits.Rendering.Json;

/// <summary>How documents are written, made by the compiler so that no reflection is needed.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(AirCheckDocument))]
[JsonSerializable(typeof(CheckDocument))]
[JsonSerializable(typeof(DiagnoseDocument))]
[JsonSerializable(typeof(ExplainDocument))]
[JsonSerializable(typeof(GearsDocument))]
[JsonSerializable(typeof(HazardsDocument))]
[JsonSerializable(typeof(IdentifyDocument))]
[JsonSerializable(typeof(ManyRowDocument))]
[JsonSerializable(typeof(MatrixDocument))]
[JsonSerializable(typeof(MatrixRowFields))]
[JsonSerializable(typeof(PressuresDocument))]
[JsonSerializable(typeof(RemedyDocument))]
[JsonSerializable(typeof(ShardDocument))]
[JsonSerializable(typeof(ShardRowFields))]
[JsonSerializable(typeof(ShiftsDocument))]
[JsonSerializable(typeof(SizeDocument))]
[JsonSerializable(typeof(TraceDocument))]
[JsonSerializable(typeof(WhatIfDocument))]
internal sealed partial class DocumentContext : JsonSerializerContext
{
    /// <summary>The documents' own way of writing: camel case, words for the values of enumerations.</summary>
    public static DocumentContext Own { get; } = In(UnitSystem.Si);

    private static readonly Lazy<DocumentContext> Shop = new(() => In(UnitSystem.Shop));

    /// <summary>That way of writing with sentences in those units; numbers of fields are in SI units always.</summary>
    public static DocumentContext Of(UnitSystem units) => units == UnitSystem.Si ? Own : Shop.Value;

    private static DocumentContext In(UnitSystem units) => new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        MaxDepth = 1000,
        Converters =
        {
            new NumberConverter(), new AnswerConverter(), new RowLineConverter(),
            new SentenceConverter<Phrase>(phrase => PhraseWords.Of(phrase, units)), new SentenceConverter<Feel>(feel => FeelWords.Of(feel)),
            new SentenceConverter<Stand>(stand => StandWords.Of(stand, units)), new SentenceConverter<LocalEffect>(HazardsText.Of),
            new WordConverter<Verdict>(Words.Of), new WordConverter<Judging.JudgeMode>(Named), new WordConverter<Judging.ClutchState>(Words.Of), new WordConverter<Judging.PositionKind>(Words.Of),
            new WordConverter<Solving.OilState>(Words.Of), new WordConverter<Findings.Severity>(Words.Of), new WordConverter<DataOrigin>(Words.Of),
            new WordConverter<ShiftVerdict>(VerdictText.Of), new WordConverter<TestKind>(kind => TestCosts.Kinds[(int)kind].Word),
            new WordConverter<Means>(means => BenchWords.Of(means).Replace(' ', '-')),
            new WordConverter<AirMove>(move => move is Studies.AirCheck.AirMove.May ? "may-move" : Named(move)),
            new WordConverter<SizeOutcome>(outcome => outcome is Studies.Sizing.SizeOutcome.Jumps ? "stalled" : Named(outcome)),
            new WordConverter<AirPortKind>(Named), new WordConverter<AirSignKind>(Named), new WordConverter<ClutchRole>(Named), new WordConverter<ObservationKind>(Named),
            new WordConverter<PartKind>(Named), new WordConverter<PartStatus>(Named), new WordConverter<ShiftKind>(Named), new WordConverter<WantedTime>(Named),
        },
    });

    // OnComing is on-coming.
    private static string Named<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(Enum.GetName(value)!);
}
