using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>What moves the low end.</summary>
/// <param name="Wind">0 to 1: gusty wind at the capsule.</param>
/// <param name="Pressure">0 to 1: steady pressure in the cabin or rumble below 20 Hz.</param>
/// <param name="LowOverMidDb">20-100 Hz over 250-700 Hz, dB.</param>
/// <param name="InfraOverLowDb">2-20 Hz over 20-100 Hz, dB.</param>
/// <param name="GustDb">How much 20-100 Hz changes from second to second, dB.</param>
/// <param name="InfraGustDb">The same for 2-20 Hz.</param>
/// <param name="LinesDb">Highest line in 20-100 Hz above its neighbourhood, less what chance gives in few frames, dB: an engine has lines, wind has none.</param>
public sealed record WindReport(double Wind, double Pressure, double LowOverMidDb, double InfraOverLowDb, double GustDb, double InfraGustDb, double LinesDb)
{
    /// <summary>True when wind at the capsule is likely.</summary>
    public bool IsGusty => Wind >= 0.5;

    /// <summary>True when cabin pressure or rumble below 20 Hz is likely.</summary>
    public bool IsPressure => Pressure >= 0.5;
}

/// <summary>
/// Low-frequency wind and cabin-pressure index from slow spectra. Wind at a capsule lifts the whole low end, without lines, and comes and
/// goes; pressure in a shut or half-open cabin sits below 20 Hz and stays.
/// </summary>
/// <remarks>
/// That wind noise falls steeply with frequency: Strasberg's fit in van den Berg, The sounds of high winds, eq. VIII.2, which is used in the noise
/// forecast. All ramps below are judgement. Change: square root of half the mean squared difference of band levels one second apart,
/// less 0.6 dB and 1.2 dB in square, what steady noise of that width shows (B T = 53 and 12 for a Hann frame of 1 s).
/// </remarks>
/// <param name="bins">Bins of a spectrum.</param>
/// <param name="binHz">Distance of the bins, about 1 Hz.</param>
public sealed class WindIndex(int bins, double binHz)
{
    /// <summary>Ramp of 20-100 Hz over 250-700 Hz, dB. Judgement.</summary>
    public static ValidRange LowOverMid { get; } = new(6, 14, "dB");

    /// <summary>Ramp of the change of 20-100 Hz, dB. Judgement.</summary>
    public static ValidRange Gust { get; } = new(1, 2.6, "dB");

    /// <summary>Ramp of the highest line, dB, above which it is an engine rather than wind. Judgement.</summary>
    public static ValidRange Lines { get; } = new(6, 10, "dB");

    /// <summary>Ramp of 2-20 Hz over 20-100 Hz, dB. Judgement.</summary>
    public static ValidRange InfraOverLow { get; } = new(3, 9, "dB");

    /// <summary>Ramp of 2-20 Hz over 250-700 Hz, dB. Judgement.</summary>
    public static ValidRange InfraOverMid { get; } = new(6, 14, "dB");

    private const double SteadyLowDb2 = 0.6 * 0.6;
    private const double SteadyInfraDb2 = 1.2 * 1.2;
    private readonly SpectrumMean _mean = new(bins);
    private readonly LineHeights _lines = new((int)(160 / binHz));
    private readonly double[] _before = new double[4];
    private double _low2;
    private double _infra2;

    /// <summary>Takes a slow frame's power, all frames in order.</summary>
    public void Add(long index, ReadOnlySpan<double> power)
    {
        double infra = FullScale.Level(BinSums.Between(power, binHz, 2, 20));
        double low = FullScale.Level(BinSums.Between(power, binHz, 20, 100));
        int place = (int)(index % 2) * 2;
        if (index >= 2)
        {
            _infra2 += (infra - _before[place]) * (infra - _before[place]);
            _low2 += (low - _before[place + 1]) * (low - _before[place + 1]);
        }

        (_before[place], _before[place + 1]) = (infra, low);
        _mean.Add(power);
    }

    /// <summary>The clip's result, or nothing when it has less than three slow frames (about 2 s) or is silent at the low end.</summary>
    public WindReport? Report()
    {
        ReadOnlySpan<double> power = _mean.Mean();
        double infra = FullScale.Level(BinSums.Between(power, binHz, 2, 20));
        double low = FullScale.Level(BinSums.Between(power, binHz, 20, 100));
        double mid = FullScale.Level(BinSums.Between(power, binHz, 250, 700));
        if (_mean.Count < 3 || Math.Max(low, infra) <= FullScale.SilenceDb)
        {
            return null;
        }

        double pairs = _mean.Count - 2;
        double gust = Math.Sqrt(Math.Max(0, (_low2 / 2 / pairs) - SteadyLowDb2));
        double infraGust = Math.Sqrt(Math.Max(0, (_infra2 / 2 / pairs) - SteadyInfraDb2));
        _lines.Take(power);
        double lines = 0;
        int from = (int)(20 / binHz), to = (int)(100 / binHz);
        for (int k = from; k < to; k++)
        {
            lines = Math.Max(lines, _lines.Heights[k]);
        }

        lines = Math.Max(0, lines - (8 / Math.Sqrt(_mean.Count)));
        double wind = Up(low - mid, LowOverMid) * Up(gust, Gust) * (1 - Up(lines, Lines));
        double pressure = Up(infra - low, InfraOverLow) * Up(infra - mid, InfraOverMid) * (1 - wind);
        return new(wind, pressure, low - mid, infra - low, gust, infraGust, lines);
    }

    private static double Up(double value, ValidRange ramp) => Ramp.Up(value, ramp.Min, ramp.Max);
}
