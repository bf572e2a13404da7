using System.Buffers;
using System.Buffers.Binary;

namespace Quarterlight.Audio.Ogg;

/// <summary>Walks the pages of the first logical stream of an Ogg file (RFC 3533, section 6), each held against its checksum.</summary>
internal sealed class OggPages(ByteSource bytes, Action<string> remark) : IDisposable
{
    private const int HeaderBytes = 27;
    private const int FirstFlag = 2;
    private const int LastFlag = 4;
    private static readonly uint[] CrcTable = MakeTable();

    private byte[] _page = ArrayPool<byte>.Shared.Rent(ByteSource.WindowBytes);
    private uint _serial;
    private uint _nextSequence;
    private bool _begun;

    /// <summary>The page as it stands in the file.</summary>
    public ReadOnlyMemory<byte> Page { get; private set; }

    /// <summary>Lengths of the page's segments; 255 means that the packet goes on.</summary>
    public ReadOnlySpan<byte> Segments => Page.Span.Slice(HeaderBytes, Page.Span[26]);

    /// <summary>What the page carries.</summary>
    public ReadOnlySpan<byte> Body => Page.Span[(HeaderBytes + Page.Span[26])..];

    /// <summary>True when the first segment goes on with the packet of the page before.</summary>
    public bool IsContinued => (Page.Span[5] & 1) != 0;

    /// <summary>True on the page that ends the stream.</summary>
    public bool IsLast { get; private set; }

    /// <summary>Position of the last packet that ends on the page, in the codec's own count; -1 when none does.</summary>
    public long Granule => BinaryPrimitives.ReadInt64LittleEndian(Page.Span[6..]);

    /// <summary>Is shown each page as it is taken; null shows nobody.</summary>
    public Action<ReadOnlyMemory<byte>>? Witness { get; set; }

    /// <summary>Moves to the next page.</summary>
    /// <returns>False behind the last one.</returns>
    public async ValueTask<bool> MoveAsync(CancellationToken cancellation)
    {
        while (!IsLast)
        {
            if (!await bytes.SeeAsync(HeaderBytes, cancellation).ConfigureAwait(false))
            {
                if (bytes.Seen.Length > 0)
                {
                    throw Faults.Truncated("The Ogg file ends within a page");
                }

                remark("The file ends without its end mark; it may have been cut short");
                return false;
            }

            if (!bytes.Seen.StartsWith("OggS"u8) || bytes.Seen[4] != 0)
            {
                throw Faults.Corrupt("A page of the Ogg file does not begin where it should");
            }

            int head = HeaderBytes + bytes.Seen[26];
            bool whole = await bytes.SeeAsync(head, cancellation).ConfigureAwait(false);
            int length = whole ? head + Sum(bytes.Seen[HeaderBytes..head]) : 0;
            if (!whole || !await bytes.SeeAsync(length, cancellation).ConfigureAwait(false))
            {
                throw Faults.Truncated("The Ogg file ends within a page");
            }

            if (Take(length))
            {
                return true;
            }
        }

        if (await bytes.SeeAsync(1, cancellation).ConfigureAwait(false))
        {
            remark("The file goes on behind the end of its first recording, which was read alone");
        }

        return false;
    }

    /// <summary>Gives the page another position and the checksum that goes with it.</summary>
    public void Restamp(long granule)
    {
        BinaryPrimitives.WriteInt64LittleEndian(_page.AsSpan(6), granule);
        _page.AsSpan(22, 4).Clear();
        BinaryPrimitives.WriteUInt32LittleEndian(_page.AsSpan(22), Crc(Page.Span));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        byte[] page = _page;
        _page = [];
        Page = default;
        if (page.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(page);
        }
    }

    private bool Take(int length)
    {
        bytes.Seen[..length].CopyTo(_page);
        bytes.Consume(length);
        uint said = BinaryPrimitives.ReadUInt32LittleEndian(_page.AsSpan(22));
        _page.AsSpan(22, 4).Clear();
        if (Crc(_page.AsSpan(0, length)) != said)
        {
            throw Faults.Corrupt("A page of the Ogg file does not match its checksum");
        }

        BinaryPrimitives.WriteUInt32LittleEndian(_page.AsSpan(22), said);
        uint serial = BinaryPrimitives.ReadUInt32LittleEndian(_page.AsSpan(14));
        uint sequence = BinaryPrimitives.ReadUInt32LittleEndian(_page.AsSpan(18));
        bool first = (_page[5] & FirstFlag) != 0;
        if (!_begun)
        {
            _begun = true;
            _serial = serial;
            _nextSequence = sequence;
        }
        else if (serial != _serial)
        {
            remark("The Ogg file holds a second stream, which was left out");
            return false;
        }

        if (sequence != _nextSequence || first != (Page.Length == 0))
        {
            throw Faults.Corrupt("Pages of the Ogg file are missing or out of order");
        }

        _nextSequence++;
        IsLast = (_page[5] & LastFlag) != 0;
        Page = _page.AsMemory(0, length);
        Witness?.Invoke(Page);
        return true;
    }

    private static int Sum(ReadOnlySpan<byte> lengths)
    {
        int sum = 0;
        foreach (byte length in lengths)
        {
            sum += length;
        }

        return sum;
    }

    // RFC 3533: polynomial 04C11DB7, high bit first, start and end value 0.
    private static uint Crc(ReadOnlySpan<byte> page)
    {
        uint crc = 0;
        foreach (byte b in page)
        {
            crc = crc << 8 ^ CrcTable[(crc >> 24) ^ b];
        }

        return crc;
    }

    private static uint[] MakeTable()
    {
        uint[] table = new uint[256];
        for (uint i = 0; i < 256; i++)
        {
            uint crc = i << 24;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 0x80000000) != 0 ? crc << 1 ^ 0x04C11DB7 : crc << 1;
            }

            table[i] = crc;
        }

        return table;
    }
}
