using System.Numerics;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips;

/// <summary>Gathers a <see cref="ClipTimeline"/>: a column for each hop of the fast spectra, two columns made one whenever they grow too many.</summary>
/// <remarks>Memory does not grow with the length; a call allocates nothing.</remarks>
internal sealed class TimelineMeter
{
    /// <summary>Bands when the rate holds them all.</summary>
    public const int MostBands = 64;

    private const double LowestHz = 50, HighestHz = 16_000;

    private readonly int _hop;
    private readonly double _hopSeconds;
    private readonly double[] _centresHz, _below;
    private readonly (double Low, double High)[] _edges;
    private readonly float[] _bands, _squares, _peaks;
    private readonly int[] _bandFrames, _samples;
    private int _perColumn = 1;
    private long _hops, _frames;
    private int _inHop;
    private float _peak, _square;

    /// <summary>Starts a clip.</summary>
    /// <param name="rateHz">Samples a second.</param>
    /// <param name="bins">Bins of a fast spectrum.</param>
    public TimelineMeter(double rateHz, int bins)
    {
        _hop = bins - 1;
        _hopSeconds = _hop / rateHz;
        double binHz = rateHz / (2 * _hop), step = Math.Log(HighestHz / LowestHz) / MostBands, half = rateHz / 2;
        var centres = new List<double>();
        var edges = new List<(double, double)>();
        for (int b = 0; b < MostBands && LowestHz * Math.Exp(step * (b + 1)) <= half; b++)
        {
            // Bin k reaches half a bin to each side. A band narrower than two bins is read as the density around its middle.
            double low = (LowestHz * Math.Exp(step * b) / binHz) + 0.5, high = (LowestHz * Math.Exp(step * (b + 1)) / binHz) + 0.5;
            edges.Add((low, high));
            centres.Add(LowestHz * Math.Exp(step * (b + 0.5)));
        }

        (_centresHz, _edges, _below) = ([.. centres], [.. edges], new double[bins + 1]);
        _bands = new float[ClipTimeline.MostColumns * _centresHz.Length];
        (_squares, _peaks) = (new float[ClipTimeline.MostColumns], new float[ClipTimeline.MostColumns]);
        (_bandFrames, _samples) = (new int[ClipTimeline.MostColumns], new int[ClipTimeline.MostColumns]);
    }

    /// <summary>A timeline without columns.</summary>
    public static ClipTimeline Empty { get; } = new()
    {
        ColumnSeconds = 0,
        BandCentresHz = [],
        BandLevelsDb = ReadOnlyMemory<float>.Empty,
        RmsDb = ReadOnlyMemory<float>.Empty,
        PeakDb = ReadOnlyMemory<float>.Empty,
    };

    /// <summary>Takes samples, all of them numbers; before the spectra that they complete.</summary>
    public void Add(ReadOnlySpan<float> mono)
    {
        while (!mono.IsEmpty)
        {
            ReadOnlySpan<float> part = mono[..Math.Min(mono.Length, _hop - _inHop)];
            mono = mono[part.Length..];
            Scan(part);
            _inHop += part.Length;
            if (_inHop == _hop)
            {
                EndHop();
            }
        }
    }

    /// <summary>Takes a fast spectrum.</summary>
    public void Take(ReadOnlySpan<double> power)
    {
        double sum = 0;
        for (int k = 0; k < power.Length; k++)
        {
            _below[k] = sum;
            sum += power[k];
        }

        _below[power.Length] = sum;
        int column = ColumnOf(_frames++);
        Span<float> to = _bands.AsSpan(column * _edges.Length, _edges.Length);
        for (int b = 0; b < to.Length; b++)
        {
            (double low, double high) = _edges[b];
            double width = high - low;
            to[b] += (float)(width < 1 ? width * (Below(((low + high) / 2) + 0.5) - Below(((low + high) / 2) - 0.5)) : Below(high) - Below(low));
        }

        _bandFrames[column]++;
    }

    /// <summary>The timeline; ends the hop under way.</summary>
    public ClipTimeline Finish()
    {
        if (_inHop > 0)
        {
            EndHop();
        }

        int columns = (int)((_hops + _perColumn - 1) / _perColumn), bands = _edges.Length;
        float[] levels = new float[columns * bands], rms = new float[columns], peak = new float[columns];
        for (int c = 0; c < columns; c++)
        {
            rms[c] = (float)FullScale.Level(_squares[c] / (double)Math.Max(1, _samples[c]));
            peak[c] = _peaks[c] > 0 ? 20 * MathF.Log10(_peaks[c]) : (float)FullScale.SilenceDb;

            // The last hop has no frame of its own: it shows the one before.
            int from = _bandFrames[c] > 0 || c == 0 ? c : c - 1;
            for (int b = 0; b < bands; b++)
            {
                levels[(c * bands) + b] = from < c
                    ? levels[(from * bands) + b]
                    : (float)FullScale.Level(_bands[(c * bands) + b] / (double)Math.Max(1, _bandFrames[c]));
            }
        }

        return new ClipTimeline
        {
            ColumnSeconds = _perColumn * _hopSeconds,
            BandCentresHz = _centresHz,
            BandLevelsDb = levels,
            RmsDb = rms,
            PeakDb = peak,
        };
    }

    private double Below(double at)
    {
        int k = Math.Clamp((int)at, 0, _below.Length - 2);
        return _below[k] + ((_below[k + 1] - _below[k]) * Math.Clamp(at - k, 0, 1));
    }

    private void Scan(ReadOnlySpan<float> part)
    {
        Vector<float> high = Vector<float>.Zero, squares = Vector<float>.Zero;
        int i = 0;
        for (; i + Vector<float>.Count <= part.Length; i += Vector<float>.Count)
        {
            Vector<float> v = new(part[i..]);
            high = Vector.Max(high, Vector.Abs(v));
            squares += v * v;
        }

        _square += Vector.Sum(squares);
        for (int lane = 0; lane < Vector<float>.Count; lane++)
        {
            _peak = Math.Max(_peak, high[lane]);
        }

        for (; i < part.Length; i++)
        {
            _peak = Math.Max(_peak, Math.Abs(part[i]));
            _square += part[i] * part[i];
        }
    }

    private void EndHop()
    {
        int column = ColumnOf(_hops++);
        _peaks[column] = Math.Max(_peaks[column], _peak);
        _squares[column] += _square;
        _samples[column] += _inHop;
        (_inHop, _peak, _square) = (0, 0, 0);
    }

    private int ColumnOf(long hop)
    {
        while (hop / _perColumn >= ClipTimeline.MostColumns)
        {
            Halve();
        }

        return (int)(hop / _perColumn);
    }

    private void Halve()
    {
        int bands = _edges.Length, half = ClipTimeline.MostColumns / 2;
        for (int c = 0; c < half; c++)
        {
            (int a, int b) = (2 * c, (2 * c) + 1);
            for (int i = 0; i < bands; i++)
            {
                _bands[(c * bands) + i] = _bands[(a * bands) + i] + _bands[(b * bands) + i];
            }

            (_squares[c], _peaks[c]) = (_squares[a] + _squares[b], Math.Max(_peaks[a], _peaks[b]));
            (_bandFrames[c], _samples[c]) = (_bandFrames[a] + _bandFrames[b], _samples[a] + _samples[b]);
        }

        _bands.AsSpan(half * bands).Clear();
        _squares.AsSpan(half).Clear();
        _peaks.AsSpan(half).Clear();
        _bandFrames.AsSpan(half).Clear();
        _samples.AsSpan(half).Clear();
        _perColumn *= 2;
    }
}
