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

    /// <summary>A screen's mesh.</summary>
    Screen,

    /// <summary>A screen's bypass.</summary>
    Bypass,

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
/// <param name="Detail">Its size (<c>hole 2.1 mm</c>), or, for metal, why no oil passes.</param>
/// <param name="Place">The line that it came from.</param>
/// <param name="Shape">Its shape, where more than its area counts: a deep hole, a gap; null for all others.</param>
public sealed record Link(
    int Index, LinkKind Kind, int A, int B, double SquareMillimetres, Gate Gate, string Element, string Part, string Revision,
    Phrase Detail, Place Place, Shape? Shape)
{
    /// <summary>The end that is not <paramref name="node"/>.</summary>
    /// <param name="node">One end.</param>
    public int Other(int node) => node == A ? B : A;
}

/// <summary>One assembly as a graph: what oil can reach from where, and what decides it. Immutable.</summary>
public sealed partial class Network
{
    /// <summary>The assembly.</summary>
    public required Assembly Assembly { get; init; }

    /// <summary>The nodes; the first is the sump.</summary>
    public required ImmutableArray<Node> Nodes { get; init; }

    /// <summary>The links.</summary>
    public required ImmutableArray<Link> Links { get; init; }

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
public sealed record Assumption(Phrase Text, Place Place)
{
    /// <summary>A size that the file does not give.</summary>
    /// <param name="text">What was assumed, and why.</param>
    /// <param name="place">The element that lacks the size.</param>
    public Assumption(PhraseBuilder text, Place place)
        : this(text.ToPhrase(), place)
    {
    }
}
