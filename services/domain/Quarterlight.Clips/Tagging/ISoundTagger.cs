namespace Quarterlight.Clips.Tagging;

/// <summary>A trained model. May be called from several threads at once.</summary>
public interface ISoundTagger
{
    /// <summary>Which model this is.</summary>
    TaggerIdentity Identity { get; }

    /// <summary>Where its answers count as absent, unsure and present.</summary>
    TagThresholds Thresholds { get; }

    /// <summary>Calibrated probabilities of the tags.</summary>
    /// <param name="features">One row of <see cref="FeatureFrontEnd.Count"/> values.</param>
    /// <exception cref="ArgumentException">The row has another length.</exception>
    TagProbabilities Score(ReadOnlySpan<float> features);
}
