using Quarterlight.Clips.Tagging;
using Quarterlight.Drawing;
using Quarterlight.Training.Data;
using Quarterlight.Training.Learning;
using Quarterlight.Training.Mixing;
using SkiaSharp;

namespace Quarterlight.Training.Card;

/// <summary>The pictures of the model card.</summary>
public static class CardPictures
{
    private const int Width = 1200;
    private const int Height = 760;
    private static readonly SKRect s_frame = new(150, 130, 1000, 640);
    private static readonly SKColor[] s_colors = [Palette.Engine, Palette.OpenWindow, Palette.Microphone, Palette.Camera];
    private static readonly float[][] s_dashes = [[], [18, 8], [6, 8], [24, 8, 6, 8]];

    /// <summary>All pictures, by file name.</summary>
    public static IEnumerable<(string Name, byte[] Png)> All(CardFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        yield return ("tagger-confusion.png", Confusion(figures));
        yield return ("tagger-calibration.png", Calibrated(figures));
        yield return ("tagger-ratio.png", ByRatio(figures));
    }

    private static byte[] Confusion(CardFigures figures)
    {
        using var sheet = new PictureSheet(Width, Height);
        sheet.Words("What is said of what: share of clips alone", 40, 60, true);
        const float left = 350, top = 160, cellWidth = 195, cellHeight = 90;
        foreach (ClipTag tag in Truth.Tags)
        {
            sheet.Words(CardText.Name(tag), left + ((int)tag * cellWidth) + 40, top - 20, true);
        }

        for (int g = 0; g < CardParts.Groups.Count; g++)
        {
            string group = CardParts.Groups[g];
            JudgedCase[] cases = [.. ScoreTable.Alone(figures.Judged).Where(c => c.Case.Group == group)];
            sheet.Words($"{group} ({cases.Length})", 40, top + (g * cellHeight) + 56);
            foreach (ClipTag tag in Truth.Tags)
            {
                double share = CardParts.Share(cases, tag);
                var box = SKRect.Create(left + ((int)tag * cellWidth), top + (g * cellHeight), cellWidth - 8, cellHeight - 8);
                using SKPaint fill = PictureSheet.Brush(Palette.OpenWindow.Faded(share * 0.8)), edge = PictureSheet.Pen(Palette.CarLine, 1.5f);
                sheet.Canvas.DrawRect(box, fill);
                sheet.Canvas.DrawRect(box, edge);
                sheet.Label(share.ToString("P0", System.Globalization.CultureInfo.InvariantCulture), box, "cell", Palette.Ink, share >= 0.5);
            }
        }

        return sheet.ToPng();
    }

    private static byte[] Calibrated(CardFigures figures)
    {
        var lines = Truth.Tags.Select(t => Calibration.Of(t, figures.Judged).Select(s => (s.Said, s.Held)).ToArray()).ToArray();
        return Plot("Calibration: share of clips in which the tag held, %", "probability that was said", new(0, 1), lines, 5, diagonal: true);
    }

    private static byte[] ByRatio(CardFigures figures)
    {
        var lines = Truth.Tags.Select(t => TestCases.RatiosDb
            .Select(r => (r, Cases: ScoreTable.AtRatio(figures.Judged, r).ToArray()))
            .Where(r => r.Cases.Any(c => c.Case.Truth[t] == true))
            .Select(r => (r.r, Counts.Of(t, r.Cases, new(0.5, 0.5), false).F1)).ToArray()).ToArray();
        return Plot("F1 of each tag in %, one noise under speech", "speech over noise, dB", new(-5, 30), lines, 7, diagonal: false);
    }

    private static byte[] Plot(string title, string across, (double Low, double High) range, (double X, double Y)[][] lines, int parts, bool diagonal)
    {
        using var sheet = new PictureSheet(Width, Height);
        sheet.Words(title, 40, 60, true);
        var x = new AxisScale(range.Low, range.High, s_frame.Left, s_frame.Right, false);
        var y = new AxisScale(0, 100, s_frame.Bottom, s_frame.Top, false);
        PlotPainter.UprightTicks(sheet, s_frame, y, 5);
        double step = AxisScale.EvenStep(range.High - range.Low, parts);
        foreach (double tick in AxisScale.EvenTicks(range.Low, range.High, step))
        {
            string words = (Math.Abs(tick) < 1e-9 ? 0 : tick).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
            sheet.Words(words, x.At(tick) - (DrawingFonts.Width(words, PictureSheet.TextPx, false) / 2), s_frame.Bottom + 44);
        }

        sheet.Words(across, s_frame.MidX - (DrawingFonts.Width(across, PictureSheet.TextPx, false) / 2), s_frame.Bottom + 92);
        if (diagonal)
        {
            PlotPainter.Curve(sheet, s_frame, [new(s_frame.Left, s_frame.Bottom), new(s_frame.Right, s_frame.Top)], Palette.CarLine, 2, 4, 8);
        }

        for (int i = 0; i < lines.Length; i++)
        {
            PlotPainter.Curve(sheet, s_frame, [.. lines[i].Select(p => new SKPoint(x.At(p.X), y.At(100 * p.Y)))], s_colors[i], 5, s_dashes[i]);
            using SKPaint dot = PictureSheet.Brush(s_colors[i]), edge = PictureSheet.Pen(Palette.Ink, 1.5f);
            foreach ((double px, double py) in lines[i])
            {
                sheet.Canvas.DrawCircle(x.At(px), y.At(100 * py), 7, dot);
                sheet.Canvas.DrawCircle(x.At(px), y.At(100 * py), 7, edge);
            }

            float middle = s_frame.Top + 40 + (i * 60);
            using SKPaint pen = PictureSheet.Pen(s_colors[i], 5, s_dashes[i]);
            sheet.Line(new(1020, middle), new(1080, middle), pen);
            sheet.Words(CardText.Name((ClipTag)i), 1092, middle + 11);
        }

        PlotPainter.Frame(sheet, s_frame);
        return sheet.ToPng();
    }
}
