using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Noise at the driver's ear by octave: each kind, and all together.</summary>
internal static class NoiseEarPanel
{
    public static void Draw(PictureSheet sheet, SKRect frame, NoiseView view)
    {
        (double low, double high) = NoiseView.Range([view.Report.Noise.LevelsDb, .. view.Kinds.Select(k => k.LevelsDb)]);
        var plot = new BandPlot(sheet, frame, low, high);
        LinkLevelPanel.Caption(sheet, frame, "At the driver's ear by octave, dB");
        plot.Axes();
        plot.Inside(() =>
        {
            NoiseSymbols.Total(sheet, plot.Points(view.Report.Noise.LevelsDb));
            for (int i = view.Kinds.Count - 1; i >= 0; i--)
            {
                NoiseSymbols.Kind(sheet, i, plot.Points(view.Kinds[i].LevelsDb));
            }
        });
        PlotPainter.Frame(sheet, frame);
    }
}
