using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Engine speed of a four-stroke engine from its firing order (cylinders / 2 a turn) and that order's multiples in slow spectra, followed
/// from frame to frame. Needs the number of cylinders: sound alone does not tell it.
/// </summary>
/// <remarks>
/// Score of a candidate: mean height (<see cref="LineHeights"/>) at up to five multiples of the firing frequency, less the mean height where a
/// wrong candidate would find lines too: half way between the multiples, and at one and two thirds of the first. Harmonic sum in the manner of
/// Noll, J. Acoust. Soc. Am. 41 (1967), and Hermes, J. Acoust. Soc. Am. 83 (1988) (both from memory); weights and limits are judgement:
/// noise alone reached 6.7 dB in 48 made clips, and a claim needs 9 dB.
/// </remarks>
public sealed class EngineOrders
{
    /// <summary>Confidence from which an engine speed is claimed. Judgement.</summary>
    public const double ClaimFrom = 0.5;

    /// <summary>Engine speeds looked for, revolutions a minute. Judgement.</summary>
    public static ValidRange Rpm { get; } = new(600, 7000, "rpm");

    /// <summary>Cylinders of the engine. Judgement.</summary>
    public static ValidRange Cylinders { get; } = new(2, 12, "");

    private const double GridStep = 1.0025;
    private const double Memory = 0.7;
    private const int FollowSteps = 16;
    private const int MaxMultiples = 5;
    private const double UncertainDb = 7;
    private const double CertainDb = 11;
    private const int MaxMoments = 16384;
    private const double SteadyDb = 4;
    private const double JumpyDb = 8;
    private const int Averaged = 3;
    private static readonly double[] s_weights = [.. Enumerable.Range(0, MaxMultiples + 1).Select(n => 1 / Math.Sqrt(Math.Max(1, n)))];
    private readonly LineHeights _lines;
    private readonly double[][] _last;
    private readonly double[] _smooth;
    private readonly double[] _wide;
    private readonly double[] _firingHz;
    private readonly double[] _scores;
    private readonly double[] _track;
    private readonly double[] _trackNext;
    private readonly double _binHz;
    private readonly double _hopSeconds;
    private readonly int _cylinders;
    private readonly EngineMoment[] _moments = new EngineMoment[MaxMoments];
    private readonly double[] _lineDb = new double[2];
    private double _jumps;
    private int _jumpCount;
    private int _count;
    private double _best;

    /// <summary>Starts a clip.</summary>
    /// <param name="binHz">Distance of the bins, about 1 Hz.</param>
    /// <param name="hopSeconds">Time from one frame to the next, s.</param>
    /// <param name="cylinders">Cylinders: <see cref="Cylinders"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of cylinders is out of range.</exception>
    public EngineOrders(double binHz, double hopSeconds, int cylinders)
    {
        if (!Cylinders.Contains(cylinders))
        {
            throw new ArgumentOutOfRangeException(nameof(cylinders), cylinders, "An engine here has 2 to 12 cylinders.");
        }

        (_binHz, _hopSeconds, _cylinders) = (binHz, hopSeconds, cylinders);
        _lines = new LineHeights((int)(Decimator.PassHz / binHz) + 1);
        _wide = new double[_lines.Heights.Length];
        _smooth = new double[_wide.Length];
        _last = [.. Enumerable.Range(0, Averaged).Select(_ => new double[_wide.Length])];
        int steps = (int)(Math.Log(Rpm.Max / Rpm.Min) / Math.Log(GridStep)) + 1;
        _firingHz = [.. Enumerable.Range(0, steps).Select(i => Rpm.Min * Math.Pow(GridStep, i) / 120 * cylinders)];
        (_scores, _track, _trackNext) = (new double[steps], new double[steps], new double[steps]);
    }

    /// <summary>Takes a slow frame's power. Moments beyond two hours are not kept.</summary>
    public void Add(long index, ReadOnlySpan<double> power)
    {
        Smooth(index, power);
        _lines.Take(_smooth);
        ReadOnlySpan<double> heights = _lines.Heights;
        for (int k = 1; k < _wide.Length - 1; k++)
        {
            _wide[k] = Math.Max(heights[k], Math.Max(heights[k - 1], heights[k + 1]));
        }

        int best = 0;
        for (int i = 0; i < _scores.Length; i++)
        {
            _scores[i] = Score(_firingHz[i]);
            double before = 0;
            for (int j = Math.Max(0, i - FollowSteps); j <= Math.Min(_track.Length - 1, i + FollowSteps); j++)
            {
                before = Math.Max(before, _track[j]);
            }

            _trackNext[i] = ((1 - Memory) * Math.Max(0, _scores[i])) + (Memory * before);
            best = _trackNext[i] > _trackNext[best] || (_trackNext[i] == _trackNext[best] && _scores[i] > _scores[best]) ? i : best;
        }

        _trackNext.CopyTo(_track, 0);
        _best = index < 2 ? Math.Max(_best, _scores[best]) : _track[best] / (1 - Math.Pow(Memory, index + 1));
        double confidence = Math.Min(Ramp.Up(_scores[best], UncertainDb - 2, CertainDb - 2), Ramp.Up(_best, UncertainDb, CertainDb));
        double lineDb = LineLevel(power, _firingHz[best]);
        if (index >= 2 && confidence >= ClaimFrom)
        {
            double jump = lineDb - _lineDb[index % 2];
            _jumps += jump * jump;
            _jumpCount++;
        }

        _lineDb[index % 2] = lineDb;
        double rpm = Refine(_firingHz[best]) * 120 / _cylinders;
        if (_count < MaxMoments)
        {
            _moments[_count++] = new EngineMoment((index + 1) * _hopSeconds, confidence >= ClaimFrom ? rpm : null, confidence);
        }
    }

    /// <summary>The clip's result.</summary>
    public EngineReport Report()
    {
        EngineMoment[] moments = _moments[.._count];
        double[] claimed = [.. moments.Where(m => m.Rpm is not null).Select(m => m.Rpm!.Value).Order()];
        double share = claimed.Length / Math.Max(1.0, moments.Length);
        double confidence = claimed.Length == 0 ? 0 : moments.Where(m => m.Rpm is not null).Average(m => m.Confidence) * Math.Min(1, 2 * share);
        confidence *= 1 - Ramp.Up(Roughness(moments), 0.008, 0.024);
        confidence *= 1 - Ramp.Up(Math.Sqrt(_jumps / 2 / Math.Max(1, _jumpCount)), SteadyDb, JumpyDb);
        if (claimed.Length < 2 || confidence < ClaimFrom)
        {
            return new(_cylinders, null, null, null, null, Math.Min(confidence, ClaimFrom), moments);
        }

        double middle = claimed[claimed.Length / 2];
        return new(_cylinders, middle, middle * _cylinders / 120, claimed[0], claimed[^1], confidence, moments);
    }

    // Level of the lines in this frame alone: an engine's stays from second to second, a voice pauses.
    private double LineLevel(ReadOnlySpan<double> power, double firingHz)
    {
        double sum = 1e-20;
        for (int n = 1; n <= Multiples(firingHz); n++)
        {
            sum += BinSums.Between(power, _binHz, (n * firingHz * 0.99) - (2 * _binHz), (n * firingHz * 1.01) + (2 * _binHz));
        }

        return 10 * Math.Log10(sum);
    }

    // Middle size of the second difference of claimed speeds: an engine gathers and loses speed smoothly, a voice does not.
    private static double Roughness(EngineMoment[] moments)
    {
        var bends = new List<double>();
        for (int i = 2; i < moments.Length; i++)
        {
            if (moments[i].Rpm is double c && moments[i - 1].Rpm is double b && moments[i - 2].Rpm is double a)
            {
                bends.Add(Math.Abs(a - (2 * b) + c) / b);
            }
        }

        bends.Sort();
        return bends.Count == 0 ? 0 : bends[bends.Count / 2];
    }

    // Mean of up to three frames, 2 s in all: noise lines come and go, orders stay.
    private void Smooth(long index, ReadOnlySpan<double> power)
    {
        int frames = (int)Math.Min(index + 1, Averaged);
        power[.._smooth.Length].CopyTo(_last[(int)(index % Averaged)]);
        for (int k = 0; k < _smooth.Length; k++)
        {
            _smooth[k] = 0;
            for (int f = 0; f < frames; f++)
            {
                _smooth[k] += _last[f][k] / frames;
            }
        }
    }

    private double Score(double firingHz)
    {
        int multiples = Multiples(firingHz);
        if (multiples == 0)
        {
            return 0;
        }

        double on = 0, between = 0, weights = 0;
        for (int n = 1; n <= multiples; n++)
        {
            on += s_weights[n] * HeightAt(n * firingHz);
            between += s_weights[n] * HeightAt((n - 0.5) * firingHz);
            weights += s_weights[n];
        }

        double thirds = (HeightAt(firingHz / 3) + HeightAt(firingHz * 2 / 3)) / 2;
        return ((on - (0.5 * between)) / weights) - (0.5 * thirds);
    }

    private int Multiples(double firingHz) => Math.Min(MaxMultiples, (int)((_wide.Length - 2) * _binHz / firingHz));

    private double HeightAt(double hz)
    {
        double at = hz / _binHz;
        int k = (int)at;
        return _wide[k] + ((at - k) * (_wide[k + 1] - _wide[k]));
    }

    // Least squares over the peaks near each multiple: f = sum h n p / sum h n².
    private double Refine(double firingHz)
    {
        ReadOnlySpan<double> heights = _lines.Heights;
        double top = 0, bottom = 0;
        for (int n = 1; n <= Multiples(firingHz); n++)
        {
            double at = n * firingHz / _binHz;
            double reach = Math.Max(1.5, at * 0.008);
            int peak = (int)Math.Round(at);
            for (int k = Math.Max(1, (int)(at - reach)); k <= Math.Min(heights.Length - 2, (int)(at + reach) + 1); k++)
            {
                peak = heights[k] > heights[peak] ? k : peak;
            }

            double a = heights[peak - 1], b = heights[peak], c = heights[peak + 1];
            double bend = a - (2 * b) + c;
            double place = peak + (bend < 0 ? Math.Clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 0);
            top += b * n * place * _binHz;
            bottom += b * n * n;
        }

        return bottom > 0 ? top / bottom : firingHz;
    }
}
