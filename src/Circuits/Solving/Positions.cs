using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>Where everything that moves stands. Mutable while a gear is being solved.</summary>
internal sealed class Positions
{
    private Positions(bool[] moved, int[] balls, int[] modes, int line)
    {
        Moved = moved;
        Balls = balls;
        Modes = modes;
        Line = line;
    }

    /// <summary>For each spool, whether it is moved.</summary>
    public bool[] Moved { get; }

    /// <summary>For each ball, the seat it closes, or -1.</summary>
    public int[] Balls { get; }

    /// <summary>For each regulator, its mode (<see cref="RegulatorModes"/>).</summary>
    public int[] Modes { get; }

    /// <summary>The line regulator that governs: the one that sets lowest; -1 for none.</summary>
    public int Line { get; set; }

    /// <summary>Everything at rest: spools home unless stuck elsewhere, balls on their first seat, regulators open to their supply, bypasses shut.</summary>
    public static Positions AtRest(Plan plan)
    {
        var balls = new int[plan.Balls.Length];
        for (var i = 0; i < balls.Length; i++) balls[i] = plan.Balls[i].Seats.Length > 0 ? 0 : -1;
        var line = Array.FindIndex(plan.Regulators, regulator => regulator.Kind == RegulatorKind.Line);
        int[] modes = [.. plan.Regulators.Select(regulator => regulator.Kind == RegulatorKind.Bypass ? RegulatorModes.Relieving : RegulatorModes.Feeding)];
        return new Positions([.. plan.Spools.Select(spool => spool.Stuck == true)], balls, modes, line);
    }

    public Positions Copy() => new([.. Moved], [.. Balls], [.. Modes], Line);

    public void CopyFrom(Positions other)
    {
        other.Moved.CopyTo(Moved, 0);
        other.Balls.CopyTo(Balls, 0);
        other.Modes.CopyTo(Modes, 0);
        Line = other.Line;
    }

    /// <summary>Whether everything stands as in others of the same network.</summary>
    public bool IsAs(Positions other) =>
        Line == other.Line && Moved.AsSpan().SequenceEqual(other.Moved) && Balls.AsSpan().SequenceEqual(other.Balls) && Modes.AsSpan().SequenceEqual(other.Modes);

    /// <summary>How many numbers <see cref="WriteMechanical"/> writes.</summary>
    public int MechanicalLength => Moved.Length + Balls.Length;

    /// <summary>How many numbers <see cref="WriteRegulators"/> writes.</summary>
    public int RegulatorsLength => Modes.Length + 1;

    /// <summary>Writes where spools and balls stand, to notice when positions repeat.</summary>
    public void WriteMechanical(Span<int> row)
    {
        for (var i = 0; i < Moved.Length; i++) row[i] = Moved[i] ? 1 : 0;
        Balls.CopyTo(row[Moved.Length..]);
    }

    /// <summary>Writes what the regulators do.</summary>
    public void WriteRegulators(Span<int> row)
    {
        Modes.CopyTo(row);
        row[^1] = Line;
    }

    /// <summary>Whether spools and balls stand as they were written.</summary>
    public bool StandAs(ReadOnlySpan<int> row)
    {
        for (var i = 0; i < Moved.Length; i++)
        {
            if (row[i] != (Moved[i] ? 1 : 0)) return false;
        }

        return row[Moved.Length..].SequenceEqual(Balls);
    }
}
