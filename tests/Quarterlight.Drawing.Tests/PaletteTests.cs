using Quarterlight.Acoustics;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class PaletteTests
{
    // WCAG 2.2, "contrast ratio": 21 for black on white by definition; #767676 is widely quoted as the lightest grey
    // that passes 4.5 on white (4.54, from memory).
    [Fact]
    public void Contrast_KnownPairs_IsAsPublished()
    {
        Assert.Equal(21, Palette.Contrast(SKColors.Black, SKColors.White), 9);
        Assert.Equal(1, Palette.Contrast(SKColors.White, SKColors.White), 9);
        Assert.Equal(4.54, Palette.Contrast(new SKColor(0x76, 0x76, 0x76), SKColors.White), 0.005);
        Assert.True(Palette.Contrast(new SKColor(0x77, 0x77, 0x77), SKColors.White) < 4.5);
    }

    // WCAG 2.2 success criteria 1.4.3 (text 4.5) and 1.4.11 (graphics 3).
    [Fact]
    public void Colors_OnTheirGround_PassTextAndGraphicsContrast()
    {
        Assert.True(Palette.Contrast(Palette.Ink, Palette.Paper) >= 4.5);
        Assert.True(Palette.Contrast(Palette.Paper, Palette.Microphone) >= 4.5, "white numbers on microphone badges");
        SKColor[] lines = [Palette.Microphone, Palette.Null, Palette.Camera, Palette.CarLine];
        Assert.All(lines, c => Assert.True(Palette.Contrast(c, Palette.Paper) >= 3, c.ToString()));
        SKColor[] edged = [Palette.Engine, Palette.OpenWindow, Palette.Gaze];
        Assert.All(edged, c => Assert.True(Palette.Contrast(c, Palette.Ink) >= 3, c.ToString()));
    }

    // Success criterion 1.4.11 again: curves and edges on the grounds of the bands, and words on them.
    [Fact]
    public void Colors_OnTheBands_PassTextAndGraphicsContrast()
    {
        SKColor[] lines = [Palette.Curve, Palette.Demand, Palette.CarLine];
        Assert.All(Palette.BandGrounds, ground =>
        {
            Assert.All(lines, c => Assert.True(Palette.Contrast(c, ground) >= 3, $"{c} on {ground}: {Palette.Contrast(c, ground):0.00}"));
            Assert.True(Palette.Contrast(Palette.Ink, ground) >= 4.5);
        });
        Assert.All(Palette.BandGrounds.Zip(Palette.BandGrounds.Skip(1)), p => Assert.True(Palette.Luminance(p.First) < Palette.Luminance(p.Second)));
    }

    // Each symbol drawn alone, then taken down to black and white: no two may look alike. Share of pixels in one but not
    // in both, over pixels in either (Jaccard distance); the same symbol twice is 0.
    [Fact]
    public void Symbols_InBlackAndWhite_DifferInShape()
    {
        var at = new SKPoint(120, 120);
        (string Name, Action<PictureSheet> Draw)[] symbols =
        [
            ("talker", s => TalkerPainter.DrawSymbol(s, at)),
            ("microphone", s => MicrophonePainter.DrawLines(s, at, PolarPattern.Subcardioid, 0, 1, 1)),
            ("pattern", s => MicrophonePainter.DrawOutline(s, at, PolarPattern.Cardioid, 0, 1, 1)),
            ("null", s => MicrophonePainter.DrawNull(s, at, 0, 1)),
            ("camera", s => CameraPainter.DrawBody(s, at, 0)),
            ("engine", s => CabinPainter.DrawEngine(s, at, true)),
            ("engine off", s => CabinPainter.DrawEngine(s, at, false)),
        ];
        Differ(symbols);
    }

    [Fact]
    public void SpectrumSymbols_InBlackAndWhite_DifferInShape()
    {
        var bar = new SKRect(110, 60, 126, 180);
        Differ(
        [
            ("clean", s => SpectrumSymbols.Clean(s, bar)),
            ("hit", s => SpectrumSymbols.Hit(s, bar)),
            ("neighbour", s => SpectrumSymbols.Neighbour(s, bar, true)),
            ("third", s => SpectrumSymbols.Third(s, 118, 100, 140, true)),
            ("fifth", s => SpectrumSymbols.Fifth(s, 118, 100, 140, true)),
            ("product on a carrier", s => SpectrumSymbols.Cross(s, new(118, 120), 12)),
            ("block", s => SpectrumSymbols.Block(s, bar)),
        ]);
    }

    // The hatches of the bands, drawn in ink on paper.
    [Fact]
    public void Hatches_InBlackAndWhite_DifferInShape() =>
        Differ([.. Enum.GetValues<Hatch>().Select<Hatch, (string, Action<PictureSheet>)>(h => (h.ToString(), s => Hatching.Fill(s, new(20, 20, 220, 220), h, SKColors.White, SKColors.Black)))]);

    internal static void Differ((string Name, Action<PictureSheet> Draw)[] symbols, double darkest = 0.6)
    {
        List<bool[]> shapes = [.. symbols.Select(s => Silhouette(s.Draw, darkest))];
        Assert.All(shapes, s => Assert.True(s.Count(ink => ink) > 100));
        for (int i = 0; i < shapes.Count; i++)
        {
            Assert.Equal(0, Difference(shapes[i], Silhouette(symbols[i].Draw, darkest)));
            for (int j = i + 1; j < shapes.Count; j++)
            {
                double difference = Difference(shapes[i], shapes[j]);
                Assert.True(difference > 0.3, $"{symbols[i].Name} and {symbols[j].Name} look alike: {difference:0.00}");
            }
        }
    }

    private static bool[] Silhouette(Action<PictureSheet> draw, double darkest)
    {
        using var sheet = new PictureSheet(240, 240);
        draw(sheet);
        using SKBitmap picture = SKBitmap.Decode(sheet.ToPng());
        return [.. picture.Pixels.Select(p => Palette.Luminance(p) < darkest)];
    }

    private static double Difference(bool[] a, bool[] b) =>
        (double)a.Zip(b).Count(p => p.First != p.Second) / a.Zip(b).Count(p => p.First || p.Second);
}
