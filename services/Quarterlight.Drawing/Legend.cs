using Quarterlight.Acoustics;
using Quarterlight.Placement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The words under the views: a line or more for each talker, then what the symbols mean.</summary>
internal sealed class Legend
{
    private const float LineHeight = 42;
    private const float TextLeft = SheetLayout.MarginPx + 62;
    private const float TextWidth = SheetLayout.WidthPx - SheetLayout.MarginPx - TextLeft;
    private const float KeyRow = 62;
    private const float RowGap = 12;

    private readonly List<(string Number, bool Placed, string Head, List<string> Lines)> rows = [];

    public Legend(Kit kit, Scene scene, PlanOption option)
    {
        foreach (Talker talker in scene.Talkers)
        {
            TalkerPlacement? placement = option.Placements.FirstOrDefault(p => p.TalkerId == talker.Id);
            string number = Callouts.Numbers(scene, [talker.Id]);
            string head = $"{talker.DisplayName}: {(placement is null ? "no microphone" : PlanText.MicrophoneName(kit, placement))}";
            string rest = placement is null ? "" : PlanText.Rigging(placement);
            List<string> heads = TextLines.Wrap(head, TextWidth, true);
            rows.Add((number, placement is not null, heads[0], [.. heads.Skip(1), .. TextLines.Wrap(rest, TextWidth, false)]));
        }
    }

    public float HeightPx => rows.Sum(r => ((1 + r.Lines.Count) * LineHeight) + RowGap) + ScaleBar.HeightPx + (3 * KeyRow) + SheetLayout.MarginPx;

    public void Draw(PictureSheet sheet, float top, double pxPerMeter)
    {
        ScaleBar.Draw(sheet, new(SheetLayout.MarginPx, top), pxPerMeter);
        float y = top + ScaleBar.HeightPx;
        foreach ((string number, bool placed, string head, List<string> lines) in rows)
        {
            SKSize size = Callouts.BadgeSize(number);
            var badge = SKRect.Create(SheetLayout.MarginPx, y + 2, size.Width, size.Height);
            if (placed)
            {
                Callouts.Microphone(sheet, number, badge);
            }
            else
            {
                Callouts.Talker(sheet, number, badge);
            }

            sheet.Words(head, TextLeft, y + 36, true);
            y += LineHeight;
            foreach (string line in lines)
            {
                sheet.Words(line, TextLeft, y + 34);
                y += LineHeight;
            }

            y += RowGap;
        }

        DrawKey(sheet, y);
    }

    private static void DrawKey(PictureSheet sheet, float top)
    {
        using SKPaint rule = PictureSheet.Pen(Palette.CarLine, 1.5f);
        sheet.Line(new(SheetLayout.MarginPx, top), new(SheetLayout.WidthPx - SheetLayout.MarginPx, top), rule);
        Entry(0, 0, "talker, face direction", at => TalkerPainter.DrawSymbol(sheet, at));
        Entry(0, 1, "microphone and aim", at => MicrophonePainter.DrawLines(sheet, new(at.X - 24, at.Y), PolarPattern.Subcardioid, 0, 1, 0.66f));
        Entry(0, 2, "camera", at => CameraPainter.DrawBody(sheet, new(at.X + 20, at.Y), 0));
        Entry(1, 0, "null: hears least", at => MicrophonePainter.DrawNull(sheet, new(at.X - 36, at.Y), 0, 0.8f));
        Entry(1, 1, "pattern, not to scale", at => MicrophonePainter.DrawOutline(sheet, at, PolarPattern.Cardioid, 0, 1, 0.4f));
        Entry(1, 2, "engine", at => CabinPainter.DrawEngine(sheet, at, true));

        void Entry(int row, int column, string words, Action<SKPoint> symbol)
        {
            float left = SheetLayout.MarginPx + (column == 0 ? 0 : column == 1 ? 450 : 900);
            float middle = top + 16 + ((row + 0.5f) * KeyRow);
            symbol(new(left + 42, middle));
            sheet.Words(words, left + 96, middle + 12);
        }
    }
}
