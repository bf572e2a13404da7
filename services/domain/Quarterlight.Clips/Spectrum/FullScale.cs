namespace Quarterlight.Clips.Spectrum;

/// <summary>Levels in dBFS as AES17 counts them: a full-scale sine (mean square 0.5) is 0 dBFS, 3.01 dB above the plain mean square in dB.</summary>
public static class FullScale
{
    /// <summary>Level of no power at all, so that sums stay numbers, dBFS.</summary>
    public const double SilenceDb = -200;

    /// <summary>Level of a mean square, dBFS (AES17), at least <see cref="SilenceDb"/>.</summary>
    public static double Level(double meanSquare) => meanSquare > 5e-21 ? 10 * Math.Log10(2 * meanSquare) : SilenceDb;

    /// <summary>Mean square of a level in dBFS (AES17).</summary>
    public static double MeanSquare(double levelDb) => 0.5 * Math.Pow(10, levelDb / 10);
}
