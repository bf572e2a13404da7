using System.Text;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>
/// The lettering of every picture: Inter (SIL Open Font License 1.1, see Fonts/OFL.txt), carried inside the assembly, so that
/// pictures look the same on a machine without fonts. Latin, Greek and Cyrillic letters; others show as a box.
/// </summary>
public static class DrawingFonts
{
    private static readonly string[] Scripts = ["latin", "latin-ext", "greek", "cyrillic"];
    private static readonly SKTypeface[] Regular = Load(400);
    private static readonly SKTypeface[] Bold = Load(700);

    // One a face for good: every letter of every label is looked up.
    private static readonly Dictionary<SKTypeface, SKFont> Lookups = Regular.Concat(Bold).ToDictionary(face => face, face => Font(face, 16));

    /// <summary>True when every character of the text can be drawn.</summary>
    public static bool Covers(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.EnumerateRunes().All(r => Array.Exists(Regular, t => Has(t, r)) && Array.Exists(Bold, t => Has(t, r)));
    }

    /// <summary>Width of a line of text in pixels.</summary>
    public static float Width(string text, float sizePx, bool bold)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Runs(text, bold).Sum(run =>
        {
            using SKFont font = Font(run.Face, sizePx);
            return font.MeasureText(run.Text);
        });
    }

    /// <summary>Draws one line of text with its left end and base line at a point.</summary>
    public static void Draw(SKCanvas canvas, string text, float x, float baselineY, float sizePx, bool bold, SKColor color)
    {
        ArgumentNullException.ThrowIfNull(canvas);
        ArgumentNullException.ThrowIfNull(text);
        using var paint = new SKPaint { Color = color, IsAntialias = true };
        foreach ((string part, SKTypeface face) in Runs(text, bold))
        {
            using SKFont font = Font(face, sizePx);
            canvas.DrawText(part, x, baselineY, SKTextAlign.Left, font, paint);
            x += font.MeasureText(part);
        }
    }

    private static IEnumerable<(string Text, SKTypeface Face)> Runs(string text, bool bold)
    {
        SKTypeface[] faces = bold ? Bold : Regular;
        var part = new StringBuilder();
        SKTypeface? current = null;
        foreach (Rune rune in text.EnumerateRunes())
        {
            SKTypeface face = Array.Find(faces, f => Has(f, rune)) ?? faces[0];
            if (current is not null && face != current)
            {
                yield return (part.ToString(), current);
                part.Clear();
            }

            current = face;
            part.Append(rune.ToString());
        }

        if (current is not null)
        {
            yield return (part.ToString(), current);
        }
    }

    private static bool Has(SKTypeface face, Rune rune) => Lookups[face].ContainsGlyph(rune.Value);

    private static SKFont Font(SKTypeface face, float sizePx) => new(face, sizePx) { Edging = SKFontEdging.Antialias, Subpixel = false, Hinting = SKFontHinting.None };

    private static SKTypeface[] Load(int weight) => [.. Scripts.Select(script =>
    {
        string name = $"inter-{script}-{weight}-normal.woff";
        using Stream stream = typeof(DrawingFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is missing from the assembly.");
        using SKData data = SKData.Create(stream);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException($"The font {name} does not load.");
    })];
}
