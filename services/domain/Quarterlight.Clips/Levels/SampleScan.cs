using System.Numerics;

namespace Quarterlight.Clips.Levels;

/// <summary>The samples of one channel: sums and highest values by vector; clipping and repetition sample by sample only where a piece could hold
/// some.</summary>
internal sealed class SampleScan(double sampleRateHz, float step, int limit)
{
    /// <summary>Samples looked at together; a multiple of every vector length.</summary>
    public const int Piece = 64;

    private ClipTracker _up = new(step, limit), _down = new(step, limit);
    private RepeatTracker _repeats = new(sampleRateHz, limit);
    private double _sum, _sumOfSquares;
    private float _peak;
    private long _samples;

    /// <summary>A copy to go on with.</summary>
    public SampleScan Copy()
    {
        var copy = (SampleScan)MemberwiseClone();
        (copy._up, copy._down, copy._repeats) = (_up.Copy(), _down.Copy(), _repeats.Copy());
        return copy;
    }

    /// <summary>Adds samples.</summary>
    /// <param name="x">The sample before, then the samples.</param>
    public void Add(ReadOnlySpan<float> x)
    {
        int i = 1;
        for (; i + Piece <= x.Length; i += Piece)
        {
            AddPiece(x.Slice(i - 1, Piece + 1));
        }

        for (; i < x.Length; i++)
        {
            _sum += x[i];
            _sumOfSquares += (double)x[i] * x[i];
            _peak = Math.Max(_peak, Math.Abs(x[i]));
            AddOne(x[i], x[i - 1]);
        }
    }

    /// <summary>What was found; ends the runs under way, so a copy is asked.</summary>
    public SampleLevels Finish(long notNumbers)
    {
        _up.Close(0);
        _down.Close(0);
        _repeats.Close();
        return new SampleLevels
        {
            PeakDbfs = _peak > 0 ? LevelLimits.Db(_peak) : null,
            RmsDbov = _sumOfSquares > 0 ? 10 * Math.Log10(_sumOfSquares / _samples) : null,
            DcOffset = _samples > 0 ? _sum / _samples : 0,
            Samples = _samples,
            NotNumbers = notNumbers,
            Clipping = StretchList.Merge(sampleRateHz, _up.Runs, _down.Runs),
            DigitalSilence = StretchList.Merge(sampleRateHz, _repeats.Silences),
            Dropouts = StretchList.Merge(sampleRateHz, _repeats.Dropouts),
        };
    }

    private void AddPiece(ReadOnlySpan<float> x)
    {
        Vector<float> high = new(float.MinValue), low = new(float.MaxValue);
        Vector<double> sum = Vector<double>.Zero, squares = Vector<double>.Zero;
        bool repeats = false;
        for (int i = 1; i < x.Length; i += Vector<float>.Count)
        {
            Vector<float> v = new(x[i..]);
            (high, low) = (Vector.Max(high, v), Vector.Min(low, v));
            repeats |= Vector.EqualsAny(v, new Vector<float>(x[(i - 1)..]));
            Vector.Widen(v, out Vector<double> a, out Vector<double> b);
            sum += a + b;
            squares = Vector.FusedMultiplyAdd(b, b, Vector.FusedMultiplyAdd(a, a, squares));
        }

        _sum += Vector.Sum(sum);
        _sumOfSquares += Vector.Sum(squares);
        (float highest, float lowest) = (float.MinValue, float.MaxValue);
        for (int i = 0; i < Vector<float>.Count; i++)
        {
            (highest, lowest) = (Math.Max(highest, high[i]), Math.Min(lowest, low[i]));
        }

        float peak = Math.Max(highest, -lowest);
        _peak = Math.Max(_peak, peak);
        if (repeats || !_repeats.Idle || _up.Open || _down.Open || highest >= _up.Threshold || -lowest >= _down.Threshold)
        {
            for (int i = 1; i < x.Length; i++)
            {
                AddOne(x[i], x[i - 1]);
            }
        }
        else
        {
            _samples += Piece;
            _repeats.Skip(x[^1], peak, _samples);
        }
    }

    private void AddOne(float x, float before)
    {
        if (_up.Open || x >= _up.Threshold)
        {
            _up.Add(x, before, _samples);
        }

        if (_down.Open || -x >= _down.Threshold)
        {
            _down.Add(-x, -before, _samples);
        }

        _repeats.Add(x, _samples, x >= _up.Threshold || -x >= _down.Threshold);
        _samples++;
    }
}
