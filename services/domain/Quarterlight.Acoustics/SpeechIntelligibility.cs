using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>The speech intelligibility index of ANSI S3.5-1997, octave and one-third octave procedures.</summary>
public static class SpeechIntelligibility
{
    private static readonly double[] s_octaveImportance = [0, 0.0617, 0.1671, 0.2373, 0.2648, 0.2142, 0.0549];

    /// <summary>Octave importance 125 Hz to 8 kHz (Table 4; 125 Hz has none).</summary>
    public static ReadOnlySpan<double> OctaveImportance => s_octaveImportance;

    /// <summary>Octave procedure; inputs are equivalent spectrum levels in dB/Hz, hearing threshold in dB HL, six bands from 250 Hz.</summary>
    /// <param name="speechDb">Six speech spectrum levels.</param>
    /// <param name="noiseDb">Six noise spectrum levels.</param>
    /// <param name="thresholdDb">Six hearing thresholds, 0 for normal hearing.</param>
    /// <param name="importance">Six weights summing to 1; empty takes Table 4's.</param>
    /// <returns>0 to 1.</returns>
    public static double OctaveIndex(ReadOnlySpan<double> speechDb, ReadOnlySpan<double> noiseDb, ReadOnlySpan<double> thresholdDb, ReadOnlySpan<double> importance = default)
    {
        RequireBands(speechDb, noiseDb, thresholdDb, importance, SiiTables.OctaveCount);
        ReadOnlySpan<double> weights = importance.IsEmpty ? OctaveImportance[1..] : importance;
        double index = 0;
        for (int i = 0; i < SiiTables.OctaveCount; i++)
        {
            double disturbance = Math.Max(noiseDb[i], SiiTables.OctaveInternalNoise[i] + thresholdDb[i]);
            index += weights[i] * BandAudibility(speechDb[i], disturbance, SiiTables.OctaveNormalSpeech[i]);
        }

        return index;
    }

    /// <summary>One-third octave procedure with spread of masking; spectrum levels in dB/Hz, threshold in dB HL, eighteen bands from 160 Hz.</summary>
    /// <param name="speechDb">Eighteen speech spectrum levels.</param>
    /// <param name="noiseDb">Eighteen noise spectrum levels.</param>
    /// <param name="thresholdDb">Eighteen hearing thresholds, 0 for normal hearing.</param>
    /// <param name="importance">Eighteen weights summing to 1; empty takes Table 3's.</param>
    /// <inheritdoc cref="OctaveIndex" path="/returns"/>
    public static double ThirdOctaveIndex(ReadOnlySpan<double> speechDb, ReadOnlySpan<double> noiseDb, ReadOnlySpan<double> thresholdDb, ReadOnlySpan<double> importance = default)
    {
        const int N = SiiTables.ThirdCount;
        RequireBands(speechDb, noiseDb, thresholdDb, importance, N);
        ReadOnlySpan<double> weights = importance.IsEmpty ? SiiTables.ThirdImportance : importance;
        ReadOnlySpan<double> f = SiiTables.ThirdCentresHz;
        Span<double> masker = stackalloc double[N], slope = stackalloc double[N];
        double index = 0;
        for (int i = 0; i < N; i++)
        {
            masker[i] = Math.Max(noiseDb[i], speechDb[i] - 24);
            slope[i] = -80 + (0.6 * (masker[i] + (10 * Math.Log10(f[i])) - 6.353));
            double spread = Math.Pow(10, noiseDb[i] / 10);
            for (int k = 0; k < i; k++)
            {
                spread += Math.Pow(10, (masker[k] + (3.32 * slope[k] * Math.Log10(0.89 * f[i] / f[k]))) / 10);
            }

            double masking = i == 0 ? masker[0] : 10 * Math.Log10(spread);
            double disturbance = Math.Max(masking, SiiTables.ThirdInternalNoise[i] + thresholdDb[i]);
            index += weights[i] * BandAudibility(speechDb[i], disturbance, SiiTables.ThirdNormalSpeech[i]);
        }

        return index;
    }

    /// <summary>
    /// Index of a recording played back at the level of normal speech: both spectra are shifted alike until the speech has the
    /// A-weighted level of normal effort at 1 m, then the octave procedure with normal hearing. (The standard uses absolute
    /// levels; a recording has none until somebody turns a knob.)
    /// </summary>
    /// <param name="speech">Octave band levels, dB.</param>
    /// <param name="noise">Octave band levels, dB.</param>
    /// <returns>0 to 1.</returns>
    public static double AtListeningLevel(BandLevels speech, BandLevels noise)
    {
        double speechDba = speech.AWeightedDb();
        if (double.IsNegativeInfinity(speechDba))
        {
            return 0; // Nobody speaks.
        }

        double shift = VoiceSpectrum.AtOneMetre(VocalEffort.Normal).AWeightedDb() - speechDba;
        Span<double> e = stackalloc double[SiiTables.OctaveCount], n = stackalloc double[SiiTables.OctaveCount], none = stackalloc double[SiiTables.OctaveCount];
        none.Clear();
        for (int i = 0; i < SiiTables.OctaveCount; i++)
        {
            double perHertz = shift - SiiTables.OctaveBandwidthDb[i];
            e[i] = speech[i + 1] + perHertz;
            n[i] = noise[i + 1] + perHertz;
        }

        return OctaveIndex(e, n, none);
    }

    // Steps 4 and 5: level distortion times audibility.
    private static double BandAudibility(double speechDb, double disturbanceDb, double normalDb)
    {
        double distortion = Math.Min(1, 1 - ((speechDb - normalDb - 10) / 160));
        double audibility = Math.Clamp((speechDb - disturbanceDb + 15) / 30, 0, 1);
        return distortion * audibility;
    }

    private static void RequireBands(ReadOnlySpan<double> a, ReadOnlySpan<double> b, ReadOnlySpan<double> c, ReadOnlySpan<double> weights, int count)
    {
        if (a.Length != count || b.Length != count || c.Length != count || (!weights.IsEmpty && weights.Length != count))
        {
            throw new ArgumentException($"This procedure takes {count} bands.");
        }
    }
}

/// <summary>Tables 3 and 4 of ANSI S3.5-1997, read through public implementations.</summary>
internal static class SiiTables
{
    public const int OctaveCount = 6;

    public const int ThirdCount = 18;

    public static ReadOnlySpan<double> OctaveNormalSpeech => [34.75, 34.27, 25.01, 17.32, 9.33, 1.13];

    public static ReadOnlySpan<double> OctaveInternalNoise => [-3.9, -9.7, -12.5, -17.7, -25.9, -7.1];

    public static ReadOnlySpan<double> OctaveBandwidthDb => [22.48, 25.48, 28.48, 31.48, 34.48, 37.48];

    public static ReadOnlySpan<double> ThirdCentresHz => [160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000];

    public static ReadOnlySpan<double> ThirdImportance =>
        [0.0083, 0.0095, 0.0150, 0.0289, 0.0440, 0.0578, 0.0653, 0.0711, 0.0818, 0.0844, 0.0882, 0.0898, 0.0868, 0.0844, 0.0771, 0.0527, 0.0364, 0.0185];

    public static ReadOnlySpan<double> ThirdNormalSpeech =>
        [32.41, 34.48, 34.75, 33.98, 34.59, 34.27, 32.06, 28.30, 25.01, 23.00, 20.15, 17.32, 13.18, 11.55, 9.33, 5.31, 2.59, 1.13];

    public static ReadOnlySpan<double> ThirdInternalNoise =>
        [0.6, -1.7, -3.9, -6.1, -8.2, -9.7, -10.8, -11.9, -12.5, -13.5, -15.4, -17.7, -21.2, -24.2, -25.9, -23.6, -15.8, -7.1];
}
