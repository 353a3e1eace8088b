using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Rendering;
using Circuits.Tests.Properties;
using CsCheck;

namespace Circuits.Tests.Judging;

/// <summary>A change of one opening of a sheet.</summary>
internal enum OpeningChange
{
    /// <summary>A hole where there was metal.</summary>
    NewHole,

    /// <summary>A slot that joins locations.</summary>
    NewSlot,

    /// <summary>A hole two to four times as wide.</summary>
    Enlarged,

    /// <summary>Metal where there was a hole or slot.</summary>
    Blanked,
}

/// <summary>
/// Makes one known change in random units and asks whether what is found names it. Counted are changes that make something wrong: those with an error
/// that the matched set does not have.
/// </summary>
internal static class Culprits
{
    /// <summary>What became of changes of one kind.</summary>
    /// <param name="Change">The kind.</param>
    public sealed record Tally(OpeningChange Change)
    {
        /// <summary>Changes that make something wrong.</summary>
        public int Wrong { get; set; }

        /// <summary>Those of them that a finding names.</summary>
        public int Named { get; set; }

        /// <summary>The others: the seed, the change and what was found.</summary>
        public List<string> Missed { get; } = [];
    }

    /// <summary>Makes changes in units one after the other, by their seeds.</summary>
    /// <param name="first">The first seed.</param>
    /// <param name="count">How many units.</param>
    public static ImmutableArray<Tally> Count(ulong first, int count)
    {
        ImmutableArray<Tally> tallies = [.. Enum.GetValues<OpeningChange>().Select(change => new Tally(change))];
        var gen = new UnitGen(revisions: false);
        for (var i = 0; i < count; i++)
        {
            var source = new PCG(7, first + (ulong)i);
            var unit = gen.Generate(source, null, out _);
            foreach (var tally in tallies) Try(unit, tally, new Dice(source), first + (ulong)i);
        }

        return tallies;
    }

    private static void Try(UnitSpec unit, Tally tally, Dice dice, ulong seed)
    {
        var sheets = unit.Parts.Where(part => part.Kind == "sheet" && !part.Revisions[0].IsGasket).ToList();
        if (sheets.Count == 0) return;
        var sheet = dice.Pick(sheets);
        if (Changed(unit, sheet, tally.Change, dice) is not var (revision, locations)) return;
        var changed = unit with { Parts = [.. unit.Parts.Select(part => part == sheet ? part with { Revisions = part.Revisions.Add(revision with { Name = "r2" }) } : part)] };
        if (CircuitReader.ReadText(SpecText.Of(changed), "drawn.yaml").Unit is not { } read) return;
        var judge = new UnitJudge(read);
        var sound = judge.Report(Assembly.Of(read, read.Matched[0]), timed: false);
        var report = judge.Report(Assembly.Of(read, [.. read.Parts.Select(part => part.Revisions[^1])]), timed: false);
        var known = sound.Findings.Select(finding => (finding.Rule, finding.Gear)).ToHashSet();
        var errors = report.Findings.Where(finding => finding.Severity == Severity.Error && !known.Contains((finding.Rule, finding.Gear))).ToList();
        if (errors.Count == 0) return;
        tally.Wrong++;

        // Openings of several sheets at one place are one to oil, and go by the name of any.
        var names = unit.Joints.First(joint => joint.Sheets.Contains(sheet.Name)).Sheets.SelectMany(layer => locations.Select(location => $"{layer}@{location}")).ToList();
        if (report.Findings.Any(finding => Words(finding).Any(words => names.Exists(name => words.Contains(name, StringComparison.Ordinal))))) tally.Named++;
        else tally.Missed.Add($"{seed}: {sheet.Name}@{string.Join('-', locations)}: {string.Join(" | ", errors.Select(finding => $"{finding.Rule} {string.Join(" / ", Words(finding))}"))}");
    }

    private static IEnumerable<string> Words(Finding finding) => finding.Related.Select(related => PhraseWords.Of(related.Message)).Prepend(PhraseWords.Of(finding.Message));

    /// <summary>A sheet with one opening changed, and the locations of that opening as its name has them; null when it allows no such change.</summary>
    private static (RevisionSpec Sheet, ImmutableArray<string> At)? Changed(UnitSpec unit, PartSpec sheet, OpeningChange change, Dice dice)
    {
        var revision = sheet.Revisions[0];
        var joint = unit.Joints.First(joint => joint.Sheets.Contains(sheet.Name)).Name;
        var locations = unit.Parts.SelectMany(part => part.Revisions[0].Passages).SelectMany(passage => passage.At)
            .Where(at => at.Joint == joint).Select(at => at.Location).Distinct().Order(StringComparer.Ordinal).ToList();
        switch (change)
        {
            case OpeningChange.NewHole:
                var closed = locations.FindAll(location => !revision.Openings.Any(opening => opening.At.Contains(location)));
                if (closed.Count == 0) return null;
                ImmutableArray<string> at = [dice.Pick(closed)];
                return (revision with { Openings = revision.Openings.Add(new OpeningSpec(at, SizeSpec.Hole(dice.Real(2, 6)))) }, at);
            case OpeningChange.NewSlot:
                if (locations.Count < 2) return null;
                ImmutableArray<string> joined = [.. dice.Shuffle(locations).Take(2)];
                return (revision with { Openings = revision.Openings.Add(new OpeningSpec(joined, SizeSpec.Slot(dice.Real(1, 4), dice.Real(5, 15)))) }, joined);
            case OpeningChange.Enlarged:
                var holes = revision.Openings.Where(opening => opening.Size.IsHole && opening.At.Length == 1).ToList();
                if (holes.Count == 0) return null;
                var hole = dice.Pick(holes);
                return (revision with { Openings = revision.Openings.Replace(hole, hole with { Size = SizeSpec.Hole(Math.Round(hole.Size.Width * dice.Real(2, 4), 3)) }) }, hole.At);
            default:
                if (revision.Openings.IsEmpty) return null;
                var gone = dice.Pick(revision.Openings);
                return (revision with { Openings = revision.Openings.Remove(gone) }, gone.At);
        }
    }
}
