using System.Buffers.Binary;

namespace Quarterlight.Audio.Mp3;

/// <summary>
/// The frame some encoders put before the sound (Xing or Info, with the LAME part): how many frames follow, and how many samples at
/// both ends are the encoder's own. Layout from memory; held against files of a known length in the tests.
/// </summary>
/// <param name="FrameCount">Frames of the file behind the tag; null when not said.</param>
/// <param name="DelaySamples">Samples the encoder put in front; 0 when not said.</param>
/// <param name="PaddingSamples">Samples the encoder put behind; 0 when not said.</param>
internal sealed record Mp3Tag(int? FrameCount, int DelaySamples, int PaddingSamples)
{
    /// <summary>Samples every layer III decoder lags behind.</summary>
    public const int DecoderLag = 529;

    /// <summary>Reads the tag; null when the frame is sound.</summary>
    public static Mp3Tag? Read(Mp3Header header, ReadOnlySpan<byte> frame)
    {
        int at = Mp3Header.Bytes + header.SideBytes;
        if (frame.Length < at + 8 || (!frame[at..].StartsWith("Xing"u8) && !frame[at..].StartsWith("Info"u8)))
        {
            return null;
        }

        uint flags = BinaryPrimitives.ReadUInt32BigEndian(frame[(at + 4)..]);
        at += 8;
        int? frames = null;
        if ((flags & 1) != 0 && frame.Length >= at + 4)
        {
            uint said = BinaryPrimitives.ReadUInt32BigEndian(frame[at..]);
            frames = said is > 0 and <= int.MaxValue ? (int)said : null;
        }

        at += ((flags & 1) != 0 ? 4 : 0) + ((flags & 2) != 0 ? 4 : 0) + ((flags & 4) != 0 ? 100 : 0) + ((flags & 8) != 0 ? 4 : 0);
        if (frame.Length < at + 24 || (!frame[at..].StartsWith("LAME"u8) && !frame[at..].StartsWith("Lavc"u8) && !frame[at..].StartsWith("Lavf"u8)))
        {
            return new Mp3Tag(frames, 0, 0);
        }

        int both = frame[at + 21] << 16 | frame[at + 22] << 8 | frame[at + 23];
        return new Mp3Tag(frames, both >> 12, both & 0xFFF);
    }
}
