using Quarterlight.Radio.Link;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Bars over the level panel, one for each availability, as long as reception holds; their hatching comes back as the panel's
/// ground.</summary>
internal sealed class AvailabilityLadder(PictureSheet sheet, LinkLayout layout, LinkView view)
{
    public const string Series = "availability", LawfulSeries = "lawful range";

    private const float BarInset = 5;

    private static readonly Hatch[] Hatches = [Hatch.Crossed, Hatch.Rising, Hatch.Falling, Hatch.Dotted, Hatch.Upright];

    public void Draw()
    {
        float bottom = layout.LevelFrame.Top, gap = layout.Distance.Within(view.Report.GapM);
        sheet.LabelFrom("Reception holds for a share of time and places", SheetLayout.MarginPx, layout.LadderTop + (LinkLayout.CaptionPx / 2), PlotPainter.CaptionSeries);
        float top = layout.LadderTop + LinkLayout.CaptionPx;
        List<Action> words = [];
        for (int i = 0; i < view.Bands.Count; i++)
        {
            words.Add(Row(top, view.Bands[i], view.RangeWords(view.Bands[i]), Series, i));
            top += LinkLayout.RowPx;
        }

        if (view.Report.LawfulRange is { } lawful)
        {
            words.Add(Row(top, lawful, "lawful level: " + view.RangeWords(lawful), LawfulSeries, null));
        }

        // The gap's line runs over the bars and under the words.
        using SKPaint line = PictureSheet.Pen(Palette.Ink, 3);
        sheet.Line(new(gap, layout.LadderTop + LinkLayout.CaptionPx), new(gap, bottom), line);
        words.ForEach(write => write());
    }

    /// <summary>Grounds of the bands inside a panel, each with its edge at the range.</summary>
    public static void Grounds(PictureSheet sheet, LinkLayout layout, LinkView view, SKRect frame)
    {
        float from = frame.Left;
        using SKPaint edge = PictureSheet.Pen(Palette.CarLine, 3, 9, 6);
        for (int i = 0; i < view.Bands.Count; i++)
        {
            float to = EndPx(layout, view.Bands[i]);
            if (to <= from)
            {
                continue;
            }

            Hatching.Fill(sheet, new(from, frame.Top, to, frame.Bottom), HatchOf(i), GroundOf(i), Palette.BandHatch);
            if (to < frame.Right)
            {
                sheet.Line(new(to, frame.Top), new(to, frame.Bottom), edge);
            }

            from = to;
        }
    }

    private static Hatch HatchOf(int band) => Hatches[Math.Min(band, Hatches.Length - 1)];

    private static SKColor GroundOf(int band) => Palette.BandGrounds[Math.Min(band, Palette.BandGrounds.Count - 1)];

    private static float EndPx(LinkLayout layout, LinkRange range) => range.RangeM <= 0 ? layout.Distance.FromPx : layout.Distance.Within(range.RangeM);

    /// <summary>Draws a bar and returns what writes its words.</summary>
    private Action Row(float top, LinkRange range, string words, string series, int? band)
    {
        float left = layout.Distance.FromPx, end = EndPx(layout, range);
        var bar = new SKRect(left, top + BarInset, Math.Max(end, left + 3), top + LinkLayout.RowPx - BarInset);
        if (band is { } index)
        {
            Hatching.Fill(sheet, bar, HatchOf(index), GroundOf(index), Palette.BandHatch);
        }

        using SKPaint edge = band is null ? PictureSheet.Pen(Palette.Curve, 3, 12, 8) : PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Canvas.DrawRect(bar, edge);
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, true);
        // Inside the bar at its start, or past the gap's line so that this is not hidden; behind the bar when it is too short.
        float gap = layout.Distance.Within(view.Report.GapM), textLeft = left + 24;
        if (gap > textLeft - 16 && gap < textLeft + width + 16)
        {
            textLeft = gap + 20;
        }

        if (textLeft + width + 30 > bar.Right)
        {
            textLeft = bar.Right + 14;
        }

        return () => PlotPainter.OnPaper(sheet, words, textLeft, bar.MidY, series, true);
    }
}
