namespace Quarterlight.Audio.Ogg;

/// <summary>
/// Looks through the codebooks of a Vorbis setup header before the decoder makes tables for them: a head of a few hundred bytes can ask
/// for gigabytes. Vorbis I specification, sections 2.1.4 and 3.2.1 (from memory; held against a real encoder's file in the tests).
/// </summary>
internal static class VorbisSetup
{
    // Judgement: a real setup of a stereo encoder asks for well below 100 000.
    private const long MostTableValues = 1L << 21;
    private const uint BookMark = 0x564342;

    /// <summary>Refuses a setup that is broken in its codebooks or asks for too much.</summary>
    /// <returns>Table values the codebooks ask for.</returns>
    /// <exception cref="AudioFaultException">The setup is broken or too large.</exception>
    public static long Check(ReadOnlySpan<byte> packet)
    {
        if (packet.Length < 8 || packet[0] != 5 || !packet[1..].StartsWith("vorbis"u8))
        {
            throw Broken();
        }

        var bits = new Bits(packet[7..]);
        uint books = bits.Take(8) + 1;
        long values = 0;
        for (uint book = 0; book < books; book++)
        {
            values += Book(ref bits);
            if (bits.IsOver)
            {
                throw Broken();
            }

            if (values > MostTableValues)
            {
                throw Faults.Corrupt("The Vorbis sound asks for tables larger than any real encoder's");
            }
        }

        return values;
    }

    private static long Book(ref Bits bits)
    {
        if (bits.Take(24) != BookMark)
        {
            throw Broken();
        }

        uint dimensions = bits.Take(16);
        uint entries = bits.Take(24);
        long values = Math.Max(1L, dimensions) * entries;
        if (values > MostTableValues)
        {
            return values;
        }

        SkipLengths(ref bits, entries);
        uint lookup = bits.Take(4);
        if (lookup is 1 or 2)
        {
            bits.Skip(64);
            uint valueBits = bits.Take(4) + 1;
            bits.Skip(1);
            bits.Skip(valueBits * (lookup == 2 ? (long)entries * dimensions : Root(entries, dimensions)));
        }
        else if (lookup != 0)
        {
            throw Broken();
        }

        return values;
    }

    private static void SkipLengths(ref Bits bits, uint entries)
    {
        if (bits.Take(1) != 0)
        {
            bits.Skip(5);
            for (uint done = 0; done < entries && !bits.IsOver;)
            {
                done += bits.Take(32 - System.Numerics.BitOperations.LeadingZeroCount(entries - done));
            }

            return;
        }

        bool sparse = bits.Take(1) != 0;
        for (uint i = 0; i < entries && !bits.IsOver; i++)
        {
            if (!sparse || bits.Take(1) != 0)
            {
                bits.Skip(5);
            }
        }
    }

    // Largest whole number whose power of the dimensions does not pass the entries.
    private static long Root(uint entries, uint dimensions)
    {
        if (dimensions == 0)
        {
            throw Broken();
        }

        long root = (long)Math.Floor(Math.Pow(entries, 1.0 / dimensions)) + 1;
        while (root > 0 && Power(root, dimensions, entries) > entries)
        {
            root--;
        }

        return root;
    }

    private static long Power(long root, uint dimensions, long stop)
    {
        long power = 1;
        for (uint i = 0; i < dimensions && power <= stop && root > 1; i++)
        {
            power *= root;
        }

        return root == 0 ? 0 : power;
    }

    private static AudioFaultException Broken() => Faults.Corrupt("The head of the Vorbis file is broken");

    // Low bit first; behind the end zeros, and IsOver.
    private ref struct Bits(ReadOnlySpan<byte> bytes)
    {
        private readonly ReadOnlySpan<byte> _bytes = bytes;
        private long _at;

        public readonly bool IsOver => _at > _bytes.Length * 8L;

        public void Skip(long count) => _at += count;

        public uint Take(int count)
        {
            uint value = 0;
            for (int i = 0; i < count; i++, _at++)
            {
                long at = _at >> 3;
                if (at < _bytes.Length)
                {
                    value |= (uint)(_bytes[(int)at] >> (int)(_at & 7) & 1) << i;
                }
            }

            return value;
        }
    }
}
