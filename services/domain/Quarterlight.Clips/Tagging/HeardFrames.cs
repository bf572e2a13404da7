using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Tagging;

/// <summary>What is kept of the last few seconds of fast frames (32 ms, 16 ms apart): the power of each bin, and a few levels.</summary>
internal sealed class HeardFrames
{
    /// <summary>Frame at 16 kHz, samples.</summary>
    public const int Size = 512;

    /// <summary>Bins kept, to 7 kHz.</summary>
    public const int Bins = 225;

    /// <summary>Kept a frame: level of the A-weighted sum, of 60-250 Hz, 250-1500 Hz and 1.5-7 kHz in dB, and the harmonicity.</summary>
    public const int Values = 5;

    private const double Empty = 1e-13;
    private const int HarmonicityEvery = 3;
    private readonly float[] _power;
    private readonly float[] _values;
    private readonly double[] _aWeights;
    private readonly Harmonicity _harmonicity;
    private readonly double _binHz;
    private readonly int _frames;
    private double _lastHarmonicity;

    public HeardFrames(int frames, double binHz)
    {
        (_frames, _binHz) = (frames, binHz);
        _power = new float[frames * Bins];
        _values = new float[frames * Values];
        _aWeights = [.. Enumerable.Range(0, Bins).Select(k => AWeighting.PowerFactor(k * binHz))];
        _harmonicity = new Harmonicity(Bins, binHz);
    }

    /// <summary>Level of a mean square in dB, at least -130.</summary>
    public static double Db(double power) => 10 * Math.Log10(power + Empty);

    public ReadOnlySpan<float> Power(long frame) => _power.AsSpan((int)(frame % _frames) * Bins, Bins);

    public ReadOnlySpan<float> Of(long frame) => _values.AsSpan((int)(frame % _frames) * Values, Values);

    public void Take(long frame, ReadOnlySpan<double> power)
    {
        Span<float> kept = _power.AsSpan((int)(frame % _frames) * Bins, Bins);
        double weighted = 0;
        for (int k = 0; k < Bins; k++)
        {
            kept[k] = (float)power[k];
            weighted += power[k] * _aWeights[k];
        }

        if (frame % HarmonicityEvery == 0)
        {
            _lastHarmonicity = _harmonicity.Of(power);
        }

        Span<float> values = _values.AsSpan((int)(frame % _frames) * Values, Values);
        values[0] = (float)Db(weighted);
        values[1] = (float)Db(BinSums.Between(power, _binHz, 60, 250));
        values[2] = (float)Db(BinSums.Between(power, _binHz, 250, 1500));
        values[3] = (float)Db(BinSums.Between(power, _binHz, 1500, 7000));
        values[4] = (float)_lastHarmonicity;
    }
}
