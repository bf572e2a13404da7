using Quarterlight.Radio.Link;

namespace Quarterlight.Drawing;

/// <summary>
/// Draws a link check: how far reception holds at each availability, and level and signal over noise against distance, with what
/// is needed, the noise, the lawful level and the gap asked about.
/// </summary>
public static class LinkDrawing
{
    /// <summary>Draws a link report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="unit">In what distances are written.</param>
    /// <param name="targetSnrDb">Audio signal over noise asked for in dB; when null, what the curve has at the level needed is shown instead.</param>
    /// <returns>A picture 1200 pixels wide; an analogue link has a second panel and is higher.</returns>
    public static DrawnPicture Draw(LinkReport report, DistanceUnit unit = DistanceUnit.Metres, double? targetSnrDb = null) =>
        DrawWithLabels(report, unit, targetSnrDb).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(LinkReport report, DistanceUnit unit = DistanceUnit.Metres, double? targetSnrDb = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        var view = new LinkView(report, unit, targetSnrDb);
        var layout = LinkLayout.For(view);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, layout.HeightPx);
        PictureTitle.Draw(sheet, layout.TitleLines);
        new AvailabilityLadder(sheet, layout, view).Draw();
        new LinkLevelPanel(sheet, layout, view).Draw();
        if (layout.SnrFrame is { } frame)
        {
            LinkSnrPanel.Draw(sheet, layout, frame, view);
        }

        return (new(sheet.ToPng(), LinkText.Of(view), SheetLayout.WidthPx, layout.HeightPx), sheet.Labels);
    }
}
