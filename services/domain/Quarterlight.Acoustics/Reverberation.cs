namespace Quarterlight.Acoustics;

/// <summary>
/// Statistical acoustics of a closed space: how long sound rings, where it drowns the direct sound, and from which frequency up
/// the statistics may be believed.
/// </summary>
/// <remarks>
/// A car's cabin is at the edge of what statistics describe (about 300 Hz by <see cref="SchroederFrequencyHz"/>): the sound
/// field traces image sources instead and uses these forms only for its tail and for checks.
/// </remarks>
public static class Reverberation
{
    /// <summary>Reverberation time in seconds by Sabine: 24 ln 10 V/(c S a).</summary>
    /// <param name="volumeM3">Volume in cubic metres, above 0.</param>
    /// <param name="surfaceM2">Surface in square metres, above 0.</param>
    /// <param name="meanAbsorption">Mean energy absorption of the surface, above 0 to 1.</param>
    /// <param name="speedOfSoundMps">Speed of sound in m/s, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double SabineTimeS(double volumeM3, double surfaceM2, double meanAbsorption, double speedOfSoundMps = SpeedOfSound.NominalMps)
    {
        Absorption(meanAbsorption);
        return TimeS(volumeM3, surfaceM2, meanAbsorption, speedOfSoundMps);
    }

    /// <summary>Reverberation time in seconds by Eyring: 24 ln 10 V/(-c S ln(1 - a)); shorter than Sabine's, 0 for full absorption.</summary>
    /// <inheritdoc cref="SabineTimeS" path="/param"/>
    /// <inheritdoc cref="SabineTimeS" path="/exception"/>
    public static double EyringTimeS(double volumeM3, double surfaceM2, double meanAbsorption, double speedOfSoundMps = SpeedOfSound.NominalMps)
    {
        Absorption(meanAbsorption);
        return TimeS(volumeM3, surfaceM2, -Math.Log(1 - meanAbsorption), speedOfSoundMps);
    }

    /// <summary>Room constant in square metres: S a/(1 - a); infinite for full absorption.</summary>
    /// <inheritdoc cref="SabineTimeS" path="/param[@name='surfaceM2']"/>
    /// <inheritdoc cref="SabineTimeS" path="/param[@name='meanAbsorption']"/>
    /// <inheritdoc cref="SabineTimeS" path="/exception"/>
    public static double RoomConstantM2(double surfaceM2, double meanAbsorption)
    {
        Positive.Check(surfaceM2, nameof(surfaceM2));
        Absorption(meanAbsorption);
        return surfaceM2 * meanAbsorption / (1 - meanAbsorption);
    }

    /// <summary>Distance in metres at which direct and reverberant sound are equal: sqrt(Q R/16 pi).</summary>
    /// <param name="absorptionAreaM2">Room constant R, or Sabine's absorption area where absorption is small, in square metres, above 0.</param>
    /// <param name="directivityFactor">Energy of the source towards the listener over its mean, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double CriticalDistanceFromAbsorptionM(double absorptionAreaM2, double directivityFactor = 1)
    {
        Positive.Check(absorptionAreaM2, nameof(absorptionAreaM2));
        Positive.Check(directivityFactor, nameof(directivityFactor));
        return Math.Sqrt(directivityFactor * absorptionAreaM2 / (16 * Math.PI));
    }

    /// <summary>Distance in metres at which direct and reverberant sound are equal, with the absorption area Sabine finds for a reverberation time.</summary>
    /// <param name="volumeM3">Volume in cubic metres, above 0.</param>
    /// <param name="reverberationTimeS">Reverberation time in seconds, above 0.</param>
    /// <param name="directivityFactor">Energy of the source towards the listener over its mean, above 0.</param>
    /// <param name="speedOfSoundMps">Speed of sound in m/s, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double CriticalDistanceM(double volumeM3, double reverberationTimeS, double directivityFactor = 1, double speedOfSoundMps = SpeedOfSound.NominalMps)
    {
        Positive.Check(volumeM3, nameof(volumeM3));
        Positive.Check(reverberationTimeS, nameof(reverberationTimeS));
        Positive.Check(speedOfSoundMps, nameof(speedOfSoundMps));
        return CriticalDistanceFromAbsorptionM(24 * Math.Log(10) * volumeM3 / (speedOfSoundMps * reverberationTimeS), directivityFactor);
    }

    /// <summary>Frequency in Hz above which a room's modes overlap and statistics hold: 2000 sqrt(T/V) (Kuttruff, Room Acoustics).</summary>
    /// <param name="volumeM3">Volume in cubic metres, above 0.</param>
    /// <param name="reverberationTimeS">Reverberation time in seconds, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double SchroederFrequencyHz(double volumeM3, double reverberationTimeS)
    {
        Positive.Check(volumeM3, nameof(volumeM3));
        Positive.Check(reverberationTimeS, nameof(reverberationTimeS));
        return 2000 * Math.Sqrt(reverberationTimeS / volumeM3);
    }

    private static double TimeS(double volumeM3, double surfaceM2, double exponent, double speedOfSoundMps)
    {
        Positive.Check(volumeM3, nameof(volumeM3));
        Positive.Check(surfaceM2, nameof(surfaceM2));
        Positive.Check(speedOfSoundMps, nameof(speedOfSoundMps));
        return 24 * Math.Log(10) * volumeM3 / (speedOfSoundMps * surfaceM2 * exponent);
    }

    private static void Absorption(double mean)
    {
        if (!(mean > 0 && mean <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "Mean absorption is above 0 and at most 1.");
        }
    }
}
