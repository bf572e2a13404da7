using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>
/// Engine speed of a four-stroke engine from its firing order (cylinders / 2 a turn) and that order's multiples in slow spectra, followed
/// from frame to frame. Needs the number of cylinders: sound alone does not tell it. Any steady machine with such lines reads as an engine.
/// </summary>
/// <remarks>
/// Harmonic sum in the manner of Noll, J. Acoust. Soc. Am. 41 (1967), and Hermes, J. Acoust. Soc. Am. 83 (1988) (both from memory), on
/// heights in dB; a forgetting track (0.7 a frame) follows changes of up to 4 % a frame. Limits are judgement: noise alone reached 6.7 dB in 48
/// made clips, and a claim needs 9 dB. A voice is told from an engine by its pauses (level of the lines from second to second) and its
/// restless pitch (second difference of the speeds). Where the even multiples stand 6 dB above the odd ones over the clip, half the firing order was
/// followed, and the speed is doubled.
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
    private const int MaxMoments = 16384;
    private const int LeastMoments = 4;
    private const double HalfSpeedDb = 6;
    private static readonly ValidRange s_scoreDb = new(7, 11, "dB");
    private static readonly ValidRange s_jumpDb = new(4, 8, "dB");
    private static readonly ValidRange s_bend = new(0.008, 0.024, "");
    private readonly FiringLines _lines;
    private readonly double[] _firingHz;
    private readonly double[] _scores;
    private readonly double[] _track;
    private readonly double[] _reach;
    private readonly EngineMoment[] _moments = new EngineMoment[MaxMoments];
    private readonly double[] _levels = new double[2];
    private readonly double _hopSeconds;
    private readonly int _cylinders;
    private double _jumps;
    private double _evenOverOdd;
    private int _claims;
    private int _jumpCount;
    private int _count;
    private double _held;

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

        (_hopSeconds, _cylinders) = (hopSeconds, cylinders);
        _lines = new FiringLines(binHz);
        int steps = (int)(Math.Log(Rpm.Max / Rpm.Min) / Math.Log(GridStep)) + 1;
        _firingHz = [.. Enumerable.Range(0, steps).Select(i => Rpm.Min * Math.Pow(GridStep, i) / 120 * cylinders)];
        (_scores, _track, _reach) = (new double[steps], new double[steps], new double[steps]);
    }

    /// <summary>Takes a slow frame's power, all frames in order. Moments beyond two hours are not kept.</summary>
    public void Add(long index, ReadOnlySpan<double> power)
    {
        _lines.Take(index, power);
        Follow();
        int best = 0;
        for (int i = 0; i < _scores.Length; i++)
        {
            _scores[i] = _lines.Score(_firingHz[i]);
            _track[i] = ((1 - Memory) * Math.Max(0, _scores[i])) + (Memory * _reach[i]);
            best = _track[i] > _track[best] || (_track[i] == _track[best] && _scores[i] > _scores[best]) ? i : best;
        }

        // The first two frames have no past to lean on.
        _held = index < 2 ? Math.Max(_held, _scores[best]) : _track[best] / (1 - Math.Pow(Memory, index + 1));
        double confidence = Math.Min(
            Ramp.Up(_scores[best], s_scoreDb.Min - 2, s_scoreDb.Max - 2), Ramp.Up(_held, s_scoreDb.Min, s_scoreDb.Max));
        if (confidence >= ClaimFrom)
        {
            _evenOverOdd += _lines.EvenOverOdd(_firingHz[best]);
            _claims++;
        }

        double level = _lines.Level(power, _firingHz[best]);
        if (index >= 2 && confidence >= ClaimFrom)
        {
            _jumps += (level - _levels[index % 2]) * (level - _levels[index % 2]);
            _jumpCount++;
        }

        _levels[index % 2] = level;
        if (_count < MaxMoments)
        {
            double rpm = _lines.Refine(_firingHz[best]) * 120 / _cylinders;
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
        confidence *= 1 - Ramp.Up(Bend(moments), s_bend.Min, s_bend.Max);
        confidence *= 1 - Ramp.Up(Math.Sqrt(_jumps / 2 / Math.Max(1, _jumpCount)), s_jumpDb.Min, s_jumpDb.Max);
        if (claimed.Length < LeastMoments || confidence < ClaimFrom)
        {
            // What is not claimed for the clip is not claimed for its moments either.
            EngineMoment[] unclaimed = [.. moments.Select(m => m with { Rpm = null, Confidence = Math.Min(m.Confidence, confidence) })];
            return new(_cylinders, null, null, null, null, Math.Min(confidence, ClaimFrom), unclaimed);
        }

        if (_evenOverOdd >= HalfSpeedDb * _claims && 2 * claimed[^1] <= Rpm.Max)
        {
            moments = [.. moments.Select(m => m with { Rpm = 2 * m.Rpm })];
            claimed = [.. claimed.Select(c => 2 * c)];
        }

        double middle = claimed[claimed.Length / 2];
        return new(_cylinders, middle, middle * _cylinders / 120, claimed[0], claimed[^1], confidence, moments);
    }

    // Best past score from which each candidate may have come: the highest within FollowSteps to each side, by doubling the reach.
    private void Follow()
    {
        _track.CopyTo(_reach, 0);
        for (int step = 1; step < FollowSteps; step *= 2)
        {
            for (int i = 0; i < _reach.Length - step; i++)
            {
                _reach[i] = Math.Max(_reach[i], _reach[i + step]);
            }
        }

        // _reach[i] now covers i to i + FollowSteps - 1; from the top down, the part below is still untouched.
        for (int i = _reach.Length - 1; i >= FollowSteps; i--)
        {
            _reach[i] = Math.Max(_reach[i], _reach[i - FollowSteps]);
        }
    }

    private static double Bend(EngineMoment[] moments)
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
}
