using Quarterlight.Quantities;

namespace Quarterlight.Clips.Spectrum;

/// <summary>Level of one band.</summary>
/// <param name="NominalHz">Nominal centre, Hz (ISO 266).</param>
/// <param name="LevelDb">Level in dBFS (AES17) plus the calibration, if one was given.</param>
/// <param name="IsWhole">False when half the sampling rate cuts the band's upper end off.</param>
public readonly record struct BandLevel(double NominalHz, double LevelDb, bool IsWhole);

/// <summary>
/// Band levels of a clip from two mean spectra: bands below 708 Hz from the slow one (1 Hz bins), those above from the fast one.
/// </summary>
/// <remarks>
/// Ideal band edges by IEC 61260-1 on Fourier bins, not the filters of that standard: steeper, and a tone within two bins of an edge is
/// shared between both bands. The A-weighted level weights each bin (IEC 61672-1, Annex E) and passes from one spectrum to the other between
/// 350 and 700 Hz by a raised cosine, so that no tone is counted twice.
/// </remarks>
public sealed class ClipBandLevels
{
    private const int FirstFastBand = 16;
    private const double FadeFromHz = 350;
    private const double FadeToHz = 700;
    private readonly double[] _thirds = new double[ThirdOctaves.Count];
    private readonly double _halfRateHz;
    private readonly double _offsetDb;

    /// <summary>Works the levels out.</summary>
    /// <param name="slow">Mean spectrum good up to 800 Hz; empty when the clip is shorter than a slow frame.</param>
    /// <param name="slowBinHz">Distance of its bins, Hz.</param>
    /// <param name="fast">Mean spectrum up to half the rate.</param>
    /// <param name="fastBinHz">Distance of its bins, Hz.</param>
    /// <param name="offsetDb">Added to all levels; for dB SPL the sound pressure level of a tone that reads 0 dBFS.</param>
    public ClipBandLevels(ReadOnlySpan<double> slow, double slowBinHz, ReadOnlySpan<double> fast, double fastBinHz, double offsetDb)
    {
        _halfRateHz = (fast.Length - 1) * fastBinHz;
        _offsetDb = offsetDb;
        HasLowBands = !slow.IsEmpty;
        for (int b = 0; b < _thirds.Length; b++)
        {
            bool isSlow = b < FirstFastBand;
            _thirds[b] = isSlow
                ? BinSums.Between(slow, slowBinHz, ThirdOctaves.LowerHz(b), ThirdOctaves.LowerHz(b + 1))
                : BinSums.Between(fast, fastBinHz, ThirdOctaves.LowerHz(b), ThirdOctaves.LowerHz(b + 1));
        }

        AWeightedDb = FullScale.Level(AWeighted(slow, slowBinHz, fast, fastBinHz)) + offsetDb;
    }

    /// <summary>False when the clip was too short for the bands below 708 Hz (they are left out then).</summary>
    public bool HasLowBands { get; }

    /// <summary>A-weighted level, dBFS (AES17) or dB SPL with a calibration.</summary>
    public double AWeightedDb { get; }

    /// <summary>Third-octave levels 20 Hz to 20 kHz, as far as the rate reaches.</summary>
    public IReadOnlyList<BandLevel> ThirdOctaveLevels() => Levels(ThirdOctaves.Count, 1, 0);

    /// <summary>Octave levels 31.5 Hz to 16 kHz, as far as the rate reaches.</summary>
    public IReadOnlyList<BandLevel> OctaveLevels() => Levels(ThirdOctaves.OctaveCount, 3, 1);

    private List<BandLevel> Levels(int count, int width, int first)
    {
        var levels = new List<BandLevel>(count);
        for (int i = 0; i < count; i++)
        {
            int from = first + (i * width);
            int middle = from + (width / 2);
            if (ThirdOctaves.CentreHz(middle) < _halfRateHz && (HasLowBands || from >= FirstFastBand))
            {
                double sum = _thirds.AsSpan(from, width).ToArray().Sum();
                levels.Add(new(ThirdOctaves.NominalHz[middle], FullScale.Level(sum) + _offsetDb, ThirdOctaves.LowerHz(from + width) <= _halfRateHz));
            }
        }

        return levels;
    }

    private static double AWeighted(ReadOnlySpan<double> slow, double slowBinHz, ReadOnlySpan<double> fast, double fastBinHz)
    {
        double sum = 0;
        for (int k = 0; k < slow.Length && k * slowBinHz < FadeToHz; k++)
        {
            sum += slow[k] * AWeighting.PowerFactor(k * slowBinHz) * SlowShare(k * slowBinHz);
        }

        for (int k = 0; k < fast.Length; k++)
        {
            sum += fast[k] * AWeighting.PowerFactor(k * fastBinHz) * (slow.IsEmpty ? 1 : 1 - SlowShare(k * fastBinHz));
        }

        return sum;
    }

    private static double SlowShare(double hz) => hz <= FadeFromHz ? 1 : hz >= FadeToHz ? 0 : 0.5 + (0.5 * Math.Cos(Math.PI * (hz - FadeFromHz) / (FadeToHz - FadeFromHz)));
}
