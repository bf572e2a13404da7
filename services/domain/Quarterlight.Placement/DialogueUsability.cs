namespace Quarterlight.Placement;

/// <summary>How much speech over noise dialogue needs: the one statement of the thresholds, for plans and for noise forecasts.</summary>
public static class DialogueUsability
{
    /// <summary>Below this speech-to-noise ratio in dB(A) dialogue cannot be used: speech and noise alike (judgement; the trade's "unusable").</summary>
    public const double UnusableBelowDb = 6;

    /// <summary>Below this ratio in dB(A) it is thin: have a wild track and wild lines (judgement).</summary>
    public const double ThinBelowDb = 12;
}
