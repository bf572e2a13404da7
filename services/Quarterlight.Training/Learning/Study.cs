using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>Everything a model is trained and tested with.</summary>
/// <param name="Sounds">Real recordings.</param>
/// <param name="Training">Augmented clips to train with.</param>
/// <param name="Folds">Test clips.</param>
public sealed record Study(IReadOnlyList<SourceSound> Sounds, IReadOnlyList<SoundCase> Training, IReadOnlyList<TestFold> Folds)
{
    private string? _cache;

    /// <summary>Variants of each recording in training.</summary>
    public const int Variants = 8;

    /// <summary>Made sounds: fans, engines, winds, others, room tones.</summary>
    public static IReadOnlyList<int> MadeCounts { get; } = [260, 140, 140, 140, 120];

    /// <summary>The learners whose blend ships, chosen by <c>compare</c>.</summary>
    public static IReadOnlyList<Learner> Shipped { get; } = [Learners.LightGbm, Learners.Logistic];

    /// <summary>Reads, makes and mixes.</summary>
    /// <param name="clips">Folder with the manifest.</param>
    /// <param name="own">Folder of the mixer's own clips, or nothing.</param>
    /// <param name="cache">File that keeps the features between commands, or nothing.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<Study> PrepareAsync(string clips, string? own, string? cache, CancellationToken cancellation)
    {
        var sounds = new List<SourceSound>(await Manifest.ReadAsync(clips, cancellation).ConfigureAwait(false));
        if (own is not null)
        {
            sounds.AddRange(await OwnClips.ReadAsync(own, cancellation).ConfigureAwait(false));
        }

        if (File.Exists(cache))
        {
            (IReadOnlyList<SoundCase> training, IReadOnlyList<TestFold> folds) = StudyFile.Read(cache);
            return new Study(sounds, training, folds) { _cache = cache };
        }

        IReadOnlyList<SourceSound> made = SoundLibrary.Made(MadeCounts[0], MadeCounts[1], MadeCounts[2], MadeCounts[3], MadeCounts[4]);
        var study = new Study(sounds, TrainingCases.Make(sounds.Concat(made), Variants), TestCases.Make(sounds)) { _cache = cache };
        if (cache is not null)
        {
            StudyFile.Write(cache, study.Training, study.Folds);
        }

        return study;
    }

    /// <summary>Held-out scores of a learner, in blocks; kept in the cache, if there is one.</summary>
    public IReadOnlyList<ScoredCase> Score(Learner learner)
    {
        ArgumentNullException.ThrowIfNull(learner);
        string? file = _cache is null ? null : $"{_cache}.{learner.Name}";
        if (File.Exists(file))
        {
            return StudyFile.ReadScores(file, Folds);
        }

        IReadOnlyList<ScoredCase> scored = HeldOut.Score(learner, Training, Folds, false);
        if (file is not null)
        {
            StudyFile.WriteScores(file, scored);
        }

        return scored;
    }

    /// <summary>Training clips without made sounds.</summary>
    public IReadOnlyList<SoundCase> WithoutMade() => [.. Training.Where(c => !c.Recordings.Any(IsMade))];

    /// <summary>Training clips in which every noise is made; speech and room tone stay real, because there is none made.</summary>
    public IReadOnlyList<SoundCase> OnlyMadeNoise()
    {
        var noises = Sounds.Where(s => s.Kind == SoundKind.Noise).Select(s => s.Recording).ToHashSet();
        return [.. Training.Where(c => !c.Recordings.Any(noises.Contains))];
    }

    /// <summary>Held-out, cross-calibrated answers of a blend.</summary>
    public static IReadOnlyList<JudgedCase> Judge(IReadOnlyList<IReadOnlyList<ScoredCase>> members) => JudgedCase.CrossCalibrated(Blend.Of(members).Scored);

    /// <summary>The rule's answers, calibrated like a learner's.</summary>
    public IReadOnlyList<JudgedCase> JudgeRule() => Judge([[.. Folds.SelectMany(f => f.Cases.Select(c => SpectralRule.Score(c, f.Block)))]]);

    /// <summary>The unsure bands, from held-out answers.</summary>
    public static TagThresholds Thresholds(IReadOnlyList<JudgedCase> judged) => new(
        Calibration.Band(ClipTag.Engine, judged), Calibration.Band(ClipTag.Wind, judged), Calibration.Band(ClipTag.AirConditioning, judged), Calibration.Band(ClipTag.Clean, judged));

    private static bool IsMade(string recording) => recording.StartsWith("made-", StringComparison.Ordinal);
}
