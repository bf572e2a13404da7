using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Learning;

namespace Quarterlight.Training.Card;

/// <summary>All figures of the model card.</summary>
/// <param name="Study">Data.</param>
/// <param name="Judged">Held-out answers of the blend that ships.</param>
/// <param name="Thresholds">Its unsure bands.</param>
/// <param name="Compared">Held-out answers of each learner, the blend and the rule, by name.</param>
/// <param name="WithoutMade">The blend trained without made sounds.</param>
/// <param name="OnlyMade">The blend trained without real noise.</param>
public sealed record CardFigures(
    Study Study, IReadOnlyList<JudgedCase> Judged, TagThresholds Thresholds, IReadOnlyList<(string Name, IReadOnlyList<JudgedCase> Judged)> Compared,
    IReadOnlyList<JudgedCase> WithoutMade, IReadOnlyList<JudgedCase> OnlyMade)
{
    /// <summary>Name of the shipped blend in the tables.</summary>
    public const string BlendName = "blend (shipped)";

    /// <summary>Works all figures out.</summary>
    public static CardFigures Work(Study study)
    {
        IReadOnlyList<(string Name, IReadOnlyList<JudgedCase> Judged)> compared = Compare(study, out IReadOnlyList<JudgedCase> blend);
        IReadOnlyList<JudgedCase> With(IReadOnlyList<Mixing.SoundCase> training) => Study.Judge([.. Study.Shipped.Select(l => HeldOut.Score(l, training, study.Folds, false))]);
        return new(study, blend, Study.Thresholds(blend), compared, With(study.WithoutMade()), With(study.OnlyMadeNoise()));
    }

    /// <summary>Held-out answers of each learner, the shipped blend and the rule.</summary>
    public static IReadOnlyList<(string Name, IReadOnlyList<JudgedCase> Judged)> Compare(Study study, out IReadOnlyList<JudgedCase> blend)
    {
        ArgumentNullException.ThrowIfNull(study);
        var scored = Learners.All.ToDictionary(l => l.Name, study.Score);
        blend = Study.Judge([.. Study.Shipped.Select(l => scored[l.Name])]);
        return [(BlendName, blend), .. Learners.All.Select(l => (l.Name, Study.Judge([scored[l.Name]]))), ("plain spectral rule", study.JudgeRule())];
    }
}
