using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Networks;

namespace Circuits.Rendering.Drawing;

/// <summary>What a symbol of a circuit drawing stands for.</summary>
internal enum SymbolKind
{
    Pump,
    Passage,
    Meeting,
    Orifice,
    Joined,
    Leak,
    Ball,
    Valve,
    Lever,
    Spilling,
    Reducing,
    Switch,
    PressureSolenoid,
    Stuck,
    Screen,
    Accumulator,
    Clutch,
    Metal,
}

/// <summary>Passages that an element joins in one of its positions, as nodes; 0 is the sump.</summary>
internal sealed record Joining(ImmutableArray<int> Nodes);

/// <summary>One symbol of a circuit drawing: what it is, what it joins, and where it stands once it has been placed.</summary>
internal sealed class Symbol
{
    public required int Index { get; init; }

    public required SymbolKind Kind { get; init; }

    /// <summary>Its full name, as reports write it.</summary>
    public required string Name { get; init; }

    /// <summary>Its number among the network's elements of its kind; for passages and meetings, its node.</summary>
    public required int Element { get; init; }

    /// <summary>Its size or kind in words, under its name.</summary>
    public Phrase Detail { get; init; } = Phrase.Empty;

    /// <summary>What it joins, position by position: at rest, moved; the lever's positions; else empty.</summary>
    public ImmutableArray<ImmutableArray<Joining>> Positions { get; init; } = [];

    /// <summary>Whether it has a way to sump of its own.</summary>
    public bool Drains { get; set; }

    public List<Port> Ports { get; } = [];

    /// <summary>Rows of lettering above and below its figure.</summary>
    public int RowsAbove { get; set; }

    public int RowsBelow { get; set; }

    /// <summary>The figure, without lettering.</summary>
    public double FigureWidth { get; set; }

    public double FigureHeight { get; set; }

    public double Width { get; set; }

    public double Height { get; set; }

    public int Layer { get; set; }

    /// <summary>Upper left corner.</summary>
    public double X { get; set; }

    public double Y { get; set; }

    public double FigureX => X + ((Width - FigureWidth) / 2);

    public double FigureY => Y + (RowsAbove * DiagramSizes.Row);
}

/// <summary>Where a line meets a symbol.</summary>
internal sealed class Port(Symbol symbol, int node, string role)
{
    public Symbol Symbol { get; } = symbol;

    /// <summary>The node whose oil comes here; 0 is the sump.</summary>
    public int Node { get; } = node;

    /// <summary>What it is for: <c>in</c>, <c>out</c>, <c>pocket</c>, <c>seat 0</c>, <c>release</c>; empty where all are alike.</summary>
    public string Role { get; } = role;

    public bool OnLeft { get; set; }

    /// <summary>From the symbol's upper edge.</summary>
    public double Offset { get; set; }

    public double Y => Symbol.Y + Offset;

    /// <summary>Where the line meets the figure.</summary>
    public double X => OnLeft ? Symbol.FigureX : Symbol.FigureX + Symbol.FigureWidth;
}

/// <summary>A line between two symbols.</summary>
internal sealed class Wire(Port a, Port b, int node, int? link)
{
    public Port A { get; } = a;

    public Port B { get; } = b;

    /// <summary>The node whose oil it holds.</summary>
    public int Node { get; } = node;

    /// <summary>The network's link that it is part of, or null.</summary>
    public int? Link { get; } = link;

    /// <summary>Its corners, from left to right; set when the diagram is placed.</summary>
    public List<(double X, double Y)> Corners { get; } = [];

    public Port Left => A.Symbol.Layer < B.Symbol.Layer ? A : B;

    public Port Right => A.Symbol.Layer < B.Symbol.Layer ? B : A;
}

/// <summary>A circuit as symbols and lines.</summary>
internal sealed class Diagram(Network network)
{
    public Network Network { get; } = network;

    public List<Symbol> Symbols { get; } = [];

    public List<Wire> Wires { get; } = [];

    public double Width { get; set; }

    public double Height { get; set; }
}

/// <summary>Sizes that all parts of a circuit drawing share, in its units.</summary>
internal static class DiagramSizes
{
    public const double Type = 11;

    /// <summary>From one row of lettering to the next.</summary>
    public const double Row = 14;

    /// <summary>From one port to the next.</summary>
    public const double Pitch = 14;

    /// <summary>The pattern at the left of a passage.</summary>
    public const double Band = 14;
}
