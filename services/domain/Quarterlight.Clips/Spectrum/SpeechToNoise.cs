using Quarterlight.Clips.Judgement;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Speech activity, speech level and speech-to-noise ratio of a clip, on top of <see cref="NoiseFloor"/>.
/// </summary>
/// <remarks>
/// A frame is speech when the speech band stands above the local floor and either swings at the pace of syllables (2 to 8 Hz, rms of the level in dB
/// over ±0.5 s) or is harmonic (<see cref="Harmonicity"/>, best within ±0.2 s). Gaps up to 0.25 s between such frames belong to the speech. Syllabic
/// modulation: Houtgast and Steeneken, J. Acoust. Soc. Am. 77 (1985) (from memory). All limits are judgement.
/// </remarks>
public sealed class SpeechToNoise
{
    /// <summary>Least time with speech for a speech level, s. Judgement.</summary>
    public const double LeastActiveSeconds = 0.4;

    private const double SpeechFrom = 0.4;
    private const double GapSeconds = 0.25;
    private readonly Harmonicity _harmonicity;
    private readonly NoiseFloor _floor;
    private readonly FrameRing _harmonic;
    private readonly SpeechStretches _stretches;
    private readonly double[] _sums = new double[NoiseFloor.Bands + 1];
    private readonly double[] _pending = new double[NoiseFloor.Bands + 1];
    private readonly double[] _cos;
    private readonly double[] _sin;
    private readonly double[] _levels;
    private readonly double _hopSeconds;
    private readonly double _halfRateHz;
    private readonly int _pace;
    private readonly int _near;
    private readonly int _gap;
    private long _active;
    private long _waiting;
    private bool _open;

    /// <summary>Starts a clip.</summary>
    /// <param name="bins">Bins of a fast spectrum.</param>
    /// <param name="binHz">Distance of the bins, Hz.</param>
    /// <param name="hopSeconds">Time from one frame to the next, s.</param>
    public SpeechToNoise(int bins, double binHz, double hopSeconds)
    {
        _hopSeconds = hopSeconds;
        _stretches = new SpeechStretches(hopSeconds);
        _halfRateHz = (bins - 1) * binHz;
        _harmonicity = new Harmonicity(bins, binHz);
        _floor = new NoiseFloor(bins, binHz, hopSeconds, Judge);
        _harmonic = new FrameRing((2 * _floor.Reach) + (4 * _floor.Half) + 4, 1);
        _pace = (int)Math.Round(0.5 / hopSeconds);
        _near = (int)Math.Round(0.2 / hopSeconds);
        _gap = (int)Math.Round(GapSeconds / hopSeconds);
        int window = (2 * _pace) + 1;
        _levels = new double[window];
        (_cos, _sin) = (new double[window * 7], new double[window * 7]);
        for (int m = 0; m < 7; m++)
        {
            for (int i = 0; i < window; i++)
            {
                double hann = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (i + 0.5) / window));
                (double s, double c) = Math.SinCos(2 * Math.PI * (m + 2) * i * hopSeconds);
                (_sin[(m * window) + i], _cos[(m * window) + i]) = (s * hann, c * hann);
            }
        }
    }

    /// <summary>Takes a fast frame's power.</summary>
    public void Add(ReadOnlySpan<double> power)
    {
        _harmonic[_floor.Count][0] = _harmonicity.Of(power);
        _floor.Add(power);
    }

    /// <summary>The clip's result after the last frame, or nothing when it is shorter than half a second or silent.</summary>
    /// <param name="offsetDb">Added to the levels.</param>
    public SpeechNoiseReport? Report(double offsetDb)
    {
        _floor.Finish();
        double noise = _floor.Noise(NoiseFloor.AWeightedBand);
        if (_floor.Count * _hopSeconds < 0.5 || _floor.NoiseFrames(NoiseFloor.AWeightedBand) == 0)
        {
            return null;
        }

        return SpeechNoiseResult.Of(_floor, _sums, _active, _hopSeconds, _halfRateHz, noise, offsetDb);
    }

    /// <summary>Where there is speech, in order of time, gaps of up to 0.25 s closed; at most 200 stretches, the longest are kept. Asked after <see cref="Report"/>.</summary>
    public IReadOnlyList<TimeStretch> Stretches() => _stretches.Finish();

    private bool Judge(long frame)
    {
        const int band = NoiseFloor.SpeechBand;
        double least = _floor.Minimum(band);
        bool speech = false;
        if (_floor.Powers[frame][band] > 0)
        {
            double smooth = 10 * Math.Log10((_floor.Smoothed(frame, band) + 1e-20) / (least + 1e-20));
            double now = 10 * Math.Log10((_floor.Powers[frame][band] + 1e-20) / (least + 1e-20));
            double above = Math.Min(smooth, now + 1.5) - _floor.HalfSpanDb(band);
            speech = above > 1 && Ramp.Up(above, 1, 3) * ((0.5 * Ramp.Up(Swing(frame), 1, 3)) + (0.5 * Ramp.Up(Harmonic(frame), 0.12, 0.3))) >= SpeechFrom;
        }

        Gather(frame, speech);
        return speech;
    }

    private void Gather(long frame, bool speech)
    {
        if (!speech && (!_open || _waiting >= _gap))
        {
            _open = false;
            _waiting = 0;
            Array.Clear(_pending);
            return;
        }

        ReadOnlySpan<double> powers = _floor.Powers[frame];
        for (int b = 0; b < NoiseFloor.Bands; b++)
        {
            _pending[b] += powers[b];
        }

        _pending[^1] += _floor.Minimum(NoiseFloor.AWeightedBand);
        _waiting++;
        if (speech)
        {
            for (int b = 0; b < _sums.Length; b++)
            {
                _sums[b] += _pending[b];
            }

            _stretches.Add(frame, _open);
            _active += _waiting;
            _waiting = 0;
            _open = true;
            Array.Clear(_pending);
        }
    }

    private double Harmonic(long frame)
    {
        double best = 0;
        for (long f = Math.Max(0, frame - _near); f <= Math.Min(_floor.Count - 1, frame + _near); f++)
        {
            best = Math.Max(best, _harmonic[f][0]);
        }

        return best;
    }

    // Rms in dB of what swings at 2, 3 .. 8 Hz around the frame.
    private double Swing(long frame)
    {
        double mean = 0;
        int window = _levels.Length;
        for (int i = 0; i < window; i++)
        {
            long f = Math.Clamp(frame - _pace + i, 0, _floor.Count - 1);
            double power = _floor.Powers[f][NoiseFloor.SpeechBand];
            _levels[i] = 10 * Math.Log10(power + 1e-12);
            mean += _levels[i] / window;
        }

        double sum = 0;
        for (int m = 0; m < 7; m++)
        {
            double re = 0, im = 0;
            for (int i = 0; i < window; i++)
            {
                re += (_levels[i] - mean) * _cos[(m * window) + i];
                im += (_levels[i] - mean) * _sin[(m * window) + i];
            }

            sum += (re * re) + (im * im);
        }

        // 2 |X|² / (N sum w²) with sum w² = 3 N / 8.
        return Math.Sqrt(sum * 2 / (0.375 * window * window));
    }
}
