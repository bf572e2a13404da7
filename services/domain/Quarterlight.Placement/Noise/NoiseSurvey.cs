using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>
/// How loud it is in the car, what is loudest, and how fast the scene still works. With a plan the microphones, their aims and the
/// voices stay as planned and only the noise changes. docs/models/noise-forecast.md.
/// </summary>
public static class NoiseSurvey
{
    /// <summary>Answers a question about noise.</summary>
    /// <param name="task">The question; its drive conditions are those looked at, whatever the plan was made for.</param>
    /// <param name="options">Tuning the plan was made with; null takes the defaults.</param>
    /// <exception cref="InvalidInputException"><see cref="NoiseRules.Validate(NoiseTask, string)"/> finds something.</exception>
    /// <exception cref="ArgumentException">The plan is not one of its task.</exception>
    public static NoiseReport Run(NoiseTask task, PlacementOptions? options = null)
    {
        IReadOnlyList<Violation> violations = NoiseRules.Validate(task);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        var board = new NoiseBoard(task, options ?? PlacementOptions.Default);
        double? works = SpeedSearch.Fastest(board, task.Drive, SceneVerdict.Works, NoiseRules.TopSpeedKmPerHour);
        var report = new NoiseReport
        {
            Noise = CabinNoises.Of(task.Drive, task.Car),
            Talkers = board.Talkers(task.Drive),
            Verdict = board.At(task.Drive).Verdict,
            FastestWorksKmPerHour = works,
            FastestWithCareKmPerHour = SpeedSearch.Fastest(board, task.Drive, SceneVerdict.WithCare, NoiseRules.TopSpeedKmPerHour),
            Table = NoiseTable.Rows(board, works),
            Advisories = [],
        };
        IReadOnlyList<(int From, int To)> gaps = works is { } fastest ? SpeedSearch.Gaps(board, task.Drive, SceneVerdict.Works, fastest) : [];
        return report with { Advisories = NoiseAdvisories.ForSurvey(board, report, gaps) };
    }
}
