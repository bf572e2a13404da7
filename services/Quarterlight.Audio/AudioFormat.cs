namespace Quarterlight.Audio;

/// <summary>What the file says about its sound.</summary>
/// <param name="SampleRateHz">Frames a second, within the limits given.</param>
/// <param name="ChannelCount">Channels, 1 or more, within the limits given.</param>
/// <param name="Coding">How the samples are written.</param>
/// <param name="ValidBits">Bits of a whole-number sample that carry sound, as declared; null for all other codings.</param>
/// <param name="DeclaredFrameCount">Frames the file says it holds; null when it does not say.</param>
public sealed record AudioFormat(int SampleRateHz, int ChannelCount, SampleCoding Coding, int? ValidBits, long? DeclaredFrameCount)
{
    /// <summary>Length the file says it has; null when it does not say.</summary>
    public TimeSpan? DeclaredDuration => DeclaredFrameCount is { } frames ? TimeSpan.FromSeconds((double)frames / SampleRateHz) : null;
}
