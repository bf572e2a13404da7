using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the parts of a link picture go; all panels share the distance axis.</summary>
internal sealed record LinkLayout(IReadOnlyList<string> TitleLines, float LadderTop, SKRect LevelFrame, SKRect? SnrFrame, AxisScale Distance, int HeightPx)
{
    public const float RowPx = 50;
    public const float CaptionPx = 46;
    public const float PanelCaptionPx = 68;
    public const float TicksPx = 48;
    private const float PlotLeft = SheetLayout.MarginPx + 84;
    private const float PlotRight = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float LevelPx = 560;
    private const float SnrPx = 280;
    private const float Gap = 14;

    public static LinkLayout For(LinkView view)
    {
        IReadOnlyList<string> title = PictureTitle.Lines(FigureWords.Rewritten(view.Report.Headline, view.Unit));
        float ladderTop = SheetLayout.MarginPx + (title.Count * PictureTitle.LinePx) + Gap;
        int rows = view.Bands.Count + (view.Report.LawfulRange is null ? 0 : 1);
        float y = ladderTop + CaptionPx + (rows * RowPx) + PanelCaptionPx;
        var level = new SKRect(PlotLeft, y, PlotRight, y + LevelPx);
        y = level.Bottom + TicksPx;
        SKRect? snr = null;
        if (view.HasSnr)
        {
            y += PanelCaptionPx;
            snr = new SKRect(PlotLeft, y, PlotRight, y + SnrPx);
            y += SnrPx + TicksPx;
        }

        y += CaptionPx + SheetLayout.MarginPx;
        return new(title, ladderTop, level, snr, new(view.LowM, view.HighM, PlotLeft, PlotRight, true), (int)Math.Ceiling(y));
    }
}
