namespace Quarterlight.Drawing.Tests;

public class NoiseDrawingTests
{
    [Theory]
    [MemberData(nameof(NoiseReports.Indices), MemberType = typeof(NoiseReports))]
    public void Draw_AnyReport_IsLegibleWithNothingOverlapping(int index)
    {
        foreach (SpeedUnit unit in Enum.GetValues<SpeedUnit>())
        {
            (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = NoiseDrawing.DrawWithLabels(NoiseReports.All[index], unit);
            PictureChecks.SizeIsAsStated(picture);
            PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
            PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
        }
    }
}
