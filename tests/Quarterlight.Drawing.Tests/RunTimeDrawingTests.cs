namespace Quarterlight.Drawing.Tests;

public class RunTimeDrawingTests
{
    [Theory]
    [MemberData(nameof(RunTimeReports.Indices), MemberType = typeof(RunTimeReports))]
    public void Draw_AnyReport_IsLegibleWithNothingOverlapping(int index)
    {
        foreach (DateTimeOffset? start in new DateTimeOffset?[] { null, RunTimeReports.Start })
        {
            (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = RunTimeDrawing.DrawWithLabels(RunTimeReports.All[index], start);
            PictureChecks.SizeIsAsStated(picture);
            PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
            PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
        }
    }
}
