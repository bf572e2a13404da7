using CsCheck;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class LetteringTests
{
    [Theory]
    [InlineData("0123456789 +,.;:()/")]
    [InlineData("ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz")]
    [InlineData("° ± – · ’ ' × µ")]
    [InlineData("Zoë Łucja Ångström Şule")]
    [InlineData("Ελένη Дарья")]
    public void Covers_WhatPicturesSay_IsTrue(string text) => Assert.True(DrawingFonts.Covers(text));

    [Fact]
    public void Covers_LettersOfNoBundledFont_IsFalse() => Assert.False(DrawingFonts.Covers("車"));

    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Covers_TextOfAnyScene_IsTrue(int index) => Assert.True(DrawingFonts.Covers(DrawingScenes.All[index].Drawn.Picture.TextAlternative));

    [Fact]
    public void Draw_LettersOfTwoScripts_InksBoth()
    {
        using var sheet = new PictureSheet(400, 60);
        sheet.Words("Zo", 10, 40);
        sheet.Words("Да", 210, 40);
        using SKBitmap picture = SKBitmap.Decode(sheet.ToPng());
        Assert.True(Ink(picture, 0, 200) > 50);
        Assert.True(Ink(picture, 200, 400) > 50);
        Assert.Equal(DrawingFonts.Width("Zo", 32, false) + DrawingFonts.Width("Да", 32, false), DrawingFonts.Width("ZoДа", 32, false), 0.5);
    }

    [Fact]
    public void Wrap_AnyText_KeepsEveryLetterAndTheWidth() =>
        Gen.String[Gen.Char["abcdefgh  MW"], 0, 120].Sample(text =>
        {
            List<string> lines = TextLines.Wrap(text, 200, false);
            Assert.Equal(text.Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
            Assert.All(lines, l => Assert.True(DrawingFonts.Width(l, PictureSheet.TextPx, false) <= 200, l));
        });

    // W3C PNG, third edition, 11.2.5: an IEND chunk is empty, so its last four bytes are always this checksum.
    [Fact]
    public void ToPng_AnySheet_EndsWithTheKnownChecksum()
    {
        using var sheet = new PictureSheet(20, 10);
        Assert.Equal([0x49, 0x45, 0x4E, 0x44, 0xAE, 0x42, 0x60, 0x82], sheet.ToPng()[^8..]);
    }

    [Fact]
    public void ToPng_MoreColorsThanThePaletteHolds_StaysClose()
    {
        using var sheet = new PictureSheet(300, 40);
        for (int x = 0; x < 300; x++)
        {
            using SKPaint pen = PictureSheet.Brush(new SKColor((byte)(x * 255 / 299), (byte)(255 - (x * 255 / 299)), (byte)(x % 64)));
            sheet.Canvas.DrawRect(SKRect.Create(x, 0, 1, 40), pen);
        }

        using SKBitmap picture = SKBitmap.Decode(sheet.ToPng());
        for (int x = 0; x < 300; x++)
        {
            SKColor seen = picture.GetPixel(x, 20);
            Assert.InRange(seen.Red, (x * 255 / 299) - 7, (x * 255 / 299) + 7);
            Assert.InRange(seen.Blue, (x % 64) - 7, (x % 64) + 7);
        }
    }

    private static int Ink(SKBitmap picture, int left, int right) =>
        Enumerable.Range(left, right - left).Sum(x => Enumerable.Range(0, picture.Height).Count(y => Palette.Luminance(picture.GetPixel(x, y)) < 0.3));
}
