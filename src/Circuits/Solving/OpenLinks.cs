using Circuits.Networks;

namespace Circuits.Solving;

/// <summary>The links that are open for given positions, cell by cell. Holds work arrays; what is in them is overwritten by the next call.</summary>
/// <param name="plan">The compiled network.</param>
internal sealed class OpenLinks(Plan plan)
{
    private readonly bool[] open = new bool[plan.Links.Length];
    private readonly bool[] changed = new bool[plan.Cells];
    private bool isFirst = true;

    /// <summary>For each cell, one past the last of its entries; the first is where the plan has it.</summary>
    public int[] End { get; } = new int[plan.Cells];

    /// <summary>For each entry, the link.</summary>
    public int[] Link { get; } = new int[plan.Touching.Length];

    /// <summary>For each entry, the cell beyond.</summary>
    public int[] Other { get; } = new int[plan.Touching.Length];

    /// <summary>The cells beyond a cell's open links, in the order of the links.</summary>
    public ReadOnlySpan<int> From(int cell) => Other.AsSpan(plan.First[cell], End[cell] - plan.First[cell]);

    /// <summary>Finds what is open.</summary>
    /// <param name="positions">Where everything stands.</param>
    /// <param name="inputs">What the gear sets.</param>
    public void Set(Positions positions, GearInputs inputs)
    {
        // Most links are always open, and of the others few change from one solve to the next: only their cells are listed anew.
        Array.Fill(changed, isFirst);
        if (isFirst) Array.Fill(open, true);
        foreach (var i in plan.Gated)
        {
            ref readonly var link = ref plan.Links[i];
            var isOpen = IsOpen(link.Gate, positions, inputs);
            if (open[i] == isOpen) continue;
            open[i] = isOpen;
            changed[link.A] = changed[link.B] = true;
        }

        isFirst = false;
        for (var cell = 0; cell < End.Length; cell++)
        {
            if (changed[cell]) List(cell);
        }
    }

    private void List(int cell)
    {
        var end = plan.First[cell];
        for (var k = end; k < plan.First[cell + 1]; k++)
        {
            var link = plan.Touching[k];
            if (!open[link]) continue;
            Link[end] = link;
            Other[end++] = plan.Beyond[k];
        }

        End[cell] = end;
    }

    /// <summary>Puts the same into another of the same network.</summary>
    public void CopyTo(OpenLinks other)
    {
        open.CopyTo(other.open, 0);
        other.isFirst = isFirst;
        End.CopyTo(other.End, 0);
        Link.CopyTo(other.Link, 0);
        Other.CopyTo(other.Other, 0);
    }

    private static bool IsOpen(in Gate gate, Positions positions, GearInputs inputs) => gate.Kind switch
    {
        GateKind.Open => true,
        GateKind.Valve => positions.Moved[gate.Element] == (gate.Position == 1),
        GateKind.Ball => positions.Balls[gate.Element] != gate.Position,
        GateKind.Solenoid => inputs.Fed[gate.Element] == (gate.Position == 1),
        GateKind.Lever => inputs.Lever == gate.Position,
        GateKind.Regulator => positions.Modes[gate.Element] == gate.Position,
        GateKind.Shut => false,
    };
}
