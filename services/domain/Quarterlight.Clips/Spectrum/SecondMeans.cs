namespace Quarterlight.Clips.Spectrum;

/// <summary>Mean spectrum of each second of the clip: a frame belongs to the second its middle lies in.</summary>
/// <param name="bins">Bins of a spectrum.</param>
/// <param name="hopSeconds">Time from one frame to the next, s; a frame lasts twice as long.</param>
/// <param name="taker">Called with the number of the second from 0 and its mean. Seconds without a frame's middle are skipped.</param>
public sealed class SecondMeans(int bins, double hopSeconds, SpectrumTaker taker)
{
    private readonly SpectrumMean _mean = new(bins);
    private long _second;

    /// <summary>Takes a frame.</summary>
    public void Add(long index, ReadOnlySpan<double> power)
    {
        long second = (long)Math.Floor((index + 1) * hopSeconds);
        if (second != _second)
        {
            Finish();
            _second = second;
        }

        _mean.Add(power);
    }

    /// <summary>Gives the last, perhaps short, second.</summary>
    public void Finish()
    {
        if (_mean.Count > 0)
        {
            taker(_second, _mean.Mean());
            _mean.Clear();
        }
    }
}
