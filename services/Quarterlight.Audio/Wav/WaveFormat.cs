using System.Buffers.Binary;
using System.Globalization;

namespace Quarterlight.Audio.Wav;

/// <summary>The fmt chunk: layout as in EBU Tech 3285 section 2 and its WAVE_FORMAT_EXTENSIBLE form (sub-format GUIDs from memory).</summary>
internal sealed record WaveFormat(SampleCoding Coding, int SampleRateHz, int ChannelCount, int BlockAlign, int? ValidBits)
{
    /// <summary>Largest fmt chunk that makes sense: the extensible form takes 40 bytes.</summary>
    public const int MostBytes = 4096;

    private const int Pcm = 1;
    private const int Float = 3;
    private const int Extensible = 0xFFFE;

    // The last 14 bytes of {xxxxxxxx-0000-0010-8000-00AA00389B71}; the first two hold the format code.
    private static ReadOnlySpan<byte> GuidTail => [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xAA, 0x00, 0x38, 0x9B, 0x71];

    /// <summary>Reads the chunk and holds it against itself and the limits.</summary>
    /// <exception cref="AudioFaultException">The chunk is wrong, or not of a kind that is read.</exception>
    public static WaveFormat Parse(ReadOnlySpan<byte> chunk, AudioLimits limits)
    {
        if (chunk.Length < 16)
        {
            throw Faults.Corrupt("The description of the sound (fmt) is shorter than 16 bytes");
        }

        int code = BinaryPrimitives.ReadUInt16LittleEndian(chunk);
        int channels = BinaryPrimitives.ReadUInt16LittleEndian(chunk[2..]);
        uint rateHz = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
        int blockAlign = BinaryPrimitives.ReadUInt16LittleEndian(chunk[12..]);
        int bits = BinaryPrimitives.ReadUInt16LittleEndian(chunk[14..]);
        Faults.CheckShape(rateHz, channels, limits);
        int validBits = bits;
        if (code == Extensible)
        {
            (code, validBits) = ParseExtension(chunk, bits);
        }

        SampleCoding coding = CodingOf(code, bits);
        int bytesPerSample = BytesOf(coding);
        return blockAlign == channels * bytesPerSample
            ? new WaveFormat(coding, (int)rateHz, channels, blockAlign, code == Pcm ? validBits : null)
            : throw Faults.Corrupt(string.Create(
                CultureInfo.InvariantCulture,
                $"The file says a frame takes {blockAlign} bytes; {channels} channels of {bits} bits take {channels * bytesPerSample}"));
    }

    private static (int Code, int ValidBits) ParseExtension(ReadOnlySpan<byte> chunk, int bits)
    {
        if (chunk.Length < 40)
        {
            throw Faults.Corrupt("The extended description of the sound (fmt) is shorter than 40 bytes");
        }

        if (!chunk[26..40].SequenceEqual(GuidTail))
        {
            throw Faults.Unsupported("The WAVE file is of a sub-format that is not read");
        }

        int validBits = BinaryPrimitives.ReadUInt16LittleEndian(chunk[18..]);
        if (validBits > bits)
        {
            throw Faults.Corrupt(string.Create(CultureInfo.InvariantCulture, $"The file says {validBits} of {bits} bits carry sound"));
        }

        // 0 is what some writers leave there; then all bits do.
        return (BinaryPrimitives.ReadUInt16LittleEndian(chunk[24..]), validBits == 0 ? bits : validBits);
    }

    private static SampleCoding CodingOf(int code, int bits) => (code, bits) switch
    {
        // A word length between the whole bytes is left-justified in the next larger container.
        (Pcm, > 8 and <= 16) => SampleCoding.Pcm16,
        (Pcm, > 16 and <= 24) => SampleCoding.Pcm24,
        (Pcm, > 24 and <= 32) => SampleCoding.Pcm32,
        (Float, 32) => SampleCoding.FloatingPoint32,
        (Float, 64) => SampleCoding.FloatingPoint64,
        (Pcm or Float, _) => throw Faults.Unsupported(string.Create(CultureInfo.InvariantCulture, $"The WAVE file has samples of {bits} bits")),
        _ => throw Faults.Unsupported(string.Create(CultureInfo.InvariantCulture, $"The WAVE file is of coding {code:X4} hexadecimal; PCM and floating point are read")),
    };

    private static int BytesOf(SampleCoding coding) => coding switch
    {
        SampleCoding.Pcm16 => 2,
        SampleCoding.Pcm24 => 3,
        SampleCoding.FloatingPoint64 => 8,
        _ => 4,
    };
}
