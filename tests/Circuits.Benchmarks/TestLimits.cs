using System.Collections.Immutable;
using System.Globalization;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Studies.Advice;
using Circuits.Studies.Diagnosis;

namespace Circuits.Benchmarks;

/// <summary>
/// How many tests it takes to find a single fault when the advice is followed, against the best tree of tests there is, found exactly by trying
/// every test in every state. It begins with what the driver felt in every gear.
/// </summary>
internal static class TestLimits
{
    /// <summary>States beyond this are too many to be exact; such a beginning is left out, and told.</summary>
    private const int MostCandidates = 22;

    public delegate void Limit(string what, bool kept, ref int missed);

    public static void Run(EffectSolver solver, int threads, Limit limit, ref int missed)
    {
        var singles = solver.Singles(threads);
        var reader = new EvidenceReader(solver.Judge);
        var gears = solver.Unit.Gears;
        var begun = Enumerable.Range(0, singles.Length)
            .GroupBy(i => string.Join('\n', singles[i].Select((effect, gear) => Complaints.Of(effect, gears[gear].Name) is { } words ? PhraseWords.Of(words) : "")))
            .Where(group => group.Key.Trim('\n').Length > 0).ToList();
        foreach (var uniform in (bool[])[true, false])
        {
            var (followed, best, weight, left, faults) = (0.0, 0.0, 0.0, 0, 0);
            foreach (var group in begun)
            {
                ImmutableArray<Evidence> told =
                [
                    .. singles[group.First()].Select((effect, gear) => effect.Kind == FeelKind.AsItShould
                        ? reader.Healthy(gears[gear].Name).Evidence! : reader.Complaint(PhraseWords.Of(Complaints.Of(effect, gears[gear].Name)!)).Evidence!),
                ];
                var report = DiagnosisStudy.Run(solver, told, new DiagnosisOptions { Pairs = false, Threads = threads });
                Func<TestKind, double> cost = uniform ? static _ => 1 : solver.Unit.TestCosts.Of;
                ImmutableArray<Candidate> candidates = [.. report.Explaining.SelectMany(known => known.Members)];
                if (candidates.Length > MostCandidates)
                {
                    left++;
                    continue;
                }

                var sources = new ITestSource[] { new GaugeTests(solver.Unit, []), new AirTests(solver.Assembly, []), new BenchTests() };
                var weights = candidates.Select(candidate => Math.Exp(candidate.Score)).ToArray();
                var tree = new Trees(new TestAdvice(candidates, sources, cost), [.. sources.SelectMany(source => source.Propose(candidates))], weights, cost);
                var all = (1 << candidates.Length) - 1;
                var sum = weights.Sum();
                followed += sum * tree.Followed(all);
                best += sum * tree.Best(all);
                weight += sum;
                faults += candidates.Length;
            }

            var what = uniform ? "tests" : "minutes";
            limit(
                string.Create(CultureInfo.InvariantCulture, $"rill, following the advice: {followed / weight:0.00} {what} on average, the best tree of tests {best / weight:0.00}: {followed / best:0.000} times as many (1.3); {begun.Count - left} beginnings of {faults} candidates, {left} too large to be exact"),
                followed <= 1.3 * best, ref missed);
        }
    }

    /// <summary>Trees of tests over sets of candidates, written as bits.</summary>
    private sealed class Trees(TestAdvice advice, ImmutableArray<ProposedTest> tests, double[] weights, Func<TestKind, double> cost)
    {
        private readonly Dictionary<int, double> best = [];
        private readonly ImmutableArray<(double Cost, ImmutableArray<int> Parts)> cuts =
        [
            .. tests.Where(test => test.Outcomes.Distinct().Skip(1).Any()).Select(test => (cost(test.Kind),
                test.Outcomes.Select((outcome, i) => (outcome, i)).GroupBy(pair => pair.outcome).Select(group => group.Aggregate(0, (bits, pair) => bits | (1 << pair.i))).ToImmutableArray())),
        ];

        /// <summary>The least cost on average until nothing more can be told apart.</summary>
        public double Best(int set)
        {
            if (int.PopCount(set) < 2) return 0;
            if (best.TryGetValue(set, out var known)) return known;
            var least = double.PositiveInfinity;
            foreach (var (price, parts) in cuts)
            {
                if (parts.Any(part => (part & set) == set)) continue;
                var sum = price;
                foreach (var part in parts.Select(part => part & set).Where(part => part != 0)) sum += Weight(part) / Weight(set) * Best(part);
                least = Math.Min(least, sum);
            }

            return best[set] = double.IsInfinity(least) ? 0 : least;
        }

        /// <summary>The cost on average when the first advice is followed every time, the last bit of doubt too.</summary>
        public double Followed(int set)
        {
            ImmutableArray<int> members = [.. Enumerable.Range(0, weights.Length).Where(i => (set & (1 << i)) != 0)];
            if (members.Length < 2 || advice.All(members) is not [var test, ..]) return 0;
            return test.Cost + test.Outcomes.Sum(outcome => outcome.Share * Followed(outcome.Members.Aggregate(0, (bits, i) => bits | (1 << i))));
        }

        private double Weight(int set)
        {
            var sum = 0.0;
            for (var i = 0; i < weights.Length; i++) sum += (set & (1 << i)) != 0 ? weights[i] : 0;
            return sum;
        }
    }
}
