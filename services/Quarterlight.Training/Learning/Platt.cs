namespace Quarterlight.Training.Learning;

/// <summary>A score as a probability: 1 / (1 + exp(-(slope x score + offset))).</summary>
/// <param name="Slope">Slope.</param>
/// <param name="Offset">Offset.</param>
/// <remarks>Platt's method with his smoothed targets (Advances in Large Margin Classifiers, 1999, from memory), by Newton's method on the weighted likelihood.</remarks>
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
        double a = 1, b = 0;
        for (int step = 0; step < 50; step++)
        {
            double ga = 0, gb = 0, haa = 1e-6, hab = 0, hbb = 1e-6;
            foreach ((double score, bool holds, double weight) in rows)
            {
                double x = (score - mean) / spread, p = 1 / (1 + Math.Exp(-((a * x) + b))), d = weight * (p - (holds ? high : low)), w = weight * p * (1 - p);
                (ga, gb) = (ga + (d * x), gb + d);
                (haa, hab, hbb) = (haa + (w * x * x), hab + (w * x), hbb + w);
            }

            double det = (haa * hbb) - (hab * hab);
            double da = ((hbb * ga) - (hab * gb)) / det, db = ((haa * gb) - (hab * ga)) / det;
            double size = Math.Max(Math.Abs(da), Math.Abs(db)), part = size > 2 ? 2 / size : 1;
            (a, b) = (a - (part * da), b - (part * db));
            if (size < 1e-9)
            {
                break;
            }
        }

        return new(a / spread, b - (a * mean / spread));
    }
}
