namespace Quarterlight.Clips.Levels;

/// <summary>Loudness of a channel or of all together, in LKFS (the same as LUFS). A value is null where the clip is too short for it or all is
/// below the gate.</summary>
public sealed record Loudness
{
    /// <summary>Integrated loudness in LKFS: 400 ms blocks every 100 ms, gates -70 LKFS and -10 LU (BS.1770-5 Annex 1).</summary>
    public double? IntegratedLkfs { get; init; }

    /// <summary>Loudness range in LU (EBU Tech 3342).</summary>
    public double? RangeLu { get; init; }

    /// <summary>Highest momentary loudness (400 ms) in LKFS, looked for every 10 ms.</summary>
    public double? MaxMomentaryLkfs { get; init; }

    /// <summary>Where the window of <see cref="MaxMomentaryLkfs"/> begins, in seconds from the start; the first if several are alike.</summary>
    public double? MaxMomentaryStartSeconds { get; init; }

    /// <summary>Highest short-term loudness (3 s) in LKFS, looked for every 10 ms.</summary>
    public double? MaxShortTermLkfs { get; init; }

    /// <summary>Where the window of <see cref="MaxShortTermLkfs"/> begins, in seconds from the start; the first if several are alike.</summary>
    public double? MaxShortTermStartSeconds { get; init; }

    /// <summary>Momentary loudness of the last 400 ms in LKFS.</summary>
    public double? MomentaryLkfs { get; init; }

    /// <summary>Short-term loudness of the last 3 s in LKFS.</summary>
    public double? ShortTermLkfs { get; init; }
}

/// <summary>What a <see cref="LoudnessMeter"/> found.</summary>
/// <param name="Programme">All channels together, each by its weight.</param>
/// <param name="Channels">Each channel alone at weight 1, in the order of the stream.</param>
public sealed record LoudnessReport(Loudness Programme, IReadOnlyList<Loudness> Channels);
