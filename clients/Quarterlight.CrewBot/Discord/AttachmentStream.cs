using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>A file being fetched: passes bytes through without keeping any, tells how far it is, and fails as files do.</summary>
internal sealed class AttachmentStream(Stream inner, long byteCount, IProgress<double> read) : Stream
{
    private long taken;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => taken;
        set => throw new NotSupportedException();
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        try
        {
            return Taken(await inner.ReadAsync(buffer, cancellationToken).ConfigureAwait(false));
        }
        catch (DiscordException e)
        {
            throw new IOException("The file could not be read to its end.", e);
        }
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override int Read(byte[] buffer, int offset, int count)
    {
        try
        {
            return Taken(inner.Read(buffer, offset, count));
        }
        catch (DiscordException e)
        {
            throw new IOException("The file could not be read to its end.", e);
        }
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override async ValueTask DisposeAsync()
    {
        await inner.DisposeAsync().ConfigureAwait(false);
        await base.DisposeAsync().ConfigureAwait(false);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private int Taken(int count)
    {
        taken += count;
        read.Report((double)taken / byteCount);
        return count;
    }
}
