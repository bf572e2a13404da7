namespace Quarterlight.Clips.Levels;

/// <summary>A stretch of a channel.</summary>
/// <param name="StartSeconds">Where it begins, in seconds from the start.</param>
/// <param name="Samples">Its length in samples.</param>
public readonly record struct Stretch(double StartSeconds, long Samples);

/// <summary>Stretches of one kind.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Samples">Samples in all of them.</param>
/// <param name="First">The first of them in order of time, at most as many as the meter lists.</param>
public sealed record Stretches(long Count, long Samples, IReadOnlyList<Stretch> First);

/// <summary>What the samples of one channel say. Levels are in dB re full scale, where a sample of ±1 is 0 dB; a square wave of full scale has 0 dB
/// rms, a sine -3.01 dB.</summary>
public sealed record SampleLevels
{
    /// <summary>Highest absolute sample in dB re full scale; null when all are 0.</summary>
    public double? PeakDbfs { get; init; }

    /// <summary>Root mean square in dB re full scale (dBov); null when all are 0.</summary>
    public double? RmsDbov { get; init; }

    /// <summary>Mean of the samples as a share of full scale.</summary>
    public double DcOffset { get; init; }

    /// <summary>Samples measured.</summary>
    public long Samples { get; init; }

    /// <summary>Samples that were no number or infinite, and were taken as 0.</summary>
    public long NotNumbers { get; init; }

    /// <summary>Runs of three or more samples at full scale, or cut flat at the channel's highest level.</summary>
    public required Stretches Clipping { get; init; }

    /// <summary>Runs of exact zeros of 10 ms or more, wherever they are.</summary>
    public required Stretches DigitalSilence { get; init; }

    /// <summary>Runs of zeros or of one repeated sample of 2 ms or more with sound (-40 dB re full scale or more) within 5 ms before and
    /// behind.</summary>
    public required Stretches Dropouts { get; init; }
}
