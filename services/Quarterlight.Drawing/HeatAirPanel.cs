using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Carbon dioxide over the day, against the level of stale air.</summary>
internal static class HeatAirPanel
{
    public static void Draw(PictureSheet sheet, HeatLayout layout, HeatView view)
    {
        SKRect frame = layout.CarbonDioxide;
        double? highest = view.Highest(s => s.Co2Ppm)?.Value;
        string peak = highest is { } h ? $"; highest {FigureWords.Number(h)}" : "";
        LinkLevelPanel.Caption(sheet, frame, $"Carbon dioxide, ppm{peak}; broken line: {FigureWords.Number(HeatView.StaleAirPpm)}");
        var axis = new AxisScale(0, Math.Clamp(1000 * Math.Ceiling(((highest ?? 0) + 100) / 1000), 3000, 100_000), frame.Bottom, frame.Top, false);
        TimeAxis.Grid(sheet, frame, layout.Time, view.Day.Ticks(view.EndMin));
        PlotPainter.UprightTicks(sheet, frame, axis, 3);
        TimeCurves.Draw(sheet, frame, TimeCurves.Of(view.Samples, s => s.Minute, s => s.Co2Ppm, layout.Time, axis), Palette.Ink, 4);
        // Over the curve: in a long day its halo would hide the line.
        float y = axis.Within(HeatView.StaleAirPpm);
        using SKPaint stale = PictureSheet.Pen(Palette.Demand, 4, 12, 8);
        sheet.Line(new(frame.Left, y), new(frame.Right, y), stale);
        PlotPainter.Frame(sheet, frame);
        TimeAxis.Ticks(sheet, frame, layout.Time, view.Day.Ticks(view.EndMin), view.Day.Tick);
    }
}
