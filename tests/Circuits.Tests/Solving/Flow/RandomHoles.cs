using Circuits.Solving.Flow;

namespace Circuits.Tests.Solving.Flow;

/// <summary>Networks of holes: nearly a tree, as circuits are, fed at its root and drained at its far ends.</summary>
internal static class RandomHoles
{
    /// <summary>Makes one.</summary>
    /// <param name="passages">How many cells, besides the sump; cell 1 is fed.</param>
    /// <param name="seed">The same seed gives the same network.</param>
    public static FlowNetwork Of(int passages, int seed)
    {
        var dice = new Random(seed);
        var elements = new List<FlowElement>();
        var ends = new bool[passages + 1];
        for (var cell = 2; cell <= passages; cell++)
        {
            var from = Math.Max(1, cell - 1 - dice.Next(8));
            elements.Add(Hole(from, cell, 1 + (2 * dice.NextDouble())));
            (ends[from], ends[cell]) = (false, true);

            // One in ten has a second way in.
            if (cell > 20 && dice.Next(10) == 0) elements.Add(Hole(cell - 1 - dice.Next(12), cell, 0.5 + dice.NextDouble()));
        }

        for (var cell = 2; cell <= passages; cell++)
        {
            if (ends[cell]) elements.Add(Hole(cell, 0, 0.4 + (0.6 * dice.NextDouble())));
        }

        return new FlowNetwork
        {
            Cells = passages + 1,
            Names = [.. Enumerable.Range(0, passages + 1).Select(cell => $"c{cell}")],
            Elements = [.. elements],
        }.Order();
    }

    /// <summary>A round hole.</summary>
    public static FlowElement Hole(int a, int b, double millimetres) =>
        new() { Kind = FlowKind.Orifice, A = a, B = b, Area = Math.PI / 4 * millimetres * millimetres * 1e-6, DependsOn = [a, b] };
}
