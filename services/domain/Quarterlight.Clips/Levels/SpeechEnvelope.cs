using System.Runtime.Intrinsics;

namespace Quarterlight.Clips.Levels;

/// <summary>Envelope of one channel and, for each threshold, the samples during which it counts as active.</summary>
/// <remarks>
/// ITU-T P.56 method B: two one-pole filters of 30 ms on the absolute value, 15 thresholds 6 dB apart (powers of two), 200 ms of hangover. A
/// threshold is
/// only touched when the envelope crosses it; the times between are counted from the crossings, which gives the same counts as sample by sample.
/// </remarks>
internal sealed class SpeechEnvelope(double sampleRateHz)
{
    private const int Thresholds = 15, Lanes = 4;
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
        int i = 0;
        if (block.Length >= Lanes)
        {
            var squares = Vector256<double>.Zero;
            Vector256<double> powers = Vector256.Create(g, g * g, g * g * g, g * g * g * g), p4 = Vector256.Create(p), q4 = Vector256.Create(q);
            for (; i + Lanes <= block.Length; i += Lanes)
            {
                (Vector128<double> first, Vector128<double> second) = Vector128.Widen(Vector128.Create(block[i..]));
                var x = Vector256.Create(first, second);
                squares = Vector256.FusedMultiplyAdd(x, x, squares);
                Vector256<double> ps = Smooth(Vector256.Abs(x) * f, p4, powers), qs = Smooth(ps * f, q4, powers);
                p4 = Vector256.Shuffle(ps, Vector256.Create(3L, 3, 3, 3));
                q4 = Vector256.Shuffle(qs, Vector256.Create(3L, 3, 3, 3));
                if (Vector256.LessThanAny(qs, Vector256.Create(low)) || Vector256.GreaterThanOrEqualAny(qs, Vector256.Create(high)))
                {
                    for (int lane = 0; lane < Lanes; lane++)
                    {
                        Cross(qs[lane], _samples + i + lane);
                    }

                    (low, high) = (Floor(_level), Floor(_level + 1));
                }
            }

            (p, q, sum) = (p4[0], q4[0], sum + Vector256.Sum(squares));
        }

        for (; i < block.Length; i++)
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

    // One pole over four samples: each takes the one before by g, then the two before by g², then the last result by its distance.
    private static Vector256<double> Smooth(Vector256<double> x, Vector256<double> last, Vector256<double> powers)
    {
        Vector256<double> once = Vector256.FusedMultiplyAdd(Vector256.Shuffle(x, Vector256.Create(4L, 0, 1, 2)), Vector256.Create(powers[0]), x);
        Vector256<double> twice = Vector256.FusedMultiplyAdd(Vector256.Shuffle(once, Vector256.Create(4L, 4, 0, 1)), Vector256.Create(powers[1]), once);
        return Vector256.FusedMultiplyAdd(last, powers, twice);
    }

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
