namespace Quarterlight.Clips.Tagging;

/// <summary>What is listened for. Several may hold at once.</summary>
public enum ClipTag
{
    /// <summary>A combustion engine.</summary>
    Engine,

    /// <summary>Moving air outdoors or at the capsule.</summary>
    Wind,

    /// <summary>Blower, fan, ventilation, cooling.</summary>
    AirConditioning,

    /// <summary>Nothing but speech or room tone.</summary>
    Clean,
}

/// <summary>Whether a tag holds.</summary>
public enum TagState
{
    /// <summary>It does not.</summary>
    Absent,

    /// <summary>The tagger cannot tell.</summary>
    Unsure,

    /// <summary>It does.</summary>
    Present,
}

/// <summary>Calibrated probability of each tag, 0 to 1.</summary>
public readonly record struct TagProbabilities(double Engine, double Wind, double AirConditioning, double Clean)
{
    /// <summary>Probability of one tag.</summary>
    public double this[ClipTag tag] => tag switch
    {
        ClipTag.Engine => Engine,
        ClipTag.Wind => Wind,
        ClipTag.AirConditioning => AirConditioning,
        _ => Clean,
    };
}

/// <summary>Tags of about one second, in seconds from the start of the clip.</summary>
public sealed record TaggedSecond(double StartSeconds, double EndSeconds, TagProbabilities Probabilities);

/// <summary>Which model heard the tags.</summary>
public sealed record TaggerIdentity(string Name, string Version, string TrainingDataDigest);

/// <summary>Tags of a channel.</summary>
/// <param name="Overall">Probabilities over the clip.</param>
/// <param name="States">State of all four tags.</param>
/// <param name="Seconds">Second by second.</param>
/// <param name="Tagger">Which model heard them.</param>
public sealed record TagReport(
    TagProbabilities Overall, IReadOnlyDictionary<ClipTag, TagState> States, IReadOnlyList<TaggedSecond> Seconds, TaggerIdentity Tagger);
