using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Networks;

/// <summary>What a node of the network is.</summary>
public enum NodeKind
{
    /// <summary>The sump.</summary>
    Exhaust,

    /// <summary>A passage of a part.</summary>
    Passage,

    /// <summary>An opening at which more than two things meet.</summary>
    Opening,

    /// <summary>A clutch's chamber.</summary>
    Chamber,
}

/// <summary>A place that has one pressure.</summary>
/// <param name="Index">Its number; 0 is the sump.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its full name: <c>body.line</c>, <c>plate@22-23</c>.</param>
/// <param name="Circuit">The circuit it is meant to belong to; null for openings and the sump.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Node(int Index, NodeKind Kind, string Name, string? Circuit, Place Place);

/// <summary>What a link is.</summary>
public enum LinkKind
{
    /// <summary>A hole or slot in a sheet, or where castings meet face to face.</summary>
    Opening,

    /// <summary>An opening that a ball can close.</summary>
    Seat,

    /// <summary>A spool's port.</summary>
    ValvePort,

    /// <summary>A port of the manual valve.</summary>
    LeverPort,

    /// <summary>A solenoid's port.</summary>
    SolenoidPort,

    /// <summary>A regulator's port.</summary>
    RegulatorPort,

    /// <summary>A fixed hole inside a part.</summary>
    Restriction,

    /// <summary>A leak.</summary>
    Leak,

    /// <summary>From a passage to the chamber it feeds.</summary>
    Chamber,

    /// <summary>Metal: oil never passes. Kept because "stopped here" is an answer.</summary>
    Metal,
}

/// <summary>What decides whether a link is open.</summary>
public enum GateKind
{
    /// <summary>Always open.</summary>
    Open,

    /// <summary>Never open.</summary>
    Shut,

    /// <summary>Open while a spool is in a position (0 rest, 1 moved).</summary>
    Valve,

    /// <summary>Open unless a ball sits on that seat.</summary>
    Ball,

    /// <summary>Open while a switching solenoid is in a position (0 drained, 1 fed).</summary>
    Solenoid,

    /// <summary>Open while the manual valve is in a position.</summary>
    Lever,

    /// <summary>Open while a regulator is fully open that way (0 feeding, 2 relieving).</summary>
    Regulator,
}

/// <summary>What decides whether a link is open.</summary>
/// <param name="Kind">The kind of element that decides.</param>
/// <param name="Element">The element's number among its kind.</param>
/// <param name="Position">The position, or the seat.</param>
public readonly record struct Gate(GateKind Kind, int Element, int Position)
{
    /// <summary>Always open.</summary>
    public static Gate Open { get; } = new(GateKind.Open, 0, 0);

    /// <summary>Never open.</summary>
    public static Gate Shut { get; } = new(GateKind.Shut, 0, 0);
}

/// <summary>A way from one node to another.</summary>
/// <param name="Index">Its number.</param>
/// <param name="Kind">What it is.</param>
/// <param name="A">One end. For a seat: the ball's pocket side. For a regulator's port: the side its oil comes from.</param>
/// <param name="B">The other end.</param>
/// <param name="SquareMillimetres">Its area; infinite where it does not restrict.</param>
/// <param name="Gate">What opens it.</param>
/// <param name="Element">The element's name in reports: <c>plate@22</c>, <c>body.select</c>.</param>
/// <param name="Part">The part that has it.</param>
/// <param name="Revision">That part's revision.</param>
/// <param name="Detail">Its size in words (<c>hole 2.10 mm</c>), or, for metal, why no oil passes.</param>
/// <param name="Place">The line that it came from.</param>
public sealed record Link(
    int Index, LinkKind Kind, int A, int B, double SquareMillimetres, Gate Gate, string Element, string Part, string Revision,
    string Detail, Place Place)
{
    /// <summary>Its shape, where more than its area counts: a deep hole, a gap; null for all others.</summary>
    public Shape? Shape { get; init; }

    /// <summary>The end that is not <paramref name="node"/>.</summary>
    /// <param name="node">One end.</param>
    public int Other(int node) => node == A ? B : A;
}

/// <summary>A pressure that acts on a land or sets a regulator.</summary>
/// <param name="Node">Where it comes from; -1 when this assembly lacks that passage.</param>
/// <param name="Factor">Newtons per kilopascal for a spool, kilopascals per kilopascal for a regulator.</param>
public readonly record struct Signal(int Node, double Factor);

/// <summary>A two-position spool.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="MovedBy">Signals that move it, in newtons per kilopascal.</param>
/// <param name="HeldBy">Signals that hold it, in newtons per kilopascal.</param>
/// <param name="Springs">Net spring force that holds it, newtons.</param>
/// <param name="Source">The model's valve.</param>
public sealed record SpoolElement(
    string Name, ImmutableArray<Signal> MovedBy, ImmutableArray<Signal> HeldBy, double Springs, Valve Source);

/// <summary>A ball, with the seats that it can close.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Pocket">The node that it lies in.</param>
/// <param name="Seats">The links that it can close, pocket side first; may be empty when no seat seals.</param>
/// <param name="Source">The model's ball.</param>
public sealed record BallElement(string Name, int Pocket, ImmutableArray<int> Seats, Ball Source);

/// <summary>What kind of pressure-holding element a regulator is.</summary>
public enum RegulatorKind
{
    /// <summary>Gives a lower pressure than its supply.</summary>
    Reducing,

    /// <summary>Opens a passage to relieve it.</summary>
    Relief,

    /// <summary>Holds the pump's passage; the pump always gives enough in the static answer.</summary>
    Line,

    /// <summary>A pressure solenoid.</summary>
    Solenoid,
}

/// <summary>A regulator, or a pressure solenoid.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="From">The node that feeds it; for relief and line, the node it holds.</param>
/// <param name="Out">The node that it holds.</param>
/// <param name="To">Where it drains; -1 for none.</param>
/// <param name="Spring">Set pressure of the spring alone, kPa.</param>
/// <param name="SetBy">Signals that add to it.</param>
/// <param name="SquareMillimetres">Its port's full area.</param>
/// <param name="Solenoid">For a pressure solenoid, the model's solenoid; else null.</param>
/// <param name="Place">Where it is written.</param>
public sealed record RegulatorElement(
    string Name, RegulatorKind Kind, int From, int Out, int To, double Spring, ImmutableArray<Signal> SetBy,
    double SquareMillimetres, Solenoid? Solenoid, Place Place)
{
    /// <summary>For relief and line, every node that it spills to, in the order in which they open; empty otherwise.</summary>
    public ImmutableArray<int> Spills { get; init; } = [];

    /// <summary>Its spool, where it was measured.</summary>
    public RegulatorSpool? Spool { get; init; }
}

/// <summary>A switching solenoid.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Source">The model's solenoid.</param>
public sealed record SwitchElement(string Name, Solenoid Source);

/// <summary>A clutch with its chambers.</summary>
/// <param name="Clutch">The clutch, with what the chosen revisions change of it.</param>
/// <param name="Chamber">Its apply chamber's node; -1 when this assembly lacks the passage.</param>
/// <param name="ReleaseChamber">A servo's release chamber; -1 for none.</param>
/// <param name="ReleaseShare">Release area over apply area.</param>
public sealed record ClutchElement(Clutch Clutch, int Chamber, int ReleaseChamber, double ReleaseShare);

/// <summary>An accumulator.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Node">The node that fills it.</param>
/// <param name="Millilitres">What it takes up over its stroke.</param>
/// <param name="Source">The model's accumulator.</param>
public sealed record AccumulatorElement(string Name, int Node, double Millilitres, Accumulator Source);

/// <summary>An element that has stuck and is now no more than what it leaves open.</summary>
/// <param name="Name">Its full name.</param>
/// <param name="Position">How it has stuck, in words.</param>
/// <param name="Place">Where it is written.</param>
public sealed record StuckElement(string Name, string Position, Place Place);

/// <summary>One assembly as a graph: what oil can reach from where, and what decides it. Immutable.</summary>
public sealed class Network
{
    /// <summary>The assembly.</summary>
    public required Assembly Assembly { get; init; }

    /// <summary>The nodes; the first is the sump.</summary>
    public required ImmutableArray<Node> Nodes { get; init; }

    /// <summary>The links.</summary>
    public required ImmutableArray<Link> Links { get; init; }

    /// <summary>Two-position spools.</summary>
    public required ImmutableArray<SpoolElement> Spools { get; init; }

    /// <summary>Balls.</summary>
    public required ImmutableArray<BallElement> Balls { get; init; }

    /// <summary>Regulators and pressure solenoids.</summary>
    public required ImmutableArray<RegulatorElement> Regulators { get; init; }

    /// <summary>Switching solenoids.</summary>
    public required ImmutableArray<SwitchElement> Switches { get; init; }

    /// <summary>Names of the manual valve's positions.</summary>
    public required ImmutableArray<string> LeverPositions { get; init; }

    /// <summary>Clutches, in the order of the file.</summary>
    public required ImmutableArray<ClutchElement> Clutches { get; init; }

    /// <summary>Accumulators.</summary>
    public required ImmutableArray<AccumulatorElement> Accumulators { get; init; }

    /// <summary>Regulators that have stuck and regulate no more.</summary>
    public ImmutableArray<StuckElement> Stuck { get; init; } = [];

    /// <summary>The node that the pump feeds; -1 for none.</summary>
    public required int Pump { get; init; }

    /// <summary>What laying the parts together brought up.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Every size that was assumed.</summary>
    public required ImmutableArray<Assumption> Assumptions { get; init; }

    /// <summary>Passages by name.</summary>
    internal Dictionary<PassageName, int> Passages { get; init; } = [];

    /// <summary>The node of a passage, or -1 when this assembly lacks it.</summary>
    /// <param name="name">The passage.</param>
    public int FindNode(PassageName name) => name.IsExhaust ? 0 : Passages.GetValueOrDefault(name, -1);
}

/// <summary>A size that the file does not give.</summary>
/// <param name="Text">What was assumed, and why.</param>
/// <param name="Place">The element that lacks the size.</param>
public sealed record Assumption(string Text, Place Place);
