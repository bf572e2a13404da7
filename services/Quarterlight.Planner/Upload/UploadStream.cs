namespace Quarterlight.Planner.Upload;

/// <summary>The bytes of a clip as they arrive, once from front to back. Counts them, and lets the judging look up between two reads.</summary>
internal abstract class UploadStream : Stream
{
    /// <summary>Bytes handed on so far.</summary>
    public long ByteCount { get; private set; }

    /// <summary>Called before each read.</summary>
    public Func<CancellationToken, ValueTask>? BeforeRead { get; set; }

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => ByteCount; set => throw new NotSupportedException(); }

    /// <inheritdoc/>
    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (BeforeRead is { } look)
        {
            await look(cancellationToken).ConfigureAwait(false);
        }

        int count = await NextAsync(buffer, cancellationToken).ConfigureAwait(false);
        ByteCount += count;
        return count;
    }

    /// <inheritdoc/>
    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Flush()
    {
        // Nothing is written.
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <summary>The next bytes; 0 at the end.</summary>
    protected abstract ValueTask<int> NextAsync(Memory<byte> buffer, CancellationToken cancellation);
}
