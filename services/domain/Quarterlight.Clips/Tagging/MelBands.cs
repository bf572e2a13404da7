namespace Quarterlight.Clips.Tagging;

/// <summary>Triangular bands, evenly spaced on the mel scale, on the bins of a spectrum.</summary>
/// <remarks>Mel = 2595 log10(1 + f / 700 Hz) (O'Shaughnessy, Speech Communication, 1987, from memory); each triangle peaks at 1 and meets its neighbours' peaks at 0.</remarks>
public sealed class MelBands
{
    /// <summary>Number of bands.</summary>
    public const int Count = 16;

    /// <summary>Lower end of the first band, Hz.</summary>
    public const double LowestHz = 60;

    /// <summary>Upper end of the last band, Hz.</summary>
    public const double HighestHz = 7000;

    private readonly int[] _first = new int[Count];
    private readonly double[][] _weights = new double[Count][];

    /// <summary>Prepares the bands.</summary>
    /// <param name="bins">Bins of a spectrum.</param>
    /// <param name="binHz">Distance of the bins, Hz, above 0.</param>
    public MelBands(int bins, double binHz)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bins);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(binHz);
        for (int b = 0; b < Count; b++)
        {
            double low = EdgeHz(b), middle = EdgeHz(b + 1), high = EdgeHz(b + 2);
            _first[b] = (int)Math.Ceiling(low / binHz);
            int last = Math.Min((int)(high / binHz), bins - 1);
            _weights[b] = [.. Enumerable.Range(_first[b], Math.Max(0, last - _first[b] + 1)).Select(k => k * binHz)
                .Select(hz => hz <= middle ? (hz - low) / (middle - low) : (high - hz) / (high - middle))];
        }
    }

    /// <summary>Mel of a frequency in Hz.</summary>
    public static double Mel(double hz) => 2595 * Math.Log10(1 + (hz / 700));

    /// <summary>Frequency in Hz of a mel.</summary>
    public static double Hertz(double mel) => 700 * (Math.Pow(10, mel / 2595) - 1);

    /// <summary>Edge of the bands, Hz: band b rises from edge b to its peak at edge b + 1 and falls to edge b + 2.</summary>
    /// <param name="edge">0 to <see cref="Count"/> + 1.</param>
    public static double EdgeHz(int edge)
    {
        double low = Mel(LowestHz);
        return Hertz(low + ((Mel(HighestHz) - low) * edge / (Count + 1)));
    }

    /// <summary>Weighted power in each band.</summary>
    /// <param name="power">Power of the bins.</param>
    /// <param name="bands">Where to, <see cref="Count"/> values.</param>
    public void Sum(ReadOnlySpan<double> power, Span<double> bands)
    {
        for (int b = 0; b < Count; b++)
        {
            ReadOnlySpan<double> weights = _weights[b];
            ReadOnlySpan<double> part = power.Slice(_first[b], weights.Length);
            double sum = 0;
            for (int i = 0; i < weights.Length; i++)
            {
                sum += weights[i] * part[i];
            }

            bands[b] = sum;
        }
    }
}
