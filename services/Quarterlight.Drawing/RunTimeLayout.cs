using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the parts of a picture of batteries and media go; all bars share the time axis.</summary>
internal sealed record RunTimeLayout(
    IReadOnlyList<string> TitleLines, IReadOnlyList<string> Notes, float CaptionMiddle, SKRect Takes, SKRect? Changes, IReadOnlyList<SKRect> Bars, IReadOnlyList<IReadOnlyList<string>> ChangeLines,
    float ChangesTop, AxisScale Time, float KeyTop, int HeightPx)
{
    public const float NamePx = 46;
    public const float ChangeNumberPx = 62;
    public const int MostListed = 8;

    private const float PlotLeft = 160;
    private const float PlotRight = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float LanePx = 52;
    private const float BarPx = 44;
    private const float RowGap = 12;
    private const int MostChangeLines = 2;

    public static RunTimeLayout For(RunTimeView view, float keyPx)
    {
        IReadOnlyList<string> title = PictureTitle.Lines(RunTimeWords.Headline(view));
        IReadOnlyList<string> notes = PictureTitle.Notes([RunTimeWords.First(view), RunTimeWords.Broken(view), RunTimeWords.Basis(view)]);
        float y = SheetLayout.MarginPx + ((title.Count + notes.Count) * PictureTitle.LinePx) + 10;
        float caption = y + 24;
        y += 52;
        var takes = SKRect.Create(PlotLeft, y, PlotRight - PlotLeft, view.Takes.Count > 0 ? LanePx : 0);
        y = takes.Bottom;
        SKRect? changes = view.Swaps.Count > 0 ? SKRect.Create(PlotLeft, y + 6, PlotRight - PlotLeft, LanePx + 8) : null;
        y = changes?.Bottom ?? y;
        List<SKRect> bars = [];
        foreach (RunTimeRow _ in view.Rows)
        {
            bars.Add(SKRect.Create(PlotLeft, y + NamePx, PlotRight - PlotLeft, BarPx));
            y = bars[^1].Bottom + RowGap;
        }

        y += ClipLayout.TicksPx - RowGap + 8;
        float changesTop = y;
        float width = SheetLayout.WidthPx - (2 * SheetLayout.MarginPx) - ChangeNumberPx;
        List<IReadOnlyList<string>> lines = [.. view.Swaps.Take(MostListed).Select(s => TextLines.WrapAtMost(RunTimeWords.Change(view, s), width, false, MostChangeLines))];
        if (view.Swaps.Count > MostListed)
        {
            lines.Add([$"and {view.Swaps.Count - MostListed} more"]);
        }

        y += lines.Count > 0 ? (lines.Sum(l => l.Count) * PictureTitle.LinePx) + 16 : 0;
        return new(title, notes, caption, takes, changes, bars, lines, changesTop, new(0, view.AxisEndMin, PlotLeft, PlotRight, false), y, (int)Math.Ceiling(y + keyPx + SheetLayout.MarginPx));
    }
}
