using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>What the spectrum of one channel says about the clip.</summary>
/// <param name="Bands">Octave, third-octave and A-weighted levels; nothing when the clip is shorter than one fast frame (about 40 ms).</param>
/// <param name="SpeechNoise">Noise floor and speech; nothing below half a second.</param>
/// <param name="Engine">Engine speed; nothing when no number of cylinders was given.</param>
/// <param name="Wind">Low end; nothing below about 2 s.</param>
/// <param name="Hum50">Hum at 50 Hz; nothing below about 1 s.</param>
/// <param name="Hum60">Hum at 60 Hz; nothing below about 1 s.</param>
public sealed record ClipSpectrumReport(
    ClipBandLevels? Bands, SpeechNoiseReport? SpeechNoise, EngineReport? Engine, WindReport? Wind, HumReport? Hum50, HumReport? Hum60)
{
    /// <summary>Where there is speech, in order of time; at most 200 stretches, the longest are kept. Empty when no speech level could be told.</summary>
    public IReadOnlyList<TimeStretch> Speech { get; init; } = [];
}

/// <summary>
/// All spectral measures of one channel in one pass, from frames of about 43 ms at the clip's rate and of about 1 s and 4 s at about 2 kHz. Takes pieces of
/// any size, with the same result to the last bit, and allocates nothing while it listens. A sample that is not a number counts as 0.
/// </summary>
public sealed class ClipSpectrum
{
    /// <summary>Sampling rates, Hz.</summary>
    public static ValidRange RateHz => LevelLimits.SampleRateHz;

    private const double FastSeconds = 0.0427;
    private const int SlowSize = 2048;
    private const int LineSize = 8192;
    private readonly Decimator _decimator;
    private readonly SpectrumFrames _fast;
    private readonly SpectrumFrames _slow;
    private readonly SpectrumFrames _fine;
    private readonly SpectrumMean _fastMean;
    private readonly SpectrumMean _slowMean;
    private readonly SecondMeans? _seconds;
    private readonly SpectrumTaker? _frame;
    private readonly SpeechToNoise _speech;
    private readonly EngineOrders? _engine;
    private readonly WindIndex _wind;
    private readonly Hum _hum;
    private readonly Hum _fineHum;
    private readonly float[] _piece = new float[1024];
    private bool _finished;

    /// <summary>Starts a clip.</summary>
    /// <param name="rateHz">Samples a second: <see cref="RateHz"/>.</param>
    /// <param name="cylinders">Cylinders of a four-stroke engine (<see cref="EngineOrders.Cylinders"/>), or nothing to leave the engine out.</param>
    /// <param name="second">Called with each second's mean fast spectrum, if given.</param>
    /// <param name="frame">Called with each fast spectrum, if given.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate or the number of cylinders is out of range.</exception>
    public ClipSpectrum(double rateHz, int? cylinders = null, SpectrumTaker? second = null, SpectrumTaker? frame = null)
    {
        _frame = frame;
        if (!RateHz.Contains(rateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, $"The rate must be {RateHz.Min} to {RateHz.Max} Hz.");
        }

        _decimator = new Decimator(rateHz);
        _fast = new SpectrumFrames(rateHz, 1 << (int)Math.Round(Math.Log2(FastSeconds * rateHz)), TakeFast);
        _slow = new SpectrumFrames(_decimator.RateHz, SlowSize, TakeSlow);
        _fine = new SpectrumFrames(_decimator.RateHz, LineSize, TakeFine);
        _fastMean = new SpectrumMean(_fast.Bins);
        _slowMean = new SpectrumMean(_slow.Bins);
        _seconds = second is null ? null : new SecondMeans(_fast.Bins, _fast.HopSeconds, second);
        _speech = new SpeechToNoise(_fast.Bins, _fast.BinHz, _fast.HopSeconds);
        _engine = cylinders is int count ? new EngineOrders(_slow.BinHz, _slow.HopSeconds, count) : null;
        _wind = new WindIndex(_slow.Bins, _slow.BinHz);
        _hum = new Hum(_slow.Bins, _slow.BinHz);
        _fineHum = new Hum(_fine.Bins, _fine.BinHz);
    }

    /// <summary>Distance of the bins of the fast spectra, Hz.</summary>
    public double FastBinHz => _fast.BinHz;

    /// <summary>Time from one fast spectrum to the next, s.</summary>
    public double FastHopSeconds => _fast.HopSeconds;

    /// <summary>Bins of a fast spectrum.</summary>
    public int FastBins => _fast.Bins;

    /// <summary>Takes the next samples, full scale 1.</summary>
    /// <exception cref="InvalidOperationException">The clip has been finished.</exception>
    public void Add(ReadOnlySpan<float> mono)
    {
        if (_finished)
        {
            throw new InvalidOperationException("The clip has been finished; start a new one.");
        }

        while (!mono.IsEmpty)
        {
            Span<float> piece = _piece.AsSpan(0, Math.Min(mono.Length, _piece.Length));
            for (int i = 0; i < piece.Length; i++)
            {
                piece[i] = float.IsFinite(mono[i]) ? mono[i] : 0;
            }

            mono = mono[piece.Length..];
            AddNumbers(piece);
        }
    }

    /// <summary>The same for samples that are known to be numbers.</summary>
    internal void AddNumbers(ReadOnlySpan<float> mono)
    {
        _fast.Add(mono);
        _decimator.Add(mono, _slow, _fine);
    }

    /// <summary>Ends the clip and gives the result.</summary>
    /// <param name="calibrationDb">Sound pressure level in dB of a tone that reads 0 dBFS, to have levels in dB SPL; 0 for dBFS.</param>
    /// <exception cref="InvalidOperationException">The clip has been finished before.</exception>
    public ClipSpectrumReport Finish(double calibrationDb = 0)
    {
        if (_finished)
        {
            throw new InvalidOperationException("The clip has been finished; start a new one.");
        }

        _finished = true;
        _seconds?.Finish();
        ReadOnlySpan<double> slow = _slowMean.Count > 0 ? _slowMean.Mean() : [];
        SpeechNoiseReport? speech = _speech.Report(calibrationDb);
        Hum? hum = _fineHum.Count > 0 ? _fineHum : _hum.Count > 0 ? _hum : null;
        return new(
            _fastMean.Count > 0 ? new ClipBandLevels(slow, _slow.BinHz, _fastMean.Mean(), _fast.BinHz, calibrationDb) : null,
            speech,
            _engine?.Report(),
            _wind.Report(),
            hum?.Report(50),
            hum?.Report(60))
        {
            Speech = speech?.SpeechToNoiseDb is null ? [] : _speech.Stretches(),
        };
    }

    private void TakeFast(long index, ReadOnlySpan<double> power)
    {
        _fastMean.Add(power);
        _seconds?.Add(index, power);
        _frame?.Invoke(index, power);
        _speech.Add(power);
    }

    private void TakeSlow(long index, ReadOnlySpan<double> power)
    {
        _slowMean.Add(power);
        _engine?.Add(index, power);
        _wind.Add(index, power);
        _hum.Add(power);
    }

    private void TakeFine(long index, ReadOnlySpan<double> power) => _fineHum.Add(power);
}
