using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Level against distance, with what is needed, the noise, the lawful level and the gap.</summary>
internal sealed class LinkLevelPanel(PictureSheet sheet, LinkLayout layout, LinkView view)
{
    public const string GapSeries = "gap", NeededSeries = "needed", NoiseSeries = "noise", LevelSeries = "level", LawfulSeries = "lawful level", ModelSeries = "model";

    // What it costs a label to cover one sample of a curve, in pixels of extra distance.
    private const float CurveWeight = 14;
    private const float SampleSpacing = 12;

    private readonly SKRect frame = layout.LevelFrame;
    private readonly AxisScale levels = new(view.BottomDbm, view.TopDbm, layout.LevelFrame.Bottom, layout.LevelFrame.Top, false);

    public void Draw()
    {
        string spread = view.Report.LevelUncertaintyDb > 0 ? $"; bar at the gap: give or take {FigureWords.Number(view.Report.LevelUncertaintyDb)} dB" : "";
        Caption(sheet, frame, "Level at the receiver, dBm" + spread);
        AvailabilityLadder.Grounds(sheet, layout, view, frame);
        PlotPainter.DistanceTicks(sheet, frame, layout.Distance, view.Unit);
        PlotPainter.UprightTicks(sheet, frame, levels, 8);
        if (layout.SnrFrame is null)
        {
            DistanceCaption(sheet, frame, view.Unit);
        }

        SKPoint[] level = Points(0), lawful = view.LawfulShiftDb is { } shift ? Points(shift) : [];
        SKPoint[] needed = Across(view.Report.NeededLevelDbm), noise = Across(view.Report.NoiseDbm);
        PlotPainter.Curve(sheet, frame, noise, Palette.Ink, 3, 3, 8);
        PlotPainter.Curve(sheet, frame, needed, Palette.Demand, 5);
        PlotPainter.Curve(sheet, frame, lawful, Palette.Curve, 5, 18, 12);
        PlotPainter.Curve(sheet, frame, level, Palette.Curve, 7);
        SKPoint gap = Gap();
        ModelEnd();
        PlotPainter.Frame(sheet, frame);
        Labels(level, lawful, needed, noise, gap);
    }

    /// <summary>The gap as an upright line through a panel.</summary>
    public static void GapLine(PictureSheet sheet, SKRect frame, float x)
    {
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 8), pen = PictureSheet.Pen(Palette.Ink, 4);
        sheet.Line(new(x, frame.Top), new(x, frame.Bottom), halo);
        sheet.Line(new(x, frame.Top), new(x, frame.Bottom), pen);
    }

    /// <summary>What the upright axis of a panel shows, above the panel.</summary>
    public static void Caption(PictureSheet sheet, SKRect frame, string words) =>
        PlotPainter.OnPaper(sheet, words, SheetLayout.MarginPx, frame.Top - (LinkLayout.PanelCaptionPx / 2) - 10, PlotPainter.CaptionSeries);

    /// <summary>What the distance axis shows, below the lowest panel.</summary>
    public static void DistanceCaption(PictureSheet sheet, SKRect frame, DistanceUnit unit)
    {
        string words = $"Distance between the antennas, {FigureWords.Sign(unit)} (logarithmic)";
        float width = DrawingFonts.Width(words, PictureSheet.TextPx, false);
        sheet.LabelFrom(words, frame.Right - width, frame.Bottom + LinkLayout.TicksPx + (LinkLayout.CaptionPx / 2), PlotPainter.CaptionSeries);
    }

    /// <summary>A round marker with an edge of paper, so that it is seen on any line.</summary>
    public static void Marker(PictureSheet sheet, SKPoint at, bool hollow)
    {
        using SKPaint paper = PictureSheet.Brush(Palette.Paper), ink = PictureSheet.Brush(Palette.Ink), edge = PictureSheet.Pen(Palette.Ink, 5);
        sheet.Canvas.DrawCircle(at, 17, paper);
        sheet.Canvas.DrawCircle(at, 11, hollow ? edge : ink);
    }

    private SKPoint[] Points(double shiftDb) => [.. view.Curve.Select(p => new SKPoint(layout.Distance.At(p.DistanceM), levels.At(p.LevelDbm + shiftDb)))];

    private SKPoint[] Across(double dbm) => [new(frame.Left, levels.Within(dbm)), new(frame.Right, levels.Within(dbm))];

    /// <summary>Line, spread and marker at the gap.</summary>
    private SKPoint Gap()
    {
        var at = new SKPoint(layout.Distance.Within(view.Report.GapM), levels.Within(view.Report.LevelDbm));
        GapLine(sheet, frame, at.X);
        float up = levels.Within(view.Report.LevelDbm + view.Report.LevelUncertaintyDb), down = levels.Within(view.Report.LevelDbm - view.Report.LevelUncertaintyDb);
        using SKPaint paper = PictureSheet.Pen(Palette.Paper, 9), ink = PictureSheet.Pen(Palette.Ink, 4);
        foreach (SKPaint pen in new[] { paper, ink })
        {
            sheet.Line(new(at.X - 16, up), new(at.X + 16, up), pen);
            sheet.Line(new(at.X - 16, down), new(at.X + 16, down), pen);
        }

        Marker(sheet, at, view.GapIsOutsideTheModel);
        return at;
    }

    private void ModelEnd()
    {
        double end = view.Report.Path.FarthestM;
        if (end < view.HighM && end > view.LowM)
        {
            using SKPaint pen = PictureSheet.Pen(Palette.Ink, 3, 14, 7, 3, 7);
            float x = layout.Distance.At(end);
            sheet.Line(new(x, frame.Top), new(x, frame.Bottom), pen);
        }
    }

    private void Labels(SKPoint[] level, SKPoint[] lawful, SKPoint[] needed, SKPoint[] noise, SKPoint gap)
    {
        var placer = new LabelPlacer(SKRect.Inflate(frame, -8, -8));
        SKPoint[] upright = [new(gap.X, frame.Top), new(gap.X, frame.Bottom)];
        foreach (SKPoint p in new[] { level, lawful, needed, noise, upright }.SelectMany(line => PlotPainter.Along(line, frame, SampleSpacing)))
        {
            placer.Avoid(SKRect.Create(p.X - 3, p.Y - 3, 6, 6), CurveWeight);
        }

        placer.Take(SKRect.Create(gap.X - 20, gap.Y - 20, 40, 40));
        Place(LinkText.GapWords(view), [gap], 26, GapSeries, Palette.Ink, true);
        Place($"needed {FigureWords.Number(view.Report.NeededLevelDbm)} dBm", Anchors(needed), 6, NeededSeries, Palette.Demand);
        Place($"noise {FigureWords.Number(view.Report.NoiseDbm)} dBm", Anchors(noise), 6, NoiseSeries, Palette.CarLine);
        if (lawful.Length > 1)
        {
            Place("lawful level", Anchors(lawful), 10, LawfulSeries, Palette.Curve);
        }

        if (level.Length > 1)
        {
            Place("level", Anchors(level), 10, LevelSeries, Palette.Curve);
        }

        double end = view.Report.Path.FarthestM;
        if (end < view.HighM && end > view.LowM)
        {
            float x = layout.Distance.At(end);
            Place($"model ends at {view.Distance(end)}", Anchors([new(x, frame.Top), new(x, frame.Bottom)]), 6, ModelSeries, Palette.CarLine);
        }

        void Place(string words, IReadOnlyList<SKPoint> anchors, float nearest, string series, SKColor edge, bool bold = false)
        {
            (SKPoint anchor, SKRect box) = placer.PlaceAlong(anchors, PlotPainter.PlateSize(words, bold), nearest);
            PlotPainter.Plate(sheet, words, anchor, box, series, edge, bold);
        }
    }

    /// <summary>Places along a line a label may name; the frame's middle when the line lies outside.</summary>
    private IReadOnlyList<SKPoint> Anchors(IReadOnlyList<SKPoint> line)
    {
        SKPoint[] all = [.. PlotPainter.Along(line, SKRect.Inflate(frame, -20, -1), 24)];
        return all.Length > 0 ? [.. all.Where((_, i) => i % Math.Max(1, all.Length / 24) == 0)] : [new(frame.MidX, frame.Bottom - 30)];
    }
}
