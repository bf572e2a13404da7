namespace Quarterlight.Clips.Levels;

/// <summary>Blocks by loudness in steps of 0.01 LU above the absolute gate, each step with its count and its exact energy: memory stays the same
/// whatever the length.</summary>
internal sealed class LoudnessHistogram
{
    /// <summary>Absolute gate in LKFS (BS.1770-5 Annex 1, EBU Tech 3342).</summary>
    public const double AbsoluteGateLkfs = -70;

    private const double StepLu = 0.01;
    private const int Steps = 9_000;

    private readonly int[] _counts = new int[Steps];
    private readonly double[] _energies = new double[Steps];

    /// <summary>Adds a block of mean square z.</summary>
    public void Add(double meanSquare)
    {
        double lkfs = Lkfs(meanSquare);
        if (lkfs > AbsoluteGateLkfs)
        {
            int step = Math.Min((int)((lkfs - AbsoluteGateLkfs) / StepLu), Steps - 1);
            _counts[step]++;
            _energies[step] += meanSquare;
        }
    }

    /// <summary>Mean loudness of the blocks above both gates; null without any.</summary>
    /// <param name="relativeGateLu">Relative gate below the mean of what passes the absolute one, in LU, negative.</param>
    public double? Gated(double relativeGateLu)
    {
        (long count, double energy) = From(FirstAbove(relativeGateLu));
        return count == 0 ? null : Lkfs(energy / count);
    }

    /// <summary>Difference in LU between two percentiles of the blocks above both gates; null without any.</summary>
    public double? Spread(double relativeGateLu, double low, double high)
    {
        int first = FirstAbove(relativeGateLu);
        long count = From(first).Count;
        return count == 0 ? null : At(first, count, high) - At(first, count, low);
    }

    /// <summary>Loudness of a mean square in LKFS: -0.691 + 10 lg z.</summary>
    public static double Lkfs(double meanSquare) => -0.691 + (10 * Math.Log10(meanSquare));

    private int FirstAbove(double relativeGateLu)
    {
        (long count, double energy) = From(0);
        double gate = count == 0 ? 0 : energy / count * Math.Pow(10, relativeGateLu / 10);
        int first = 0;
        while (first < Steps && _energies[first] <= gate * _counts[first])
        {
            first++;
        }

        return first;
    }

    private (long Count, double Energy) From(int first)
    {
        long count = 0;
        double energy = 0;
        for (int i = first; i < Steps; i++)
        {
            count += _counts[i];
            energy += _energies[i];
        }

        return (count, energy);
    }

    private double At(int first, long count, double share)
    {
        long left = (long)Math.Round((count - 1) * share, MidpointRounding.AwayFromZero);
        int step = first;
        while (left >= _counts[step])
        {
            left -= _counts[step++];
        }

        return Lkfs(_energies[step] / _counts[step]);
    }
}
