namespace Quarterlight.Training.Learning;

/// <summary>A score as a probability: 1 / (1 + exp(-(slope x score + offset))).</summary>
/// <param name="Slope">Slope.</param>
/// <param name="Offset">Offset.</param>
/// <remarks>Platt's method with his smoothed targets (Advances in Large Margin Classifiers, 1999, from memory).</remarks>
public readonly record struct Platt(double Slope, double Offset)
{
    /// <summary>The probability of a score.</summary>
    public double Of(double score) => 1 / (1 + Math.Exp(-((Slope * score) + Offset)));

    /// <summary>Fits scores of held-out rows.</summary>
    public static Platt Fit(IReadOnlyList<(double Score, bool Holds, double Weight)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        double yes = rows.Where(r => r.Holds).Sum(r => r.Weight), no = rows.Where(r => !r.Holds).Sum(r => r.Weight);
        double high = (yes + 1) / (yes + 2), low = 1 / (no + 2);
        double mean = rows.Average(r => r.Score), spread = Math.Sqrt(rows.Average(r => (r.Score - mean) * (r.Score - mean))) + 1e-9;
        double[] found = LogisticFit.Of([.. rows.Select(r => ((double[])[(r.Score - mean) / spread, 1], r.Holds ? high : low, r.Weight))], [0, 0]);
        return new(found[0] / spread, found[1] - (found[0] * mean / spread));
    }
}
