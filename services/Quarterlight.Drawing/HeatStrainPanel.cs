using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>How people feel over the day: the predicted mean vote with its band of comfort, or a heat figure where that does not hold.</summary>
internal static class HeatStrainPanel
{
    public static void Draw(PictureSheet sheet, HeatLayout layout, HeatView view)
    {
        SKRect frame = layout.Strain;
        bool vote = view.Strain == StrainKind.Pmv;
        double? highest = view.Highest(view.StrainOf)?.Value, lowest = view.Lowest(view.StrainOf);
        string peak = highest is { } h ? $"; highest {FigureWords.Number(h, vote ? "0.0" : "0")}" : "";
        LinkLevelPanel.Caption(sheet, frame, HeatWords.Of(view.Strain) + (vote ? $"{peak}; hatched: comfort" : $", {TemperatureWords.Sign(view.Unit)}{peak}"));
        (double low, double high) = vote
            ? (Math.Clamp(Math.Floor(lowest ?? -1), -3, -1), Math.Clamp(Math.Ceiling(highest ?? 1), 1, 3))
            : Tens(lowest ?? TemperatureWords.Value(20, view.Unit), highest ?? TemperatureWords.Value(30, view.Unit));
        var axis = new AxisScale(low, high, frame.Bottom, frame.Top, false);
        if (vote)
        {
            Hatching.Fill(sheet, new(frame.Left, axis.Within(HeatView.ComfortPmv), frame.Right, axis.Within(-HeatView.ComfortPmv)), Hatch.Upright, Palette.BandGrounds[2], Palette.BandHatch, 14, 2);
        }

        TimeAxis.Grid(sheet, frame, layout.Time, view.Day.Ticks(view.EndMin));
        PlotPainter.UprightTicks(sheet, frame, axis, 3);
        TimeCurves.Draw(sheet, frame, TimeCurves.Of(view.Samples, s => s.Minute, view.StrainOf, layout.Time, axis), Palette.Ink, 4);
        PlotPainter.Frame(sheet, frame);
    }

    private static (double Low, double High) Tens(double lowest, double highest)
    {
        double low = 10 * Math.Floor(Math.Clamp(lowest, -200, 400) / 10), high = 10 * Math.Ceiling(Math.Clamp(highest, -200, 400) / 10);
        return (low, Math.Max(high, low + 10));
    }
}
