using Quarterlight.Training.Data;

namespace Quarterlight.Training.Learning;

/// <summary>
/// The scores of all tags as the probability of one: 1 / (1 + exp(-(sum of slopes x scores + offset))). What speaks for one tag speaks against another
/// (a fan for no wind), which a calibration of its own score alone does not see.
/// </summary>
/// <param name="Slopes">Slope of each tag's score, in order of the tags.</param>
/// <param name="Offset">Offset.</param>
/// <remarks>Stacking (Wolpert, Neural Networks 5, 1992, from memory) by logistic regression, Newton's method on the weighted likelihood with a small ridge.</remarks>
public sealed record Stacking(IReadOnlyList<double> Slopes, double Offset)
{
    /// <summary>Half of this times the squared slopes is taken from the log likelihood; scores come in the unit of a logit. Judgement.</summary>
    public const double Ridge = 1;

    private const double LongestStep = 4;

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
        int n = Truth.Tags.Count + 1;
        var w = new double[n];
        for (int step = 0; step < 50; step++)
        {
            var slope = new double[n];
            var bend = new double[n, n];
            for (int i = 0; i < n; i++)
            {
                double ridge = i < n - 1 ? Ridge : 1e-6;
                (slope[i], bend[i, i]) = (ridge * w[i], ridge);
            }

            foreach ((double[] scores, bool holds, double weight) in rows)
            {
                double At(int i) => i < n - 1 ? scores[i] : 1;
                double sum = 0;
                for (int i = 0; i < n; i++)
                {
                    sum += w[i] * At(i);
                }

                double p = 1 / (1 + Math.Exp(-sum)), d = weight * (p - (holds ? 1 : 0)), v = weight * p * (1 - p);
                for (int i = 0; i < n; i++)
                {
                    slope[i] += d * At(i);
                    for (int j = 0; j < n; j++)
                    {
                        bend[i, j] += v * At(i) * At(j);
                    }
                }
            }

            double[] change = Solve(bend, slope);
            double size = change.Max(Math.Abs), part = size > LongestStep ? LongestStep / size : 1;
            for (int i = 0; i < n; i++)
            {
                w[i] -= part * change[i];
            }

            if (size < 1e-9)
            {
                break;
            }
        }

        return new(w[..^1], w[^1]);
    }

    // Gauss; the matrix is positive definite, so that no rows need to be changed.
    private static double[] Solve(double[,] a, double[] b)
    {
        int n = b.Length;
        for (int k = 0; k < n; k++)
        {
            for (int i = k + 1; i < n; i++)
            {
                double f = a[i, k] / a[k, k];
                for (int j = k; j < n; j++)
                {
                    a[i, j] -= f * a[k, j];
                }

                b[i] -= f * b[k];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++)
            {
                b[i] -= a[i, j] * b[j];
            }

            b[i] /= a[i, i];
        }

        return b;
    }
}
