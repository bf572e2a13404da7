namespace Quarterlight.Drawing.Tests;

public class HeatDrawingTests
{
    [Theory]
    [MemberData(nameof(HeatReports.Indices), MemberType = typeof(HeatReports))]
    public void Draw_AnyReport_IsLegibleWithNothingOverlapping(int index)
    {
        foreach (TemperatureUnit unit in Enum.GetValues<TemperatureUnit>())
        {
            (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = HeatDrawing.DrawWithLabels(HeatReports.All[index], HeatReports.Start, unit);
            PictureChecks.SizeIsAsStated(picture);
            PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
            PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
        }
    }
}
