namespace Quarterlight.Clips.Tagging;

/// <summary>Turns a clip's features into tags.</summary>
public static class ClipTagger
{
    private static readonly ClipTag[] s_tags = Enum.GetValues<ClipTag>();

    /// <summary>Tags every second and the clip as a whole.</summary>
    /// <param name="features">What the front end heard.</param>
    /// <param name="tagger">The model.</param>
    /// <returns>The tags; nothing when the clip is shorter than <see cref="FeatureFrontEnd.ShortestSeconds"/>.</returns>
    public static TagReport? Tag(ClipFeatures features, ISoundTagger tagger)
    {
        ArgumentNullException.ThrowIfNull(features);
        ArgumentNullException.ThrowIfNull(tagger);
        if (features.Seconds.Count == 0)
        {
            return null;
        }

        var seconds = new List<TaggedSecond>(features.Seconds.Count);
        foreach (FeatureSecond second in features.Seconds)
        {
            seconds.Add(new(second.StartSeconds, second.EndSeconds, tagger.Score(second.Row.Span)));
        }

        TagProbabilities overall = Pool(seconds);
        return new(overall, s_tags.ToDictionary(t => t, t => tagger.Thresholds[t].StateOf(overall[t])), seconds, tagger.Identity);
    }

    /// <summary>The clip's probabilities: the mean over its seconds, weighted by length.</summary>
    /// <exception cref="ArgumentException">There are no seconds.</exception>
    public static TagProbabilities Pool(IReadOnlyList<TaggedSecond> seconds)
    {
        ArgumentNullException.ThrowIfNull(seconds);
        if (seconds.Count == 0)
        {
            throw new ArgumentException("At least one second is needed.", nameof(seconds));
        }

        double total = seconds.Sum(s => s.EndSeconds - s.StartSeconds);
        double Mean(ClipTag tag) => Math.Clamp(seconds.Sum(s => s.Probabilities[tag] * (s.EndSeconds - s.StartSeconds)) / total, 0, 1);
        return new(Mean(ClipTag.Engine), Mean(ClipTag.Wind), Mean(ClipTag.AirConditioning), Mean(ClipTag.Clean));
    }
}
