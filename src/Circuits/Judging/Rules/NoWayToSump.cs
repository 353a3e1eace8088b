using Circuits.Findings;
using Circuits.Networks;
using Circuits.Quantities;
using Circuits.Solving;

namespace Circuits.Judging.Rules;

/// <summary>The rule <c>no-way-to-sump</c>.</summary>
internal sealed class NoWayToSump : AssemblyRule
{
    /// <summary>Less pressure than this, kPa, is none that was shut in.</summary>
    private const double Least = 1;

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "no-way-to-sump", Severity.Error,
        Meaning: "In a matched set, a passage that was fed in one gear is joined to neither supply nor sump in the next: nothing lets its oil out.",
        OnTheRoad: "A clutch would stay on, or a valve stay moved, until the oil has leaked away. No unit is built so: the file lacks a drain.",
        Example: "1 from 2: body.second keeps 620 kPa: body.select, which fed it, has no drain there at rest.",
        Mend: "Look at the valve that is named in the real casting, and add the drain that the file lacks to its port.");

    /// <inheritdoc/>
    public override void Find(AssemblyContext assembly, List<Finding> found)
    {
        if (assembly.Solved.Network.Assembly.Matched is null) return;
        var gears = assembly.Solved.Gears;
        var told = new HashSet<(string? By, int Cell)>();
        for (var i = 0; i < gears.Length; i++)
        {
            foreach (var (before, now) in Starts(assembly.Solved, i))
            {
                foreach (var node in now.Network.Nodes)
                {
                    if (node.Kind == NodeKind.Passage && IsShutIn(now, node.Index)) Tell(before, now, node.Index);
                }
            }

            void Tell(SolvedGear before, GearSolution now, int node)
            {
                // What hangs together is told once, at the passage that the element fed.
                var feeding = FedThrough(before.Solution, now, node);
                var kept = feeding is null ? node : IsShutIn(now, feeding.A) ? feeding.A : feeding.B;
                if (!told.Add((feeding?.Element, feeding is null ? now.CellAt(node) : -1))) return;
                var by = feeding is null ? Phrase.Empty : Phrase.Of($": {feeding.Element}, which fed it, gives it no drain");
                found.Add(Rule.At(
                    feeding?.Place ?? gears[i].Gear.Place,
                    $"{gears[i].Gear.Name} from {before.Gear.Name}: {now.Network.Nodes[kept].Name} keeps {new Pressure(now.PressureAt(kept))}{by}") with
                {
                    Gear = gears[i].Gear.Name,
                });
            }
        }
    }

    private static bool IsShutIn(GearSolution now, int node) => now.OilAt(node) == OilState.Trapped && now.PressureAt(node) > Least;

    /// <summary>A gear's answers with the gears that they were reached from: the declared one, and others that lead elsewhere.</summary>
    private static IEnumerable<(SolvedGear Before, GearSolution Now)> Starts(SolvedAssembly solved, int gear)
    {
        var states = solved.Gears.Select(each => each.Gear).ToArray();
        if (AssemblySolver.Before([.. states], gear) is var before and >= 0) yield return (solved.Gears[before], solved.Gears[gear].Solution);
        foreach (var other in solved.Gears[gear].Others)
        {
            if (other.From is { } from) yield return (solved.Gears.First(each => each.Gear.Name == from), other.Solution);
        }
    }

    /// <summary>On the way by which a passage was fed, the element nearest to it that feeds it no more.</summary>
    private static Link? FedThrough(GearSolution before, GearSolution now, int node) =>
        new Ways().Of(before).Supply(node)?.Select(step => step.Link).LastOrDefault(link => link.Gate.Kind != GateKind.Open && !now.IsOpen(link));
}
