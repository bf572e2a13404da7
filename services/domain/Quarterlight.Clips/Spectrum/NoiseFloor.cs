using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Noise floor by minimum statistics, in the octaves 31.5 Hz to 16 kHz, A-weighted, and in the speech band 200 Hz to 5 kHz. Each frame is judged
/// a second and a quarter later, when what follows is known as well.
/// </summary>
/// <remarks>
/// After Martin, IEEE Trans. Speech and Audio Processing 9 (2001) 504-512 (from memory): band powers are smoothed over about 0.11 s and the
/// least value within ±1.25 s is taken as lying near the noise. Instead of his bias table: frames up to 4.8 standard deviations above that
/// least value count as noise, and the floor is the mean power of those frames. The deviation is 4.34 dB / √(B T); B is the band's width, at least
/// 1.5 bins (150 Hz for the octaves above, where car noise is not white; 300 Hz A-weighted), T the smoothing time; never less than 3 dB in all.
/// </remarks>
public sealed class NoiseFloor
{
    /// <summary>Index of the A-weighted band behind the ten octaves.</summary>
    public const int AWeightedBand = ThirdOctaves.OctaveCount;

    /// <summary>Index of the speech band, 200 Hz to 5 kHz.</summary>
    public const int SpeechBand = AWeightedBand + 1;

    /// <summary>Bands in all.</summary>
    public const int Bands = SpeechBand + 1;

    private const double SmoothSeconds = 0.107;
    private const double ReachSeconds = 1.25;
    private const double Deviations = 4.8;
    private const double LeastSpanDb = 3;
    private readonly double _binHz;
    private readonly double[] _aWeights;
    private readonly FrameRing _smooth;
    private readonly double[] _spans = new double[Bands];
    private readonly double[] _factors = new double[Bands];
    private readonly double[] _minima = new double[Bands];
    private readonly double[] _noise = new double[Bands];
    private readonly double[] _noiseMinima = new double[Bands];
    private readonly long[] _noiseFrames = new long[Bands];
    private readonly Func<long, bool> _isSpeech;
    private long _next;

    /// <summary>Starts a clip.</summary>
    /// <param name="bins">Bins of a fast spectrum.</param>
    /// <param name="binHz">Distance of the bins, Hz.</param>
    /// <param name="hopSeconds">Time from one frame to the next, s.</param>
    /// <param name="isSpeech">Called when a frame's floor is known, with its number; what it calls speech is not counted as noise.</param>
    public NoiseFloor(int bins, double binHz, double hopSeconds, Func<long, bool> isSpeech)
    {
        _binHz = binHz;
        _isSpeech = isSpeech;
        Half = Math.Max(1, (int)Math.Round(SmoothSeconds / hopSeconds) / 2);
        Reach = (int)Math.Round(ReachSeconds / hopSeconds);
        int ring = (2 * Reach) + (4 * Half) + 4;
        Powers = new FrameRing(ring, Bands);
        _smooth = new FrameRing(ring, Bands);
        _aWeights = [.. Enumerable.Range(0, bins).Select(k => AWeighting.PowerFactor(k * binHz))];
        double smoothSeconds = ((2 * Half) + 1) * hopSeconds;
        for (int b = 0; b < Bands; b++)
        {
            double width = b == AWeightedBand ? 300 : b == SpeechBand ? 400 : ThirdOctaves.OctaveLowerHz(b + 1) - ThirdOctaves.OctaveLowerHz(b);
            double deviationDb = 10 / Math.Log(10) / Math.Sqrt(Math.Clamp(width, 1.5 * binHz, 400) * smoothSeconds);
            _spans[b] = Math.Max(LeastSpanDb, Deviations * deviationDb);
            _factors[b] = Math.Pow(10, _spans[b] / 10);
        }
    }

    /// <summary>Frames on each side that are smoothed over.</summary>
    internal int Half { get; }

    /// <summary>Frames on each side within which the least value is looked for.</summary>
    internal int Reach { get; }

    /// <summary>Band powers of the frames near the judged one.</summary>
    internal FrameRing Powers { get; }

    /// <summary>Frames taken.</summary>
    public long Count { get; private set; }

    /// <summary>Takes a fast frame's power.</summary>
    public void Add(ReadOnlySpan<double> power)
    {
        Span<double> bands = Powers[Count];
        for (int b = 0; b < ThirdOctaves.OctaveCount; b++)
        {
            bands[b] = BinSums.Between(power, _binHz, ThirdOctaves.OctaveLowerHz(b), ThirdOctaves.OctaveLowerHz(b + 1));
        }

        bands[AWeightedBand] = BinSums.Dot(power, _aWeights);
        bands[SpeechBand] = BinSums.Between(power, _binHz, 200, 5000);
        Count++;
        if (Count > 2 * Half)
        {
            Smooth(Count - 1 - Half);
        }

        while (Count - 1 - Half >= Math.Max(_next + Reach, Half + (2L * Reach)))
        {
            Judge(_next++, Count - 1 - Half);
        }
    }

    /// <summary>Judges the frames still waiting, with what is known.</summary>
    public void Finish()
    {
        for (; _next < Count - Half; _next++)
        {
            Judge(_next, Count - 1 - Half);
        }
    }

    /// <summary>Mean power of the noise in a band, over the clip; 0 when no frame was judged.</summary>
    public double Noise(int band) => _noiseFrames[band] == 0 ? 0 : _noise[band] / _noiseFrames[band];

    /// <summary>Frames that counted as noise in a band.</summary>
    public long NoiseFrames(int band) => _noiseFrames[band];

    /// <summary>Mean of the least values near the frames that counted as noise.</summary>
    internal double NoiseMinimum(int band) => _noiseFrames[band] == 0 ? 0 : _noiseMinima[band] / _noiseFrames[band];

    /// <summary>Least smoothed power near the frame that is being judged.</summary>
    internal double Minimum(int band) => _minima[band];

    /// <summary>Smoothed power of a frame near the judged one.</summary>
    internal double Smoothed(long frame, int band) => _smooth[frame][band];

    /// <summary>Height of the noise's mean above the least value, dB: half of what noise spans.</summary>
    internal double HalfSpanDb(int band) => _spans[band] / 2;

    private void Smooth(long frame)
    {
        Span<double> to = _smooth[frame];
        to.Clear();
        for (long f = frame - Half; f <= frame + Half; f++)
        {
            ReadOnlySpan<double> from = Powers[f];
            for (int b = 0; b < Bands; b++)
            {
                to[b] += from[b] / ((2 * Half) + 1);
            }
        }
    }

    private void Judge(long frame, long lastSmooth)
    {
        if (frame < Half)
        {
            return;
        }

        // At both ends of the clip the reach is made up for on the other side, so that a last phrase still sees a pause.
        long from = Math.Max(Half, Math.Min(frame - Reach, lastSmooth - (2L * Reach)));
        Vector256<double> low = Vector256.Create(double.MaxValue), middle = low, high = low;
        for (long f = from; f <= Math.Min(lastSmooth, Math.Max(frame + Reach, Half + (2L * Reach))); f++)
        {
            // Twelve bands: three vectors.
            ref double smooth = ref MemoryMarshal.GetReference(_smooth[f]);
            low = Vector256.Min(low, Vector256.LoadUnsafe(ref smooth));
            middle = Vector256.Min(middle, Vector256.LoadUnsafe(ref smooth, 4));
            high = Vector256.Min(high, Vector256.LoadUnsafe(ref smooth, 8));
        }

        low.CopyTo(_minima);
        middle.CopyTo(_minima, 4);
        high.CopyTo(_minima, 8);

        if (_isSpeech(frame))
        {
            return;
        }

        ReadOnlySpan<double> now = Powers[frame];
        ReadOnlySpan<double> smoothNow = _smooth[frame];
        for (int b = 0; b < Bands; b++)
        {
            if (smoothNow[b] <= _minima[b] * _factors[b])
            {
                _noise[b] += now[b];
                _noiseMinima[b] += _minima[b];
                _noiseFrames[b]++;
            }
        }
    }
}
