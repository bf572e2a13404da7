namespace Quarterlight.Bench;

/// <summary>Loudness and true peak the plain way, on whole arrays: filtered sample by sample, each block summed anew, fourfold oversampling by
/// direct convolution. For comparison only.</summary>
internal static class PlainLevels
{
    private const int Taps = 12;

    /// <summary>Integrated loudness in LKFS of channels of weight 1 at 48 kHz.</summary>
    public static double IntegratedLkfs(float[][] channels)
    {
        double[][] weighted = [.. channels.Select(c => Filter(Filter(c.Select(v => (double)v), 1.53512485958697, -2.69169620938640, 1.19839281085285, -1.69065929318241, 0.73248077421585), 1, -2, 1, -1.99004745483398, 0.99007225036621).ToArray())];
        List<double> blocks = [];
        for (int at = 0; at + 19_200 <= weighted[0].Length; at += 4_800)
        {
            double sum = 0;
            foreach (double[] c in weighted)
            {
                for (int i = at; i < at + 19_200; i++)
                {
                    sum += c[i] * c[i];
                }
            }

            blocks.Add(sum / 19_200);
        }

        double[] loud = [.. blocks.Where(b => Lkfs(b) > -70)];
        double gate = Lkfs(loud.Average()) - 10;
        return Lkfs(loud.Where(b => Lkfs(b) > gate).Average());
    }

    /// <summary>True peak in dB re full scale, fourfold, Hann-windowed sinc of 12 samples.</summary>
    public static double TruePeakDbtp(float[] x)
    {
        double peak = 0;
        for (int phase = 0; phase < 4; phase++)
        {
            double[] h = [.. Enumerable.Range(0, Taps).Select(k => Weight((phase / 4.0) - (k - (Taps / 2) + 1)))];
            for (int i = 0; i + Taps <= x.Length; i++)
            {
                double sum = 0;
                for (int k = 0; k < Taps; k++)
                {
                    sum += h[k] * x[i + k];
                }

                peak = Math.Max(peak, Math.Abs(sum));
            }
        }

        return 20 * Math.Log10(peak);
    }

    private static double Weight(double d) => d == 0 ? 1 : Math.Sin(Math.PI * d) / (Math.PI * d) * Math.Pow(Math.Cos(Math.PI * d / Taps), 2);

    private static double Lkfs(double meanSquare) => -0.691 + (10 * Math.Log10(meanSquare));

    private static IEnumerable<double> Filter(IEnumerable<double> x, double b0, double b1, double b2, double a1, double a2)
    {
        (double x1, double x2, double y1, double y2) = (0, 0, 0, 0);
        foreach (double v in x)
        {
            double y = (b0 * v) + (b1 * x1) + (b2 * x2) - (a1 * y1) - (a2 * y2);
            (x2, x1, y2, y1) = (x1, v, y1, y);
            yield return y;
        }
    }
}
