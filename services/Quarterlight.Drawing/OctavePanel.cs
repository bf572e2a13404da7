using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Speech and noise by octave, measured beside forecast when there is a plan to compare with.</summary>
internal static class OctavePanel
{
    public const string NoteSeries = "note", NoneSeries = "no octaves";

    private const double LeastSpanDb = 40;
    private const double WidestSpanDb = 90;
    private const float FilledShare = 0.84f;
    private const int MostNotes = 2;

    /// <summary>Lines between caption and panel: what the comparison says.</summary>
    public static IReadOnlyList<string> Notes(ClipFacts facts) => facts.View.Comparison is { } comparison
        ? TextLines.WrapAtMost(UserText.Clean(comparison.Words), SheetLayout.WidthPx - (2 * SheetLayout.MarginPx), false, MostNotes) : [];

    public static void Draw(PictureSheet sheet, ClipLayout layout, ClipFacts facts)
    {
        SKRect frame = layout.Octaves;
        IReadOnlyList<string> notes = Notes(facts);
        bool bars = facts.Octaves.Series.Count > 0;
        float notesTop = frame.Top - (bars ? 12 + ClipLayout.TopTickPx : 0) - (notes.Count * ClipLayout.NotePx);
        string caption = facts.View.Comparison is { } comparison
            ? "By octave, dB SPL" + (comparison.TiedToSpeech ? ", tied to the forecast speech" : ", forecast beside measured")
            : $"By octave, {facts.Octaves.Unit}";
        SKRect head = sheet.LabelFrom(bars ? caption : "By octave:", SheetLayout.MarginPx, notesTop - 22, PlotPainter.CaptionSeries, true);
        for (int i = 0; i < notes.Count; i++)
        {
            sheet.LabelFrom(notes[i], SheetLayout.MarginPx, notesTop + ((i + 0.5f) * ClipLayout.NotePx), NoteSeries);
        }

        if (!bars)
        {
            sheet.LabelFrom(facts.Channel.IsSilent ? "digital silence" : "too short to tell", head.Right + 12, head.MidY, NoneSeries);
            return;
        }

        Bars(sheet, frame, facts.Octaves);
    }

    /// <summary>Range of the levels axis, in tens.</summary>
    internal static (double LowDb, double HighDb) Range(OctaveFigures octaves)
    {
        double[] levels = [.. octaves.Bars.SelectMany(b => b.LevelsDb).OfType<double>()];
        if (levels.Length == 0)
        {
            return (-100, -60);
        }

        double high = 10 * Math.Ceiling((levels.Max() + 1) / 10);
        double low = 10 * Math.Floor((levels.Min() - 4) / 10);
        return (Math.Clamp(low, high - WidestSpanDb, high - LeastSpanDb), high);
    }

    private static void Bars(PictureSheet sheet, SKRect frame, OctaveFigures octaves)
    {
        (double lowDb, double highDb) = Range(octaves);
        var axis = new AxisScale(lowDb, highDb, frame.Bottom, frame.Top, false);
        PlotPainter.UprightTicks(sheet, frame, axis, 5);
        float room = frame.Width / octaves.Bars.Count, width = room * FilledShare / octaves.Series.Count;
        for (int i = 0; i < octaves.Bars.Count; i++)
        {
            OctaveBar octave = octaves.Bars[i];
            float middle = frame.Left + ((i + 0.5f) * room), left = middle - (width * octaves.Series.Count / 2);
            for (int k = 0; k < octaves.Series.Count; k++)
            {
                if (octave.LevelsDb[k] is { } db)
                {
                    ClipSymbols.Octave(sheet, octaves.Series[k], new(left + (k * width), axis.Within(db), left + ((k + 1) * width), frame.Bottom));
                }
            }

            string words = octave.CentreHz >= 1000 ? $"{FigureWords.Number(octave.CentreHz / 1000)}k" : FigureWords.Number(octave.CentreHz);
            sheet.LabelFrom(words, middle - (DrawingFonts.Width(words, PictureSheet.TextPx, false) / 2), frame.Bottom + (ClipLayout.TicksPx / 2) + 2, PlotPainter.TickSeries);
        }

        PlotPainter.Frame(sheet, frame);
    }
}
