using NLayer;

namespace Quarterlight.Audio.Mp3;

/// <summary>The four bytes before each frame of MPEG layer III: tables of ISO/IEC 11172-3 and 13818-3, from memory.</summary>
internal readonly record struct Mp3Header(
    MpegVersion Version, int BitRateIndex, int SampleRateIndex, bool Padded, bool HasCrc, MpegChannelMode ChannelMode, int ChannelModeExtension)
{
    /// <summary>Bytes of the header.</summary>
    public const int Bytes = 4;

    private static ReadOnlySpan<short> KbpsOne => [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];

    private static ReadOnlySpan<short> KbpsTwo => [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];

    private static ReadOnlySpan<int> RatesHz => [44_100, 48_000, 32_000];

    /// <summary>Frames of sound a second.</summary>
    public int SampleRateHz => RatesHz[SampleRateIndex] / (Version == MpegVersion.Version1 ? 1 : Version == MpegVersion.Version2 ? 2 : 4);

    /// <summary>Bits a second.</summary>
    public int BitRate => 1000 * (Version == MpegVersion.Version1 ? KbpsOne : KbpsTwo)[BitRateIndex];

    /// <summary>Frames of sound in one frame of the file.</summary>
    public int SampleCount => Version == MpegVersion.Version1 ? 1152 : 576;

    /// <summary>Bytes of the whole frame with its header.</summary>
    public int FrameBytes => SampleCount / 8 * BitRate / SampleRateHz + (Padded ? 1 : 0);

    /// <summary>Channels.</summary>
    public int ChannelCount => ChannelMode == MpegChannelMode.Mono ? 1 : 2;

    /// <summary>Bytes of side information behind header and checksum.</summary>
    public int SideBytes => (Version == MpegVersion.Version1, ChannelCount) switch { (true, 2) => 32, (true, _) or (false, 2) => 17, _ => 9 };

    /// <summary>Reads a header; null when the bytes are none.</summary>
    public static Mp3Header? Read(ReadOnlySpan<byte> head)
    {
        if (!ContentSniffer.IsLayer3(head))
        {
            return null;
        }

        MpegVersion version = (head[1] >> 3 & 3) switch { 3 => MpegVersion.Version1, 2 => MpegVersion.Version2, _ => MpegVersion.Version25 };
        return new Mp3Header(
            version, head[2] >> 4, head[2] >> 2 & 3, (head[2] & 2) != 0, (head[1] & 1) == 0, (MpegChannelMode)(head[3] >> 6), head[3] >> 4 & 3);
    }

    /// <summary>True when both can stand in one file.</summary>
    public bool Fits(Mp3Header other) => Version == other.Version && SampleRateIndex == other.SampleRateIndex && ChannelCount == other.ChannelCount;
}
