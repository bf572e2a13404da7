using System.Buffers.Binary;

namespace Quarterlight.Audio.Ffmpeg;

/// <summary>The first block of a FLAC file (STREAMINFO): RFC 9639, section 8.2.</summary>
internal static class FlacHead
{
    /// <summary>Frames the file says it holds; null when it does not say or the head is not whole.</summary>
    public static long? FrameCount(ReadOnlySpan<byte> head)
    {
        // Mark 4, block header 4, block and frame sizes 10; then rate 20 bits, channels 3, bits 5, frames 36.
        if (head.Length < 26 || !head.StartsWith("fLaC"u8) || (head[4] & 0x7F) != 0)
        {
            return null;
        }

        long frames = (long)(BinaryPrimitives.ReadUInt64BigEndian(head[18..]) & 0xFFFFFFFFF);
        return frames > 0 ? frames : null;
    }
}
