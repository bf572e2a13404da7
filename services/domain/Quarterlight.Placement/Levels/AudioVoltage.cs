using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>Voltages and levels of the gain chain.</summary>
/// <remarks>
/// dBu and dBV are rms. A peak is given as the level of the steady sine that has the same peak, so that it can be held against data sheets,
/// which state sines: it is 3.01 dB below the peak voltage. dBFS follows: a sine whose peak touches full scale has a peak of 0 dBFS and, by
/// the convention of AES17, an rms level of 0 dBFS as well.
/// </remarks>
public static class AudioVoltage
{
    /// <summary>Peak of a sine over its rms, dB: 10 lg 2.</summary>
    public const double SineCrestDb = 3.0102999566398120;

    /// <summary>Volts of 0 dBu: one milliwatt in 600 ohms, the square root of 0.6.</summary>
    public const double ZeroDbuVolts = 0.7745966692414834;

    /// <summary>What is added to dBV to have dBu: 20 lg (1 / 0.7746) = 2.218 dB.</summary>
    public static double DbuOverDbv { get; } = 20 * Math.Log10(1 / ZeroDbuVolts);

    /// <summary>Level in dBu of an rms voltage in volts, above 0.</summary>
    public static double Dbu(double volts) => 20 * Math.Log10(volts / ZeroDbuVolts);

    /// <summary>Rms voltage in volts of a level in dBu.</summary>
    public static double Volts(double dbu) => ZeroDbuVolts * Math.Pow(10, dbu / 20);

    /// <summary>Level in dBu at a microphone's output for an rms sound level.</summary>
    /// <param name="sensitivityMvPerPa">Sensitivity, millivolts per pascal, above 0.</param>
    /// <param name="levelDb">Sound level, dB re 20 µPa, rms.</param>
    public static double OutputDbu(double sensitivityMvPerPa, double levelDb) =>
        Dbu(sensitivityMvPerPa / 1000) + levelDb - SoundPressureLevel.OnePascal.Db;

    /// <summary>The same for a peak sound level: the level of the sine with that peak, 3.01 dB lower.</summary>
    /// <param name="sensitivityMvPerPa">Sensitivity, millivolts per pascal, above 0.</param>
    /// <param name="peakLevelDb">Highest momentary sound pressure as a level, dB re 20 µPa.</param>
    public static double OutputPeakDbu(double sensitivityMvPerPa, double peakLevelDb) => OutputDbu(sensitivityMvPerPa, peakLevelDb) - SineCrestDb;

    /// <summary>Several noises together, by energy, dB.</summary>
    public static double NoiseSum(params ReadOnlySpan<double> levelsDb)
    {
        double sum = 0;
        foreach (double level in levelsDb)
        {
            sum += Math.Pow(10, level / 10);
        }

        return 10 * Math.Log10(sum);
    }
}
