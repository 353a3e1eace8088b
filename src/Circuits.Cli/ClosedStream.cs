namespace Circuits.Cli;

/// <summary>What a program writes to whose caller has closed its output: it takes nothing.</summary>
internal sealed class ClosedStream : Stream
{
    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <summary>Refuses.</summary>
    /// <exception cref="UnauthorizedAccessException">Always: as of a stream that is closed.</exception>
    public override void Write(byte[] buffer, int offset, int count) => throw new UnauthorizedAccessException();
}
