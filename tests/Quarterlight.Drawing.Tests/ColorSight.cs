using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

/// <summary>
/// Colors as people with a color vision deficiency see them: Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color vision
/// deficiency", IEEE TVCG 15 (2009), matrices of severity 1 in linear RGB; and distances in CIELAB (CIE 15, ΔE*ab, white D65).
/// </summary>
internal static class ColorSight
{
    public static IReadOnlyDictionary<string, double[]> Kinds { get; } = new Dictionary<string, double[]>
    {
        ["all colors"] = [1, 0, 0, 0, 1, 0, 0, 0, 1],
        ["protanopia"] = [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
        ["deuteranopia"] = [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881],
        ["tritanopia"] = [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900],
    };

    /// <summary>L*, a*, b* of a color as seen.</summary>
    public static (double L, double A, double B) Lab(SKColor color, string kind)
    {
        double[] m = Kinds[kind], rgb = [Linear(color.Red), Linear(color.Green), Linear(color.Blue)];
        double[] seen = [.. Enumerable.Range(0, 3).Select(r => Math.Clamp(Enumerable.Range(0, 3).Sum(c => m[(3 * r) + c] * rgb[c]), 0, 1))];
        // IEC 61966-2-1.
        double x = ((0.4124 * seen[0]) + (0.3576 * seen[1]) + (0.1805 * seen[2])) / 0.9505;
        double y = (0.2126 * seen[0]) + (0.7152 * seen[1]) + (0.0722 * seen[2]);
        double z = ((0.0193 * seen[0]) + (0.1192 * seen[1]) + (0.9505 * seen[2])) / 1.089;
        return ((116 * F(y)) - 16, 500 * (F(x) - F(y)), 200 * (F(y) - F(z)));
    }

    public static double Distance(SKColor a, SKColor b, string kind)
    {
        (double l, double u, double v) = Lab(a, kind);
        (double l2, double u2, double v2) = Lab(b, kind);
        return Math.Sqrt(((l - l2) * (l - l2)) + ((u - u2) * (u - u2)) + ((v - v2) * (v - v2)));
    }

    private static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;

    private static double Linear(byte channel) => channel <= 10 ? channel / 255.0 / 12.92 : Math.Pow(((channel / 255.0) + 0.055) / 1.055, 2.4);
}
