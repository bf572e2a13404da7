using System.Buffers;
using System.Buffers.Binary;

namespace Quarterlight.Audio.Wav;

/// <summary>Walks the chunks around the sound and keeps what bext and iXML say.</summary>
internal sealed class ChunkWalker(ByteSource bytes, AudioLimits limits)
{
    /// <summary>A 32-bit size that says: look in ds64, or nobody knows.</summary>
    public const uint NoSize = 0xFFFFFFFF;

    private const int HeaderBytes = 8;
    private readonly List<string> _remarks = [];
    private BroadcastExtension? _bext;
    private IxmlMetadata? _ixml;
    private DataSizes? _sizes;
    private bool _hadBext;
    private bool _hadIxml;

    /// <summary>What was said so far; null when nothing.</summary>
    public AudioMetadata? Metadata { get; private set; }

    /// <summary>The fmt chunk; null before it.</summary>
    public WaveFormat? Format { get; private set; }

    /// <summary>Size of the data chunk; null when the file does not know it.</summary>
    public ulong? DataBytes { get; private set; }

    /// <summary>Odd things met so far; the caller takes them out.</summary>
    public List<string> Remarks => _remarks;

    /// <summary>Walks to the first byte of the sound.</summary>
    public async ValueTask FindDataAsync(CancellationToken cancellation)
    {
        _ = await bytes.SeeAsync(12, cancellation).ConfigureAwait(false);
        bool large = !bytes.Seen.StartsWith("RIFF"u8);
        uint riffBytes = BinaryPrimitives.ReadUInt32LittleEndian(bytes.Seen[4..]);
        bytes.Consume(12);
        while (await bytes.SeeAsync(HeaderBytes, cancellation).ConfigureAwait(false))
        {
            uint id = BinaryPrimitives.ReadUInt32LittleEndian(bytes.Seen);
            uint size = BinaryPrimitives.ReadUInt32LittleEndian(bytes.Seen[4..]);
            bool isData = Is("data"u8);
            bool isSizes = Is("ds64"u8) && large;
            bool isFormat = Is("fmt "u8);
            if (isData && Format is null)
            {
                throw Faults.Corrupt("The sound comes before its description (fmt)");
            }

            bytes.Consume(HeaderBytes);
            if (isData)
            {
                DataBytes = SizeOfData(size, riffBytes);
                return;
            }

            if (isFormat && Format is null)
            {
                Format = WaveFormat.Parse(await HeadAsync(size, WaveFormat.MostBytes, cancellation).ConfigureAwait(false), limits);
            }
            else if (isSizes && _sizes is null)
            {
                _sizes = DataSizes.Parse(await HeadAsync(size, WaveFormat.MostBytes, cancellation).ConfigureAwait(false));
            }
            else if (!await MetadataOrSkipAsync(id, SizeOf(id, size), cancellation).ConfigureAwait(false))
            {
                throw Faults.Truncated("The file ends before its sound begins");
            }
        }

        throw Format is null
            ? Faults.Truncated("The file ends before it describes its sound")
            : Faults.Empty("The file holds no sound: its data chunk is missing");
    }

    /// <summary>Walks from behind the sound to the end; what is broken there is a remark only.</summary>
    /// <param name="dataBytes">Bytes of the sound, to know its padding.</param>
    /// <param name="cancellation">Gives up.</param>
    public async ValueTask FinishAsync(ulong dataBytes, CancellationToken cancellation)
    {
        if (dataBytes % 2 == 1)
        {
            _ = await bytes.SkipAsync(1, cancellation).ConfigureAwait(false);
        }

        while (await bytes.SeeAsync(HeaderBytes, cancellation).ConfigureAwait(false))
        {
            uint id = BinaryPrimitives.ReadUInt32LittleEndian(bytes.Seen);
            uint size = BinaryPrimitives.ReadUInt32LittleEndian(bytes.Seen[4..]);
            if (Is("data"u8))
            {
                _remarks.Add("The file holds a second piece of sound, which was left out");
            }

            bytes.Consume(HeaderBytes);
            if (!await MetadataOrSkipAsync(id, SizeOf(id, size), cancellation).ConfigureAwait(false))
            {
                _remarks.Add("The file ends within a chunk behind its sound");
                return;
            }
        }

        if (bytes.Seen.Length > 0)
        {
            _remarks.Add("The file ends with bytes that belong to no chunk");
        }
    }

    private bool Is(ReadOnlySpan<byte> id) => bytes.Seen.StartsWith(id);

    private ulong SizeOf(uint id, uint size) => size == NoSize && _sizes?.SizeOf(id) is { } large ? large : size;

    private ulong? SizeOfData(uint size, uint riffBytes)
    {
        if (size == NoSize)
        {
            return _sizes is { Data: not 0 and not ulong.MaxValue } ? _sizes.Data : null;
        }

        // A recorder that lost power leaves 0, and a whole-file size that is 0, unknown, or ends here as well.
        return size == 0 && (riffBytes is 0 or NoSize || riffBytes + 8UL <= (ulong)bytes.Position) ? null : size;
    }

    // The first bytes of a chunk that is small by nature; the rest of it, if any, is skipped.
    private async ValueTask<byte[]> HeadAsync(uint size, int most, CancellationToken cancellation)
    {
        int wanted = (int)Math.Min(size, (uint)most);
        if (!await bytes.SeeAsync(wanted, cancellation).ConfigureAwait(false))
        {
            throw Faults.Truncated("The file ends before it describes its sound");
        }

        byte[] head = bytes.Seen[..wanted].ToArray();
        bytes.Consume(wanted);
        return await SkipPaddedAsync(size, (ulong)wanted, cancellation).ConfigureAwait(false)
            ? head
            : throw Faults.Truncated("The file ends before its sound begins");
    }

    private async ValueTask<bool> MetadataOrSkipAsync(uint id, ulong size, CancellationToken cancellation)
    {
        bool isBext = id == Id("bext"u8) && !_hadBext;
        bool isIxml = id == Id("iXML"u8) && !_hadIxml;
        if (!isBext && !isIxml)
        {
            return await SkipPaddedAsync(size, 0, cancellation).ConfigureAwait(false);
        }

        _hadBext |= isBext;
        _hadIxml |= isIxml;
        string name = isBext ? "bext" : "iXML";
        if (size > (ulong)limits.MaxMetadataBytes)
        {
            _remarks.Add($"The {name} chunk is larger than {limits.MaxMetadataBytes / 1024} KiB and was left out");
            return await SkipPaddedAsync(size, 0, cancellation).ConfigureAwait(false);
        }

        byte[]? chunk = await WholeAsync((int)size, cancellation).ConfigureAwait(false);
        if (chunk is null)
        {
            return false;
        }

        _bext = isBext ? BextChunk.Parse(chunk) : _bext;
        _ixml = isIxml ? IxmlChunk.Parse(chunk, chunk.Length) : _ixml;
        if (isBext ? _bext is null : _ixml is null)
        {
            _remarks.Add($"The {name} chunk is broken and was left out");
        }

        Metadata = _bext is null && _ixml is null ? null : new AudioMetadata(_bext, _ixml);
        return await SkipPaddedAsync(size, size, cancellation).ConfigureAwait(false);
    }

    // Grows as the bytes come: a size that lies costs nothing.
    private async ValueTask<byte[]?> WholeAsync(int size, CancellationToken cancellation)
    {
        var chunk = new ArrayBufferWriter<byte>(Math.Clamp(size, 1, 4096));
        while (chunk.WrittenCount < size)
        {
            int wanted = Math.Min(size - chunk.WrittenCount, 4096);
            int copied = await bytes.CopyAsync(chunk.GetMemory(wanted)[..wanted], cancellation).ConfigureAwait(false);
            if (copied == 0)
            {
                return null;
            }

            chunk.Advance(copied);
        }

        return chunk.WrittenSpan.ToArray();
    }

    // The padding byte of the very last chunk is often missing: that is no damage.
    private async ValueTask<bool> SkipPaddedAsync(ulong size, ulong done, CancellationToken cancellation)
    {
        bool whole = await bytes.SkipAsync(size - done, cancellation).ConfigureAwait(false);
        if (whole && size % 2 == 1)
        {
            _ = await bytes.SkipAsync(1, cancellation).ConfigureAwait(false);
        }

        return whole;
    }

    private static uint Id(ReadOnlySpan<byte> name) => BinaryPrimitives.ReadUInt32LittleEndian(name);
}
