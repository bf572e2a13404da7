using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Where the parts of a clip's picture go; ribbon, spectrum and level share the time axis.</summary>
internal sealed record ClipLayout(ClipHead.Words Head, SKRect Ribbon, SKRect Spectrum, SKRect Level, SKRect Speech, SKRect? Dropouts, SKRect Octaves, float KeyTop, AxisScale Time, int HeightPx)
{
    public const float CaptionPx = 56;
    public const float TicksPx = 50;
    public const float TagRowPx = 46;
    public const float ClipLanePx = 40;
    public const float NotePx = 42;

    /// <summary>Room above the octaves for the highest figure of their axis, which stands half above the frame.</summary>
    public const float TopTickPx = 12;

    private const float PlotLeft = 176;
    private const float PlotRight = SheetLayout.WidthPx - SheetLayout.MarginPx - 8;
    private const float SpectrumPx = 448;
    private const float LevelPx = 300;
    private const float LanePx = 44;
    private const float OctavesPx = 330;

    public static ClipLayout For(ClipFacts facts, float keyPx)
    {
        var head = ClipHead.Words.For(facts);
        float y = head.BottomPx + CaptionPx;
        var ribbon = new SKRect(PlotLeft, y, PlotRight, y + (TagRowPx * (facts.Channel.Tags is null ? 0 : ClipWords.Tags.Count)));
        y = ribbon.Bottom + CaptionPx + 6;
        var spectrum = new SKRect(PlotLeft, y, PlotRight, y + SpectrumPx);
        y = spectrum.Bottom + TicksPx + CaptionPx;
        var level = new SKRect(PlotLeft, y, PlotRight, y + LevelPx);
        var speech = new SKRect(PlotLeft, level.Bottom, PlotRight, level.Bottom + LanePx);
        SKRect? dropouts = facts.Dropouts.Count > 0 ? new SKRect(PlotLeft, speech.Bottom, PlotRight, speech.Bottom + LanePx) : null;
        bool bars = facts.Octaves.Series.Count > 0;
        y = (dropouts?.Bottom ?? speech.Bottom) + TicksPx + CaptionPx + (NotePx * OctavePanel.Notes(facts).Count) + (bars ? TopTickPx : 0);
        var octaves = new SKRect(PlotLeft, y, PlotRight, y + (bars ? OctavesPx : 0));
        float key = octaves.Bottom + (bars ? TicksPx + 12 : 0);
        return new(head, ribbon, spectrum, level, speech, dropouts, octaves, key, new(0, facts.DurationSeconds, PlotLeft, PlotRight, false), (int)Math.Ceiling(key + keyPx + SheetLayout.MarginPx));
    }
}
