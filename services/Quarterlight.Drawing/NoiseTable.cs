using Quarterlight.Placement.Noise;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The table for the assistant director: speeds across, conditions down, in each cell a verdict's sign and a figure.</summary>
internal static class NoiseTable
{
    public const string SpeedSeries = "speed", RowSeries = "conditions", FastestSeries = "fastest", CellSeries = "cell";

    private const float CaptionPx = 54;
    private const float SpeedsPx = 46;
    private const float WordsPx = 48;
    private const float CellsPx = 52;
    private const float StackedPx = 90;
    private const float SignGap = 7;
    private const float SignPx = 34;
    private const float FullWidth = SheetLayout.WidthPx - (2 * SheetLayout.MarginPx);

    public static float HeightPx(NoiseView view) => Columns(view) == 0 ? 0 : CaptionPx + SpeedsPx + (view.Report.Table.Count * (WordsPx + (IsStacked(view) ? StackedPx : CellsPx))) + 12;

    public static void Draw(PictureSheet sheet, float top, NoiseView view)
    {
        int columns = Columns(view);
        if (columns == 0)
        {
            return;
        }

        string sign = SpeedWords.Sign(view.Unit);
        sheet.LabelFrom(view.Judged ? $"Worst talker's speech over noise, dB(A), by speed in {sign}" : $"Noise at the driver's ear, dB(A), by speed in {sign}", SheetLayout.MarginPx, top + (CaptionPx / 2), PlotPainter.CaptionSeries, true);
        float y = top + CaptionPx, width = FullWidth / columns;
        bool stacked = IsStacked(view);
        float cellsPx = stacked ? StackedPx : CellsPx;
        IReadOnlyList<SpeedNoise> head = view.Report.Table.MaxBy(r => r.Cells.Count)!.Cells;
        using SKPaint ground = PictureSheet.Brush(Palette.CarFill), rule = PictureSheet.Pen(Palette.CarLine, 1.5f);
        sheet.Canvas.DrawRect(SKRect.Create(SheetLayout.MarginPx, y, FullWidth, SpeedsPx), ground);
        for (int i = 0; i < columns; i++)
        {
            string speed = SpeedWords.Figure(head[i].SpeedKmPerHour, view.Unit);
            sheet.LabelFrom(speed, Middle(i) - (DrawingFonts.Width(speed, PictureSheet.TextPx, true) / 2), y + (SpeedsPx / 2), SpeedSeries, true);
        }

        y += SpeedsPx;
        foreach (NoiseRow row in view.Report.Table)
        {
            if (row != view.Report.Table[0])
            {
                sheet.Line(new(SheetLayout.MarginPx, y), new(SheetLayout.MarginPx + FullWidth, y), rule);
            }

            Words(sheet, view, row, y + (WordsPx / 2) + 3);
            for (int i = 0; i < Math.Min(row.Cells.Count, columns); i++)
            {
                Cell(sheet, row.Cells[i], new(Middle(i), y + WordsPx + (cellsPx / 2) - 3), stacked);
            }

            y += WordsPx + cellsPx;
        }

        float Middle(int column) => SheetLayout.MarginPx + ((column + 0.5f) * width);
    }

    private static int Columns(NoiseView view) => view.Report.Table.Count == 0 ? 0 : view.Report.Table.Max(r => r.Cells.Count);

    private static void Words(PictureSheet sheet, NoiseView view, NoiseRow row, float middle)
    {
        string fastest = NoiseWords.Row(view, row);
        float right = SheetLayout.MarginPx + FullWidth;
        if (fastest.Length > 0)
        {
            right -= DrawingFonts.Width(fastest, PictureSheet.TextPx, true);
            sheet.LabelFrom(fastest, right, middle, FastestSeries, true);
            right -= 24;
        }

        sheet.LabelFrom(UserText.Fit(UserText.Clean(row.Words), right - SheetLayout.MarginPx), SheetLayout.MarginPx, middle, RowSeries);
    }

    private static void Cell(PictureSheet sheet, SpeedNoise cell, SKPoint middle, bool stacked)
    {
        string words = Figure(cell);
        float text = DrawingFonts.Width(words, PictureSheet.TextPx, false);
        if (cell.Verdict is not { } verdict)
        {
            Write(middle.X - (text / 2), middle.Y);
        }
        else if (stacked)
        {
            NoiseSymbols.Verdict(sheet, verdict, new(middle.X, middle.Y - 22), SignPx / 2);
            Write(middle.X - (text / 2), middle.Y + 20);
        }
        else
        {
            float left = middle.X - (WidthOf(cell) / 2);
            NoiseSymbols.Verdict(sheet, verdict, new(left + (SignPx / 2), middle.Y), SignPx / 2);
            Write(left + SignPx + SignGap, middle.Y);
        }

        void Write(float left, float y)
        {
            if (words.Length > 0)
            {
                sheet.LabelFrom(words, left, y, CellSeries);
            }
        }
    }

    /// <summary>Speech over noise where there is a verdict, else the level.</summary>
    private static string Figure(SpeedNoise cell) =>
        (cell.Verdict is null ? HeatView.Finite(cell.NoiseDba) : HeatView.Finite(cell.WorstSnrDba)) is { } value ? FigureWords.Number(Math.Clamp(value, -199, 199)) : "";

    private static float WidthOf(SpeedNoise cell)
    {
        float words = DrawingFonts.Width(Figure(cell), PictureSheet.TextPx, false);
        return cell.Verdict is null ? words : SignPx + (words > 0 ? SignGap + words : 0);
    }

    /// <summary>True when sign and figure do not fit side by side, so that the figure stands under the sign.</summary>
    private static bool IsStacked(NoiseView view) => view.Judged && view.Report.Table.SelectMany(r => r.Cells).Max(WidthOf) + 14 > FullWidth / Columns(view);
}
