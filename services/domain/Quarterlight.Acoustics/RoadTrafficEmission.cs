using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>
/// Sound power of a light vehicle outside, by octave band 63 Hz to 8 kHz: rolling A + B lg(v/70), propulsion A + B (v-70)/70.
/// </summary>
/// <remarks>Directive 2002/49/EC, Annex II, Appendix F, Table F-1 as replaced by (EU) 2021/1226, category 1.</remarks>
public static class RoadTrafficEmission
{
    private static readonly double[] s_rollingA = [83.1, 89.2, 87.7, 93.1, 100.1, 96.7, 86.8, 76.2];
    private static readonly double[] s_rollingB = [30.0, 41.5, 38.9, 25.7, 32.5, 37.2, 39.0, 40.0];
    private static readonly double[] s_propulsionA = [97.9, 92.5, 90.7, 87.2, 84.7, 88.0, 84.4, 77.1];
    private static readonly double[] s_propulsionB = [-1.3, 7.2, 7.7, 8.0, 8.0, 8.0, 8.0, 8.0];
    private static readonly double[] s_aWeighting = [-26.2, -16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1];

    /// <summary>Growth of rolling noise in dB per decade of speed in a band of this project, 0 = 125 Hz to 6 = 8 kHz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such band.</exception>
    public static double RollingSlope(int band)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(band);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(band, OctaveBands.Count);
        return s_rollingB[band + 1];
    }

    /// <summary>A-weighted sound power level in dB re 1 pW at a speed of 20 to 130 km/h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside the method's range.</exception>
    public static double SoundPowerDba(double speedKmPerHour)
    {
        if (!(speedKmPerHour >= 20 && speedKmPerHour <= 130))
        {
            throw new ArgumentOutOfRangeException(nameof(speedKmPerHour), speedKmPerHour, "The method holds from 20 to 130 km/h.");
        }

        double sum = 0;
        for (int b = 0; b < s_aWeighting.Length; b++)
        {
            double rolling = s_rollingA[b] + (s_rollingB[b] * Math.Log10(speedKmPerHour / 70));
            double propulsion = s_propulsionA[b] + (s_propulsionB[b] * (speedKmPerHour - 70) / 70);
            sum += Math.Pow(10, (rolling + s_aWeighting[b]) / 10) + Math.Pow(10, (propulsion + s_aWeighting[b]) / 10);
        }

        return 10 * Math.Log10(sum);
    }
}
