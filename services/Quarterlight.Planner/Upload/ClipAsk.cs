using Quarterlight.Clips.Judgement;
using Quarterlight.Planner.Mapping;

namespace Quarterlight.Planner.Upload;

/// <summary>What is asked about a clip: its header, checked.</summary>
internal sealed record ClipAsk
{
    /// <summary>Name of the file, for words only; may be empty.</summary>
    public required string FileName { get; init; }

    /// <summary>Bytes of the file; null when not known.</summary>
    public long? ByteCount { get; init; }

    /// <summary>What the plan forecast, talker by talker; null without a plan.</summary>
    public IReadOnlyList<PlannedMicrophone>? Planned { get; init; }

    /// <summary>Talker asked for; empty when none.</summary>
    public string TalkerId { get; init; } = "";

    /// <summary>Cylinders of the engine; null when not known.</summary>
    public int? Cylinders { get; init; }

    /// <summary>Sound pressure level in dB of a sine that reads 0 dBFS; null when not known.</summary>
    public double? FullScaleSplDb { get; init; }

    /// <summary>True to draw.</summary>
    public bool IncludePicture { get; init; }

    /// <summary>Number of the channel to draw; 0 for the one the verdict speaks of.</summary>
    public int PictureChannel { get; init; }

    /// <summary>Thresholds in force.</summary>
    public required ClipThresholds Thresholds { get; init; }

    /// <summary>Path of the header's fields in the request, with the point behind it: <c>header.</c>, or nothing.</summary>
    public required string Prefix { get; init; }
}
