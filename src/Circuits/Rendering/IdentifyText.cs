using System.Collections.Immutable;
using Circuits.Studies.Identify;
using Spectre.Console;

namespace Circuits.Rendering;

/// <summary>An identification sheet: what to look at, in the order that splits best, and what remains possible.</summary>
public static class IdentifyText
{
    // More of them are in the table below.
    private const int MostAlternatives = 3;
    private const int NarrowestName = 24;
    private const int Gap = 2;

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The report.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(Identification report, TextOptions options)
    {
        // Phrases are to be typed in as they stand, so the page restates nothing; sizes are written in the units asked for.
        var page = new Page(options with { Units = UnitSystem.Si });
        var writer = new Writer(page, report, options.Units);
        writer.Head();
        writer.Parts();
        writer.MatchedSets();
        writer.Next();
        writer.Legend();
        return page.ToString();
    }

    private sealed class Writer(Page page, Identification report, UnitSystem units)
    {
        private readonly SortedSet<Means> used = [];
        private readonly bool whole = report.Parts.Length == report.Unit.Parts.Length;

        public void Head()
        {
            page.Item("unit    ", 0, null, (report.Unit.Name, Page.Strong), ($" (data: {Words.Of(report.Unit.Data)})", Page.Plain));
            var tolerance = Measures.Length(report.Tolerance, units);
            page.Item("gauge   ", $"a measured size may be off by {tolerance} (--tolerance)", indent: 0);
            foreach (var observation in report.Observations) page.Item(Kind(observation.Kind), $"{observation.Part}: {Told(observation)}", indent: 0);
        }

        public void Parts()
        {
            // Once something is told, the sheets of parts that nobody looked at would bury the answer.
            var brief = whole && !report.Observations.IsEmpty;
            foreach (var part in report.Parts.Where(part => part.Status != PartStatus.Single && (!brief || IsTold(part)))) Part(part);
            Names("One revision known, nothing to tell", report.Parts.Where(part => part.Status == PartStatus.Single));
        }

        private bool IsTold(PartIdentity part) => report.Observations.Any(observation => observation.Part == part.Part.Name);

        private void Part(PartIdentity part)
        {
            page.Heading(Heading(part));
            foreach (var revision in part.Excluded.Where(_ => part.Status != PartStatus.Unknown))
                page.Line($"not {Name(part, revision.Revision)}: on it, {Against(revision)}", indent: 2);
            if (part.Status == PartStatus.Unknown) Contradicted(part);
            if (part.Status == PartStatus.Settled) ToBeSure(part);
            foreach (var step in part.Steps) Question(part, step);
            foreach (var alike in part.Alike) Alike(part, alike);
            Differences(part);
        }

        // One look can deceive; what else this revision has is easily checked.
        private void ToBeSure(PartIdentity part)
        {
            var rows = part.Untold(report.Observations, report.Tolerance).Take(MostAlternatives).ToList();
            if (rows.Count == 0) return;
            foreach (var row in rows) used.Add(row.Trait.Means);
            page.Line($"to be sure, look also at {string.Join("; ", rows.Select(row => BenchWords.Of(row, part.Remaining[0], units)))}", indent: 2);
        }

        private void Names(string heading, IEnumerable<PartIdentity> parts)
        {
            var names = parts.Select(part => part.Part.Name).ToList();
            if (names.Count == 0) return;
            page.Heading(heading);
            page.Line(string.Join(", ", names), indent: 2);
        }

        public void MatchedSets()
        {
            if (report.Unit.Matched.IsEmpty || report.Observations.IsEmpty) return;
            page.Heading("Matched sets");
            page.Item("still possible", report.PossibleSets.IsEmpty ? "none" : string.Join(", ", report.PossibleSets));
            if (!report.ExcludedSets.IsEmpty)
                page.Item("ruled out     ", string.Join("; ", report.ExcludedSets.Select(set => $"{set.Set} by {string.Join(", ", set.Parts)}")));
        }

        public void Next()
        {
            page.Heading("Next");
            var file = ShellWord.Of(report.Unit.Place.File);
            if (report.Observations.IsEmpty && report.Parts.FirstOrDefault(part => part.Status == PartStatus.Open) is { } first)
            {
                page.Line("Tell what you found, as often as you like, and see what remains:", indent: 2);
                page.Verbatim($"circuits identify {file}{(whole ? "" : string.Concat(report.Parts.Select(part => " " + ShellWord.Of(part.Part.Name))))} {Example(first.Steps[0])}", indent: 2);
                return;
            }

            foreach (var fit in report.Fits) page.Verbatim($"circuits gears {file} --fit {ShellWord.Of(fit)}", indent: 2);
            foreach (var part in report.Parts)
            {
                if (part.Status == PartStatus.Open) page.Item("-", $"{part.Part.Name} may be {BenchWords.Either(part, part.Remaining)}: look at {Spelled(part.Steps[0].Row.Trait)}");
                if (part.Status == PartStatus.Unknown) page.Item("-", $"{part.Part.Name}: check what was seen and measured once more");
                if (part.Status == PartStatus.Alike && report.Fits.IsEmpty) page.Item("-", $"{part.Part.Name} stays {BenchWords.Either(part, part.Remaining)}: try each with --fit");
            }
        }

        public void Legend()
        {
            if (used.Count > 0) page.Heading("How");
            foreach (var means in used) page.Item("-", BenchWords.HowTo(means));
            PageEnding.Cautions(
                page, ["A hole may be worn, or drilled out since, and parts are restamped: what oil passes through decides, not the mark.", Cautions.WhoDecides]);
        }

        private string Example(Step step)
        {
            var trait = step.Row.Trait;
            return step.Outcomes[0].Answer switch
            {
                Answer.Sizes sizes => $"--measured {ShellWord.Of($"{report.Reader.Spelled(trait, trait.Phrase)}={BenchWords.Of(new Answer.Sizes([sizes.All[0]]), units)}")}",
                Answer.Number number => $"--seen {ShellWord.Of(report.Reader.Spelled(trait, BenchWords.Count(trait, number.Value, units)))}",
                _ => $"--seen {ShellWord.Of(report.Reader.Spelled(trait, trait.Phrase))}",
            };
        }

        private static string Heading(PartIdentity part)
        {
            var name = part.Part.Name;
            return part.Status switch
            {
                PartStatus.Settled => $"{name} is {Name(part, part.Remaining[0])}",
                PartStatus.Alike => $"{name} is {BenchWords.Either(part, part.Remaining)}; nothing tells them apart",
                PartStatus.Unknown => $"{name}: no known revision has this",
                _ when part.Excluded.IsEmpty => $"{name}: {BenchWords.Either(part, part.Remaining)}",
                _ => $"{name}: cannot tell yet, {BenchWords.Either(part, part.Remaining)}",
            };
        }

        private void Contradicted(PartIdentity part)
        {
            var nearest = part.Nearest;
            foreach (var revision in nearest) page.Line($"nearest is {Name(part, revision.Revision)}: on it, {Against(revision)}", indent: 2);
            foreach (var revision in part.Excluded.Except(nearest)) page.Line($"not {Name(part, revision.Revision)}: on it, {Against(revision)}", indent: 2);
            page.Line("The part may be reworked or worn, or of a revision that the file does not know.", indent: 2);
        }

        // What the revision has instead of what was told.
        private string Against(ExcludedRevision revision) =>
            string.Join("; ", revision.By.Select(observation => BenchWords.Of(observation.Row, revision.Revision, units)).Distinct());

        private void Question(PartIdentity part, Step step)
        {
            var trait = step.Row.Trait;
            used.Add(trait.Means);
            page.Item($"{step.Number}.", 2, null, ($"{BenchWords.Of(trait.Means)}: ", Page.Plain), (Spelled(trait), Page.Strong), (Detail(trait), Page.Plain));
            var width = step.Outcomes.Max(outcome => Cells.Of(Found(outcome, trait)));
            foreach (var outcome in step.Outcomes)
            {
                var found = Found(outcome, trait);
                var then = outcome.Next is { } next ? $"; go on with question {next}" : outcome.Revisions.Length > 1 ? "; nothing tells them apart" : "";
                page.Item(found + new string(' ', width - Cells.Of(found)) + " ", $"{part.Part.Name} {BenchWords.Either(part, outcome.Revisions)}{then}", indent: 5);
                if (outcome == step.Outcomes[0] && !step.Same.IsEmpty) page.Item(new string(' ', width + 1), Also(step), indent: 5);
            }
        }

        // What else is found where the first answer is given; the opposite goes with the other answers.
        private string Also(Step step)
        {
            var where = step.Outcomes[0].Revisions[0];
            var others = step.Same.OrderBy(row => row.Trait.Means).ThenBy(row => row.Answers[where] == Answer.No).ToList();
            foreach (var row in others.Take(MostAlternatives)) used.Add(row.Trait.Means);
            var more = others.Count > MostAlternatives ? "; and more below" : "";
            return $"(and {string.Join("; ", others.Take(MostAlternatives).Select(row => Alternative(row, row.Answers[where])))}{more})";
        }

        private string Alternative(TraitRow row, Answer answer)
        {
            var name = Spelled(row.Trait);
            var how = row.Trait.Means is Means.Look or Means.Count ? "" : $", {BenchWords.Of(row.Trait.Means)}";
            return answer switch
            {
                Answer.YesNo { Value: true } => name + how,
                Answer.YesNo => $"{(IsQuoted(row.Trait) ? "not" : "no")} {name}{how}",
                Answer.Number number => BenchWords.Count(row.Trait, number.Value, units),
                _ => $"{name}: {BenchWords.Of(answer, units)}{how}",
            };
        }

        private string Found(Outcome outcome, Trait trait) => BenchWords.Found(outcome.Answer, trait, units);

        private void Alike(PartIdentity part, LookAlikes alike)
        {
            var who = BenchWords.Either(part, alike.Revisions);
            foreach (var row in alike.TooClose)
            {
                used.Add(row.Trait.Means);
                var sizes = string.Join(", ", alike.Revisions.Select(revision => $"{Name(part, revision)} {BenchWords.Of(row.Answers[revision], units)}"));
                page.Line($"{who}: {row.Trait.Phrase} is too close to tell for sure ({sizes}); a finer gauge and --tolerance may", indent: 2);
            }

            page.Line(alike.Unseen.IsEmpty ? $"{who}: the file gives no difference that shows."
                : $"{who} differ in what does not show: {string.Join("; ", alike.Unseen)}", indent: 2);
        }

        private void Differences(PartIdentity part)
        {
            var rows = part.Differing(report.Tolerance);
            if (rows.Length < 2) return;
            foreach (var row in rows) used.Add(row.Trait.Means);
            page.Blank();
            var cells = rows.Select(row => part.Remaining.Select(revision => BenchWords.Of(row.Answers[revision], units)).ToList()).ToList();
            var widths = part.Remaining.Select((revision, i) => Math.Max(Cells.Of(Name(part, revision)), cells.Max(row => Cells.Of(row[i])))).ToList();
            var how = rows.Max(row => Cells.Of(BenchWords.Of(row.Trait.Means)));
            if (widths.Sum(width => width + Gap) + how + Gap + NarrowestName + 2 > page.Options.Width) Listed(part, rows);
            else Table(part, rows, cells);
        }

        private void Table(PartIdentity part, ImmutableArray<TraitRow> rows, List<List<string>> cells)
        {
            var table = Page.Table();
            table.AddColumn(page.Column("what differs", wrap: true));
            table.AddColumn(page.Column("how"));
            foreach (var revision in part.Remaining) table.AddColumn(page.Column([Name(part, revision)], $"{part.Part.Name} {Name(part, revision)}"));
            foreach (var (row, answers) in rows.Zip(cells))
                table.AddRow([page.Cell(BenchWords.Name(row.Trait, units) + Detail(row.Trait)), page.Cell(BenchWords.Of(row.Trait.Means)), .. answers.Select(answer => page.Cell(answer))]);
            page.Put(table, indent: 2);
        }

        private void Listed(PartIdentity part, ImmutableArray<TraitRow> rows)
        {
            foreach (var row in rows)
            {
                var answers = part.Remaining.GroupBy(revision => BenchWords.Of(row.Answers[revision], units))
                    .Select(same => $"{same.Key} on {string.Join(", ", same.Select(revision => Name(part, revision)))}");
                page.Item("-", $"{BenchWords.Name(row.Trait, units)}{Detail(row.Trait)} ({BenchWords.Of(row.Trait.Means)}): {string.Join("; ", answers)}");
            }
        }

        // A count is asked for without a number; what it came to is then said with one.
        private string Spelled(Trait trait) => trait.Means == Means.Count ? $"how many {BenchWords.Phrase(trait, units)}"
            : IsQuoted(trait) ? $"\"{report.Reader.Spelled(trait, trait.Phrase)}\"" : trait.Phrase;

        // An author's words, and what must be typed with its part before it.
        private bool IsQuoted(Trait trait) => trait.Key.Kind == TraitKind.Mark || report.Reader.Spelled(trait, trait.Phrase) != trait.Phrase;

        private string Told(Observation observation) => observation.Kind == ObservationKind.Measured
            ? $"{observation.Row.Trait.Phrase}: {BenchWords.Of(observation.Answer, units)}"
            : PhraseWords.Of(observation.Meaning, units);

        private static string Detail(Trait trait) => trait.Detail is { } detail ? $" ({detail})" : "";

        private static string Name(PartIdentity part, int revision) => part.Part.Revisions[revision].Name;

        private static string Kind(ObservationKind kind) => kind == ObservationKind.Measured ? "measured" : "seen    ";
    }
}
