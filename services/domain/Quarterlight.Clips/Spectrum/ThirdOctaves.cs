namespace Quarterlight.Clips.Spectrum;

/// <summary>Third-octave bands 20 Hz to 20 kHz and the octaves 31.5 Hz to 16 kHz they make up.</summary>
/// <remarks>Nominal names by ISO 266; exact centres 1000 x 10^(n/10) Hz and edges 10^(±1/20) from them by IEC 61260-1, base ten.</remarks>
public static class ThirdOctaves
{
    /// <summary>Number of third-octave bands.</summary>
    public const int Count = 31;

    /// <summary>Number of octave bands; octave i is made of the third-octaves 3i + 1 to 3i + 3.</summary>
    public const int OctaveCount = 10;

    private const int FirstIndex = -17;

    /// <summary>Nominal centres of the third-octaves, Hz.</summary>
    public static ReadOnlySpan<double> NominalHz =>
    [
        20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300,
        8000, 10000, 12500, 16000, 20000,
    ];

    /// <summary>Exact centre of a third-octave, Hz.</summary>
    /// <param name="band">0 = 20 Hz to 30 = 20 kHz.</param>
    public static double CentreHz(int band) => 1000 * Math.Pow(10, (FirstIndex + band) / 10.0);

    /// <summary>Lower edge of a third-octave, Hz; the upper edge is the lower edge of the next.</summary>
    /// <param name="band">0 = 20 Hz to 31, the upper edge of the last.</param>
    public static double LowerHz(int band) => 1000 * Math.Pow(10, ((FirstIndex + band) / 10.0) - 0.05);

    /// <summary>Nominal centre of an octave, Hz.</summary>
    /// <param name="octave">0 = 31.5 Hz to 9 = 16 kHz.</param>
    public static double OctaveNominalHz(int octave) => NominalHz[(3 * octave) + 2];

    /// <summary>Lower edge of an octave, Hz; the upper edge is the lower edge of the next.</summary>
    /// <param name="octave">0 = 31.5 Hz to 10, the upper edge of the last.</param>
    public static double OctaveLowerHz(int octave) => LowerHz((3 * octave) + 1);
}
