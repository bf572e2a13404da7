using Quarterlight.Clips.Judgement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The sign of an outcome: a disc with a tick, a lozenge with a bar and a dot, a square with a cross. Told apart without color.</summary>
internal static class OutcomeSign
{
    /// <summary>Draws a sign.</summary>
    /// <param name="sheet">Where to.</param>
    /// <param name="outcome">What it says.</param>
    /// <param name="at">Its middle.</param>
    /// <param name="radius">Half its width, pixels.</param>
    public static void Draw(PictureSheet sheet, ClipOutcome outcome, SKPoint at, float radius)
    {
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 0.07f * radius);
        using SKPaint stroke = PictureSheet.Pen(outcome == ClipOutcome.UseWithCare ? Palette.Ink : Palette.Paper, 0.24f * radius);
        using SKPaint ground = PictureSheet.Brush(outcome switch { ClipOutcome.Use => Palette.Usable, ClipOutcome.UseWithCare => Palette.Engine, _ => Palette.Demand });
        SKPoint P(float x, float y) => new(at.X + (x * radius), at.Y + (y * radius));
        switch (outcome)
        {
            case ClipOutcome.Use:
                sheet.Canvas.DrawCircle(at, 0.96f * radius, ground);
                sheet.Canvas.DrawCircle(at, 0.96f * radius, edge);
                sheet.Shape([P(-0.46f, 0.04f), P(-0.12f, 0.4f), P(0.48f, -0.36f)], false, stroke);
                break;
            case ClipOutcome.UseWithCare:
                SKPoint[] lozenge = [P(0, -0.96f), P(0.96f, 0), P(0, 0.96f), P(-0.96f, 0)];
                sheet.Shape(lozenge, true, ground);
                sheet.Shape(lozenge, true, edge);
                sheet.Line(P(0, -0.46f), P(0, 0.12f), stroke);
                using (SKPaint dot = PictureSheet.Brush(Palette.Ink))
                {
                    sheet.Canvas.DrawCircle(P(0, 0.46f), 0.15f * radius, dot);
                }

                break;
            default:
                var square = new SKRect(at.X - (0.86f * radius), at.Y - (0.86f * radius), at.X + (0.86f * radius), at.Y + (0.86f * radius));
                sheet.Canvas.DrawRect(square, ground);
                sheet.Canvas.DrawRect(square, edge);
                sheet.Line(P(-0.42f, -0.42f), P(0.42f, 0.42f), stroke);
                sheet.Line(P(-0.42f, 0.42f), P(0.42f, -0.42f), stroke);
                break;
        }
    }
}
