namespace Quarterlight.Clips.Tagging;

/// <summary>Calibrated probabilities of the tags, each 0 to 1. They need not add up to 1: several tags may hold, or none.</summary>
/// <param name="Engine">A combustion engine can be heard.</param>
/// <param name="Wind">Moving air outdoors or at the capsule.</param>
/// <param name="AirConditioning">Blower, fan, air conditioning or ventilation.</param>
/// <param name="Clean">Nothing but speech or room tone would be heard.</param>
public readonly record struct TagProbabilities(double Engine, double Wind, double AirConditioning, double Clean)
{
    /// <summary>The probability of one tag.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such tag.</exception>
    public double this[ClipTag tag] => tag switch
    {
        ClipTag.Engine => Engine,
        ClipTag.Wind => Wind,
        ClipTag.AirConditioning => AirConditioning,
        ClipTag.Clean => Clean,
        _ => throw new ArgumentOutOfRangeException(nameof(tag), tag, "There is no such tag."),
    };
}
