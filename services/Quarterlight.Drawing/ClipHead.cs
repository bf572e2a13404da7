using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The decision with its sign, the reason, what was recorded and the decisive figures.</summary>
internal static class ClipHead
{
    public const string OutcomeSeries = "outcome", ReasonSeries = "reason", SourceSeries = "source", FiguresSeries = "figures";

    private const float SignPx = 104;
    private const float OutcomePx = 56;
    private const float OutcomeLinePx = 68;
    private const float TextLeft = SheetLayout.MarginPx + SignPx + 28;
    private const float FullWidth = SheetLayout.WidthPx - (2 * SheetLayout.MarginPx);
    private const float Gap = 14;
    private const float FileWidth = 560;
    private const int MostReasonLines = 3;

    /// <summary>The lines of the head.</summary>
    /// <param name="Reason">Why.</param>
    /// <param name="Source">File, channel, length.</param>
    /// <param name="Figures">The decisive figures.</param>
    internal sealed record Words(IReadOnlyList<string> Reason, string Source, IReadOnlyList<string> Figures)
    {
        public float RestTop => SheetLayout.MarginPx + Math.Max(SignPx, OutcomeLinePx + (Reason.Count * PictureTitle.LinePx)) + Gap;

        public float BottomPx => RestTop + ((Figures.Count + 1) * PictureTitle.LinePx);

        public static Words For(ClipFacts facts)
        {
            string file = facts.FileName.Length > 0 ? UserText.Fit(facts.FileName, FileWidth) + " · " : "", length = " · " + ClipWords.Length(facts.DurationSeconds);
            float room = FullWidth - DrawingFonts.Width(file + length, PictureSheet.TextPx, false);
            return new(
                TextLines.WrapAtMost(facts.FirstReason, SheetLayout.WidthPx - SheetLayout.MarginPx - TextLeft, true, MostReasonLines),
                file + UserText.Fit(facts.ChannelWords, room) + length,
                TextLines.WrapAtMost(facts.KeyFigures, FullWidth, true, 2));
        }
    }

    public static void Draw(PictureSheet sheet, Words words, ClipFacts facts)
    {
        OutcomeSign.Draw(sheet, facts.Outcome, new(SheetLayout.MarginPx + (SignPx / 2), SheetLayout.MarginPx + (SignPx / 2)), SignPx / 2);
        string outcome = ClipWords.Of(facts.Outcome);
        sheet.Label(outcome, SKRect.Create(TextLeft, SheetLayout.MarginPx, DrawingFonts.Width(outcome, OutcomePx, true), OutcomeLinePx - 4), OutcomeSeries, Palette.Ink, true, OutcomePx);
        float y = SheetLayout.MarginPx + OutcomeLinePx + (PictureTitle.LinePx / 2);
        foreach (string line in words.Reason)
        {
            sheet.LabelFrom(line, TextLeft, y, ReasonSeries, true);
            y += PictureTitle.LinePx;
        }

        y = words.RestTop + (PictureTitle.LinePx / 2);
        foreach (string line in words.Figures)
        {
            sheet.LabelFrom(line, SheetLayout.MarginPx, y, FiguresSeries, true);
            y += PictureTitle.LinePx;
        }

        sheet.LabelFrom(words.Source, SheetLayout.MarginPx, y, SourceSeries);
    }
}
