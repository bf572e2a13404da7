using System.Buffers.Binary;

namespace Quarterlight.Fuzz;

/// <summary>Damages files: bits, numbers, pieces, and the parts a format is made of.</summary>
internal sealed class Mutator(Random random)
{
    /// <summary>Largest file it makes.</summary>
    public const int MostBytes = 65_536;

    private const int MostPieceBytes = 300;

    private static readonly ulong[] Extremes =
    [
        0, 1, 2, 7, 8, 15, 16, 31, 32, 127, 128, 255, 256, 0x7FFF, 0x8000, 0xFFFF, 0x10000, 0xFFFFFF, 0x7FFFFFFF, 0x80000000,
        0xFFFFFFFE, 0xFFFFFFFF, 0x100000000, 0x7FFFFFFFFFFFFFFF, 0x8000000000000000, 0xFFFFFFFFFFFFFFFF,
    ];

    // What readers compare with: chance does not hit four bytes at once.
    private static readonly byte[][] Words =
    [
        .. new[]
        {
            "RIFF", "RF64", "BW64", "WAVE", "fmt ", "data", "bext", "iXML", "ds64", "JUNK", "OggS", "OpusHead", "OpusTags", "\u0001vorbis", "\u0003vorbis",
            "\u0005vorbis", "BCV", "Xing", "Info", "LAME", "Lavc", "ID3", "TAG", "APETAG", "LYRICS", "fLaC", "ftyp", "<?xml version=\"1.0\"?>", "<BWFXML>",
            "</BWFXML>", "<TRACK_LIST>", "<TRACK>", "<!DOCTYPE a>", "<![CDATA[", "&amp;", "&#x0;", "-->", "<a>", "/>",
        }.Select(System.Text.Encoding.Latin1.GetBytes),
        [0xFE, 0xFF], [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xAA, 0x00, 0x38, 0x9B, 0x71], [0xFF, 0xFB], [0xFF, 0xF3], [0xFF, 0xE3], [0xFF, 0xF1],
    ];

    /// <summary>A damaged copy.</summary>
    /// <param name="file">The file.</param>
    /// <param name="other">Another one, to take pieces from.</param>
    public byte[] Mutate(byte[] file, byte[] other)
    {
        byte[] damaged = file;
        // A small file is soon nothing of what it was.
        for (int hits = 1 << random.Next(file.Length < 64 ? 2 : 4); hits > 0; hits--)
        {
            damaged = random.Next(4) == 0 ? HitParts(damaged, other) : HitBytes((byte[])damaged.Clone(), other);
            damaged = damaged.Length > MostBytes ? damaged[..MostBytes] : damaged;
        }

        if (FileParts.IsOgg(damaged))
        {
            return random.Next(8) == 0 ? damaged : Mending.OggPages(damaged, random.Next(2) == 0);
        }

        if (random.Next(3) == 0)
        {
            damaged = (byte[])damaged.Clone();
            Mending.WaveSizes(damaged);
        }

        return damaged;
    }

    private byte[] HitParts(byte[] file, byte[] other)
    {
        List<int> seams = FileParts.Seams(file);
        int parts = seams.Count - 1;
        ReadOnlySpan<byte> Part(int i) => file.AsSpan(seams[i]..seams[i + 1]);
        int one = random.Next(parts), two = random.Next(parts);
        (one, two) = (Math.Min(one, two), Math.Max(one, two));
        switch (random.Next(6))
        {
            case 0:
                return [.. file[..seams[one]], .. file[seams[one + 1]..]];
            case 1:
                return [.. file[..seams[two]], .. Part(one), .. file[seams[two]..]];
            case 2 when one != two:
                return [.. file[..seams[one]], .. Part(two), .. file[seams[one + 1]..seams[two]], .. Part(one), .. file[seams[two + 1]..]];
            case 3:
                return file[..seams[two]];
            case 4:
                // A part of the other file, often with what comes before or behind it there.
                List<int> theirs = FileParts.Seams(other);
                int from = random.Next(theirs.Count - 1);
                int to = random.Next(2) == 0 ? from + 1 : random.Next(from + 1, theirs.Count);
                return [.. file[..seams[one]], .. other[theirs[from]..theirs[to]], .. file[seams[random.Next(one, one + 2)]..]];
            default:
                return [.. file[..seams[one + 1]], .. "    "u8, .. Words[random.Next(Words.Length)], .. file[seams[one + 1]..]];
        }
    }

    private byte[] HitBytes(byte[] file, byte[] other)
    {
        int at = Somewhere(file);
        int some = Math.Min(1 + Low(MostPieceBytes), file.Length - at);
        switch (random.Next(10))
        {
            case 0 or 1 when some > 0:
                file[at] ^= (byte)(1 << random.Next(8));
                return file;
            case 2 or 3 when some > 0:
                file[at] = (byte)random.Next(256);
                return file;
            case 4:
                return WithNumber(file, at, Extremes[random.Next(Extremes.Length)]);
            case 5:
                return Shifted(file, at);
            case 6:
                byte[] word = Words[random.Next(Words.Length)];
                int over = random.Next(2) == 0 ? 0 : Math.Min(word.Length, file.Length - at);
                return [.. file[..at], .. word, .. file[(at + over)..]];
            case 7:
                return random.Next(4) == 0 ? file[..at] : [.. file[..at], .. file[(at + some)..]];
            case 8 when other.Length > 0:
                int from = Somewhere(other);
                int take = Math.Min(1 + Low(MostPieceBytes), other.Length - from);
                int drop = random.Next(2) == 0 ? 0 : Math.Min(take, file.Length - at);
                return [.. file[..at], .. other.AsSpan(from, take), .. file[(at + drop)..]];
            default:
                byte[] fill = new byte[some];
                Array.Fill(fill, (byte)(random.Next(3) switch { 0 => 0, 1 => 0xFF, _ => random.Next(256) }));
                return random.Next(2) == 0 ? [.. file[..(at + some)], .. file[at..]] : [.. file[..at], .. fill, .. file[(at + random.Next(some + 1))..]];
        }
    }

    // Half of all hits are near the beginning of a part, where formats say what follows.
    private int Somewhere(byte[] file)
    {
        if (random.Next(2) == 0)
        {
            return random.Next(file.Length + 1);
        }

        List<int> seams = FileParts.Seams(file);
        int part = random.Next(seams.Count - 1);
        return seams[part] + Low(seams[part + 1] - seams[part]);
    }

    private int Low(int below)
    {
        double share = random.NextDouble();
        return (int)(below * share * share * share);
    }

    private byte[] WithNumber(byte[] file, int at, ulong number)
    {
        Span<byte> eight = stackalloc byte[8];
        int width = 1 << random.Next(4);
        if (random.Next(3) == 0)
        {
            BinaryPrimitives.WriteUInt64BigEndian(eight, number << (64 - (8 * width)));
        }
        else
        {
            BinaryPrimitives.WriteUInt64LittleEndian(eight, number);
        }

        width = Math.Min(width, file.Length - at);
        eight[..width].CopyTo(file.AsSpan(at));
        return file;
    }

    // A number a little larger or smaller than it was.
    private byte[] Shifted(byte[] file, int at)
    {
        int by = random.Next(1, 36) * (random.Next(2) == 0 ? 1 : -1);
        if (at + 4 <= file.Length && random.Next(2) == 0)
        {
            Span<byte> four = file.AsSpan(at, 4);
            BinaryPrimitives.WriteInt32LittleEndian(four, unchecked(BinaryPrimitives.ReadInt32LittleEndian(four) + by));
        }
        else if (at < file.Length)
        {
            file[at] = unchecked((byte)(file[at] + by));
        }

        return file;
    }
}
