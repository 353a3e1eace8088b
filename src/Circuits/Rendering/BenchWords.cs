using System.Collections.Immutable;
using System.Globalization;
using Circuits.Studies.Identify;

namespace Circuits.Rendering;

/// <summary>What is found at the bench, in words.</summary>
internal static class BenchWords
{
    /// <summary>A trait's answer as a cell says it: <c>yes</c>, <c>4</c>, <c>5 mm</c>.</summary>
    public static string Of(Answer answer, UnitSystem units) => answer switch
    {
        Answer.YesNo { Value: true } => "yes",
        Answer.YesNo => "no",
        Answer.Number number => number.Value.ToString(CultureInfo.InvariantCulture),
        Answer.Sizes { All.IsEmpty: true } => "-",
        Answer.Sizes sizes => string.Join(" or ", sizes.All.Select(size => Of(size, units))),
        _ => "?",
    };

    /// <summary>What a question came to: <c>seen</c>, <c>5 balls of 9 mm</c>, <c>5 mm</c>.</summary>
    public static string Found(Answer answer, Trait trait, UnitSystem units) => answer switch
    {
        Answer.YesNo { Value: true } => "seen",
        Answer.YesNo => "not seen",
        Answer.Number number => Count(trait, number.Value, units),
        Answer.Sizes { All.IsEmpty: true } => "nothing there",
        _ => Of(answer, units),
    };

    /// <summary>A trait with what it is: <c>slot at 22-23: no</c>.</summary>
    public static string Of(TraitRow row, int revision, UnitSystem units) => row.Answers[revision] == Answer.Nothing
        ? $"{Name(row.Trait, units)}: none" : $"{Name(row.Trait, units)}: {Of(row.Answers[revision], units)}";

    /// <summary>A trait's phrase; a mark stands in quotes, since its words are the author's.</summary>
    public static string Name(Trait trait, UnitSystem units) => trait.Key.Kind == TraitKind.Mark ? $"\"{trait.Phrase}\"" : Phrase(trait, units);

    /// <summary>A trait's phrase.</summary>
    public static string Phrase(Trait trait, UnitSystem units) => trait.Size is { } size ? $"balls of {Of(size, units)}" : trait.Phrase;

    /// <summary>A count of what a trait counts: <c>1 ball of 6 mm</c>.</summary>
    public static string Count(Trait trait, int count, UnitSystem units) => trait.Size is { } size
        ? string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "ball" : "balls")} of {Of(size, units)}")
        : BenchText.Of(count, trait);

    /// <summary>How a trait is found out, in a word or two.</summary>
    public static string Of(Means means) => means switch
    {
        Means.Look => "look",
        Means.Count => "count",
        Means.LookAsFound => "look as found",
        Means.Wire => "wire",
        Means.PinGauge => "pin gauge",
        Means.Caliper => "caliper",
        Means.Air => "air",
        _ => "tester",
    };

    /// <summary>How that is done, in a sentence; common practice of the trade, no source.</summary>
    public static string HowTo(Means means) => means switch
    {
        Means.Look => "look: the part clean and dry, a lamp behind a sheet.",
        Means.Count => "count: count the pieces; sort balls by size with a caliper.",
        Means.LookAsFound => "look as found: before the loose pieces are taken out.",
        Means.Wire => "wire: pass a soft wire from one face of the casting to the other; it comes through, or a wall stops it.",
        Means.PinGauge => "pin gauge: the largest pin or drill shank that goes in without force.",
        Means.Caliper => "caliper: measure the ball or bore, clean.",
        Means.Air => "air: blow gently into the feed, nothing connected, with eye protection.",
        _ => "tester: on a solenoid tester, does the pressure follow the current, or jump?",
    };

    /// <summary>Revisions by name: <c>1, 2 or 4</c>.</summary>
    public static string Either(PartIdentity part, ImmutableArray<int> revisions)
    {
        var names = revisions.Select(revision => part.Part.Revisions[revision].Name).ToList();
        return names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}";
    }

    private static string Of(BenchSize size, UnitSystem units) => units == UnitSystem.Si ? BenchText.Of(size)
        : size.Length is { } length ? $"{Measures.Length(size.Width, units)} x {Measures.Length(length, units)}"
        : Measures.Length(size.Width, units);
}
