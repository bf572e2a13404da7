namespace Quarterlight.Clips.Levels;

/// <summary>Envelope of one channel and, for each threshold, the samples during which it counts as active.</summary>
/// <remarks>
/// ITU-T P.56 method B: two one-pole filters of 30 ms on the absolute value, 15 thresholds 6 dB apart (powers of two), 200 ms of hangover. A
/// threshold is
/// only touched when the envelope crosses it; the times between are counted from the crossings, which gives the same counts as sample by sample.
/// </remarks>
internal sealed class SpeechEnvelope(double sampleRateHz)
{
    private const int Thresholds = 15;
    private const double TimeConstantSeconds = 0.03, HangoverSeconds = 0.2, MarginDb = 15.9, Tiny = 1e-30;

    private readonly double _g = Math.Exp(-1 / (sampleRateHz * TimeConstantSeconds));
    private readonly long _hang = (long)Math.Floor((sampleRateHz * HangoverSeconds) + 0.5);

    // Samples from the first crossing on for which a threshold was active until its last fall, hangover of that fall left out.
    private readonly long[] _active = new long[Thresholds], _rise = new long[Thresholds], _fall = new long[Thresholds];
    private readonly bool[] _fallen = new bool[Thresholds];
    private double _p, _q, _sumOfSquares;
    private int _level;
    private long _samples;

    /// <summary>Adds a block.</summary>
    public void Add(ReadOnlySpan<float> block)
    {
        double g = _g, f = 1 - g, p = _p, q = _q, sum = _sumOfSquares, low = Floor(_level), high = Floor(_level + 1);
        for (int i = 0; i < block.Length; i++)
        {
            double x = block[i];
            sum += x * x;
            p = (g * p) + (f * Math.Abs(x));
            q = (g * q) + (f * p);
            if (q < low || q >= high)
            {
                Cross(q, _samples + i);
                (low, high) = (Floor(_level), Floor(_level + 1));
            }
        }

        _samples += block.Length;
        (_p, _q, _sumOfSquares) = (p < Tiny ? 0 : p, q < Tiny ? 0 : q, sum);
    }

    /// <summary>Copies the state of another, so that a last part can be added without touching it.</summary>
    public SpeechEnvelope Copy()
    {
        var copy = new SpeechEnvelope(sampleRateHz) { _p = _p, _q = _q, _sumOfSquares = _sumOfSquares, _level = _level, _samples = _samples };
        _active.CopyTo(copy._active, 0);
        _rise.CopyTo(copy._rise, 0);
        _fall.CopyTo(copy._fall, 0);
        _fallen.CopyTo(copy._fallen, 0);
        return copy;
    }

    /// <summary>Level and activity so far.</summary>
    public ActiveSpeechLevel Measure()
    {
        if (_sumOfSquares == 0)
        {
            return new ActiveSpeechLevel(null, null, 0);
        }

        double meanDb = 10 * Math.Log10(_sumOfSquares / _samples), lastDb = 0, lastExcess = 0;
        for (int j = 0; j < Thresholds; j++)
        {
            long active = Active(j);
            if (active == 0)
            {
                break;
            }

            double levelDb = 10 * Math.Log10(_sumOfSquares / active), excess = levelDb - LevelLimits.Db(Floor(j + 1));
            if (excess <= MarginDb)
            {
                if (j == 0)
                {
                    break;
                }

                // Between two thresholds the level is taken along a straight line in dB.
                double share = (lastExcess - MarginDb) / (lastExcess - excess), activeDb = lastDb + (share * (levelDb - lastDb));
                return new ActiveSpeechLevel(meanDb, activeDb, Math.Pow(10, (meanDb - activeDb) / 10));
            }

            (lastDb, lastExcess) = (levelDb, excess);
        }

        return new ActiveSpeechLevel(meanDb, null, 0);
    }

    // Lower edge of a level; level 1 begins at the lowest threshold, 2^-15.
    private static double Floor(int level) => level switch
    {
        <= 0 => double.NegativeInfinity,
        > Thresholds => double.PositiveInfinity,
        _ => Math.ScaleB(1, level - 1 - Thresholds),
    };

    private void Cross(double q, long now)
    {
        for (; q < Floor(_level); _level--)
        {
            int j = _level - 1;
            _active[j] += now - _rise[j];
            (_fall[j], _fallen[j]) = (now, true);
        }

        for (; q >= Floor(_level + 1); _level++)
        {
            int j = _level;
            _active[j] += _fallen[j] ? Math.Min(now - _fall[j], _hang) : 0;
            (_rise[j], _fallen[j]) = (now, false);
        }
    }

    private long Active(int j) =>
        _active[j] + (_level > j ? _samples - _rise[j] : _fallen[j] ? Math.Min(_samples - _fall[j], _hang) : 0);
}
