using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Audio signal over noise against distance for an analogue link.</summary>
internal static class LinkSnrPanel
{
    public const string TargetSeries = "target";

    public static void Draw(PictureSheet sheet, LinkLayout layout, SKRect frame, LinkView view)
    {
        var axis = new AxisScale(0, view.TopSnrDb, frame.Bottom, frame.Top, false);
        LinkLevelPanel.Caption(sheet, frame, "Audio signal over noise (SNR), dB");
        AvailabilityLadder.Grounds(sheet, layout, view, frame);
        PlotPainter.DistanceTicks(sheet, frame, layout.Distance, view.Unit);
        PlotPainter.UprightTicks(sheet, frame, axis, 5);
        LinkLevelPanel.DistanceCaption(sheet, frame, view.Unit);

        SKPoint[] curve = [.. view.Curve.Where(p => p.SnrDb is { } snr && double.IsFinite(snr)).Select(p => new SKPoint(layout.Distance.At(p.DistanceM), axis.At(p.SnrDb!.Value)))];
        SKPoint[] target = view.TargetSnrDb is { } db ? [new(frame.Left, axis.Within(db)), new(frame.Right, axis.Within(db))] : [];
        PlotPainter.Curve(sheet, frame, target, Palette.Demand, 5);
        PlotPainter.Curve(sheet, frame, curve, Palette.Curve, 7);
        float x = layout.Distance.Within(view.Report.GapM);
        LinkLevelPanel.GapLine(sheet, frame, x);
        var placer = new LabelPlacer(SKRect.Inflate(frame, -8, -8));
        foreach (SKPoint p in PlotPainter.Along(curve, frame, 12).Concat(PlotPainter.Along([new(x, frame.Top), new(x, frame.Bottom)], frame, 12)))
        {
            placer.Avoid(SKRect.Create(p.X - 3, p.Y - 3, 6, 6), 14);
        }

        if (view.Report.SnrDb is { } snr && snr >= 0 && snr <= view.TopSnrDb)
        {
            var at = new SKPoint(x, axis.Within(snr));
            LinkLevelPanel.Marker(sheet, at, view.GapIsOutsideTheModel);
            placer.Take(SKRect.Create(at.X - 20, at.Y - 20, 40, 40));
        }

        PlotPainter.Frame(sheet, frame);
        if (view.TargetSnrDb is { } wanted)
        {
            string words = view.TargetIsStated ? $"target {FigureWords.Number(wanted)} dB" : $"{FigureWords.Number(wanted)} dB at the level needed";
            SKPoint[] anchors = [.. Enumerable.Range(1, 20).Select(i => new SKPoint(frame.Left + (i * frame.Width / 21), axis.Within(wanted)))];
            (SKPoint anchor, SKRect box) = placer.PlaceAlong(anchors, PlotPainter.PlateSize(words), 6);
            PlotPainter.Plate(sheet, words, anchor, box, TargetSeries, Palette.Demand);
        }
    }
}
