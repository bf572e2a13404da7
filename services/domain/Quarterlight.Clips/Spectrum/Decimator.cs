using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Brings a stream down to about 2 kHz for the slow measures: flat to 0.01 dB up to <see cref="PassHz"/>, and what would fold into that
/// range is 80 dB down.
/// </summary>
/// <remarks>Linear-phase filter by Kaiser's window, beta 7.86 for 80 dB (Oppenheim and Schafer, Discrete-Time Signal Processing, from memory).</remarks>
public sealed class Decimator
{
    /// <summary>Up to here the result may be used, Hz.</summary>
    public const double PassHz = 800;

    private const double TargetRateHz = 2000;
    private const double Beta = 7.857;
    private const int TapsPerStep = 26;
    private readonly float[] _taps;
    private readonly float[] _samples;
    private readonly float[] _out = new float[1];
    private int _filled;

    /// <summary>Starts a stream.</summary>
    /// <param name="rateHz">Samples a second of the input, at least 4000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is lower or not a number.</exception>
    public Decimator(double rateHz)
    {
        if (!(rateHz >= 2 * TargetRateHz) || double.IsInfinity(rateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, "The rate must be 4000 or more.");
        }

        Step = (int)(rateHz / TargetRateHz);
        RateHz = rateHz / Step;
        _taps = Design(TapsPerStep * Step, Step);
        _samples = new float[_taps.Length + (Step * 64)];
    }

    /// <summary>Input samples for one output sample.</summary>
    public int Step { get; }

    /// <summary>Samples a second of the result, 2000 up to 3000.</summary>
    public double RateHz { get; }

    /// <summary>Takes samples and passes the slow ones on.</summary>
    public void Add(ReadOnlySpan<float> mono, SpectrumFrames to)
    {
        ArgumentNullException.ThrowIfNull(to);
        Run(mono, to, null);
    }

    /// <summary>Takes samples and passes the slow ones on to two receivers.</summary>
    public void Add(ReadOnlySpan<float> mono, SpectrumFrames first, SpectrumFrames second)
    {
        ArgumentNullException.ThrowIfNull(first);
        Run(mono, first, second);
    }

    private void Run(ReadOnlySpan<float> mono, SpectrumFrames first, SpectrumFrames? second)
    {
        while (!mono.IsEmpty)
        {
            int take = Math.Min(mono.Length, _samples.Length - _filled);
            mono[..take].CopyTo(_samples.AsSpan(_filled));
            mono = mono[take..];
            _filled += take;
            int used = 0;
            for (; used + _taps.Length <= _filled; used += Step)
            {
                _out[0] = Dot(_taps, _samples.AsSpan(used, _taps.Length));
                first.Add(_out);
                second?.Add(_out);
            }

            _samples.AsSpan(used, _filled - used).CopyTo(_samples);
            _filled -= used;
        }
    }

    internal static float Dot(ReadOnlySpan<float> a, ReadOnlySpan<float> b) => (float)LagCorrelator.Dot(a, b);

    private static float[] Design(int length, int step)
    {
        var taps = new double[length];
        double middle = (length - 1) / 2.0;
        double sum = 0;
        for (int i = 0; i < length; i++)
        {
            double t = (i - middle) / step;
            double u = (i - middle) / (middle + 0.5);
            taps[i] = KaiserSinc.At(t, u, Beta);
            sum += taps[i];
        }

        return [.. taps.Select(h => (float)(h / sum))];
    }
}
