using System.Buffers.Binary;

namespace Quarterlight.Fuzz;

/// <summary>Makes sizes and checksums of a damaged file right again, so that the damage gets past the first look.</summary>
internal static class Mending
{
    private const int PageHeadBytes = 27;

    /// <summary>Lets the sizes of a WAVE file end where the file does.</summary>
    public static void WaveSizes(Span<byte> file)
    {
        if (!FileParts.IsWave(file))
        {
            return;
        }

        BinaryPrimitives.WriteUInt32LittleEndian(file[4..], (uint)file.Length - 8);
        List<int> seams = FileParts.Seams(file);
        int last = seams[^2];
        if (last >= 12 && last + 8 <= file.Length)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(file[(last + 4)..], (uint)(file.Length - last - 8));
        }
    }

    /// <summary>Gives every Ogg page segments that fill it and the right checksum (RFC 3533, section 6).</summary>
    /// <param name="file">The file.</param>
    /// <param name="renumber">Also counts the pages anew, in one stream.</param>
    public static byte[] OggPages(byte[] file, bool renumber)
    {
        var mended = new List<byte>(file.Length + 64);
        List<int> seams = FileParts.Seams(file);
        uint serial = file.Length >= 18 ? BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(14)) : 0;
        for (int i = 0; i + 1 < seams.Count; i++)
        {
            ReadOnlySpan<byte> page = file.AsSpan(seams[i]..seams[i + 1]);
            if (page.Length <= PageHeadBytes || page.Length < PageHeadBytes + page[26])
            {
                mended.AddRange(page);
                continue;
            }

            byte[] whole = WithSegments(page);
            if (renumber)
            {
                BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(14), serial);
                BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(18), (uint)i);
            }

            whole.AsSpan(22, 4).Clear();
            BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(22), Checksum(whole));
            mended.AddRange(whole);
        }

        return [.. mended];
    }

    private static byte[] WithSegments(ReadOnlySpan<byte> page)
    {
        ReadOnlySpan<byte> said = page.Slice(PageHeadBytes, page[26]);
        ReadOnlySpan<byte> body = page[(PageHeadBytes + said.Length)..];
        var segments = new List<byte>(255);
        int left = body.Length;
        foreach (byte length in said)
        {
            segments.Add((byte)Math.Min(length, left));
            left -= segments[^1];
        }

        // A last segment of 255 would say that the packet goes on.
        while (left > 0 && segments.Count < 255)
        {
            segments.Add((byte)Math.Min(255, left));
            left -= segments[^1];
        }

        return [.. page[..26], (byte)segments.Count, .. segments, .. body[..^left]];
    }

    // Bit by bit, as the document says: polynomial 04C11DB7, high bit first.
    private static uint Checksum(ReadOnlySpan<byte> page)
    {
        uint rest = 0;
        foreach (byte value in page)
        {
            rest ^= (uint)value << 24;
            for (int bit = 0; bit < 8; bit++)
            {
                rest = rest >> 31 == 0 ? rest << 1 : (rest << 1) ^ 0x04C11DB7;
            }
        }

        return rest;
    }
}
