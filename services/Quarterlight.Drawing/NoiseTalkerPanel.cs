using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Speech of the worst talker against the noise, both at the microphone, with the gap between them filled.</summary>
internal sealed class NoiseTalkerPanel(PictureSheet sheet, SKRect frame, NoiseView view)
{
    public const string SpeechSeries = "speech", NoiseSeries = "noise", GapSeries = "gap";

    public void Draw()
    {
        TalkerNoise talker = view.Worst!;
        (double low, double high) = NoiseView.Range([talker.SpeechLevelsDb, talker.NoiseLevelsDb]);
        var plot = new BandPlot(sheet, frame, low, high);
        const string Caption = "At the microphone, dB: ";
        LinkLevelPanel.Caption(sheet, frame, Caption + UserText.Fit(view.WorstName, frame.Right - SheetLayout.MarginPx - DrawingFonts.Width(Caption, PictureSheet.TextPx, false)));
        plot.Axes();
        IReadOnlyList<SKPoint> speech = plot.Points(talker.SpeechLevelsDb), noise = plot.Points(talker.NoiseLevelsDb);
        plot.Inside(() =>
        {
            plot.Between(speech, noise, box => NoiseSymbols.Over(sheet, box));
            plot.Between(noise, speech, box => NoiseSymbols.Under(sheet, box));
        });
        PlotPainter.Curve(sheet, frame, noise, Palette.Ink, 5, 12, 8);
        PlotPainter.Curve(sheet, frame, speech, Palette.Speech, 7);
        PlotPainter.Frame(sheet, frame);
        Labels(speech, noise);
        Gaps(plot, talker);
    }

    private void Labels(IReadOnlyList<SKPoint> speech, IReadOnlyList<SKPoint> noise)
    {
        var placer = new LabelPlacer(SKRect.Inflate(frame, -8, -8));
        foreach (SKPoint p in new[] { speech, noise }.SelectMany(line => PlotPainter.Along(line, frame, 12)))
        {
            placer.Avoid(SKRect.Create(p.X - 3, p.Y - 3, 6, 6), 14);
        }

        foreach ((IReadOnlyList<SKPoint> line, string series, SKColor color) in new[] { (speech, SpeechSeries, Palette.Speech), (noise, NoiseSeries, Palette.Ink) })
        {
            SKPoint[] anchors = [.. PlotPainter.Along(line, SKRect.Inflate(frame, -20, -1), 40)];
            if (anchors.Length > 0)
            {
                (SKPoint anchor, SKRect box) = placer.PlaceAlong(anchors, PlotPainter.PlateSize(series), 10);
                PlotPainter.Plate(sheet, series, anchor, box, series, color);
            }
        }
    }

    /// <summary>Speech over noise of each band, under the bands.</summary>
    private void Gaps(BandPlot plot, TalkerNoise talker)
    {
        const string Words = "gap";
        float below = ClipLayout.TicksPx + (NoiseLayout.GapRowPx / 2);
        sheet.LabelFrom(Words, frame.Left - 14 - DrawingFonts.Width(Words, PictureSheet.TextPx, true), frame.Bottom + below, GapSeries, true);
        for (int i = 0; i < OctaveBands.Count; i++)
        {
            double gap = talker.SpeechLevelsDb[i] - talker.NoiseLevelsDb[i];
            if (double.IsFinite(gap))
            {
                plot.Below(i, (Math.Round(gap) > 0 ? "+" : "") + FigureWords.Number(gap), below, GapSeries, true);
            }
        }
    }
}
