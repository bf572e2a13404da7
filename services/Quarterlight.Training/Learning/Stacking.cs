using Quarterlight.Training.Data;

namespace Quarterlight.Training.Learning;

/// <summary>
/// The scores of all tags as the probability of one: 1 / (1 + exp(-(sum of slopes x scores + offset))). What speaks for one tag speaks against another
/// (a fan for no wind), which a calibration of its own score alone does not see.
/// </summary>
/// <param name="Slopes">Slope of each tag's score, in order of the tags.</param>
/// <param name="Offset">Offset.</param>
/// <remarks>Stacking (Wolpert, Neural Networks 5, 1992, from memory) by logistic regression with a small ridge.</remarks>
public sealed record Stacking(IReadOnlyList<double> Slopes, double Offset)
{
    /// <summary>Half of this times the squared slopes is taken from the log likelihood; scores come in the unit of a logit. Judgement.</summary>
    public const double Ridge = 1;

    private const double OffsetRidge = 1e-6;

    /// <summary>The probability for the scores of all tags.</summary>
    public double Of(Func<int, double> score)
    {
        ArgumentNullException.ThrowIfNull(score);
        double sum = Offset;
        for (int t = 0; t < Slopes.Count; t++)
        {
            sum += Slopes[t] * score(t);
        }

        return 1 / (1 + Math.Exp(-sum));
    }

    /// <summary>Fits scores of held-out rows.</summary>
    /// <param name="rows">Scores of all tags, whether the tag holds, and weight of each row.</param>
    public static Stacking Fit(IReadOnlyList<(double[] Scores, bool Holds, double Weight)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        double[] ridge = [.. Truth.Tags.Select(_ => Ridge), OffsetRidge];
        double[] weights = LogisticFit.Of([.. rows.Select(r => ((double[])[.. r.Scores, 1], r.Holds ? 1.0 : 0, r.Weight))], ridge);
        return new(weights[..^1], weights[^1]);
    }
}
