using System.Runtime.ExceptionServices;

namespace Quarterlight.Audio.Ogg;

/// <summary>The checked pages as a stream for a decoder that pulls. It waits on its own thread, so it must not be one that serves others.</summary>
internal sealed class PageStream(OggPages pages) : Stream
{
    private const int MostReadsBehindTheEnd = 1000;
    private int _at = int.MaxValue;
    private int _readsBehindTheEnd;
    private long _position;
    private ExceptionDispatchInfo? _failure;

    /// <summary>Token of the read that is going on.</summary>
    public CancellationToken Cancellation { get; set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => _position; set => throw new NotSupportedException(); }

    /// <summary>Throws what the pages threw, whatever the decoder made of it.</summary>
    public void ThrowFailure() => _failure?.Throw();

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        ThrowFailure();
        try
        {
            // More than one turn only for pages without a body.
            while (_at >= pages.Page.Length)
            {
                if (!pages.MoveAsync(Cancellation).AsTask().GetAwaiter().GetResult())
                {
                    return ++_readsBehindTheEnd > MostReadsBehindTheEnd ? throw Faults.Corrupt("The Ogg file leads its decoder in circles") : 0;
                }

                _at = 0;
            }
        }
        catch (Exception failure)
        {
            _failure = ExceptionDispatchInfo.Capture(failure);
            throw;
        }

        int some = Math.Min(buffer.Length, pages.Page.Length - _at);
        pages.Page.Span.Slice(_at, some).CopyTo(buffer);
        _at += some;
        _position += some;
        return some;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
