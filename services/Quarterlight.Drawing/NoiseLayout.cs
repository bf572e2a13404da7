using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the parts of a noise picture go.</summary>
internal sealed record NoiseLayout(IReadOnlyList<string> TitleLines, IReadOnlyList<string> Notes, SKRect Ear, float KindsTop, SKRect? Talker, float TableTop, float KeyTop, int HeightPx)
{
    /// <summary>Room under the octave ticks for a row of figures.</summary>
    public const float GapRowPx = 46;

    private const float PlotLeft = 136;
    private const float PlotRight = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float EarPx = 360;
    private const float TalkerPx = 330;

    public static NoiseLayout For(NoiseView view, float kindsPx, float keyPx)
    {
        IReadOnlyList<string> title = PictureTitle.Lines(NoiseWords.Headline(view));
        IReadOnlyList<string> notes = PictureTitle.Notes([NoiseWords.Fan(view), view.Report.Verdict is null ? "" : NoiseWords.Level(view), NoiseWords.Worst(view), NoiseWords.Loudest(view), NoiseWords.DailyLimit(view)]);
        float y = SheetLayout.MarginPx + ((title.Count + notes.Count) * PictureTitle.LinePx) + LinkLayout.PanelCaptionPx + 8;
        var ear = SKRect.Create(PlotLeft, y, PlotRight - PlotLeft, EarPx);
        float kinds = ear.Bottom + ClipLayout.TicksPx + 8;
        y = kinds + kindsPx;
        SKRect? talker = null;
        if (view.Worst is not null)
        {
            talker = SKRect.Create(PlotLeft, y + LinkLayout.PanelCaptionPx + 4, PlotRight - PlotLeft, TalkerPx);
            y = talker.Value.Bottom + ClipLayout.TicksPx + GapRowPx;
        }

        float key = y + 16 + NoiseTable.HeightPx(view);
        return new(title, notes, ear, kinds, talker, y + 16, key, (int)Math.Ceiling(key + keyPx + SheetLayout.MarginPx));
    }
}
