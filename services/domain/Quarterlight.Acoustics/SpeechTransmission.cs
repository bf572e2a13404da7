using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>The speech transmission index of IEC 60268-16, male speech, seven octave bands.</summary>
public static class SpeechTransmission
{
    private static readonly double[] s_alpha = [0.085, 0.127, 0.230, 0.233, 0.309, 0.224, 0.173]; // 2011, Table A.3; unchanged in 2020.
    private static readonly double[] s_beta = [0.085, 0.078, 0.065, 0.011, 0.047, 0.095];
    private static readonly double[] s_threshold = [46, 27, 12, 6.5, 7.5, 8, 12]; // 2011, Table A.2, dB.
    private static readonly double[] s_modulationHz = [0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5];

    /// <summary>The fourteen modulation frequencies in Hz.</summary>
    public static ReadOnlySpan<double> ModulationHz => s_modulationHz;

    /// <summary>Index, 0 to 1, from the seven bands' mean transmission indices.</summary>
    public static double FromMti(ReadOnlySpan<double> mti)
    {
        Require(mti.Length == OctaveBands.Count, "Seven bands.");
        double sum = 0;
        for (int k = 0; k < mti.Length; k++)
        {
            sum += s_alpha[k] * mti[k];
            if (k < s_beta.Length)
            {
                sum -= s_beta[k] * Math.Sqrt(mti[k] * mti[k + 1]);
            }
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>Transmission index, 0 to 1, of a modulation transfer factor m.</summary>
    public static double TransmissionIndex(double m)
    {
        double clipped = Math.Clamp(m, 0, 1);
        double snr = clipped >= 1 ? 15 : clipped <= 0 ? -15 : 10 * Math.Log10(clipped / (1 - clipped));
        return (Math.Clamp(snr, -15, 15) + 15) / 30;
    }

    /// <summary>Index from modulation transfer factors, seven bands of fourteen each.</summary>
    public static double FromModulation(IReadOnlyList<double[]> modulation)
    {
        ArgumentNullException.ThrowIfNull(modulation);
        Require(modulation.Count == OctaveBands.Count && modulation.All(m => m.Length == s_modulationHz.Length), "Seven bands of fourteen factors.");
        Span<double> mti = stackalloc double[OctaveBands.Count];
        for (int k = 0; k < mti.Length; k++)
        {
            mti[k] = modulation[k].Average(TransmissionIndex);
        }

        return FromMti(mti);
    }

    /// <summary>Modulation transfer of exponential decay and steady noise (Houtgast and Steeneken; Schroeder).</summary>
    /// <param name="modulationHz">Modulation frequency in Hz.</param>
    /// <param name="reverberationTimeS">Reverberation time in seconds.</param>
    /// <param name="snrDb">Speech over noise in dB; infinity for none.</param>
    public static double RoomModulation(double modulationHz, double reverberationTimeS, double snrDb)
    {
        double turn = 2 * Math.PI * modulationHz * reverberationTimeS / 13.8;
        return 1 / (Math.Sqrt(1 + (turn * turn)) * (1 + Math.Pow(10, -snrDb / 10)));
    }

    /// <summary>Index of a room with one reverberation time in all bands and a speech-to-noise ratio by band, no masking or threshold.</summary>
    /// <param name="snrDb">Speech over noise by band, dB; infinity for none.</param>
    /// <param name="reverberationTimeS">Reverberation time in seconds, 0 or more.</param>
    public static double Statistical(BandLevels snrDb, double reverberationTimeS) =>
        Statistical(snrDb, [reverberationTimeS, reverberationTimeS, reverberationTimeS, reverberationTimeS, reverberationTimeS, reverberationTimeS, reverberationTimeS]);

    /// <summary>Index of a room with a reverberation time and a speech-to-noise ratio by band, no masking or threshold.</summary>
    /// <param name="snrDb">Speech over noise by band, dB; infinity for none.</param>
    /// <param name="reverberationTimeS">Seven reverberation times in seconds, 0 or more.</param>
    public static double Statistical(BandLevels snrDb, ReadOnlySpan<double> reverberationTimeS)
    {
        Require(reverberationTimeS.Length == OctaveBands.Count, "Seven bands.");
        Span<double> mti = stackalloc double[OctaveBands.Count];
        for (int k = 0; k < mti.Length; k++)
        {
            mti[k] = MeanTransmissionIndex(reverberationTimeS[k], 1 / (1 + Math.Pow(10, -snrDb[k] / 10)));
        }

        return FromMti(mti);
    }

    /// <summary>
    /// Index of a room as an ear at the microphone would have it: as <see cref="Statistical(BandLevels, ReadOnlySpan{double})"/>,
    /// with each band also masked by the band below, depending on the level, and cut by the reception threshold.
    /// </summary>
    /// <param name="speech">Speech band levels, dB re 20 µPa.</param>
    /// <param name="noise">Noise band levels, dB re 20 µPa; minus infinity for none.</param>
    /// <param name="reverberationTimeS">Seven reverberation times in seconds, 0 or more.</param>
    public static double StatisticalAtLevel(BandLevels speech, BandLevels noise, ReadOnlySpan<double> reverberationTimeS)
    {
        Require(reverberationTimeS.Length == OctaveBands.Count, "Seven bands.");
        double[] factors = AuditoryFactors(speech, noise);
        Span<double> mti = stackalloc double[OctaveBands.Count];
        for (int k = 0; k < mti.Length; k++)
        {
            mti[k] = MeanTransmissionIndex(reverberationTimeS[k], factors[k]);
        }

        return FromMti(mti);
    }

    /// <summary>Level-dependent masking of the next higher band, in dB added to this band's level (2011, A.3.1.2).</summary>
    public static double MaskingDb(double levelDb) => levelDb switch
    {
        < 63 => (0.5 * levelDb) - 65,
        < 67 => (1.8 * levelDb) - 146.9,
        < 100 => (0.5 * levelDb) - 59.8,
        _ => -10,
    };

    /// <summary>By how much noise, masking from the band below and the reception threshold lower each band's modulation, 0 to 1.</summary>
    /// <param name="speech">Speech band levels, dB.</param>
    /// <param name="noise">Noise band levels, dB.</param>
    public static double[] AuditoryFactors(BandLevels speech, BandLevels noise)
    {
        var factors = new double[OctaveBands.Count];
        double below = 0;
        for (int k = 0; k < factors.Length; k++)
        {
            double s = Math.Pow(10, speech[k] / 10), total = s + Math.Pow(10, noise[k] / 10);
            double masking = k == 0 ? 0 : below * Math.Pow(10, MaskingDb(10 * Math.Log10(below)) / 10);
            factors[k] = s / (total + masking + Math.Pow(10, s_threshold[k] / 10));
            below = total;
        }

        return factors;
    }

    private static double MeanTransmissionIndex(double reverberationTimeS, double factor)
    {
        double sum = 0;
        foreach (double hz in s_modulationHz)
        {
            sum += TransmissionIndex(RoomModulation(hz, reverberationTimeS, double.PositiveInfinity) * factor);
        }

        return sum / s_modulationHz.Length;
    }

    private static void Require(bool condition, string message)
    {
        if (!condition)
        {
            throw new ArgumentException(message);
        }
    }
}
