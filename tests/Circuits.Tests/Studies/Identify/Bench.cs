using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Identify;
using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>A unit on the bench, and what was found out about its parts.</summary>
internal sealed class Bench
{
    public Bench(Unit unit, params ReadOnlySpan<string> parts)
    {
        var wanted = parts.ToArray();
        Unit = unit;
        Traits = [.. unit.Parts.Where(part => wanted.Length == 0 || wanted.Contains(part.Name)).Select(part => PartTraits.Of(unit, part))];
        Reader = new ObservationReader(Traits);
    }

    public Unit Unit { get; }

    public ImmutableArray<PartTraits> Traits { get; }

    public ObservationReader Reader { get; }

    /// <summary>Reads a unit; <c>format</c>, <c>unit</c>, <c>data</c> and one gear are put around the text.</summary>
    public static Bench Of(string text, params ReadOnlySpan<string> parts)
    {
        var read = CircuitReader.ReadText($"format: 1\nunit: Bench\ndata: invented\n{text}\ngears: {{G: {{apply: []}}}}\n", "bench.yaml");
        Assert.True(read.Unit is not null, string.Join('\n', read.Findings.Select(finding => $"{finding.Place} {finding.Words()}")));
        return new Bench(read.Unit, parts);
    }

    /// <summary>One joint <c>face</c> of two castings, <c>body</c> and <c>housing</c>, over a sheet <c>plate</c> with these revisions.</summary>
    /// <param name="plates">The plate's revisions, in flow style, parted by semicolons: <c>{at: 1, hole: 5 mm}; {at: 1, hole: 6 mm}</c>.</param>
    public static Bench Plates(string plates)
    {
        var revisions = plates.Split(';').Select((openings, i) => $"      {i + 1}: {{openings: [{openings.Trim()}]}}");
        return Of(
            $"""
            joints: {Joint}
            parts:
              body: {Casting}
              housing: {Casting}
              plate:
                kind: sheet
                revisions:
            {string.Join('\n', revisions)}
            """);
    }

    private const string Joint = "{face: {between: [body, housing], sheets: [plate]}}";
    private const string Casting = "{kind: casting, passages: {a: {face: [1, 2]}, b: {face: [3, 4, 5]}, c: {face: 6}}}";

    public PartTraits Part(string part) => Traits.Single(traits => traits.Part.Name == part);

    /// <summary>An observation as the command line takes it: <c>seen x</c>, <c>not x</c>, <c>measured x=5 mm</c>.</summary>
    public Observation Told(string text)
    {
        var reading = Read(text);
        Assert.True(reading.Observation is not null, $"{text}: {reading.Problem} {reading.Help}");
        return reading.Observation;
    }

    public ObservationReading Read(string text)
    {
        var words = text.Split(' ', 2);
        return words[0] switch
        {
            "seen" => Reader.Look(words[1], seen: true),
            "not" => Reader.Look(words[1], seen: false),
            "measured" => Reader.Measured(words[1]),
            _ => throw new ArgumentException(text),
        };
    }

    public Identification Run(double tolerance, params IEnumerable<string> told) =>
        Identifier.Run(Unit, Traits, [.. told.Select(Told)], tolerance);

    /// <summary>The revisions of a part that remain: <c>1 3</c>.</summary>
    public string Remaining(string part, params IEnumerable<string> told) => Remaining(part, Identification.DefaultTolerance, told);

    public string Remaining(string part, double tolerance, params IEnumerable<string> told)
    {
        var identity = Run(tolerance, told).Parts.Single(identity => identity.Part.Name == part);
        return string.Join(' ', identity.Remaining.Select(revision => identity.Part.Revisions[revision].Name));
    }

    /// <summary>The traits that a sheet lists for a part: <c>hole at 1 [pin]: 5 | 6 | -</c>.</summary>
    public IEnumerable<string> Rows(string part) =>
        from row in Part(part).Rows
        where row.IsListed && row.Answers.Select(Word).Distinct().Count() > 1
        select $"{row.Trait.Phrase} [{row.Trait.Means}]: {string.Join(" | ", row.Answers.Select(Word))}";

    /// <summary>The steps of a part: <c>1 slot at 1-2: seen 1 2 > 2, not seen 3</c>.</summary>
    public IEnumerable<string> Steps(string part, params IEnumerable<string> told) =>
        from step in Run(Identification.DefaultTolerance, told).Parts.Single(identity => identity.Part.Name == part).Steps
        let outcomes = step.Outcomes.Select(outcome =>
            $"{Word(outcome.Answer)} {string.Join(' ', outcome.Revisions.Select(revision => Part(part).Part.Revisions[revision].Name))}{(outcome.Next is { } next ? $" > {next}" : "")}")
        select $"{step.Number} {step.Row.Trait.Phrase}: {string.Join(", ", outcomes)}";

    public static string Word(Answer answer) => answer switch
    {
        Answer.YesNo yes => yes.Value ? "yes" : "no",
        Answer.Number number => number.Value.ToString(CultureInfo.InvariantCulture),
        Answer.Sizes { All.IsEmpty: true } => "-",
        Answer.Sizes sizes => string.Join('/', sizes.All.Select(size => size.Length is { } length
            ? string.Create(CultureInfo.InvariantCulture, $"{size.Width}x{length}") : size.Width.ToString(CultureInfo.InvariantCulture))),
        _ => "?",
    };
}
