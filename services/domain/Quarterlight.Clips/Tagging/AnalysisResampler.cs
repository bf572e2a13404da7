using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tagging;

/// <summary>
/// Brings any rate to <see cref="RateHz"/> by a windowed sinc whose phase follows the exact ratio of the rates (rounded to whole hertz). Flat
/// to about 7 kHz, or to 0.44 of a lower rate; what folds below that is 60 dB down.
/// </summary>
/// <remarks>Kaiser's window, beta 5.65 for 60 dB (Oppenheim and Schafer, Discrete-Time Signal Processing, from memory).</remarks>
public sealed class AnalysisResampler
{
    /// <summary>Samples a second of the result.</summary>
    public const int RateHz = 16_000;

    private const double Beta = 5.653;
    private const double LengthFactor = 3.62;
    private const int MostPhases = 640;
    private const int Block = 512;
    private readonly Action<ReadOnlySpan<float>> _to;
    private readonly long _rate;
    private readonly int _phases;
    private readonly float[][] _taps;
    private readonly float[] _samples;
    private readonly float[] _out = new float[Block];
    private int _filled;
    private long _numerator;
    private int _made;

    /// <summary>Starts a stream.</summary>
    /// <param name="rateHz">Samples a second of the input, 8000 to 192 000; taken to the nearest whole hertz.</param>
    /// <param name="to">Takes the results, up to 512 at a time.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is out of range.</exception>
    public AnalysisResampler(double rateHz, Action<ReadOnlySpan<float>> to)
    {
        LevelLimits.Check(rateHz, 1);
        _to = to;
        _rate = (long)Math.Round(rateHz);
        long common = (long)System.Numerics.BigInteger.GreatestCommonDivisor(_rate, RateHz);
        _phases = (int)Math.Min(RateHz / common, MostPhases);
        double transition = 0.125 * Math.Min(_rate, RateHz);
        int half = (int)Math.Ceiling(LengthFactor * _rate / transition / 16) * 8;
        _taps = [.. Enumerable.Range(0, _phases).Select(p => Design(half, (double)p / _phases, Math.Min(1, RateHz / (double)_rate)))];
        _samples = new float[(2 * half) + 4096];

        // Zeros in front, so that the first result lies at the first sample.
        _filled = half - 1;
    }

    /// <summary>Takes the next samples, any number of them.</summary>
    public void Add(ReadOnlySpan<float> mono)
    {
        int length = _taps[0].Length;
        while (!mono.IsEmpty)
        {
            int take = Math.Min(mono.Length, _samples.Length - _filled);
            mono[..take].CopyTo(_samples.AsSpan(_filled));
            mono = mono[take..];
            _filled += take;
            int used = 0;
            while (true)
            {
                // Position of the next result in units of 1/16000 of an input sample, from the start of the buffer.
                int whole = (int)(_numerator / RateHz);
                long rest = _numerator % RateHz;
                int phase = (int)(((rest * _phases) + (RateHz / 2)) / RateHz);
                if (phase == _phases)
                {
                    (whole, phase) = (whole + 1, 0);
                }

                if (whole + length > _filled)
                {
                    used = Math.Min(whole, _filled);
                    break;
                }

                _out[_made++] = Decimator.Dot(_taps[phase], _samples.AsSpan(whole, length));
                _numerator += _rate;
                if (_made == Block)
                {
                    _to(_out);
                    _made = 0;
                }
            }

            used = Math.Min(used, (int)(_numerator / RateHz));
            _samples.AsSpan(used, _filled - used).CopyTo(_samples);
            _filled -= used;
            _numerator -= (long)used * RateHz;
        }
    }

    /// <summary>Passes on what is still held.</summary>
    public void Finish()
    {
        _to(_out.AsSpan(0, _made));
        _made = 0;
    }

    // Taps for a result that lies a part of a sample behind the tap half - 1.
    private static float[] Design(int half, double part, double cutoff)
    {
        var taps = new double[2 * half];
        double sum = 0;
        for (int i = 0; i < taps.Length; i++)
        {
            double t = i - (half - 1) - part;
            taps[i] = KaiserSinc.At(cutoff * t, t / half, Beta);
            sum += taps[i];
        }

        return [.. taps.Select(h => (float)(h / sum))];
    }
}
