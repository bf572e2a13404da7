using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips;

/// <summary>All that was measured on a clip.</summary>
public sealed record ClipMeasures
{
    /// <summary>Length in seconds.</summary>
    public required double DurationSeconds { get; init; }

    /// <summary>Frames a second.</summary>
    public required int SampleRateHz { get; init; }

    /// <summary>Channel by channel; at least one.</summary>
    public required IReadOnlyList<ChannelMeasures> Channels { get; init; }

    /// <summary>Loudness of all channels together, each at weight 1.</summary>
    public required Loudness Programme { get; init; }

    /// <summary>Pairs of channels: all of up to four; of more the neighbours, and whichever are identical.</summary>
    public required IReadOnlyList<ChannelPair> Pairs { get; init; }
}

/// <summary>How two channels hang together.</summary>
/// <param name="First">Index of the first, from 0.</param>
/// <param name="Second">Index of the second, from 0.</param>
/// <param name="Relation">What was found.</param>
public sealed record ChannelPair(int First, int Second, ChannelRelation Relation);

/// <summary>All that was measured on one channel.</summary>
public sealed record ChannelMeasures
{
    /// <summary>Index from 0.</summary>
    public required int Index { get; init; }

    /// <summary>What the samples say.</summary>
    public required SampleLevels Samples { get; init; }

    /// <summary>True peak.</summary>
    public required TruePeak TruePeak { get; init; }

    /// <summary>Loudness of the channel alone.</summary>
    public required Loudness Loudness { get; init; }

    /// <summary>Active speech level (ITU-T P.56).</summary>
    public required ActiveSpeechLevel SpeechLevel { get; init; }

    /// <summary>Bands, noise floor, speech, engine, low end, hum; levels in dBFS (AES17).</summary>
    public required ClipSpectrumReport Spectrum { get; init; }

    /// <summary>Where there is speech, in order of time; at most 200 stretches, the longest are kept.</summary>
    public required IReadOnlyList<TimeStretch> Speech { get; init; }

    /// <summary>Tags; null without a tagger, below half a second, or for digital silence.</summary>
    public TagReport? Tags { get; init; }

    /// <summary>What a picture of the channel is drawn from.</summary>
    public required ClipTimeline Timeline { get; init; }

    /// <summary>True when every sample is 0.</summary>
    public bool IsSilent => Samples.PeakDbfs is null;
}
