using System.Buffers.Binary;
using System.Globalization;

namespace Quarterlight.Audio.Ogg;

/// <summary>The identification header of Opus in Ogg: RFC 7845, section 5.1.</summary>
internal sealed record OpusHead(int ChannelCount, int PreSkip, float Gain, int StreamCount, int CoupledCount, byte[] Mapping)
{
    /// <summary>Reads the header.</summary>
    /// <exception cref="AudioFaultException">The header contradicts itself, or is of a family that is not read.</exception>
    public static OpusHead Parse(ReadOnlySpan<byte> packet)
    {
        if (packet.Length < 19 || !packet.StartsWith("OpusHead"u8) || packet[8] > 15)
        {
            throw Faults.Corrupt("The head of the Opus file is broken");
        }

        int channels = packet[9];
        int preSkip = BinaryPrimitives.ReadUInt16LittleEndian(packet[10..]);
        // Q7.8 decibels.
        float gain = MathF.Pow(10, BinaryPrimitives.ReadInt16LittleEndian(packet[16..]) / (20f * 256f));
        switch (packet[18])
        {
            case 0 when channels is 1 or 2:
                return new OpusHead(channels, preSkip, gain, 1, channels - 1, [0, 1]);
            case 1 when channels is >= 1 and <= 8 && packet.Length >= 21 + channels:
                int streams = packet[19];
                int coupled = packet[20];
                byte[] mapping = packet.Slice(21, channels).ToArray();
                // Each layout of family 1 decodes as many channels as it has (section 5.1.1.2).
                return streams > 0 && coupled <= streams && streams + coupled <= channels && Array.TrueForAll(mapping, m => m < streams + coupled || m == 255)
                    ? new OpusHead(channels, preSkip, gain, streams, coupled, mapping)
                    : throw Faults.Corrupt("The channels of the Opus file are described wrongly");
            case 0 or 1:
                throw Faults.Corrupt("The channels of the Opus file are described wrongly");
            default:
                throw Faults.Unsupported(string.Create(CultureInfo.InvariantCulture, $"The Opus file is of channel family {packet[18]}; 0 and 1 are read"));
        }
    }
}
