using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips;

/// <summary>What a <see cref="ClipMeter"/> looks for beyond levels and bands.</summary>
public sealed record ClipMeterOptions
{
    /// <summary>Cylinders of a four-stroke engine, 2 to 12, to tell its speed; null leaves it out.</summary>
    public int? Cylinders { get; init; }

    /// <summary>The model that hears tags; null leaves them out.</summary>
    public ISoundTagger? Tagger { get; init; }

    /// <summary>False leaves the timelines empty.</summary>
    public bool Timeline { get; init; } = true;
}
