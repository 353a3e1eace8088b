using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;

namespace Circuits.Rendering;

/// <summary>What may be wrong with a unit, and what to do next, as a page.</summary>
public static class DiagnoseText
{
    private const int MostClasses = 8;
    private const int MostMembers = 5;
    private const int MostTests = 3;
    private const int MostOutcomes = 5;

    /// <summary>The page; every line ends with a newline.</summary>
    /// <param name="report">The diagnosis.</param>
    /// <param name="advice">Tests; null where there is nothing to tell apart.</param>
    /// <param name="depth">How many tests deep the plan is shown; 0 for none.</param>
    /// <param name="options">How to lay it out.</param>
    public static string Of(DiagnosisReport report, TestAdvice? advice, int depth, TextOptions options)
    {
        var page = new Page(options);
        var writer = new Writer(page, report);
        writer.Head();
        writer.Answer();
        if (advice is not null) writer.Tests(advice, depth);
        writer.Rest();
        return page.ToString();
    }

    private sealed class Writer(Page page, DiagnosisReport report)
    {
        public void Head()
        {
            page.Item("unit    ", 0, null, (report.Assembly.Unit.Name, Page.Strong), ($" (data: {Words.Of(report.Assembly.Unit.Data)})", Page.Plain));
            page.Item("assembly", $"{Words.Of(report.Assembly)}{(report.Assembly.Matched is { } set ? $" ({set})" : "")}", indent: 0);
            foreach (var item in report.Evidence) page.Item("told    ", page.Words(item.Meaning), indent: 0);
        }

        public void Answer()
        {
            if (!report.Contradictions.IsEmpty)
            {
                page.Heading("Contradictory: no diagnosis is made");
                foreach (var pair in report.Contradictions)
                {
                    page.Item("-", 2, Page.Bad, ($"\"{pair.First.Text}\" and \"{pair.Second.Text}\" cannot both be true: {page.Words(pair.Why)}", Page.Plain));
                }

                page.Line("Look or measure again, and leave out the one that is wrong.", indent: 2);
                return;
            }

            if (report.SoundExplains)
            {
                page.Heading("Nothing to explain");
                page.Line(
                    $"This assembly does all of it without any fault. {Words.Count(report.Evidence.Length, "observation")} told; tell what is wrong with --complaint, or a reading that is out of the ordinary.",
                    indent: 2);
                return;
            }

            if (report.Explaining.IsEmpty) NothingExplains();
            else Classes("May be, likeliest first; what stands under one number no gauge and no drive tells apart", report.Explaining);
        }

        private void NothingExplains()
        {
            page.Heading("Nothing explains all of it");
            page.Line(
                $"{Words.Count(report.Faults, "single fault")} and {Words.Count(report.Pairs, "pair")} were tried. Something was told wrongly, or more than two things are wrong, or it is not the hydraulics.",
                indent: 2);
            if (!report.Conflict.IsEmpty)
            {
                page.Line(report.Conflict.Length == 1 ? "No single fault explains this at all:" : "No single fault explains these together; one of them may be told wrongly:", indent: 2);
                foreach (var item in report.Conflict) page.Item("-", page.Words(item.Meaning), indent: 4);
            }

            if (!report.Near.IsEmpty) Classes("Nearest, with what contradicts them", report.Near);
        }

        private void Classes(string heading, ImmutableArray<CandidateClass> classes)
        {
            page.Heading(heading);
            for (var i = 0; i < Math.Min(classes.Length, MostClasses); i++)
            {
                var known = classes[i];
                var first = known.First;
                var number = (i + 1).ToString(CultureInfo.InvariantCulture);
                var share = known.Share > 0 ? $" ({Percent(known.Share)})" : "";
                page.Item(number, 0, Page.Strong, (page.Words(first.Name), Page.Strong), (share, Page.Plain));
                Places(first);
                foreach (var member in known.Members.Skip(1).Take(MostMembers - 1))
                {
                    page.Item("or", page.Words(member.Name), indent: 2);
                    Places(member);
                }

                if (known.Members.Length > MostMembers) page.Line($"or {known.Members.Length - MostMembers} more that look the same", indent: 2);
                var explains = CandidateWords.Explains(first, report);
                if (!explains.IsEmpty && !first.ExplainsAll) page.Item("explains:", string.Join("; ", explains), indent: 4);
                foreach (var contradicted in CandidateWords.Contradicts(first, report)) page.Item("against:", 4, Page.Bad, (page.Words(contradicted), Page.Plain));
                var expects = CandidateWords.Expects(first, report);
                if (!expects.IsEmpty) page.Item("not told:", string.Join("; ", expects.Select(expected => page.Words(expected))), indent: 4);
                if (first.FromReadings(report.Evidence) is { } off) page.Line($"off the readings by {Measures.Pressure(off, page.Options.Units)}", indent: 4);
            }

            if (classes.Length > MostClasses) page.Line($"and {classes.Length - MostClasses} less likely; --format json has them all");
        }

        private void Places(Candidate candidate)
        {
            foreach (var fault in candidate.Faults.Where(fault => fault.Place != Place.None)) page.Line(fault.Place.ToString(), Page.Faint, indent: 4);
        }

        public void Tests(TestAdvice advice, int depth)
        {
            var best = advice.Best();
            page.Heading("Next");
            if (best.IsEmpty)
            {
                page.Line(advice.Candidates.Length == 1 ? "One candidate remains: look whether it is so." : "No test tells much more: look whether the first is so.", indent: 2);
                return;
            }

            var numbers = Numbers();
            for (var i = 0; i < Math.Min(MostTests, best.Length); i++)
            {
                var test = best[i];
                page.Item(i == 0 ? "1st" : "or ", 0, i == 0 ? Page.Strong : Page.Plain, (page.Words(test.Text), i == 0 ? Page.Strong : Page.Plain), (string.Create(CultureInfo.InvariantCulture, $" ({test.Bits:0.00} bits, {test.Cost:0.#} min)"), Page.Plain));
                foreach (var outcome in test.Outcomes.Take(MostOutcomes)) page.Item("-", $"{page.Words(outcome.Text)} ({Percent(outcome.Share)}): {Numbered(outcome.Members, advice, numbers)}", indent: 4);
                if (test.Outcomes.Length > MostOutcomes) page.Line($"and {test.Outcomes.Length - MostOutcomes} more outcomes", indent: 4);
            }

            if (depth <= 0) return;
            page.Heading("Plan");
            page.Put(Step(advice.Plan(depth), advice, numbers), indent: 2);
        }

        private Outline Step(PlanStep step, TestAdvice advice, Dictionary<Candidate, int> numbers)
        {
            if (step.Test is not { } test)
                return new Outline(((step.Remaining.Length > 1 ? "one of " : "") + Numbered(step.Remaining, advice, numbers), Page.Plain));
            var outline = new Outline((page.Words(test.Text), Page.Strong));
            for (var i = 0; i < test.Outcomes.Length; i++)
            {
                var outcome = new Outline(($"{page.Words(test.Outcomes[i].Text)} ({Percent(test.Outcomes[i].Share)})", Page.Plain));
                outcome.Below.Add(Step(step.Branches[i], advice, numbers));
                outline.Below.Add(outcome);
            }

            return outline;
        }

        private string Numbered(ImmutableArray<int> members, TestAdvice advice, Dictionary<Candidate, int> numbers)
        {
            if (members.Length == 1) return page.Words(advice.Candidates[members[0]].Name);
            var known = members.Select(index => advice.Candidates[index]).Where(candidate => candidate.Mechanical is null)
                .Select(candidate => numbers[candidate]).Distinct().Order().ToList();
            var text = string.Join(", ", known.Take(12).Select(number => number.ToString(CultureInfo.InvariantCulture)));
            var more = known.Count > 12 ? $" and {known.Count - 12} more" : "";
            return text + more + string.Concat(members.Select(index => advice.Candidates[index].Mechanical).OfType<string>().Select(other => $", or {other}"));
        }

        private Dictionary<Candidate, int> Numbers()
        {
            var numbers = new Dictionary<Candidate, int>(ReferenceEqualityComparer.Instance);
            for (var i = 0; i < report.Explaining.Length; i++)
            {
                foreach (var member in report.Explaining[i].Members) numbers[member] = i + 1;
            }

            return numbers;
        }

        public void Rest()
        {
            if (!report.LookAlikes.IsEmpty && report.Contradictions.IsEmpty)
            {
                page.Heading("What hydraulics cannot explain, and looks the same");
                foreach (var sentence in report.LookAlikes) page.Item("-", page.Words(sentence));
            }

            page.Heading("How sure");
            if (report.Faults > 0)
            {
                page.Item("-", $"looked at: {Words.Count(report.Faults, "single fault")}, {Words.Count(report.Pairs, "pair")}{(report.PairsComplete ? "" : "; pairs that only together do something, or are unlikely, may be missed")}");
                if (!report.Silent.IsEmpty) page.Item("-", $"{Words.Count(report.Silent.Length, "fault")} of these no driver and no gauge notices; they stay possible whatever is driven or read");
            }

            page.Item("-", "shares follow from weights that are judgement (faults: in the file) and from "
                + (report.Mode == JudgeMode.Quick || report.Points.IsEmpty ? "the static answer, with a pump that always gives enough"
                    : $"what flows at {string.Join(", ", report.Points.Select(point => page.Words(point.InFull)))}")
                + (report.Flowing ? ", but for readings that say at which speed or temperature: those of the likeliest are worked out with oil flowing" : ""));
            PageEnding.Cautions(page, [Cautions.Measuring, Cautions.WhoDecides]);
        }

        private static string Percent(double share) =>
            share is > 0 and < 0.005 ? "under 1 %" : share is > 0.995 and < 1 ? "over 99 %" : string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} %");
    }
}
