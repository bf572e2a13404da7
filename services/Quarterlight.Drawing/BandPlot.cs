using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A frame with the seven octave bands across and levels up.</summary>
internal sealed class BandPlot(PictureSheet sheet, SKRect frame, double lowDb, double highDb)
{
    private readonly AxisScale levels = new(lowDb, highDb, frame.Bottom, frame.Top, false);

    public SKRect Frame => frame;

    /// <summary>Middle of a band across, pixels.</summary>
    public float X(int band) => frame.Left + ((band + 0.5f) * frame.Width / OctaveBands.Count);

    /// <summary>Grid, levels on the left and bands below.</summary>
    public void Axes()
    {
        PlotPainter.UprightTicks(sheet, frame, levels, 5);
        using SKPaint grid = PictureSheet.Pen(Palette.Grid, 1.5f);
        for (int i = 0; i < OctaveBands.Count; i++)
        {
            sheet.Line(new(X(i), frame.Top), new(X(i), frame.Bottom), grid);
            double centre = OctaveBands.CentresHz[i];
            Below(i, centre >= 1000 ? $"{FigureWords.Number(centre / 1000)}k" : FigureWords.Number(centre), (ClipLayout.TicksPx / 2) + 2, PlotPainter.TickSeries);
        }
    }

    /// <summary>Words under a band.</summary>
    public void Below(int band, string words, float belowPx, string series, bool bold = false) =>
        sheet.LabelFrom(words, X(band) - (DrawingFonts.Width(words, PictureSheet.TextPx, bold) / 2), frame.Bottom + belowPx, series, bold);

    /// <summary>Points of a spectrum; bands that are not known, or far below the picture, are left out.</summary>
    public IReadOnlyList<SKPoint> Points(BandLevels spectrum) =>
        [.. Enumerable.Range(0, OctaveBands.Count).Where(i => double.IsFinite(spectrum[i])).Select(i => new SKPoint(X(i), levels.At(spectrum[i])))];

    /// <summary>Draws inside the frame only.</summary>
    public void Inside(Action draw)
    {
        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(frame);
        draw();
        sheet.Canvas.Restore();
    }

    /// <summary>Fills where one line runs above another.</summary>
    public void Between(IReadOnlyList<SKPoint> above, IReadOnlyList<SKPoint> below, Action<SKRect> fill)
    {
        if (above.Count < 2 || below.Count < 2)
        {
            return;
        }

        sheet.Canvas.Save();
        Clip([new(above[0].X, frame.Bottom), .. above, new(above[^1].X, frame.Bottom)]);
        Clip([new(below[0].X, frame.Top), .. below, new(below[^1].X, frame.Top)]);
        fill(frame);
        sheet.Canvas.Restore();

        void Clip(SKPoint[] outline)
        {
            using var builder = new SKPathBuilder();
            builder.AddPoly(outline, true);
            using SKPath path = builder.Detach();
            sheet.Canvas.ClipPath(path, antialias: true);
        }
    }
}
