namespace Circuits.Solving.Flow;

/// <summary>An order of elimination that keeps a sparse system sparse.</summary>
internal static class SparseOrder
{
    /// <summary>
    /// Minimum degree: the unknown that touches fewest others goes first, and those it touches then touch one another. Ties
    /// go to the lower number, so that the order is always the same.
    /// </summary>
    /// <param name="count">How many unknowns there are.</param>
    /// <param name="pairs">Unknowns that touch; either order, repeats allowed.</param>
    /// <returns>The order, and for each unknown those after it that it touches when its turn comes, in the order of elimination.</returns>
    /// <remarks>Source: A. George and J. W. H. Liu, The evolution of the minimum degree ordering algorithm, SIAM Review 31 (1989).</remarks>
    public static (int[] Order, int[][] Later) Of(int count, IEnumerable<(int A, int B)> pairs)
    {
        var touching = new HashSet<int>[count];
        for (var i = 0; i < count; i++) touching[i] = [];
        foreach (var (a, b) in pairs)
        {
            if (a == b) continue;
            touching[a].Add(b);
            touching[b].Add(a);
        }

        var queue = new SortedSet<(int Degree, int Unknown)>();
        for (var i = 0; i < count; i++) queue.Add((touching[i].Count, i));
        var order = new int[count];
        var later = new int[count][];
        for (var k = 0; k < count; k++)
        {
            var (degree, pivot) = queue.Min;
            queue.Remove((degree, pivot));
            order[k] = pivot;
            later[pivot] = [.. touching[pivot]];
            Eliminate(pivot, touching, queue);
        }

        var turn = new int[count];
        for (var k = 0; k < count; k++) turn[order[k]] = k;
        foreach (var row in later) Array.Sort(row, (a, b) => turn[a].CompareTo(turn[b]));
        return (order, later);
    }

    private static void Eliminate(int pivot, HashSet<int>[] touching, SortedSet<(int Degree, int Unknown)> queue)
    {
        var met = touching[pivot];
        foreach (var a in met)
        {
            var before = touching[a].Count;
            touching[a].Remove(pivot);
            foreach (var b in met)
            {
                if (a != b) touching[a].Add(b);
            }

            if (touching[a].Count == before) continue;
            queue.Remove((before, a));
            queue.Add((touching[a].Count, a));
        }
    }
}
