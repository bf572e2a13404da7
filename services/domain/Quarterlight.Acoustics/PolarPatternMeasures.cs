namespace Quarterlight.Acoustics;

/// <summary>What follows from a polar pattern in closed form.</summary>
/// <remarks>Source: first-order family A + B cos theta, docs/models/polar-patterns.md; checked against the handbook table in tests/vectors/patterns.</remarks>
public static class PolarPatternMeasures
{
    /// <summary>
    /// Signed response relative to on-axis at an angle in radians and a frequency in Hz. With an interference tube of length L the
    /// capsule's response is multiplied by |sin X / X|, X = (pi L f / c)(1 - cos theta) (line formula, from memory).
    /// </summary>
    public static double ResponseAt(this PolarPattern pattern, double angleRad, double frequencyHz = 1000)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        double cosine = Math.Cos(angleRad);
        double capsule = pattern.A + (pattern.B * cosine);
        if (pattern.TubeLengthM == 0)
        {
            return capsule;
        }

        double x = Math.PI * pattern.TubeLengthM * frequencyHz / SpeedOfSound.NominalMps * (1 - cosine);
        return capsule * (Math.Abs(x) < 1e-9 ? 1 : Math.Abs(Math.Sin(x) / x));
    }

    /// <summary>Angle in radians from the axis at which the capsule hears nothing; null for a pattern without a null.</summary>
    public static double? NullAngleRad(this PolarPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return pattern.B > 0 && pattern.B >= pattern.A ? Math.Acos(-pattern.A / pattern.B) : null;
    }

    /// <summary>Energy received from everywhere alike, relative to the same all on-axis: A^2 + B^2/3. The capsule's alone.</summary>
    public static double RandomEnergyEfficiency(this PolarPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return (pattern.A * pattern.A) + (pattern.B * pattern.B / 3);
    }

    /// <summary>Directivity index in dB: -10 lg of the random energy efficiency.</summary>
    public static double DirectivityIndexDb(this PolarPattern pattern) => -10 * Math.Log10(pattern.RandomEnergyEfficiency());

    /// <summary>How many times farther than an omni it may stand for the same direct-to-reverberant ratio.</summary>
    public static double DistanceFactor(this PolarPattern pattern) => 1 / Math.Sqrt(pattern.RandomEnergyEfficiency());

    /// <summary>Response at 180 degrees relative to the front, dB, 0 or less; minus infinity for a cardioid. The capsule's alone.</summary>
    public static double RearResponseDb(this PolarPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return 20 * Math.Log10(Math.Abs(pattern.A - pattern.B));
    }

    /// <summary>Full angle in radians within which the response is no more than so many dB (above 0) down; 2 pi when it never is.</summary>
    public static double AcceptanceAngleRad(this PolarPattern pattern, double downDb)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(downDb);
        double cosine = pattern.B == 0 ? -2 : (Math.Pow(10, -downDb / 20) - pattern.A) / pattern.B;
        return cosine <= -1 ? 2 * Math.PI : 2 * Math.Acos(cosine);
    }

    /// <summary>Energy from the front half over energy from the rear half with sound from everywhere, dB.</summary>
    public static double FrontToRearEnergyDb(this PolarPattern pattern)
    {
        double even = pattern.RandomEnergyEfficiency(), odd = pattern.A * pattern.B;
        return 10 * Math.Log10((even + odd) / (even - odd));
    }

    /// <summary>
    /// Gain in dB of a close source on axis over the far field: 10 lg(1 + (B/(k r))^2), pressure plus gradient of a spherical wave.
    /// </summary>
    /// <param name="pattern">A first-order pattern.</param>
    /// <param name="distanceM">Distance in metres, above 0.</param>
    /// <param name="frequencyHz">Frequency in Hz, above 0.</param>
    public static double ProximityGainDb(this PolarPattern pattern, double distanceM, double frequencyHz)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(distanceM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(frequencyHz);
        double kr = 2 * Math.PI * frequencyHz / SpeedOfSound.NominalMps * distanceM;
        return 10 * Math.Log10(1 + Math.Pow(pattern.B / kr, 2));
    }
}
