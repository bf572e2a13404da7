using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the parts of a heat picture go; all share the time axis.</summary>
internal sealed record HeatLayout(
    IReadOnlyList<string> TitleLines, IReadOnlyList<string> Notes, SKRect Roll, SKRect Cool, SKRect Comfort, SKRect Temperature, SKRect Strain, SKRect CarbonDioxide, AxisScale Time, float KeyTop, int HeightPx)
{
    private const float PlotLeft = 176;
    private const float PlotRight = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float LanePx = 46;
    private const float TemperaturePx = 420;
    private const float ThinPx = 150;

    public static HeatLayout For(HeatView view, float keyPx)
    {
        IReadOnlyList<string> title = PictureTitle.Lines(HeatWords.Headline(view));
        IReadOnlyList<string> notes = PictureTitle.Notes(
        [
            view.Report.Strictest ? "Children, animals or people shut in: only the strictest limit counts" : "",
            .. HeatWords.Limits(view.Report),
            HeatWords.First(view),
        ]);
        float y = SheetLayout.MarginPx + ((title.Count + notes.Count) * PictureTitle.LinePx) + 14;
        SKRect roll = Lane(y), cool = Lane(roll.Bottom), comfort = Lane(cool.Bottom);
        var temperature = SKRect.Create(PlotLeft, comfort.Bottom + LinkLayout.PanelCaptionPx, PlotRight - PlotLeft, TemperaturePx);
        var strain = SKRect.Create(PlotLeft, temperature.Bottom + ClipLayout.TicksPx + LinkLayout.PanelCaptionPx, PlotRight - PlotLeft, ThinPx);
        var air = SKRect.Create(PlotLeft, strain.Bottom + LinkLayout.PanelCaptionPx + 20, PlotRight - PlotLeft, ThinPx);
        float key = air.Bottom + ClipLayout.TicksPx + 14;
        return new(title, notes, roll, cool, comfort, temperature, strain, air, new(0, view.EndMin, PlotLeft, PlotRight, false), key, (int)Math.Ceiling(key + keyPx + SheetLayout.MarginPx));

        static SKRect Lane(float top) => SKRect.Create(PlotLeft, top, PlotRight - PlotLeft, LanePx);
    }
}
