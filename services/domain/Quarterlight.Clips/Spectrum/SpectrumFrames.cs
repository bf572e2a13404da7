namespace Quarterlight.Clips.Spectrum;

/// <summary>Takes one frame's spectrum. The span is only valid during the call.</summary>
/// <param name="index">Number of the frame from 0.</param>
/// <param name="power">Mean square of the samples that falls to each bin; the bins add up to the mean square of the frame.</param>
public delegate void SpectrumTaker(long index, ReadOnlySpan<double> power);

/// <summary>
/// Cuts a stream of samples into Hann frames with 50 % overlap and gives the power spectrum of each. Frames start at the first sample,
/// whatever the sizes of the pieces; samples behind the last whole frame are not used.
/// </summary>
/// <remarks>
/// Welch, IEEE Trans. Audio and Electroacoustics 15 (1967) 70-73 (from memory). Power of a bin: c |X|² / (N Σw²), c = 2 but 1 at zero and at
/// half the rate, w the periodic Hann window; by Parseval a full-scale sine gives 0.5 over its bins.
/// </remarks>
public sealed class SpectrumFrames
{
    private readonly RealFft _fft;
    private readonly SpectrumTaker _taker;
    private readonly double[] _window;
    private readonly float[] _samples;
    private readonly double[] _power;
    private int _filled;

    /// <summary>Starts a stream.</summary>
    /// <param name="rateHz">Samples a second, above 0.</param>
    /// <param name="size">Frame, samples: see <see cref="RealFft"/>.</param>
    /// <param name="taker">Called once a frame.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not a number above 0 or the size is none of <see cref="RealFft"/>.</exception>
    public SpectrumFrames(double rateHz, int size, SpectrumTaker taker)
    {
        ArgumentNullException.ThrowIfNull(taker);
        if (!(rateHz > 0) || double.IsInfinity(rateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, "The rate must be a number above 0.");
        }

        _fft = new RealFft(size);
        _taker = taker;
        BinHz = rateHz / size;
        HopSeconds = size / 2 / rateHz;
        _window = new double[size];
        double squares = 0;
        for (int i = 0; i < size; i++)
        {
            _window[i] = 0.5 - (0.5 * Math.Cos(2 * Math.PI * i / size));
            squares += _window[i] * _window[i];
        }

        // The window takes the scale of the power along.
        double scale = Math.Sqrt(2 / (size * squares));
        for (int i = 0; i < size; i++)
        {
            _window[i] *= scale;
        }

        _samples = new float[size];
        _power = new double[_fft.Bins];
    }

    /// <summary>Distance of the bins, Hz.</summary>
    public double BinHz { get; }

    /// <summary>Time from one frame to the next, s.</summary>
    public double HopSeconds { get; }

    /// <summary>Bins of a spectrum.</summary>
    public int Bins => _power.Length;

    /// <summary>Frames given so far.</summary>
    public long Count { get; private set; }

    /// <summary>Takes the next samples, any number of them.</summary>
    public void Add(ReadOnlySpan<float> mono)
    {
        while (!mono.IsEmpty)
        {
            int take = Math.Min(mono.Length, _samples.Length - _filled);
            mono[..take].CopyTo(_samples.AsSpan(_filled));
            mono = mono[take..];
            _filled += take;
            if (_filled == _samples.Length)
            {
                GiveFrame();
            }
        }
    }

    private void GiveFrame()
    {
        _fft.Power(_samples, _window, _power);
        _power[0] /= 2;
        _power[^1] /= 2;
        _taker(Count++, _power);
        _filled = _samples.Length / 2;
        _samples.AsSpan(_filled).CopyTo(_samples);
    }
}
