namespace Circuits.Solving;

/// <summary>Cells that wait for their turn, first come, first served; so many in all between two clearings.</summary>
/// <param name="most">How many come at most.</param>
internal sealed class CellQueue(int most)
{
    private readonly int[] cells = new int[most];
    private int first;
    private int count;

    /// <summary>Lets all go.</summary>
    public void Clear() => first = count = 0;

    /// <summary>Adds one.</summary>
    public void Add(int cell) => cells[count++] = cell;

    /// <summary>Takes the next one, if any is left.</summary>
    public bool TryTake(out int cell)
    {
        var any = first < count;
        cell = any ? cells[first++] : -1;
        return any;
    }
}
