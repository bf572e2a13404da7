using System.Buffers.Binary;

namespace Quarterlight.Audio.Wav;

/// <summary>Turns little-endian samples into numbers of nominal full scale 1.0.</summary>
internal static class SampleDecoder
{
    private const float Scale16 = 1f / 32_768f;
    private const float Scale24 = 1f / 8_388_608f;
    private const double Scale32 = 1.0 / 2_147_483_648.0;

    /// <summary>Decodes as many samples as the target holds.</summary>
    /// <returns>How many were not finite numbers; those become 0.</returns>
    public static int Decode(SampleCoding coding, ReadOnlySpan<byte> bytes, Span<float> target)
    {
        switch (coding)
        {
            case SampleCoding.Pcm16:
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = BinaryPrimitives.ReadInt16LittleEndian(bytes[(2 * i)..]) * Scale16;
                }

                return 0;
            case SampleCoding.Pcm24:
                for (int i = 0; i < target.Length; i++)
                {
                    int b = 3 * i;
                    target[i] = ((bytes[b] << 8 | bytes[b + 1] << 16 | bytes[b + 2] << 24) >> 8) * Scale24;
                }

                return 0;
            case SampleCoding.Pcm32:
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = (float)(BinaryPrimitives.ReadInt32LittleEndian(bytes[(4 * i)..]) * Scale32);
                }

                return 0;
            case SampleCoding.FloatingPoint32:
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = BinaryPrimitives.ReadSingleLittleEndian(bytes[(4 * i)..]);
                }

                return Mend(target);
            case SampleCoding.FloatingPoint64:
                for (int i = 0; i < target.Length; i++)
                {
                    target[i] = (float)BinaryPrimitives.ReadDoubleLittleEndian(bytes[(8 * i)..]);
                }

                return Mend(target);
            default:
                throw new ArgumentOutOfRangeException(nameof(coding), coding, "Not a coding of WAVE files.");
        }
    }

    /// <summary>Replaces what is not a finite number by 0.</summary>
    /// <returns>How many were replaced.</returns>
    public static int Mend(Span<float> samples)
    {
        int mended = 0;
        foreach (ref float sample in samples)
        {
            if (!float.IsFinite(sample))
            {
                sample = 0;
                mended++;
            }
        }

        return mended;
    }
}
