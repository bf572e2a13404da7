namespace Quarterlight.Drawing;

/// <summary>Draws a set of transmitters on the spectrum: carriers, neighbours, intermodulation products and what is not to be used.</summary>
public static class SpectrumDrawing
{
    /// <summary>Draws a spectrum map; the view is cropped to what is in use when the planned range is much wider, and says so.</summary>
    /// <param name="map">What to show.</param>
    /// <returns>A picture 1200 pixels wide; its height depends on how much there is to list.</returns>
    /// <exception cref="ArgumentException">A frequency is not a positive number, or an upper edge is below its lower one.</exception>
    public static DrawnPicture Draw(SpectrumMap map) => DrawWithLabels(map).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(SpectrumMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        Check(map);
        var view = new SpectrumView(map);
        var layout = SpectrumLayout.For(view);
        var key = new SpectrumKey(layout, view);
        int height = (int)Math.Ceiling(layout.KeyTop + key.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, height);
        PictureTitle.Draw(sheet, layout.TitleLines);
        for (int i = 0; i < layout.CropLines.Count; i++)
        {
            sheet.LabelFrom(layout.CropLines[i], SheetLayout.MarginPx, layout.CropTop + ((i + 0.5f) * SpectrumLayout.LinePx), PlotPainter.CaptionSeries);
        }

        new SpectrumPainter(sheet, layout, view).Draw();
        key.Draw(sheet);
        return (new(sheet.ToPng(), SpectrumText.Of(view), SheetLayout.WidthPx, height), sheet.Labels);
    }

    private static void Check(SpectrumMap map)
    {
        bool good = map.LowMHz > 0 && double.IsFinite(map.HighMHz) && map.HighMHz > map.LowMHz && map.GuardKHz >= 0
            && map.Channels.All(c => c.FrequencyMHz > 0 && double.IsFinite(c.FrequencyMHz))
            && map.Products.All(p => p.FrequencyMHz > 0 && double.IsFinite(p.FrequencyMHz))
            && map.Excluded.All(b => b.LowMHz > 0 && b.HighMHz >= b.LowMHz && double.IsFinite(b.HighMHz));
        if (!good)
        {
            throw new ArgumentException("A spectrum map needs positive frequencies and edges in order.", nameof(map));
        }
    }
}
