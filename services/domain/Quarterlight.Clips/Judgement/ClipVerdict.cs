namespace Quarterlight.Clips.Judgement;

/// <summary>What may be done with a clip, in order of harm.</summary>
public enum ClipOutcome
{
    /// <summary>Nothing found that would hurt.</summary>
    Use,

    /// <summary>Usable, but mend it before the take if there is time.</summary>
    UseWithCare,

    /// <summary>Mend it and record again.</summary>
    Redo,
}

/// <summary>A stretch of time in seconds from the start of the clip.</summary>
public readonly record struct TimeStretch(double StartSeconds, double EndSeconds);

/// <summary>Why a clip is what it is, and the way out.</summary>
public sealed record ClipReason
{
    /// <summary>Stable word in lower case with dashes: see <see cref="ClipReasonCodes"/>.</summary>
    public required string Code { get; init; }

    /// <summary>What the clip would be for this reason alone; <see cref="ClipOutcome.Use"/> is a remark.</summary>
    public required ClipOutcome Outcome { get; init; }

    /// <summary>How much it hurts among reasons of the same outcome, larger is worse; no unit, for the order only.</summary>
    public required double Harm { get; init; }

    /// <summary>What was found: one sentence.</summary>
    public required string Words { get; init; }

    /// <summary>What mends it: one line; empty when nothing needs to be done.</summary>
    public string Remedy { get; init; } = "";

    /// <summary>Where, at most 10; empty for all of the clip.</summary>
    public IReadOnlyList<TimeStretch> Stretches { get; init; } = [];

    /// <summary>Channel from 0; null for the clip as a whole.</summary>
    public int? Channel { get; init; }

    /// <summary>The figure that was judged, in <see cref="Unit"/>.</summary>
    public double? Measured { get; init; }

    /// <summary>What it was held against, in <see cref="Unit"/>.</summary>
    public double? Limit { get; init; }

    /// <summary>Unit of both.</summary>
    public string Unit { get; init; } = "";
}

/// <summary>Whether a clip can be used.</summary>
/// <param name="Outcome">The worst of the channels that carry sound.</param>
/// <param name="Headline">The decision in one line.</param>
/// <param name="Reasons">In order of harm, the worst first.</param>
/// <param name="ChannelOutcomes">Outcome of each channel.</param>
/// <param name="WorstChannel">Channel from 0 that the verdict speaks of.</param>
public sealed record ClipVerdict(
    ClipOutcome Outcome, string Headline, IReadOnlyList<ClipReason> Reasons, IReadOnlyList<ClipOutcome> ChannelOutcomes, int WorstChannel);
