using Quarterlight.Training.Data;

namespace Quarterlight.Training.Learning;

/// <summary>Several learners as one: each one's score counts with the slope of its own calibration, so that all speak in the same unit.</summary>
public static class Blend
{
    /// <summary>Weights of the learners for each tag, and the weighted sums of their scores.</summary>
    /// <param name="members">Held-out scores of each learner, the same cases in the same order.</param>
    public static (double[][] Weights, IReadOnlyList<ScoredCase> Scored) Of(IReadOnlyList<IReadOnlyList<ScoredCase>> members)
    {
        ArgumentNullException.ThrowIfNull(members);
        Platt[][] each = [.. members.Select(m => JudgedCase.Calibrate(m))];
        double[][] weights = [.. Truth.Tags.Select(t => each.Select(p => Math.Max(0, p[(int)t].Slope) / members.Count).ToArray())];
        ScoredCase[] sums = [.. members[0].Select((c, i) => c with
        {
            Scores = [.. Truth.Tags.Select(t => c.Scores[(int)t].Select((_, r) => Enumerable.Range(0, members.Count).Sum(m => weights[(int)t][m] * members[m][i].Scores[(int)t][r])).ToArray())],
        })];
        return (weights, sums);
    }
}
