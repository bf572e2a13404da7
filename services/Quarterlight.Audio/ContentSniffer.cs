namespace Quarterlight.Audio;

/// <summary>Tells a file by its first bytes. The marks are those of the formats' own specifications, from memory.</summary>
internal static class ContentSniffer
{
    /// <summary>Bytes that tell every kind apart, where the file has so many.</summary>
    public const int WantedBytes = 64;

    private const int Vorbis = 1;

    /// <summary>Tells the kind.</summary>
    /// <exception cref="AudioFaultException">The bytes are none of the kinds that are read; the fault says what they look like.</exception>
    public static ContentKind Tell(ReadOnlySpan<byte> head)
    {
        if (head.Length == 0)
        {
            throw Faults.Empty("The file holds no bytes");
        }

        if (head.StartsWith("RIFF"u8) || head.StartsWith("RF64"u8) || head.StartsWith("BW64"u8))
        {
            return Riff(head);
        }

        if (head.StartsWith("OggS"u8))
        {
            return Ogg(head);
        }

        if (head.StartsWith("fLaC"u8))
        {
            return ContentKind.Flac;
        }

        if (head.Length >= 12 && head[4..].StartsWith("ftyp"u8))
        {
            return Mpeg4(head);
        }

        RefuseOtherSound(head);
        RefuseOtherThings(head);
        return head.StartsWith("ID3"u8) || IsLayer3(head) ? ContentKind.Mp3
            : IsAdts(head) ? ContentKind.AdtsAac
            : throw Faults.NotAudio("The file is not a sound file of a known kind");
    }

    /// <summary>True for the first four bytes of an MPEG layer III frame with a legal bit rate and sample rate.</summary>
    public static bool IsLayer3(ReadOnlySpan<byte> head) =>
        head.Length >= 4 && head[0] == 0xFF && (head[1] & 0xE6) == 0xE2 && (head[1] & 0x18) != 0x08
        && (head[2] & 0xF0) is not 0xF0 and not 0 && (head[2] & 0x0C) != 0x0C;

    private static bool IsAdts(ReadOnlySpan<byte> head) => head.Length >= 7 && head[0] == 0xFF && (head[1] & 0xF6) == 0xF0 && (head[2] & 0x3C) <= 0x30;

    private static ContentKind Riff(ReadOnlySpan<byte> head)
    {
        if (head.Length < 12)
        {
            throw Faults.Truncated("The file ends within its first 12 bytes");
        }

        ReadOnlySpan<byte> form = head[8..12];
        return form.SequenceEqual("WAVE"u8) ? ContentKind.Wave
            : form.SequenceEqual("WEBP"u8) ? throw Faults.NotAudio("The file is a picture (WebP)")
            : form.SequenceEqual("AVI "u8) ? throw Faults.Unsupported("The file is a film (AVI)")
            : throw Faults.NotAudio("The file is a RIFF file, but not a WAVE");
    }

    private static ContentKind Ogg(ReadOnlySpan<byte> head)
    {
        // The first page holds one packet: 27 bytes, then one length for each of the page's segments (RFC 3533, section 6).
        if (head.Length < 36)
        {
            throw Faults.Truncated("The file ends within its first page");
        }

        ReadOnlySpan<byte> packet = head[Math.Min(27 + head[26], head.Length)..];
        return packet.StartsWith("OpusHead"u8) ? ContentKind.OggOpus
            : packet.Length >= 7 && packet[0] == Vorbis && packet[1..].StartsWith("vorbis"u8) ? ContentKind.OggVorbis
            : throw Faults.Unsupported("The Ogg file holds neither Vorbis nor Opus first");
    }

    private static ContentKind Mpeg4(ReadOnlySpan<byte> head)
    {
        ReadOnlySpan<byte> brand = head[8..12];
        return brand.SequenceEqual("heic"u8) || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("avif"u8)
            ? throw Faults.NotAudio("The file is a picture (HEIF)")
            : ContentKind.Mpeg4;
    }

    private static void RefuseOtherSound(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith("RIFX"u8))
        {
            throw Faults.Unsupported("The file is a WAVE with the high byte first (RIFX)");
        }

        if (head.StartsWith("FORM"u8))
        {
            throw Faults.Unsupported("The file is an AIFF");
        }

        if (head.StartsWith("caff"u8))
        {
            throw Faults.Unsupported("The file is a CAF");
        }

        if (head.StartsWith("riff"u8) || head.StartsWith("wvpk"u8) || head.StartsWith("#!AMR"u8) || head.StartsWith("MThd"u8))
        {
            throw Faults.Unsupported("The file is of a sound format that is not read (W64, WavPack, AMR or MIDI)");
        }

        if (head.StartsWith((ReadOnlySpan<byte>)[0x1A, 0x45, 0xDF, 0xA3]))
        {
            throw Faults.Unsupported("The file is a Matroska or WebM");
        }
    }

    private static void RefuseOtherThings(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47]) || head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
            || head.StartsWith("GIF8"u8) || head.StartsWith("II*\0"u8) || head.StartsWith("MM\0*"u8) || head.StartsWith("BM"u8))
        {
            throw Faults.NotAudio("The file is a picture");
        }

        if (head.StartsWith("PK"u8) || head.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]) || head.StartsWith((ReadOnlySpan<byte>)[0x37, 0x7A, 0xBC, 0xAF])
            || head.StartsWith("Rar!"u8) || head.StartsWith((ReadOnlySpan<byte>)[0xFD, 0x37, 0x7A, 0x58]) || head.StartsWith("BZh"u8))
        {
            throw Faults.NotAudio("The file is an archive");
        }

        if (head.StartsWith("%PDF"u8) || head.StartsWith("<"u8) || head.StartsWith("{"u8))
        {
            throw Faults.NotAudio("The file is a document");
        }
    }
}
