namespace Quarterlight.Clips.Levels;

/// <summary>How two channels hang together.</summary>
public sealed record ChannelRelation
{
    /// <summary>Every sample of one is that of the other; false for an empty stream.</summary>
    public bool Identical { get; init; }

    /// <summary>Correlation at the best delay, -1 to 1, over all of the stream; 0 when one channel is silent.</summary>
    public double Correlation { get; init; }

    /// <summary>True when the correlation is strong enough to speak of delay and polarity: ±0.3 or beyond (judgement).</summary>
    public bool Related => Math.Abs(Correlation) >= ChannelRelationMeter.LeastCorrelation;

    /// <summary>True when the second channel stands upside down; null when the channels are not related.</summary>
    public bool? PolarityInverted => Related ? Correlation < 0 : null;

    /// <summary>How much later the second channel is, in samples, -20 to 20 ms; null when the channels are not related.</summary>
    public double? DelaySamples { get; init; }

    /// <summary>How much later the second channel is, in ms; null when the channels are not related.</summary>
    public double? DelayMs { get; init; }

    /// <summary>Level of the second channel less that of the first in dB, of all up to about 4 kHz with the low end turned down; null when one is
    /// silent.</summary>
    public double? LevelDifferenceDb { get; init; }
}
