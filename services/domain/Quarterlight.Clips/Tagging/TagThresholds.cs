namespace Quarterlight.Clips.Tagging;

/// <summary>Where a probability says neither yes nor no.</summary>
/// <param name="AbsentBelow">Below this the tag is absent, 0 to 1.</param>
/// <param name="PresentFrom">From this on the tag is present, 0 to 1, at least <paramref name="AbsentBelow"/>.</param>
public readonly record struct UnsureBand(double AbsentBelow, double PresentFrom)
{
    /// <summary>What a probability says. One that is not a number says nothing: unsure.</summary>
    public TagState StateOf(double probability) =>
        probability >= PresentFrom ? TagState.Present : probability < AbsentBelow ? TagState.Absent : TagState.Unsure;
}

/// <summary>The unsure band of each tag, chosen on recordings the model had not heard.</summary>
/// <param name="Engine">Band of the engine.</param>
/// <param name="Wind">Band of the wind.</param>
/// <param name="AirConditioning">Band of fan and air conditioning.</param>
/// <param name="Clean">Band of clean.</param>
public sealed record TagThresholds(UnsureBand Engine, UnsureBand Wind, UnsureBand AirConditioning, UnsureBand Clean)
{
    /// <summary>The band of one tag.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such tag.</exception>
    public UnsureBand this[ClipTag tag] => tag switch
    {
        ClipTag.Engine => Engine,
        ClipTag.Wind => Wind,
        ClipTag.AirConditioning => AirConditioning,
        ClipTag.Clean => Clean,
        _ => throw new ArgumentOutOfRangeException(nameof(tag), tag, "There is no such tag."),
    };
}
