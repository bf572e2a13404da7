using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>How a voice falls off round the head.</summary>
/// <remarks>
/// B. B. Monson, E. J. Hunter, B. H. Story 2012, J. Acoust. Soc. Am. 132(1) 433-441, Table I, normal speech, by azimuth. It is not
/// monotone: 180 degrees is louder than 150 at 500 Hz and 1 kHz, where sound meets behind the head, and is left so. There is no
/// public table by elevation: the azimuth table is used for any angle from the mouth's axis, good to about 3 dB overhead (judgement).
/// </remarks>
public static class VoiceDirectivity
{
    /// <summary>Degrees between the rows of the table.</summary>
    public const double StepDeg = 15;

    private static readonly double[,] s_db =
    {
        { 0, 0, 0, 0, 0, 0, 0 },
        { 0.8, 0.7, 0.6, -0.2, -1.0, -1.7, -1.0 },
        { -0.1, -0.2, 0.1, -0.7, -0.1, -0.7, -1.7 },
        { -0.4, -0.5, 0.0, -1.4, -0.8, -1.6, -3.1 },
        { -0.6, -0.8, -0.1, -1.5, -2.5, -3.9, -5.8 },
        { -1.1, -1.6, -0.7, -1.4, -4.7, -5.3, -7.0 },
        { -1.6, -2.3, -1.6, -1.6, -7.0, -6.3, -8.7 },
        { -2.1, -3.1, -2.8, -2.5, -7.6, -9.0, -11.5 },
        { -2.7, -3.9, -4.4, -4.6, -7.9, -12.7, -15.0 },
        { -3.1, -4.5, -5.5, -7.0, -9.3, -14.5, -17.8 },
        { -3.5, -4.9, -6.0, -7.9, -13.0, -16.7, -21.5 },
        { -3.6, -5.0, -6.0, -6.9, -15.0, -21.0, -25.0 },
        { -3.6, -5.1, -5.9, -6.3, -13.1, -18.9, -26.3 },
    };

    private static readonly double[] s_energy = MakeEnergy();
    private static readonly double[] s_factor = MakeFactor();

    /// <summary>Energies relative to the front in one-degree steps, 0 to 180, eight lanes a step: seven bands and a zero.</summary>
    public static ReadOnlySpan<double> EnergyTable => s_energy;

    /// <summary>Level in dB re front in an octave band at an angle from the mouth's axis; linear in dB between table rows.</summary>
    /// <param name="band">0 = 125 Hz to 6 = 8 kHz.</param>
    /// <param name="angleFromAxisRad">0 to pi.</param>
    public static double LevelDb(int band, double angleFromAxisRad)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(band);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(band, OctaveBands.Count);
        double row = Math.Clamp(Angles.RadToDeg(Math.Abs(angleFromAxisRad)), 0, 180) / StepDeg;
        int low = Math.Min((int)row, 11);
        double t = row - low;
        return ((1 - t) * s_db[low, band]) + (t * s_db[low + 1, band]);
    }

    /// <summary>
    /// Front energy over the mean over the sphere in a band: what turns an on-axis level into a sound power. The azimuth table is
    /// taken to hold all round the mouth's axis.
    /// </summary>
    /// <param name="band">0 = 125 Hz to 6 = 8 kHz.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such band.</exception>
    public static double DirectivityFactor(int band)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(band);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(band, OctaveBands.Count);
        return s_factor[band];
    }

    private static double[] MakeEnergy()
    {
        var table = new double[181 * 8];
        for (int deg = 0; deg <= 180; deg++)
        {
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                table[(deg * 8) + b] = Math.Pow(10, LevelDb(b, Angles.DegToRad(deg)) / 10);
            }
        }

        return table;
    }

    // Mean over the sphere of a pattern round an axis: half the integral of e(theta) sin(theta), midpoint rule in degrees.
    private static double[] MakeFactor()
    {
        var factor = new double[OctaveBands.Count];
        for (int b = 0; b < factor.Length; b++)
        {
            double mean = 0;
            for (int deg = 0; deg < 180; deg++)
            {
                double angle = Angles.DegToRad(deg + 0.5);
                mean += 0.5 * Math.Pow(10, LevelDb(b, angle) / 10) * Math.Sin(angle) * Angles.DegToRad(1);
            }

            factor[b] = 1 / mean;
        }

        return factor;
    }
}
