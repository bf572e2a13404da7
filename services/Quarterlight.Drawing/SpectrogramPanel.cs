using Quarterlight.Clips;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Level by frequency along the time, on a logarithmic frequency axis that is the same for every clip.</summary>
internal sealed class SpectrogramPanel(PictureSheet sheet, ClipLayout layout, ClipFacts facts)
{
    public const string ScaleSeries = "scale", MissingSeries = "missing";
    public const double LowHz = 50, HighHz = 16000;

    private const double LowestDb = -100;
    private const double LeastSpanDb = 40;
    private const double FloorShare = 0.1;
    private const float ScalePx = 300;

    private readonly SKRect frame = layout.Spectrum;
    private readonly ClipTimeline timeline = facts.Channel.Timeline;
    private readonly AxisScale frequency = new(LowHz, HighHz, layout.Spectrum.Bottom, layout.Spectrum.Top, true);

    public void Draw()
    {
        var columns = new ClipColumns(timeline, facts.DurationSeconds, (int)frame.Width / ClipColumns.WidthPx);
        SKRect caption = TimeAxis.Caption(sheet, frame, "Spectrum, Hz");
        int bands = timeline.BandCentresHz.Count;
        float top = frame.Bottom;
        if (columns.Count > 0 && bands > 1 && !facts.Channel.IsSilent)
        {
            double[] levels = [.. Enumerable.Range(0, columns.Count * bands).Select(i => columns.BandDb(i / bands, i % bands))];
            (double lowDb, double highDb) = Range(levels);
            top = Raster(levels, bands, lowDb, highDb);
            Scale(caption.Right + 30, lowDb, highDb);
        }

        Missing(top);
        foreach (double tick in AxisScale.DecadeTicks(LowHz, HighHz))
        {
            using SKPaint pen = PictureSheet.Pen(Palette.Ink, 2.5f);
            float y = frequency.At(tick);
            sheet.Line(new(frame.Left - 8, y), new(frame.Left, y), pen);
            string words = tick >= 1000 ? $"{FigureWords.Number(tick / 1000)}k" : FigureWords.Number(tick);
            sheet.LabelFrom(words, frame.Left - 14 - DrawingFonts.Width(words, PictureSheet.TextPx, false), y, PlotPainter.TickSeries);
        }

        PlotPainter.Frame(sheet, frame);
        TimeAxis.Ticks(sheet, frame, layout.Time);
    }

    /// <summary>From the floor, but not below -100 dBFS, to the highest level, in tens.</summary>
    internal static (double LowDb, double HighDb) Range(double[] levels)
    {
        double[] rising = [.. levels.Order()];
        double high = 10 * Math.Ceiling(Math.Clamp(rising[^1], LowestDb + LeastSpanDb, 10) / 10);
        double floor = 10 * Math.Floor(rising[(int)(FloorShare * (rising.Length - 1))] / 10);
        return (Math.Clamp(floor, LowestDb, high - LeastSpanDb), high);
    }

    /// <summary>Draws the levels; returns where the highest band ends.</summary>
    private float Raster(double[] levels, int bands, double lowDb, double highDb)
    {
        double first = timeline.BandCentresHz[0], ratio = Math.Pow(timeline.BandCentresHz[^1] / first, 1.0 / (bands - 1));
        int columns = levels.Length / bands, rows = (int)frame.Height;
        var pixels = new SKColor[columns * rows];
        float top = frame.Bottom;
        for (int row = 0; row < rows; row++)
        {
            double hz = LowHz * Math.Pow(HighHz / LowHz, (rows - row - 0.5) / rows);
            double band = Math.Log(hz / first) / Math.Log(ratio);
            if (band > bands - 0.5)
            {
                continue;
            }

            top = Math.Min(top, frame.Top + row);
            // Below the lowest band, which may start a little above the axis, its color goes on.
            int nearest = Math.Max(0, (int)Math.Round(band));
            for (int column = 0; column < columns; column++)
            {
                pixels[(row * columns) + column] = SpectrogramColors.At((levels[(column * bands) + nearest] - lowDb) / (highDb - lowDb));
            }
        }

        using var bitmap = new SKBitmap(new SKImageInfo(columns, rows, SKColorType.Rgba8888, SKAlphaType.Unpremul)) { Pixels = pixels };
        using SKImage image = SKImage.FromBitmap(bitmap);
        sheet.Canvas.DrawImage(image, frame, new SKSamplingOptions(SKFilterMode.Nearest));
        return top;
    }

    /// <summary>Hatches what the sample rate leaves out, and says so when there is room.</summary>
    private void Missing(float top)
    {
        var area = new SKRect(frame.Left, frame.Top, frame.Right, top);
        Hatching.Fill(sheet, area, Hatch.Rising, Palette.CarFill, Palette.Grid);
        if (area.Height < 60)
        {
            return;
        }

        string words = facts.Channel.IsSilent ? "digital silence"
            : timeline.ColumnCount == 0 || timeline.BandCentresHz.Count < 2
                ? "too short for a spectrum"
                : $"nothing above {FigureWords.Number(facts.View.Measures.SampleRateHz / 2000.0, "0.#")} kHz at this sample rate";
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, false);
        PlotPainter.OnPaper(sheet, words, area.MidX - (width / 2), area.MidY, MissingSeries);
    }

    private void Scale(float left, double lowDb, double highDb)
    {
        string low = FigureWords.Number(lowDb), high = $"{FigureWords.Number(highDb)} dBFS";
        float middle = frame.Top - (ClipLayout.CaptionPx / 2), end = frame.Right - DrawingFonts.Width(high, PictureSheet.TextPx, false);
        SKRect words = sheet.LabelFrom(low, Math.Max(left, end - ScalePx - 24 - DrawingFonts.Width(low, PictureSheet.TextPx, false)), middle, ScaleSeries);
        sheet.LabelFrom(high, end, middle, ScaleSeries);
        var bar = new SKRect(words.Right + 12, middle - 15, end - 12, middle + 15);
        for (int i = 0; i < SpectrogramColors.Count; i++)
        {
            using SKPaint fill = PictureSheet.Brush(SpectrogramColors.At((i + 0.5) / SpectrogramColors.Count));
            float step = bar.Width / SpectrogramColors.Count;
            fill.IsAntialias = false;
            sheet.Canvas.DrawRect(bar.Left + (i * step), bar.Top, step + 1, bar.Height, fill);
        }

        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2);
        sheet.Canvas.DrawRect(bar, edge);
    }
}
