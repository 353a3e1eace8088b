using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Networks;

/// <summary>Turns an assembly into its network.</summary>
public static class NetworkBuilder
{
    /// <summary>Lays the assembly's parts together and links what oil can pass between.</summary>
    /// <param name="assembly">The assembly.</param>
    public static Network Build(Assembly assembly)
    {
        var draft = new Draft(assembly);
        return Build(draft, joint => JointStacker.Stack(assembly, joint, draft.Assume));
    }

    /// <summary>
    /// The network of an assembly whose joints are laid together already, without what nothing passes (metal) and without the
    /// assumptions made in those joints. Whoever asks how the oil goes, and not why, gets the same answers.
    /// </summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="stack">Each joint, laid together.</param>
    /// <param name="stock">Nodes that were made for other assemblies of the unit's own revisions, or null.</param>
    internal static Network BuildOpen(Assembly assembly, Func<Joint, StackedJoint> stack, NodeStock? stock = null) =>
        Build(new Draft(assembly) { SkipsMetal = true, Stock = stock }, stack);

    private static Network Build(Draft draft, Func<Joint, StackedJoint> stack)
    {
        PassageDrafter.Add(draft);
        foreach (var joint in draft.Assembly.Unit.Joints)
            draft.Joints.Add(JointDrafter.Add(draft, stack(joint)));
        if (!draft.SkipsMetal) PassageDrafter.AddWalls(draft);
        BallDrafter.Add(draft);
        var elements = new ElementDrafter(draft);
        elements.Add();
        draft.DropDeadOpenings();
        draft.MergePassThrough();
        draft.DropDeadSeats();
        return Finish(draft, elements);
    }

    private static Network Finish(Draft draft, ElementDrafter elements)
    {
        // Passages come first and are all kept, so they keep their numbers.
        var kept = draft.KeptNodes();
        var nodes = kept.Select((old, index) => old == index ? draft.Nodes[old] : draft.Nodes[old] with { Index = index }).ToImmutableArray();
        var renumbered = new NewNumbers(draft.Nodes.Count, kept);
        var seats = SeatsOf(draft);
        var links = draft.Edges.Select((edge, index) => edge.ToLink(index, renumbered)).ToImmutableArray();
        return new Network
        {
            Assembly = draft.Assembly,
            Nodes = nodes,
            Links = links,
            Passages = draft.Passages,
            Spools = [.. draft.Spools.Select(spool => spool.Renumbered(renumbered))],
            Balls = [.. draft.Balls.Select((ball, index) => ball.Numbered(seats[index], renumbered))],
            Regulators = [.. draft.Regulators.Select(regulator => regulator.Renumbered(renumbered))],
            Switches = [.. draft.Switches],
            LeverPositions = [.. draft.LeverPositions],
            Clutches = [.. draft.Clutches.Select(clutch => clutch.Renumbered(renumbered))],
            Screens = [.. draft.Screens.Select(screen => screen.Renumbered(renumbered))],
            Accumulators = [.. draft.Accumulators.Select(accumulator => accumulator.Renumbered(renumbered))],
            Stuck = [.. draft.Stuck],
            Pump = renumbered[elements.Pump],
            Findings = [.. draft.Findings.Distinct()],
            Assumptions = [.. draft.Assumptions.Distinct()],
        };
    }

    /// <summary>For each ball and seat the first link that it closes.</summary>
    private static int[][] SeatsOf(Draft draft)
    {
        int[][] seats = [.. draft.Balls.Select(ball => new int[ball.SeatCount])];
        for (var edge = draft.Edges.Count - 1; edge >= 0; edge--)
        {
            var gate = draft.Edges[edge].Gate;
            if (gate.Kind == GateKind.Ball) seats[gate.Element][gate.Position] = edge;
        }

        return seats;
    }
}
