using MathNet.Numerics.LinearAlgebra;

namespace Quarterlight.Training.Learning;

/// <summary>Logistic regression by Newton's method on the weighted likelihood.</summary>
public static class LogisticFit
{
    private const int MostSteps = 50;
    private const double LongestStep = 2, Converged = 1e-9;

    /// <summary>The weights that make 1 / (1 + exp(-(weights x values))) likeliest.</summary>
    /// <param name="rows">Values (one of them 1 for an offset), target 0 to 1 and weight of each row.</param>
    /// <param name="ridge">For each value: half of it times the squared weight is taken from the log likelihood.</param>
    /// <returns>One weight a value.</returns>
    public static double[] Of(IReadOnlyList<(double[] Values, double Target, double Weight)> rows, IReadOnlyList<double> ridge)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(ridge);
        var weights = new double[ridge.Count];
        for (int step = 0; step < MostSteps; step++)
        {
            double[] change = Change(rows, ridge, weights);
            double size = change.Max(Math.Abs), part = size > LongestStep ? LongestStep / size : 1;
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i] -= part * change[i];
            }

            if (size < Converged)
            {
                break;
            }
        }

        return weights;
    }

    private static double[] Change(IReadOnlyList<(double[] Values, double Target, double Weight)> rows, IReadOnlyList<double> ridge, double[] weights)
    {
        int n = weights.Length;
        var slope = new double[n];
        var bend = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            (slope[i], bend[i, i]) = (ridge[i] * weights[i], ridge[i]);
        }

        foreach ((double[] values, double target, double weight) in rows)
        {
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                sum += weights[i] * values[i];
            }

            double p = 1 / (1 + Math.Exp(-sum)), d = weight * (p - target), v = weight * p * (1 - p);
            for (int i = 0; i < n; i++)
            {
                slope[i] += d * values[i];
                for (int j = 0; j < n; j++)
                {
                    bend[i, j] += v * values[i] * values[j];
                }
            }
        }

        return Matrix<double>.Build.DenseOfArray(bend).Cholesky().Solve(Vector<double>.Build.Dense(slope)).ToArray();
    }
}
