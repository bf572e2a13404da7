using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

/// <summary>What holds for every picture.</summary>
internal static class PictureChecks
{
    public static void SizeIsAsStated(DrawnPicture picture)
    {
        using SKBitmap decoded = SKBitmap.Decode(picture.Png);
        Assert.Equal((picture.WidthPx, picture.HeightPx), (decoded.Width, decoded.Height));
        Assert.Equal(1200, picture.WidthPx);
        Assert.True(picture.Png.Length < 300_000, $"{picture.Png.Length} bytes");
        Assert.Equal(SKColors.White, decoded.GetPixel(3, 3));
    }

    public static void LabelsAreApartLargeAndOnTheSheet(DrawnPicture picture, IReadOnlyList<DrawnLabel> labels)
    {
        var sheet = new SKRect(0, 0, picture.WidthPx, picture.HeightPx);
        Assert.NotEmpty(labels);
        for (int i = 0; i < labels.Count; i++)
        {
            DrawnLabel label = labels[i];
            Assert.True(sheet.Contains(label.Box), $"{label.Text} leaves the sheet");
            Assert.True(label.TextHeightPx >= 32, label.Text);
            Assert.True(DrawingFonts.Covers(label.Text), label.Text);
            float width = DrawingFonts.Width(label.Text, label.TextHeightPx, false);
            Assert.True(width <= label.Box.Width + 1, $"{label.Text} is wider than its box");
            Assert.All(labels.Skip(i + 1), other => Assert.False(label.Box.IntersectsWith(other.Box), $"{label.Series} {label.Text} and {other.Series} {other.Text} overlap"));
        }
    }

    public static void TextIsWholeAndShort(string text)
    {
        Assert.InRange(text.Length, 1, 1024);
        Assert.Contains(text[^1], ".…");
        Assert.DoesNotContain("  ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }
}
