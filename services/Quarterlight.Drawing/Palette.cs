using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// The colors of every picture. Hues are the eight of Okabe and Ito ("Color Universal Design", 2002, values from memory),
/// which stay apart for the common kinds of color blindness. Color never carries a meaning alone: each series has its own
/// shape or line style as well.
/// </summary>
public static class Palette
{
    /// <summary>Background.</summary>
    public static SKColor Paper { get; } = SKColors.White;

    /// <summary>Text, numbers and the edges of people.</summary>
    public static SKColor Ink { get; } = new(0x1A, 0x1A, 0x1A);

    /// <summary>The car's own lines.</summary>
    public static SKColor CarLine { get; } = new(0x76, 0x76, 0x76);

    /// <summary>Seats and other filled parts of the car.</summary>
    public static SKColor CarFill { get; } = new(0xEE, 0xEE, 0xEC);

    /// <summary>Microphones, their aim and pattern: blue.</summary>
    public static SKColor Microphone { get; } = new(0x00, 0x72, 0xB2);

    /// <summary>Null directions: vermilion.</summary>
    public static SKColor Null { get; } = new(0xD5, 0x5E, 0x00);

    /// <summary>Cameras: bluish green.</summary>
    public static SKColor Camera { get; } = new(0x00, 0x9E, 0x73);

    /// <summary>Engine: orange, always with an ink edge.</summary>
    public static SKColor Engine { get; } = new(0xE6, 0x9F, 0x00);

    /// <summary>Open windows: sky blue, always with an ink edge.</summary>
    public static SKColor OpenWindow { get; } = new(0x56, 0xB4, 0xE9);

    /// <summary>Where a talker looks: reddish purple, always with an ink edge.</summary>
    public static SKColor Gaze { get; } = new(0xCC, 0x79, 0xA7);

    /// <summary>Level and signal over noise against distance, and clean carriers: blue.</summary>
    public static SKColor Curve => Microphone;

    /// <summary>What is needed or asked for, and what is hit: vermilion.</summary>
    public static SKColor Demand => Null;

    /// <summary>Grounds of the availability bands, surest first: sky blue thinned with white, light enough for lines of 3 to 1 on them.</summary>
    public static IReadOnlyList<SKColor> BandGrounds { get; } = [new(0xCC, 0xE8, 0xF8), new(0xDB, 0xEF, 0xFA), new(0xE8, 0xF5, 0xFC), new(0xF1, 0xF9, 0xFD), new(0xF8, 0xFC, 0xFE)];

    /// <summary>Hatching of the availability bands: a tint of blue that keeps behind curves and words.</summary>
    public static SKColor BandHatch { get; } = new(0x9C, 0xC7, 0xE0);

    /// <summary>Grid lines behind curves: keeps behind everything.</summary>
    public static SKColor Grid { get; } = new(0xCF, 0xCF, 0xCC);

    /// <summary>A clip to use, and a tag for nothing but speech: bluish green, always with an ink edge.</summary>
    public static SKColor Usable => Camera;

    /// <summary>Speech: blue.</summary>
    public static SKColor Speech => Microphone;

    /// <summary>Noise: orange, always with an ink edge.</summary>
    public static SKColor Noise => Engine;

    /// <summary>Root mean square along the time: sky blue, under an ink line.</summary>
    public static SKColor Mean => OpenWindow;

    /// <summary>What was listened for and not heard: grey.</summary>
    public static SKColor Unheard { get; } = new(0xB8, 0xB8, 0xB5);

    /// <summary>The same color, partly see-through.</summary>
    /// <param name="color">Color.</param>
    /// <param name="opacity">0 (clear) to 1 (solid).</param>
    public static SKColor Faded(this SKColor color, double opacity) => color.WithAlpha((byte)Math.Round(255 * opacity));

    /// <summary>
    /// Contrast ratio of two solid colors, 1 to 21, after WCAG 2.2, definitions of relative luminance and contrast ratio.
    /// </summary>
    public static double Contrast(SKColor a, SKColor b)
    {
        double la = Luminance(a), lb = Luminance(b);
        return (Math.Max(la, lb) + 0.05) / (Math.Min(la, lb) + 0.05);
    }

    /// <summary>Relative luminance, 0 (black) to 1 (white), after WCAG 2.2.</summary>
    public static double Luminance(SKColor color) =>
        (0.2126 * Linear(color.Red)) + (0.7152 * Linear(color.Green)) + (0.0722 * Linear(color.Blue));

    private static double Linear(byte channel)
    {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
