using System.Collections.Immutable;
using Circuits.Findings;
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
        AddPassages(draft);
        foreach (var joint in draft.Assembly.Unit.Joints)
            draft.Joints.Add(JointDrafter.Add(draft, stack(joint)));
        if (!draft.SkipsMetal) AddWalls(draft);
        BallDrafter.Add(draft);
        var elements = new ElementDrafter(draft);
        elements.Add();
        draft.DropDeadOpenings();
        draft.MergePassThrough();
        draft.DropDeadSeats();
        return Finish(draft, elements);
    }

    private static void AddPassages(Draft draft)
    {
        draft.AddNode(NodeKind.Exhaust, "exhaust", null, Place.None);
        foreach (var (part, revision) in draft.Parts)
        {
            var first = draft.Nodes.Count;
            draft.AddNodes(revision, revision.Passages.Length, (index, i) =>
            {
                var passage = revision.Passages[i];
                return new Node(index, NodeKind.Passage, new PassageName(part.Name, passage.Name).ToString(), passage.Circuit, passage.Place);
            });
            for (var i = 0; i < revision.Passages.Length; i++) draft.Passages[new PassageName(part.Name, revision.Passages[i].Name)] = first + i;
        }
    }

    private static void AddWalls(Draft draft)
    {
        foreach (var (part, revision) in draft.Parts)
        {
            foreach (var wall in Walls.Of(part, revision))
                draft.AddBlank(wall);
        }
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
            Spools = [.. elements.Spools.Select(spool => spool with
            {
                MovedBy = Renumber(spool.MovedBy, renumbered),
                HeldBy = Renumber(spool.HeldBy, renumbered),
            })],
            Balls = [.. draft.Balls.Select((ball, index) => new BallElement(ball.Name, renumbered[ball.Pocket], [.. seats[index]], ball.Source))],
            Regulators = [.. elements.Regulators.Select(regulator => regulator with
            {
                From = renumbered[regulator.From],
                Out = renumbered[regulator.Out],
                To = renumbered[regulator.To],
                Spills = [.. regulator.Spills.Select(node => renumbered[node])],
                SetBy = Renumber(regulator.SetBy, renumbered),
            })],
            Switches = [.. elements.Switches],
            LeverPositions = [.. elements.LeverPositions],
            Clutches = [.. elements.Clutches.Select(clutch => clutch with
            {
                Chamber = renumbered[clutch.Chamber],
                ReleaseChamber = renumbered[clutch.ReleaseChamber],
            })],
            Accumulators = [.. elements.Accumulators.Select(accumulator => accumulator with { Node = renumbered[accumulator.Node] })],
            Stuck = [.. elements.Stuck],
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

    private static ImmutableArray<Signal> Renumber(ImmutableArray<Signal> signals, NewNumbers renumbered) =>
        [.. signals.Select(signal => signal with { Node = renumbered[signal.Node] })];
}
