using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Quarterlight.Audio.Wav;

/// <summary>Reads a bext chunk: offsets of EBU Tech 3285 v2 (May 2011), section 2.3.</summary>
internal static class BextChunk
{
    /// <summary>Bytes before the coding history.</summary>
    public const int FixedBytes = 602;

    private const int FirstVersionWithLoudness = 2;
    private const int MostHistoryRows = 256;
    private const short Unset = 0x7FFF;

    private static readonly UTF8Encoding StrictUtf8 = new(false, true);

    /// <summary>Reads the chunk; null when it is shorter than its fixed part.</summary>
    public static BroadcastExtension? Parse(ReadOnlySpan<byte> chunk)
    {
        if (chunk.Length < FixedBytes)
        {
            return null;
        }

        int version = BinaryPrimitives.ReadUInt16LittleEndian(chunk[346..]);
        bool loudness = version >= FirstVersionWithLoudness;
        return new BroadcastExtension
        {
            Description = Text(chunk.Slice(0, 256)),
            Originator = Text(chunk.Slice(256, 32)),
            OriginatorReference = Text(chunk.Slice(288, 32)),
            OriginationDate = Date(chunk.Slice(320, 10)),
            OriginationTime = Time(chunk.Slice(330, 8)),
            TimeReferenceSamples = BinaryPrimitives.ReadUInt32LittleEndian(chunk[338..]) | (ulong)BinaryPrimitives.ReadUInt32LittleEndian(chunk[342..]) << 32,
            Version = version,
            LoudnessLufs = Hundredths(chunk[412..], loudness),
            LoudnessRangeLu = Hundredths(chunk[414..], loudness),
            MaxTruePeakDbtp = Hundredths(chunk[416..], loudness),
            MaxMomentaryLufs = Hundredths(chunk[418..], loudness),
            MaxShortTermLufs = Hundredths(chunk[420..], loudness),
            CodingHistory = [.. Text(chunk[FixedBytes..]).Split('\n', MostHistoryRows).Select(r => r.Trim()).Where(r => r.Length > 0)],
        };
    }

    private static double? Hundredths(ReadOnlySpan<byte> field, bool present)
    {
        short value = BinaryPrimitives.ReadInt16LittleEndian(field);
        return present && value != Unset ? value / 100.0 : null;
    }

    // ASCII by the document; recorders also write UTF-8 and Latin-1.
    private static string Text(ReadOnlySpan<byte> field)
    {
        int end = field.IndexOf((byte)0);
        ReadOnlySpan<byte> used = end < 0 ? field : field[..end];
        try
        {
            return StrictUtf8.GetString(used).TrimEnd();
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(used).TrimEnd();
        }
    }

    // The document writes yyyy-mm-dd and hh-mm-ss; which other separators recorders use ("_", ":", " ", ".") is from memory.
    private static DateOnly? Date(ReadOnlySpan<byte> field) =>
        DateOnly.TryParseExact(Separated(field, 4, 7), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) ? date : null;

    private static TimeOnly? Time(ReadOnlySpan<byte> field) =>
        TimeOnly.TryParseExact(Separated(field, 2, 5), "HH-mm-ss", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time) ? time : null;

    private static string Separated(ReadOnlySpan<byte> field, int first, int second)
    {
        char[] text = Encoding.Latin1.GetString(field).ToCharArray();
        foreach (int at in (ReadOnlySpan<int>)[first, second])
        {
            text[at] = text[at] is '_' or ':' or ' ' or '.' ? '-' : text[at];
        }

        return new string(text);
    }
}
