using System.Runtime.ExceptionServices;

namespace Quarterlight.Audio.Ogg;

/// <summary>The checked pages as a stream for a decoder that pulls. It waits on its own thread, so it must not be one that serves others.</summary>
/// <param name="pages">The pages from here on.</param>
/// <param name="before">What was taken from the pages already, and comes first.</param>
internal sealed class PageStream(OggPages pages, ReadOnlyMemory<byte> before) : Stream
{
    private const int MostReadsBehindTheEnd = 1000;

    // More frames than a page can hold: 255 packets of at most 4096 new frames each (Vorbis I specification, 4.2.2 and 4.3.8).
    private const long FarBehind = 1 << 21;
    private ReadOnlyMemory<byte> _piece = before;
    private int _at;
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

    /// <summary>Where the decoder says that its next frame is, in its own count; null as long as there is no decoder.</summary>
    public Func<long>? DecoderPosition { get; set; }

    /// <summary>Where the last page says that the sound ends, and where the decoder was when it came; null before.</summary>
    public (long End, long Decoder)? Last { get; private set; }

    /// <summary>Throws what the pages threw, whatever the decoder made of it.</summary>
    public void ThrowFailure() => _failure?.Throw();

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        ThrowFailure();
        try
        {
            while (_at >= _piece.Length)
            {
                if (!pages.MoveAsync(Cancellation).AsTask().GetAwaiter().GetResult())
                {
                    return ++_readsBehindTheEnd > MostReadsBehindTheEnd ? throw Faults.Corrupt("The Ogg file leads its decoder in circles") : 0;
                }

                if (pages.IsLast)
                {
                    // The decoder goes round for ever where the end lies before the last packet. So it is shown an end that it cannot reach, and the true one is kept by the reader.
                    long reached = DecoderPosition?.Invoke() ?? 0;
                    Last = (pages.Granule, reached);
                    pages.Restamp(reached + FarBehind);
                }

                _piece = pages.Page;
                _at = 0;
            }
        }
        catch (Exception failure)
        {
            _failure = ExceptionDispatchInfo.Capture(failure);
            throw;
        }

        int some = Math.Min(buffer.Length, _piece.Length - _at);
        _piece.Span.Slice(_at, some).CopyTo(buffer);
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
