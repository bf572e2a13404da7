namespace Quarterlight.Clips.Levels;

/// <summary>Highest point of the curve through one channel's samples, block by block.</summary>
/// <param name="interpolator">Grid between the samples; may be shared.</param>
/// <param name="sampleRateHz">Samples a second.</param>
internal sealed class PeakScan(Interpolator interpolator, double sampleRateHz)
{
    /// <summary>Samples of the past before each block.</summary>
    public const int History = (2 * Interpolator.Half) - 1;

    private float _peak;
    private double _place;

    /// <summary>Grid of a rate: eight places a sample up to 64 kHz, four up to 128 kHz, two above.</summary>
    public static Interpolator GridFor(double sampleRateHz) => new(sampleRateHz <= 64_000 ? 8 : sampleRateHz <= 128_000 ? 4 : 2);

    /// <summary>Adds a block.</summary>
    /// <param name="x"><see cref="History"/> samples of the past, then the block, a multiple of every vector's length.</param>
    /// <param name="start">Place of the block's first sample.</param>
    public void Add(ReadOnlySpan<float> x, long start) => Look(x, x.Length - History, start, ref _peak, ref _place);

    /// <summary>The peak, as if a last, unfinished block were followed by silence.</summary>
    /// <param name="x"><see cref="History"/> samples of the past, then the block with 0 behind its filled part.</param>
    /// <param name="filled">Samples of the block.</param>
    /// <param name="start">Place of the block's first sample.</param>
    public TruePeak Measure(ReadOnlySpan<float> x, int filled, long start)
    {
        var tail = new float[x.Length + Interpolator.Half + 1];
        x.CopyTo(tail);
        (float peak, double place) = (_peak, _place);
        Look(tail, (filled + Interpolator.Half + 15) / 16 * 16, start, ref peak, ref place);
        return peak > 0 ? new TruePeak(LevelLimits.Db(peak), place / sampleRateHz) : new TruePeak(null, null);
    }

    private void Look(ReadOnlySpan<float> x, int count, long start, ref float peak, ref double place)
    {
        double found = interpolator.Raise(x, count, ref peak);
        if (found >= 0)
        {
            // The first sample looked at lags the block by half the interpolator.
            place = Math.Max(0, start - Interpolator.Half + found);
        }
    }
}
