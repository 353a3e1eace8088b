using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// What oil passes between two passages without meeting a third: one link, or several in series through openings. Runs
/// side by side between the same two cells count as one opening with the sum of their areas.
/// </summary>
internal sealed class Runs
{
    private readonly GearSolution solution;
    private readonly Network network;
    private readonly int[] spots;
    private readonly Dictionary<(int, int), (double Area, List<string> Elements)> together = [];
    private readonly Dictionary<(int, int), List<Run>> abreast = [];

    public Runs(GearSolution solution)
    {
        this.solution = solution;
        network = solution.Network;
        spots = [.. network.Nodes.Select(node => solution.CellAt(node.Index))];
        JoinTwins();
        foreach (var link in network.Links)
        {
            Widen(link, link.A, link.B);
            Widen(link, link.B, link.A);
        }

        All = [.. Find().Where(run => run.SquareMillimetres > 0)];
        foreach (var between in All.Where(run => double.IsFinite(run.SquareMillimetres)).GroupBy(KeyOf)) abreast[between.Key] = Disjoint(between);
    }

    /// <summary>Every run, in both directions where oil passes both.</summary>
    public IReadOnlyList<Run> All { get; }

    /// <summary>The area of a run together with those beside it, mm2; infinite where nothing restricts.</summary>
    public double WidthOf(Run run) =>
        double.IsInfinity(run.SquareMillimetres) ? double.PositiveInfinity : abreast[KeyOf(run)].Sum(other => other.SquareMillimetres);

    /// <summary>The openings that restrict a run and those beside it, joined with <c>+</c>.</summary>
    public string ElementsOf(Run run) =>
        string.Join('+', abreast[KeyOf(run)].SelectMany(other => together[KeyOf(other.Narrowest)].Elements).Distinct());

    private static bool IsOpening(Node node) => node.Kind == NodeKind.Opening;

    private (int, int) KeyOf(Run run) => (spots[run.From], spots[run.To]);

    private (int, int) KeyOf(Step step) => (spots[step.From], spots[step.To]);

    /// <summary>
    /// Whether oil passes a link from one of its ends. While a chamber fills or empties, a check ball gives way to oil that
    /// comes from beyond its seat, and to none that comes from its pocket.
    /// </summary>
    private bool Passes(Link link, int from)
    {
        if (link.Gate.Kind == GateKind.Ball && network.Balls[link.Gate.Element].Seats.Length == 1) return from == link.B;
        return solution.IsOpen(link);
    }

    /// <summary>Openings that lie between the very same neighbours are one wider opening.</summary>
    private void JoinTwins()
    {
        var neighbours = new SortedDictionary<int, SortedSet<(int Cell, bool In, bool Out)>>();
        foreach (var link in network.Links)
        {
            Note(link.A, link.B, link);
            Note(link.B, link.A, link);
        }

        foreach (var twins in neighbours.GroupBy(pair => string.Join(' ', pair.Value)))
        {
            foreach (var (node, _) in twins) spots[node] = solution.CellAt(twins.First().Key);
        }

        void Note(int node, int other, Link link)
        {
            if (!IsOpening(network.Nodes[node]) || !(Passes(link, node) || Passes(link, other))) return;
            if (!neighbours.TryGetValue(node, out var set)) neighbours[node] = set = [];
            set.Add((solution.CellAt(other), Passes(link, other), Passes(link, node)));
        }
    }

    private void Widen(Link link, int from, int to)
    {
        if (!Passes(link, from)) return;
        var key = (spots[from], spots[to]);
        var (area, elements) = together.GetValueOrDefault(key, (0, []));
        if (!elements.Contains(link.Element)) elements.Add(link.Element);
        together[key] = (area + link.SquareMillimetres, elements);
    }

    private IEnumerable<Run> Find()
    {
        var leaving = network.Nodes.Select(_ => new List<Step>()).ToArray();
        foreach (var link in network.Links)
        {
            if (Passes(link, link.A)) leaving[link.A].Add(new Step(link.A, link.B, link));
            if (Passes(link, link.B)) leaving[link.B].Add(new Step(link.B, link.A, link));
        }

        return network.Nodes.Where(node => !IsOpening(node)).SelectMany(node => From(leaving, [], node.Index));
    }

    private IEnumerable<Run> From(List<Step>[] leaving, List<Step> before, int node)
    {
        foreach (var step in leaving[node])
        {
            if (before.Exists(earlier => spots[earlier.From] == spots[step.To])) continue;
            List<Step> steps = [.. before, step];
            if (!IsOpening(network.Nodes[step.To]))
            {
                yield return RunOf(steps);
                continue;
            }

            foreach (var run in From(leaving, steps, step.To)) yield return run;
        }
    }

    private Run RunOf(List<Step> steps)
    {
        var resistance = 0.0;
        var narrowest = steps[0];
        foreach (var step in steps)
        {
            var area = AreaOf(step);
            resistance += 1 / (area * area);
            if (area < AreaOf(narrowest)) narrowest = step;
        }

        return new Run(steps, narrowest, resistance > 0 ? 1 / Math.Sqrt(resistance) : double.PositiveInfinity);
    }

    private double AreaOf(Step step) =>
        double.IsInfinity(step.Link.SquareMillimetres) ? double.PositiveInfinity : together[KeyOf(step)].Area;

    /// <summary>The widest runs that share no opening with one another.</summary>
    private List<Run> Disjoint(IEnumerable<Run> runs)
    {
        var kept = new List<Run>();
        var used = new HashSet<int>();
        foreach (var run in runs.OrderByDescending(run => run.SquareMillimetres))
        {
            // Links side by side are in one another's area already; -1 stands for them.
            var through = run.Steps.Count == 1 ? [-1] : run.Steps.Skip(1).Select(step => spots[step.From]).ToArray();
            if (through.Any(used.Contains)) continue;
            used.UnionWith(through);
            kept.Add(run);
        }

        return kept;
    }
}

/// <summary>A way from one passage to another without a third between.</summary>
/// <param name="Steps">Its steps; those between the first and the last lie at openings.</param>
/// <param name="Narrowest">The step that restricts it most.</param>
/// <param name="SquareMillimetres">The area of the one hole that passes as much; infinite where nothing restricts.</param>
internal sealed record Run(IReadOnlyList<Step> Steps, Step Narrowest, double SquareMillimetres)
{
    /// <summary>The node it leaves.</summary>
    public int From => Steps[0].From;

    /// <summary>The node it enters.</summary>
    public int To => Steps[^1].To;
}
