using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Drawing;

/// <summary>
/// Draws how long batteries, cards and files last over the day: a bar for each, with its sets, its margin and its changes, under the takes of the call sheet.
/// </summary>
public static class RunTimeDrawing
{
    /// <summary>Draws a report about batteries and media.</summary>
    /// <param name="report">The report.</param>
    /// <param name="start">Start of the day with the local offset from UTC; null shows hours from the start.</param>
    /// <returns>A picture 1200 pixels wide; the more items and changes, the higher.</returns>
    public static DrawnPicture Draw(RunTimeReport report, DateTimeOffset? start = null) => DrawWithLabels(report, start).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(RunTimeReport report, DateTimeOffset? start = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        var view = new RunTimeView(report, new(start));
        var key = RunTimeSymbols.Key(view);
        var layout = RunTimeLayout.For(view, key.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, layout.HeightPx);
        PictureTitle.Draw(sheet, layout.TitleLines, layout.Notes);
        new RunTimeRibbon(sheet, layout, view).Draw();
        new RunTimeBars(sheet, layout, view).Draw();
        RunTimeChanges.Draw(sheet, layout);
        key.Draw(sheet, layout.KeyTop);
        return (new(sheet.ToPng(), RunTimeText.Of(view), SheetLayout.WidthPx, layout.HeightPx), sheet.Labels);
    }
}
