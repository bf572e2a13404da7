namespace Quarterlight.Clips.Tagging;

/// <summary>What the tagger hears in one channel. Stands in until the front end is there: it hears nothing.</summary>
/// <param name="rateHz">Samples a second.</param>
public sealed class FeatureFrontEnd(double rateHz)
{
    private long _samples;

    /// <summary>Shortest clip that gives features, s.</summary>
    public const double ShortestSeconds = 0.5;

    /// <summary>Names of the features, in the order of a row.</summary>
    public static IReadOnlyList<string> Names { get; } = ["none"];

    /// <summary>Values in a row.</summary>
    public static int Count => 1;

    /// <summary>Takes the next samples, full scale 1.</summary>
    public void Add(ReadOnlySpan<float> mono) => _samples += mono.Length;

    /// <summary>Ends the clip and gives its features.</summary>
    public ClipFeatures Finish() => new(_samples / rateHz, [], ReadOnlyMemory<float>.Empty);
}
