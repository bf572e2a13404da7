using System.Buffers.Binary;
using System.IO.Compression;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// Writes an opaque picture as a PNG of at most 256 colors: a third of the size of full color, for chat on a phone.
/// The commonest colors stay exact; rare ones (edges smoothed across two areas) take their nearest.
/// </summary>
/// <remarks>Source: W3C PNG specification, third edition: chunk layout, color type 3, filter types 0 and 2, CRC of annex D.</remarks>
internal static class IndexedPng
{
    private const int MaxColors = 256;

    // Colors this near in every channel share a place in the palette, so that it is not spent on shades of one edge.
    private const int SameShade = 6;

    private static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];
    private static readonly uint[] CrcTable = [.. Enumerable.Range(0, 256).Select(n => CrcOf((uint)n))];

    public static byte[] Encode(SKPixmap pixels)
    {
        ReadOnlySpan<byte> rgba = pixels.GetPixelSpan();
        uint[] palette = Palette(rgba, pixels.RowBytes);
        using var png = new MemoryStream();
        png.Write(Signature);
        byte[] header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, pixels.Width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), pixels.Height);
        (header[8], header[9]) = (8, 3);
        Chunk(png, "IHDR"u8, header);
        Chunk(png, "PLTE"u8, [.. palette.SelectMany(c => new[] { (byte)(c >> 16), (byte)(c >> 8), (byte)c })]);
        Chunk(png, "IDAT"u8, Packed(rgba, pixels.Width, pixels.RowBytes, palette));
        Chunk(png, "IEND"u8, []);
        return png.ToArray();
    }

    private static uint[] Palette(ReadOnlySpan<byte> rgba, int rowBytes)
    {
        var counts = new Dictionary<uint, int>();
        for (int start = 0; start < rgba.Length;)
        {
            // Rows that repeat, as in blank parts and in a spectrogram's bands, are counted once with their number.
            ReadOnlySpan<byte> row = rgba.Slice(start, rowBytes);
            int alike = 1;
            for (start += rowBytes; start < rgba.Length && row.SequenceEqual(rgba.Slice(start, rowBytes)); start += rowBytes)
            {
                alike++;
            }

            uint last = ColorAt(row, 0);
            int run = 0;
            for (int i = 0; i < row.Length; i += 4)
            {
                uint color = ColorAt(row, i);
                if (color != last)
                {
                    counts[last] = counts.GetValueOrDefault(last) + (run * alike);
                    (last, run) = (color, 0);
                }

                run++;
            }

            counts[last] = counts.GetValueOrDefault(last) + (run * alike);
        }

        var palette = new List<uint>(MaxColors);
        foreach (uint color in counts.OrderByDescending(c => c.Value).ThenBy(c => c.Key).Select(c => c.Key))
        {
            if (palette.Count == MaxColors)
            {
                break;
            }

            if (counts.Count <= MaxColors || !palette.Exists(p => Near(p, color)))
            {
                palette.Add(color);
            }
        }

        return [.. palette];
    }

    private static byte[] Packed(ReadOnlySpan<byte> rgba, int width, int rowBytes, uint[] palette)
    {
        var indices = new Dictionary<uint, byte>();
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            byte[] row = new byte[1 + width], same = new byte[1 + width];
            // Filter type 2 gives the difference to the row above: none.
            same[0] = 2;
            uint last = ~0u;
            byte index = 0;
            for (int start = 0; start < rgba.Length; start += rowBytes)
            {
                if (start > 0 && rgba.Slice(start, rowBytes).SequenceEqual(rgba.Slice(start - rowBytes, rowBytes)))
                {
                    zlib.Write(same);
                    continue;
                }

                for (int x = 0; x < width; x++)
                {
                    uint color = ColorAt(rgba, start + (4 * x));
                    if (color != last && !indices.TryGetValue(color, out index))
                    {
                        index = (byte)Array.IndexOf(palette, palette.MinBy(p => Distance(p, color)));
                        indices.Add(color, index);
                    }

                    last = color;
                    row[1 + x] = index;
                }

                zlib.Write(row);
            }
        }

        return packed.ToArray();
    }

    private static uint ColorAt(ReadOnlySpan<byte> rgba, int i) => ((uint)rgba[i] << 16) | ((uint)rgba[i + 1] << 8) | rgba[i + 2];

    private static bool Near(uint a, uint b) => (int)Math.Max(Math.Max(Gap(a, b, 16), Gap(a, b, 8)), Gap(a, b, 0)) <= SameShade;

    private static int Distance(uint a, uint b) => (Gap(a, b, 16) * Gap(a, b, 16)) + (Gap(a, b, 8) * Gap(a, b, 8)) + (Gap(a, b, 0) * Gap(a, b, 0));

    private static int Gap(uint a, uint b, int shift) => Math.Abs((int)((a >> shift) & 0xFF) - (int)((b >> shift) & 0xFF));

    private static void Chunk(MemoryStream png, ReadOnlySpan<byte> type, byte[] content)
    {
        byte[] four = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(four, content.Length);
        png.Write(four);
        png.Write(type);
        png.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(four, ~Crc(Crc(0xFFFFFFFF, type), content));
        png.Write(four);
    }

    private static uint Crc(uint crc, ReadOnlySpan<byte> bytes)
    {
        foreach (byte b in bytes)
        {
            crc = CrcTable[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc;
    }

    private static uint CrcOf(uint n)
    {
        for (int bit = 0; bit < 8; bit++)
        {
            n = (n & 1) != 0 ? 0xEDB88320 ^ (n >> 1) : n >> 1;
        }

        return n;
    }
}
