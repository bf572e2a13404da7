using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Root mean square and peak along the time, with clipping on the line of full scale, speech and dropouts below.</summary>
internal sealed class ClipLevelPanel(PictureSheet sheet, ClipLayout layout, ClipFacts facts)
{
    public const string LaneSeries = "lane";

    private const float LeastSpeechPx = 4;
    private const float LeastPausePx = 3;

    // Keeps the lowest figure of the axis clear of the lane below.
    private const float BelowPx = 22;

    private readonly SKRect frame = layout.Level;

    public void Draw()
    {
        var columns = new ClipColumns(facts.Channel.Timeline, facts.DurationSeconds, (int)frame.Width / ClipColumns.WidthPx);
        double[] rms = [.. Enumerable.Range(0, columns.Count).Select(columns.RmsDb)], peaks = [.. Enumerable.Range(0, columns.Count).Select(columns.PeakDb)];
        var levels = new AxisScale(BottomDb(rms), 0, frame.Bottom - BelowPx, frame.Top + ClipLayout.ClipLanePx, false);
        TimeAxis.Caption(sheet, frame, "Level, dBFS");
        TimeAxis.Grid(sheet, frame, layout.Time);
        PlotPainter.UprightTicks(sheet, frame, levels, 5);
        Curves(levels, rms, peaks);
        using SKPaint full = PictureSheet.Pen(Palette.Ink, 3.5f);
        sheet.Line(new(frame.Left, levels.At(0)), new(frame.Right, levels.At(0)), full);
        foreach (float x in Marks(facts.Clipping, ClipSymbols.ClippingPx + 1))
        {
            ClipSymbols.Clipping(sheet, new(Math.Clamp(x, frame.Left + 16, frame.Right - 16), levels.At(0)));
        }

        PlotPainter.Frame(sheet, frame);
        Speech();
        Dropouts();
        TimeAxis.Ticks(sheet, layout.Dropouts ?? layout.Speech, layout.Time);
    }

    /// <summary>Lowest level of the axis: the tens below the quiet tenth of the clip, -100 to -60 dBFS.</summary>
    private static double BottomDb(double[] rms)
    {
        double[] rising = [.. rms.Order()];
        return rising.Length == 0 ? -60 : Math.Clamp(20 * Math.Floor((rising[rising.Length / 10] - 4) / 20), -100, -60);
    }

    private void Curves(AxisScale levels, double[] rms, double[] peaks)
    {
        if (rms.Length == 0)
        {
            return;
        }

        float XOf(int i) => frame.Left + ((i + 0.5f) * frame.Width / rms.Length);
        using SKPaint fill = PictureSheet.Brush(Palette.Mean);
        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(frame);
        sheet.Shape([new(frame.Left, frame.Bottom), .. rms.Select((db, i) => new SKPoint(XOf(i), levels.At(db))), new(frame.Right, frame.Bottom)], true, fill);
        using SKPaint line = PictureSheet.Pen(Palette.Ink, 2);
        sheet.Shape(peaks.Select((db, i) => new SKPoint(XOf(i), levels.At(db))), false, line);
        sheet.Canvas.Restore();
    }

    private void Speech()
    {
        SKRect lane = layout.Speech;
        Lane(lane, "speech");
        // Phrases with a pause too short to be seen are drawn as one.
        (float Left, float Right)? bar = null;
        foreach (TimeStretch stretch in facts.Channel.Speech)
        {
            float left = layout.Time.Within(stretch.StartSeconds), right = Math.Max(layout.Time.Within(stretch.EndSeconds), left + LeastSpeechPx);
            if (bar is { } open && left > open.Right + LeastPausePx)
            {
                Bar(open);
                bar = null;
            }

            bar = (bar?.Left ?? left, Math.Max(bar?.Right ?? right, right));
        }

        if (bar is { } last)
        {
            Bar(last);
        }

        void Bar((float Left, float Right) span) => ClipSymbols.Speech(sheet, new(span.Left, lane.Top + 9, span.Right, lane.Bottom - 8));
    }

    private void Dropouts()
    {
        if (layout.Dropouts is not { } lane)
        {
            return;
        }

        Lane(lane, "dropouts");
        using SKPaint line = PictureSheet.Pen(Palette.Ink, 2, 6, 6);
        foreach (float x in Marks(facts.Dropouts, ClipSymbols.DropoutPx + 6))
        {
            float at = Math.Clamp(x, lane.Left + 14, lane.Right - 14);
            sheet.Line(new(at, frame.Top), new(at, layout.Speech.Bottom), line);
            ClipSymbols.Dropout(sheet, new(at, lane.MidY));
        }
    }

    private void Lane(SKRect lane, string words)
    {
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Canvas.DrawRect(lane, edge);
        sheet.LabelFrom(words, lane.Left - 14 - DrawingFonts.Width(words, PictureSheet.TextPx, false), lane.MidY + 2, LaneSeries);
    }

    /// <summary>Where to mark stretches; of those that would touch only the first.</summary>
    private IEnumerable<float> Marks(Stretches stretches, float apartPx)
    {
        float free = float.MinValue;
        foreach (Stretch stretch in stretches.First)
        {
            double half = stretch.Samples / 2.0 / facts.View.Measures.SampleRateHz;
            float x = layout.Time.Within(stretch.StartSeconds + half);
            if (x >= free)
            {
                free = x + apartPx;
                yield return x;
            }
        }
    }
}
