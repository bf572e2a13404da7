using System.Buffers;

namespace Quarterlight.Audio.Ogg;

/// <summary>Puts packets together from the segments of pages: RFC 3533, section 5.</summary>
internal sealed class OggPackets(OggPages pages)
{
    private const int MostPacketBytes = 1 << 20;
    private readonly ArrayBufferWriter<byte> _packet = new(4096);
    private int _segment;
    private int _at;
    private bool _onPage;

    /// <summary>The packet.</summary>
    public ReadOnlyMemory<byte> Packet => _packet.WrittenMemory;

    /// <summary>True when the packet is the last that ends on its page.</summary>
    public bool EndsPage { get; private set; }

    /// <summary>Moves to the next packet.</summary>
    /// <returns>False behind the last one.</returns>
    public async ValueTask<bool> MoveAsync(CancellationToken cancellation)
    {
        _packet.ResetWrittenCount();
        while (true)
        {
            if (!_onPage)
            {
                if (!await pages.MoveAsync(cancellation).ConfigureAwait(false))
                {
                    return _packet.WrittenCount > 0 ? throw Faults.Truncated("The Ogg file ends within a packet") : false;
                }

                if (pages.IsContinued != _packet.WrittenCount > 0)
                {
                    throw Faults.Corrupt("A packet of the Ogg file goes on without its beginning, or begins without going on");
                }

                (_segment, _at, _onPage) = (0, 0, true);
            }

            if (TakeSegments())
            {
                return true;
            }

            _onPage = false;
        }
    }

    // True when a packet ended, false when the page did.
    private bool TakeSegments()
    {
        ReadOnlySpan<byte> segments = pages.Segments;
        while (_segment < segments.Length)
        {
            int length = segments[_segment++];
            _packet.Write(pages.Body.Slice(_at, length));
            _at += length;
            if (_packet.WrittenCount > MostPacketBytes)
            {
                throw Faults.Corrupt("A packet of the Ogg file is larger than 1 MiB");
            }

            if (length < 255)
            {
                EndsPage = segments[_segment..].IndexOfAnyExcept((byte)255) < 0;
                return true;
            }
        }

        return false;
    }
}
