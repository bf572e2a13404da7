using Quarterlight.Placement.Noise;

namespace Quarterlight.Drawing;

/// <summary>
/// Draws a noise forecast: what is loud at the driver's ear by octave, the worst talker's speech against the noise on the microphone, and the table of
/// speeds and conditions for the assistant director.
/// </summary>
public static class NoiseDrawing
{
    /// <summary>Draws a report about noise.</summary>
    /// <param name="report">The report; without talkers there are levels and no verdicts.</param>
    /// <param name="unit">In what speeds are written.</param>
    /// <returns>A picture 1200 pixels wide; talkers and rows of the table make it higher.</returns>
    public static DrawnPicture Draw(NoiseReport report, SpeedUnit unit = SpeedUnit.KmPerHour) => DrawWithLabels(report, unit).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(NoiseReport report, SpeedUnit unit = SpeedUnit.KmPerHour)
    {
        ArgumentNullException.ThrowIfNull(report);
        var view = new NoiseView(report, unit);
        SymbolLegend kinds = NoiseSymbols.Kinds(view), key = NoiseSymbols.Key(view);
        var layout = NoiseLayout.For(view, kinds.HeightPx, key.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, layout.HeightPx);
        PictureTitle.Draw(sheet, layout.TitleLines, layout.Notes);
        NoiseEarPanel.Draw(sheet, layout.Ear, view);
        kinds.Draw(sheet, layout.KindsTop);
        if (layout.Talker is { } talker)
        {
            new NoiseTalkerPanel(sheet, talker, view).Draw();
        }

        NoiseTable.Draw(sheet, layout.TableTop, view);
        key.Draw(sheet, layout.KeyTop);
        return (new(sheet.ToPng(), NoiseText.Of(view), SheetLayout.WidthPx, layout.HeightPx), sheet.Labels);
    }
}
