using Circuits.Laws;
using Circuits.Networks;

namespace Circuits.Solving.Flow;

/// <summary>What decides how far a flow element is open.</summary>
internal enum FlowKind
{
    /// <summary>Nothing: it is open.</summary>
    Orifice,

    /// <summary>A spool's travel.</summary>
    SpoolPort,

    /// <summary>A check ball, which lets oil in to its pocket and none out.</summary>
    CheckSeat,

    /// <summary>A two-way ball, which closes the seat with the lower pressure beyond.</summary>
    TwoWaySeat,

    /// <summary>A reducing regulator whose outlet is too low.</summary>
    FeedPort,

    /// <summary>A reducing regulator whose outlet is too high.</summary>
    DrainPort,

    /// <summary>A spilling regulator whose passage is too high.</summary>
    SpillPort,

    /// <summary>A screen's bypass, by the difference in pressure across the mesh.</summary>
    BypassPort,

    /// <summary>The length of a passage.</summary>
    Track,

    /// <summary>A law of its own: pumps, pipes, whatever else joins two places.</summary>
    Own,
}

/// <summary>Something that oil flows through from one cell to another.</summary>
internal sealed class FlowElement
{
    public required FlowKind Kind { get; init; }

    /// <summary>One end; flow from here to the other counts as positive. A seat's pocket side, a port's supply side.</summary>
    public required int A { get; init; }

    /// <summary>The other end.</summary>
    public required int B { get; init; }

    /// <summary>Area when fully open, m2.</summary>
    public required double Area { get; init; }

    /// <summary>Flow from the first end to the second by oil and pressure difference, Pa, of an element with a law of its own; slope zero or more.</summary>
    public Func<FlowConditions, double, LinkFlow>? Law { get; init; }

    /// <summary>Width and length of a slot, m; null for what is round or counts as round.</summary>
    public (double Width, double Length)? Slot { get; init; }

    /// <summary>Length of a track, m.</summary>
    public double Length { get; init; }

    /// <summary>The spool, ball or regulator that opens it, among its kind.</summary>
    public int Element { get; init; }

    /// <summary>The spool's position (0 rest, 1 moved), the ball's seat, or the place among a spilling regulator's outlets.</summary>
    public int Position { get; init; }

    /// <summary>The network's link, or -1.</summary>
    public int Link { get; init; } = -1;

    /// <summary>What the gear opens or shuts it by, if anything.</summary>
    public Gate Gate { get; init; } = Gate.Open;

    /// <summary>The cells whose pressure its flow depends on: both ends first, then those that open it.</summary>
    public required int[] DependsOn { get; init; }

    /// <summary>The same element between other cells.</summary>
    /// <param name="cellOf">The new cell of each old one.</param>
    public FlowElement Between(int[] cellOf) => new()
    {
        Kind = Kind,
        A = cellOf[A],
        B = cellOf[B],
        Area = Area,
        Law = Law,
        Slot = Slot,
        Length = Length,
        Element = Element,
        Position = Position,
        Link = Link,
        Gate = Gate,
        DependsOn = [.. DependsOn.Select(cell => cellOf[cell])],
    };

    /// <summary>For each of them, the place in the system of its share in the balance of <see cref="A"/>; -1 at the sump.</summary>
    public int[] PlacesA { get; set; } = [];

    /// <summary>The same for <see cref="B"/>.</summary>
    public int[] PlacesB { get; set; } = [];
}
