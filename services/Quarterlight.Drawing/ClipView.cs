using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;

namespace Quarterlight.Drawing;

/// <summary>What a clip's picture shows: one channel of a judged clip.</summary>
public sealed record ClipView
{
    /// <summary>All that was measured.</summary>
    public required ClipMeasures Measures { get; init; }

    /// <summary>Whether the clip can be used.</summary>
    public required ClipVerdict Verdict { get; init; }

    /// <summary>Index from 0 of the channel to draw.</summary>
    public required int Channel { get; init; }

    /// <summary>Name the recorder gave the track; user text, cut to what fits.</summary>
    public string ChannelName { get; init; } = "";

    /// <summary>Name of the file; user text, cut to what fits.</summary>
    public string FileName { get; init; } = "";

    /// <summary>What a plan forecast beside this channel; null without a plan.</summary>
    public PlanComparison? Comparison { get; init; }
}
