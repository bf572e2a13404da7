using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Levels;

/// <summary>The sliding windows and gates of one loudness, fed with the energy of each step of 10 ms.</summary>
internal sealed class LoudnessWindows(double sampleRateHz)
{
    /// <summary>Steps a second.</summary>
    public const int StepsPerSecond = 100;

    private const int Momentary = 40, ShortTerm = 300, Hop = 10;

    // Rounding noise of equal windows is no new maximum.
    private const double Above = 1 + 1e-9;

    private readonly double[] _ring = new double[ShortTerm];
    private readonly LoudnessHistogram _blocks = new(), _shortTerms = new();
    private long _steps, _maxMomentaryStep, _maxShortTermStep;
    private double _momentary, _shortTerm, _maxMomentary, _maxShortTerm;

    /// <summary>First frame of a step.</summary>
    public static long Edge(long step, double sampleRateHz) => (long)Math.Round(step * sampleRateHz / StepsPerSecond);

    /// <summary>Adds the weighted sum of squares of one step.</summary>
    public void Add(double sumOfSquares)
    {
        _ring[_steps++ % ShortTerm] = sumOfSquares;
        bool block = _steps % Hop == 0;
        if (_steps >= Momentary)
        {
            _momentary = Mean(Momentary);
            if (_momentary > _maxMomentary * Above)
            {
                (_maxMomentary, _maxMomentaryStep) = (_momentary, _steps - Momentary);
            }

            if (block)
            {
                _blocks.Add(_momentary);
            }
        }

        if (_steps >= ShortTerm)
        {
            _shortTerm = Mean(ShortTerm);
            if (_shortTerm > _maxShortTerm * Above)
            {
                (_maxShortTerm, _maxShortTermStep) = (_shortTerm, _steps - ShortTerm);
            }

            if (block)
            {
                _shortTerms.Add(_shortTerm);
            }
        }
    }

    /// <summary>What was found so far.</summary>
    public Loudness Measure() => new()
    {
        IntegratedLkfs = _blocks.Gated(-10),
        RangeLu = _shortTerms.Spread(-20, 0.10, 0.95),
        MaxMomentaryLkfs = Lkfs(_maxMomentary),
        MaxMomentaryStartSeconds = _maxMomentary > 0 ? Edge(_maxMomentaryStep, sampleRateHz) / sampleRateHz : null,
        MaxShortTermLkfs = Lkfs(_maxShortTerm),
        MaxShortTermStartSeconds = _maxShortTerm > 0 ? Edge(_maxShortTermStep, sampleRateHz) / sampleRateHz : null,
        MomentaryLkfs = Lkfs(_momentary),
        ShortTermLkfs = Lkfs(_shortTerm),
    };

    private static double? Lkfs(double meanSquare) => meanSquare > 0 ? LoudnessHistogram.Lkfs(meanSquare) : null;

    private double Mean(int window)
    {
        int at = (int)((_steps - window) % ShortTerm);
        int first = Math.Min(window, ShortTerm - at);
        double sum = BinSums.Sum(_ring.AsSpan(at, first)) + BinSums.Sum(_ring.AsSpan(0, window - first));
        return sum / (Edge(_steps, sampleRateHz) - Edge(_steps - window, sampleRateHz));
    }
}
