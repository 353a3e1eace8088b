namespace Circuits.Solving;

/// <summary>
/// Positions that were there before, as rows of numbers of one length. There are few, so each is compared with all;
/// once it has grown, nothing is allocated. Not for use by several threads at once.
/// </summary>
/// <param name="length">Numbers in a row.</param>
internal sealed class PositionLog(int length)
{
    private int[] rows = new int[8 * length];
    private int count;

    /// <summary>The row that <see cref="Add"/> adds; to be written by the caller.</summary>
    public Span<int> Next => rows.AsSpan(count * length, length);

    /// <summary>Forgets all rows.</summary>
    public void Clear() => count = 0;

    /// <summary>Adds the written row.</summary>
    /// <returns>Whether it was not there yet.</returns>
    public bool Add()
    {
        var written = Next;
        for (var row = 0; row < count; row++)
        {
            if (rows.AsSpan(row * length, length).SequenceEqual(written)) return false;
        }

        count++;
        if ((count + 1) * length > rows.Length) Array.Resize(ref rows, 2 * (count + 1) * length);
        return true;
    }
}
