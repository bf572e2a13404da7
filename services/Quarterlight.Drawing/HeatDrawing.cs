using Quarterlight.Endurance.Heat;

namespace Quarterlight.Drawing;

/// <summary>
/// Draws a day of rolling and cooling: when the fan is off and when it cools, what the cabin does, how it feels, and how stale the air gets.
/// </summary>
public static class HeatDrawing
{
    /// <summary>Draws a report about heat.</summary>
    /// <param name="report">The report.</param>
    /// <param name="start">Start of the day, with the local offset from UTC.</param>
    /// <param name="unit">In what temperatures are written.</param>
    /// <returns>A picture 1200 pixels wide; its height depends on how much there is to say.</returns>
    public static DrawnPicture Draw(HeatReport report, DateTimeOffset start, TemperatureUnit unit = TemperatureUnit.Celsius) => DrawWithLabels(report, start, unit).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(HeatReport report, DateTimeOffset start, TemperatureUnit unit = TemperatureUnit.Celsius)
    {
        ArgumentNullException.ThrowIfNull(report);
        var view = new HeatView(report, new(start), unit);
        var key = HeatSymbols.Key(view);
        var layout = HeatLayout.For(view, key.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, layout.HeightPx);
        PictureTitle.Draw(sheet, layout.TitleLines, layout.Notes);
        new HeatRibbon(sheet, layout, view).Draw();
        new HeatTemperaturePanel(sheet, layout, view).Draw();
        HeatStrainPanel.Draw(sheet, layout, view);
        HeatAirPanel.Draw(sheet, layout, view);
        key.Draw(sheet, layout.KeyTop);
        return (new(sheet.ToPng(), HeatText.Of(view), SheetLayout.WidthPx, layout.HeightPx), sheet.Labels);
    }
}
