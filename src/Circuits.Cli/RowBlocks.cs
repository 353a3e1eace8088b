using System.Text;

namespace Circuits.Cli;

/// <summary>
/// Gathers pieces of text into blocks of whole pieces, small enough that a pipe takes each block at once: whoever breaks the
/// command off, or stops reading, never sees part of a piece.
/// </summary>
/// <param name="print">Writes a block.</param>
internal sealed class RowBlocks(Action<string> print)
{
    /// <summary>Bytes of a block: as much as a pipe takes at once (PIPE_BUF on Linux). A longer piece is a block of its own.</summary>
    public const int Size = 4096;

    private readonly StringBuilder block = new();
    private int bytes;

    /// <summary>Takes a piece.</summary>
    public void Add(string piece)
    {
        var more = Encoding.UTF8.GetByteCount(piece);
        if (bytes + more > Size) Flush();
        block.Append(piece);
        bytes += more;
    }

    /// <summary>Writes what is left.</summary>
    public void Flush()
    {
        if (block.Length == 0) return;
        var text = block.ToString();
        block.Clear();
        bytes = 0;
        print(text);
    }
}
