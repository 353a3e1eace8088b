using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>What opens a link of the brute-force network.</summary>
internal enum BruteGate
{
    Always,
    Spool,
    Ball,
    Regulator,
}

/// <summary>A link between two cells: open always, or while an element stands in a position.</summary>
internal sealed record BruteLink(int A, int B, double Area, BruteGate Gate, int Element, int Position);

internal sealed record BruteSpool(string Name, ImmutableArray<(int Cell, double Factor)> Moving, ImmutableArray<(int Cell, double Factor)> Holding, double Springs);

/// <summary>A ball with the cells beyond the seats that it can close.</summary>
internal sealed record BruteBall(string Name, int Pocket, ImmutableArray<int> Beyond);

internal enum BruteKind
{
    Reducing,
    Relief,
    Line,
}

internal sealed record BruteRegulator(
    string Name, BruteKind Kind, int From, int Out, int To, double Spring, ImmutableArray<(int Cell, double Factor)> SetBy, double Area)
{
    /// <summary>For a pressure solenoid what the gear commands; else not a number.</summary>
    public double Command { get; init; } = double.NaN;
}

/// <summary>
/// One assembly in one gear as cells and links, derived from a spec by the definitions alone; shares no code with the
/// product. Cell 0 is the sump. An opening is a star: each thing that touches it does so through its area times the root
/// of two, so that in by one contact and out by another is just its area.
/// </summary>
internal sealed record BruteNetwork
{
    public required int Cells { get; init; }

    /// <summary>The cell of every passage of the assembly.</summary>
    public required ImmutableDictionary<Ref, int> CellOf { get; init; }

    public required ImmutableArray<BruteLink> Links { get; init; }

    public required ImmutableArray<BruteSpool> Spools { get; init; }

    public required ImmutableArray<BruteBall> Balls { get; init; }

    public required ImmutableArray<BruteRegulator> Regulators { get; init; }

    /// <summary>The pump's cell, or -1; and what it holds when nothing regulates it.</summary>
    public required int Pump { get; init; }

    public required double Unregulated { get; init; }

    /// <summary>Cells whose pressure the gear fixes.</summary>
    public required ImmutableDictionary<int, double> Given { get; init; }

    /// <summary>Cells that hold no passage: openings where three or more things meet.</summary>
    public required ImmutableHashSet<int> Nameless { get; init; }

    public int Combinations =>
        (int)Math.Min(1e9, Math.Pow(2, Spools.Length) * Balls.Aggregate(1, (product, ball) => product * (ball.Beyond.IsEmpty ? 1 : 2))
            * Math.Pow(3, Regulators.Count(regulator => regulator.Kind != BruteKind.Line)));

    public static BruteNetwork Of(UnitSpec unit, ImmutableArray<string> choice, GearSpec gear) => new BruteBuilder(unit, choice, gear).Build();
}
