namespace Quarterlight.Clips.Spectrum;

/// <summary>Mean of frame spectra (Welch's average).</summary>
/// <param name="bins">Bins of a spectrum, above 0.</param>
public sealed class SpectrumMean(int bins)
{
    private readonly double[] _sum = new double[bins];
    private readonly double[] _mean = new double[bins];

    /// <summary>Frames taken since the start or the last <see cref="Clear"/>.</summary>
    public long Count { get; private set; }

    /// <summary>Takes one frame's power.</summary>
    /// <exception cref="ArgumentException">The number of bins differs.</exception>
    public void Add(ReadOnlySpan<double> power)
    {
        if (power.Length != _sum.Length)
        {
            throw new ArgumentException($"A spectrum here has {_sum.Length} bins, not {power.Length}.", nameof(power));
        }

        for (int k = 0; k < power.Length; k++)
        {
            _sum[k] += power[k];
        }

        Count++;
    }

    /// <summary>The mean so far, all zero before the first frame. The span is overwritten by the next call.</summary>
    public ReadOnlySpan<double> Mean()
    {
        double each = Count == 0 ? 0 : 1.0 / Count;
        for (int k = 0; k < _sum.Length; k++)
        {
            _mean[k] = _sum[k] * each;
        }

        return _mean;
    }

    /// <summary>Forgets the frames.</summary>
    public void Clear()
    {
        Array.Clear(_sum);
        Count = 0;
    }
}
