namespace Quarterlight.Discord.Rest;

/// <summary>A file as it arrives: counted, with a limit on each pause and on the whole. Nothing is kept.</summary>
internal sealed class AttachmentStream(
    HttpResponseMessage response, Stream inner, DiscordAttachment attachment, long mostBytes, AttachmentOptions options, TimeProvider time) : Stream
{
    private readonly long start = time.GetTimestamp();
    private readonly long most = Math.Min(mostBytes, attachment.ByteCount);
    private long count;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => count;
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (buffer.IsEmpty)
        {
            return 0;
        }

        TimeSpan left = options.Whole - time.GetElapsedTime(start);
        if (left <= TimeSpan.Zero)
        {
            throw Fault(DiscordFault.Unavailable, "took too long as a whole");
        }

        using var end = new CancellationTokenSource(left < options.Stall ? left : options.Stall, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, end.Token);
        int read;
        try
        {
            read = await inner.ReadAsync(buffer, either.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            throw Fault(DiscordFault.Unavailable, "stopped arriving");
        }
        catch (Exception e) when (e is IOException or HttpRequestException)
        {
            throw Fault(DiscordFault.Unavailable, "the connection broke");
        }

        count += read;
        if (count > most)
        {
            throw Fault(DiscordFault.TooLarge, $"more than {most} bytes came");
        }

        // A file cut short must not be judged as if it were whole.
        return read > 0 || count == attachment.ByteCount ? read : throw Fault(DiscordFault.Unavailable, $"ended after {count} of {attachment.ByteCount} bytes");
    }

    /// <inheritdoc/>
    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    /// <summary>Not offered: a pause of the other side would hold a thread.</summary>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("Read it with ReadAsync.");

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
            response.Dispose();
        }

        base.Dispose(disposing);
    }

    private DiscordException Fault(DiscordFault fault, string why) => new(fault, $"{attachment}: {why}");
}
