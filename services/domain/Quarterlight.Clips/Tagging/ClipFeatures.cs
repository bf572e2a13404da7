namespace Quarterlight.Clips.Tagging;

/// <summary>The features of about one second.</summary>
/// <param name="StartSeconds">Start, s from the clip's start.</param>
/// <param name="EndSeconds">End, s.</param>
/// <param name="Row">Values in the order of <see cref="FeatureFrontEnd.Names"/>, all finite, from up to 3 s around.</param>
public sealed record FeatureSecond(double StartSeconds, double EndSeconds, ReadOnlyMemory<float> Row);

/// <summary>What the front end hears in a clip.</summary>
/// <param name="DurationSeconds">Length of the clip, s.</param>
/// <param name="Seconds">Each second in order; none when the clip is shorter than <see cref="FeatureFrontEnd.ShortestSeconds"/>.</param>
public sealed record ClipFeatures(double DurationSeconds, IReadOnlyList<FeatureSecond> Seconds);
