using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What of a judged clip is asked about.</summary>
public enum ClipAspect
{
    /// <summary>The decision.</summary>
    Verdict,

    /// <summary>The reasons, with what mends them.</summary>
    Why,

    /// <summary>Where in the clip.</summary>
    Where,

    /// <summary>All that was measured.</summary>
    Figures,

    /// <summary>Channel by channel.</summary>
    Channels,

    /// <summary>Beside the plan.</summary>
    Comparison,

    /// <summary>Loudness and peaks.</summary>
    Loudness,

    /// <summary>Engine speed.</summary>
    EngineSpeed,

    /// <summary>Engine, wind, fan, clean, hum.</summary>
    Heard,

    /// <summary>The noise, and the speech over it.</summary>
    Noise,

    /// <summary>What the file is and what the recorder wrote.</summary>
    File,
}

/// <summary>What a question says about clips.</summary>
public sealed record ClipSaid
{
    /// <summary>What is asked about.</summary>
    public ClipAspect Aspect { get; init; }

    /// <summary>Channel, 1 is the first; null when not said.</summary>
    public int? Channel { get; init; }

    /// <summary>Cylinders of the engine; null when not said.</summary>
    public int? Cylinders { get; init; }

    /// <summary>True for the invented clip that the desk makes itself.</summary>
    public bool Demo { get; init; }

    /// <summary>True for the clip judged last, judged once more.</summary>
    public bool Again { get; init; }

    /// <summary>Limits to set; null when none was said.</summary>
    public ClipThresholds? Limits { get; init; }

    /// <summary>True for the limits to go back to their defaults.</summary>
    public bool ResetsLimits { get; init; }
}
