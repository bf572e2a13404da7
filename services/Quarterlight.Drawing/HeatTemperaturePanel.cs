using Quarterlight.Endurance.Heat;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Air, operative temperature and trim over the day, with the moment the limit kept would be met by rolling on.</summary>
internal sealed class HeatTemperaturePanel(PictureSheet sheet, HeatLayout layout, HeatView view)
{
    public const string AirSeries = "air", OperativeSeries = "operative", InteriorSeries = "interior", LimitSeries = "limit";

    // Below this a ground behind each take would be a grey veil.
    private const float LeastGroundPx = 8;
    private const float LabelSpacing = 24;

    private readonly SKRect frame = layout.Temperature;

    public void Draw()
    {
        (double low, double high) = Range();
        var axis = new AxisScale(low, high, frame.Bottom, frame.Top, false);
        LinkLevelPanel.Caption(sheet, frame, $"In the cabin, {TemperatureWords.Sign(view.Unit)}, by {view.Day.AxisWords}");
        Grounds();
        TimeAxis.Grid(sheet, frame, layout.Time, view.Day.Ticks(view.EndMin));
        PlotPainter.UprightTicks(sheet, frame, axis, 6);
        IReadOnlyList<IReadOnlyList<SKPoint>> interior = Lines(s => s.InteriorC), operative = Lines(s => s.OperativeC), air = Lines(s => s.AirC);
        TimeCurves.Draw(sheet, frame, interior, Palette.Demand, 4, 14, 7, 3, 7);
        TimeCurves.Draw(sheet, frame, operative, Palette.Ink, 4, 12, 8);
        TimeCurves.Draw(sheet, frame, air, Palette.Curve, 6);
        float? limit = LimitLine();
        PlotPainter.Frame(sheet, frame);
        TimeAxis.Ticks(sheet, frame, layout.Time, view.Day.Ticks(view.EndMin), view.Day.Tick);
        Labels(limit, (air, "air", AirSeries, Palette.Curve), (operative, "felt (operative)", OperativeSeries, Palette.Ink), (interior, "trim and seats", InteriorSeries, Palette.Demand));

        IReadOnlyList<IReadOnlyList<SKPoint>> Lines(Func<HeatSample, double> celsius) =>
            TimeCurves.Of(view.Samples, s => s.Minute, s => TemperatureWords.Value(celsius(s), view.Unit), layout.Time, axis);
    }

    private (double Low, double High) Range()
    {
        double[] all = [.. view.Samples.SelectMany(s => new[] { s.AirC, s.InteriorC, s.OperativeC }).Where(double.IsFinite).Select(c => TemperatureWords.Value(c, view.Unit))];
        double step = view.Unit == TemperatureUnit.Fahrenheit ? 10 : 5, least = 3 * step;
        double low = all.Length == 0 ? TemperatureWords.Value(15, view.Unit) : step * Math.Floor((Math.Clamp(all.Min(), -200, 400) - 1) / step);
        double high = all.Length == 0 ? low : step * Math.Ceiling((Math.Clamp(all.Max(), -200, 400) + 1) / step);
        return (low, Math.Max(high, low + least));
    }

    private void Grounds()
    {
        HeatBlock[] rolls = [.. view.Blocks.Where(b => b.Kind == HeatBlockKind.Roll)];
        if (rolls.Length == 0 || rolls.Average(b => layout.Time.Within(b.EndMin) - layout.Time.Within(b.StartMin)) < LeastGroundPx)
        {
            return;
        }

        using SKPaint ground = PictureSheet.Brush(Palette.CarFill);
        foreach (HeatBlock roll in rolls)
        {
            sheet.Canvas.DrawRect(new(layout.Time.Within(roll.StartMin), frame.Top, layout.Time.Within(roll.EndMin), frame.Bottom), ground);
        }
    }

    private float? LimitLine()
    {
        if (view.RollingOn is not { } met)
        {
            return null;
        }

        float x = layout.Time.Within(met.Minute);
        using SKPaint halo = PictureSheet.Pen(Palette.Paper, 7), pen = PictureSheet.Pen(Palette.Demand, 4, 10, 6);
        sheet.Line(new(x, frame.Top), new(x, frame.Bottom), halo);
        sheet.Line(new(x, frame.Top), new(x, frame.Bottom), pen);
        return x;
    }

    private void Labels(float? limit, params (IReadOnlyList<IReadOnlyList<SKPoint>> Lines, string Words, string Series, SKColor Color)[] curves)
    {
        var placer = new LabelPlacer(SKRect.Inflate(frame, -8, -8));
        SKPoint[] upright = limit is { } at ? [.. PlotPainter.Along([new(at, frame.Top), new(at, frame.Bottom)], frame, 12)] : [];
        foreach (SKPoint p in curves.SelectMany(c => TimeCurves.Along(c.Lines, frame, 12)).Concat(upright))
        {
            placer.Avoid(SKRect.Create(p.X - 3, p.Y - 3, 6, 6), 14);
        }

        if (view.RollingOn is { } met)
        {
            Place($"rolling on: {HeatWords.Of(met.Limit.Kind)} limit {view.Day.When(met.Minute)}", [.. upright.Where((_, i) => i % 3 == 1)], LimitSeries, Palette.Demand, true);
        }

        foreach ((IReadOnlyList<IReadOnlyList<SKPoint>> lines, string words, string series, SKColor color) in curves)
        {
            IReadOnlyList<SKPoint> along = TimeCurves.Along(lines, SKRect.Inflate(frame, -20, -1), LabelSpacing);
            if (along.Count > 0)
            {
                Place(words, [.. along.Where((_, i) => i % Math.Max(1, along.Count / 24) == 0)], series, color);
            }
        }

        void Place(string words, IReadOnlyList<SKPoint> anchors, string series, SKColor edge, bool bold = false)
        {
            (SKPoint anchor, SKRect box) = placer.PlaceAlong(anchors, PlotPainter.PlateSize(words, bold), 8);
            PlotPainter.Plate(sheet, words, anchor, box, series, edge, bold);
        }
    }
}
