using System.Globalization;

namespace Quarterlight.Drawing;

/// <summary>The changes as a list, with the numbers they have in the picture.</summary>
internal static class RunTimeChanges
{
    public const string Series = "change list", NumberSeries = "change number";

    public static void Draw(PictureSheet sheet, RunTimeLayout layout)
    {
        float middle = layout.ChangesTop + (PictureTitle.LinePx / 2);
        for (int i = 0; i < layout.ChangeLines.Count; i++)
        {
            if (i < RunTimeLayout.MostListed)
            {
                sheet.LabelFrom((i + 1).ToString(CultureInfo.InvariantCulture), SheetLayout.MarginPx, middle, NumberSeries, true);
            }

            foreach (string line in layout.ChangeLines[i])
            {
                sheet.LabelFrom(line, SheetLayout.MarginPx + RunTimeLayout.ChangeNumberPx, middle, Series);
                middle += PictureTitle.LinePx;
            }
        }
    }
}
