using Quarterlight.Clips.Judgement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A bar for each item: its sets one after the other, each with its margin, changes between them, and what is missing.</summary>
internal sealed class RunTimeBars(PictureSheet sheet, RunTimeLayout layout, RunTimeView view)
{
    public const string NameSeries = "item", FiguresSeries = "item figures";

    private const float SignPx = 44;
    private const float RingsApartPx = 26;

    public void Draw()
    {
        for (int i = 0; i < view.Rows.Count; i++)
        {
            Row(view.Rows[i], layout.Bars[i]);
        }

        if (view.Rows.Count > 0)
        {
            TimeAxis.Ticks(sheet, layout.Bars[^1], layout.Time, view.Day.Ticks(view.AxisEndMin), view.Day.Tick);
        }
    }

    private void Row(RunTimeRow row, SKRect bar)
    {
        Words(row, bar);
        OutcomeSign.Draw(sheet, row.Item.Enough ? ClipOutcome.Use : ClipOutcome.Redo, new(bar.Left - 14 - (SignPx / 2), bar.MidY), SignPx / 2);
        using SKPaint ground = PictureSheet.Brush(Palette.Paper);
        sheet.Canvas.DrawRect(new(bar.Left, bar.Top, layout.Time.At(view.EndMin), bar.Bottom), ground);
        foreach (SetSpan set in row.Sets)
        {
            RunTimeSymbols.Usable(sheet, Box(set.FromMin, set.UsableMin));
            if (set.MarginMin > set.UsableMin)
            {
                RunTimeSymbols.Margin(sheet, Box(set.UsableMin, set.MarginMin));
            }
        }

        if (!row.Item.Enough && row.OutMin < view.EndMin)
        {
            RunTimeSymbols.Empty(sheet, Box(row.OutMin, view.EndMin));
        }

        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2.5f), end = PictureSheet.Pen(Palette.Ink, 5);
        sheet.Canvas.DrawRect(new(bar.Left, bar.Top, layout.Time.At(view.EndMin), bar.Bottom), edge);
        // Rings that would touch are left out: the upright lines still part the sets.
        bool crowded = row.Sets.Count > 2 && row.Sets.Skip(2).Zip(row.Sets.Skip(1)).Min(p => layout.Time.At(p.First.FromMin) - layout.Time.At(p.Second.FromMin)) < RingsApartPx;
        foreach (float x in row.Sets.Skip(1).Select(s => layout.Time.Within(s.FromMin)))
        {
            if (crowded)
            {
                sheet.Line(new(x, bar.Top), new(x, bar.Bottom), edge);
            }
            else
            {
                RunTimeSymbols.Change(sheet, new(x, bar.MidY), (bar.Height / 2) + 4);
            }
        }

        sheet.Line(new(layout.Time.At(view.EndMin), bar.Top), new(layout.Time.At(view.EndMin), bar.Bottom), end);
        if (row.IsFirst && view.FirstOutMin is { } minute)
        {
            RunTimeSymbols.Out(sheet, new(Math.Clamp(layout.Time.Within(minute), bar.Left + 20, bar.Right - 20), bar.MidY));
        }

        SKRect Box(double from, double to) => new(layout.Time.Within(from), bar.Top, layout.Time.Within(to), bar.Bottom);
    }

    private void Words(RunTimeRow row, SKRect bar)
    {
        string figures = (row.Item.Enough ? " · " : " · not enough: ") + RunTimeWords.Lasting(row.Item);
        float middle = bar.Top - (RunTimeLayout.NamePx / 2) + 1, room = layout.Time.At(view.EndMin) - 12 - SheetLayout.MarginPx - DrawingFonts.Width(figures, PictureSheet.TextPx, false);
        SKRect name = sheet.LabelFrom(UserText.Fit(row.Name, room, true), SheetLayout.MarginPx, middle, NameSeries, true);
        sheet.LabelFrom(figures, name.Right, middle, FiguresSeries);
    }
}
