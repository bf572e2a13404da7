using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// Colors of a spectrogram, quiet to loud: deep blue over rose to pale yellow. Lightness rises all the way, so that the map reads in grey and for every kind
/// of color blindness; equal steps of level are equal steps along the path.
/// </summary>
/// <remarks>
/// A path in Oklab (Ottosson, "A perceptual color space for image processing", 2020): lightness 0.17 to 0.94 evenly, a = 0.075 sin πt, b = -0.105 cos πt
/// (judgement: inside sRGB but for a hair at the yellow end), divided into steps of equal length.
/// </remarks>
internal static class SpectrogramColors
{
    /// <summary>Number of steps: few enough that the picture stays small, fine enough that no step shows as an edge.</summary>
    public const int Count = 40;

    private const int Fine = 2000;

    private static readonly SKColor[] Steps = Even();

    /// <summary>Color of a level.</summary>
    /// <param name="share">0 (quiet) to 1 (loud); beyond, the nearest end.</param>
    public static SKColor At(double share) => Steps[IndexAt(share)];

    private static int IndexAt(double share) => (int)Math.Clamp(share * Count, 0, Count - 1);

    private static SKColor[] Even()
    {
        double[] lengths = new double[Fine + 1];
        for (int i = 1; i <= Fine; i++)
        {
            (double l0, double a0, double b0) = Path((i - 1.0) / Fine);
            (double l1, double a1, double b1) = Path((double)i / Fine);
            lengths[i] = lengths[i - 1] + Math.Sqrt(((l1 - l0) * (l1 - l0)) + ((a1 - a0) * (a1 - a0)) + ((b1 - b0) * (b1 - b0)));
        }

        var steps = new SKColor[Count];
        for (int k = 0, i = 0; k < Count; k++)
        {
            while (i < Fine && lengths[i] < lengths[Fine] * k / (Count - 1))
            {
                i++;
            }

            steps[k] = Srgb(Path((double)i / Fine));
        }

        return steps;
    }

    private static (double L, double A, double B) Path(double t) => (0.17 + (0.77 * t), 0.075 * Math.Sin(Math.PI * t), -0.105 * Math.Cos(Math.PI * t));

    private static SKColor Srgb((double L, double A, double B) lab)
    {
        double l = Cube(lab.L + (0.3963377774 * lab.A) + (0.2158037573 * lab.B));
        double m = Cube(lab.L - (0.1055613458 * lab.A) - (0.0638541728 * lab.B));
        double s = Cube(lab.L - (0.0894841775 * lab.A) - (1.2914855480 * lab.B));
        return new(
            Channel((4.0767416621 * l) - (3.3077115913 * m) + (0.2309699292 * s)),
            Channel((-1.2684380046 * l) + (2.6097574011 * m) - (0.3413193965 * s)),
            Channel((-0.0041960863 * l) - (0.7034186147 * m) + (1.7076147010 * s)));
    }

    private static double Cube(double x) => x * x * x;

    // IEC 61966-2-1.
    private static byte Channel(double linear)
    {
        double c = linear <= 0.0031308 ? 12.92 * linear : (1.055 * Math.Pow(linear, 1 / 2.4)) - 0.055;
        return (byte)Math.Round(255 * Math.Clamp(c, 0, 1));
    }
}
