using SkiaSharp;

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
            Assert.DoesNotContain(labels, l => l.Text.Contains("NaN", StringComparison.Ordinal) || l.Text.Contains('∞', StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Indices_All_CoverEveryReport() => Assert.Equal(RunTimeReports.All.Count, RunTimeReports.Indices.Count);

    [Fact]
    public void Draw_Day_LabelsItemsTakesChangesAndTheEnd()
    {
        IReadOnlyList<DrawnLabel> labels = RunTimeDrawing.DrawWithLabels(RunTimeReports.Day, RunTimeReports.Start).Labels;
        Assert.Equal("Everything lasts the day, with 3 changes", labels[0].Text);
        Assert.Contains(labels, l => l.Series == PictureTitle.NoteSeries && l.Text == "First to run out, at 08:07: File");
        Assert.Equal(["File", "Recorder", "Body transmitters", "Receiver in the follow car", "Cards"], labels.Where(l => l.Series == RunTimeBars.NameSeries).Select(l => l.Text));
        Assert.Contains(labels, l => l.Series == RunTimeBars.FiguresSeries && l.Text == " · 5 h 6 min a set, 4 sets, 2 needed");
        Assert.Equal(["12B", "15"], labels.Where(l => l.Series == RunTimeRibbon.TakeSeries).Select(l => l.Text));
        Assert.Equal(["1", "2", "3"], labels.Where(l => l.Series == RunTimeRibbon.ChangeSeries).Select(l => l.Text));
        Assert.Equal("At 10:20, after 12B take 3: Recorder: fresh batteries", labels.First(l => l.Series == RunTimeChanges.Series).Text);
        // 7:30 and 480 min.
        Assert.Equal("end 15:30", Assert.Single(labels, l => l.Series == RunTimeRibbon.EndSeries).Text);
    }

    [Fact]
    public void Draw_NoStart_CountsHoursFromTheStart()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = RunTimeDrawing.DrawWithLabels(RunTimeReports.Day);
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text == "By hours from the start");
        Assert.Equal("end 8:00", Assert.Single(labels, l => l.Series == RunTimeRibbon.EndSeries).Text);
        Assert.Contains("First to run out, after 37 min: File.", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_NotEnough_SaysSoInTitleAndRow()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = RunTimeDrawing.DrawWithLabels(RunTimeReports.NotEnough, RunTimeReports.Start);
        Assert.Equal("Not enough for the day: 3 of 4 run short", labels[0].Text);
        Assert.Contains(labels, l => l.Text == "Whatever is changed, something runs out during take 12B");
        Assert.Equal(3, labels.Count(l => l.Series == RunTimeBars.FiguresSeries && l.Text.StartsWith(" · not enough: ", StringComparison.Ordinal)));
        Assert.Contains(labels, l => l.Series == SymbolLegend.Series && l.Text == "nothing left");
        Assert.Contains("Recorder: 2 h a set, 2 sets, 4 needed, not enough.", picture.TextAlternative, StringComparison.Ordinal);
    }

    // Two sets of 2 h, the first changed at 95 min: usable to 95 + 120 = 215 min, on the margin to 245 min.
    [Fact]
    public void Sets_NotEnough_EndWithTheMarginOfTheLastSetThereIs()
    {
        RunTimeRow row = new RunTimeView(RunTimeReports.NotEnough, new(null)).Rows[0];
        Assert.Equal([new SetSpan(0, 95, 95), new SetSpan(95, 215, 245)], row.Sets);
        Assert.Equal(245, row.OutMin);
        Assert.Empty(new RunTimeView(RunTimeReports.NotEnough, new(null)).Rows[3].Sets);
    }

    // The end of the bar is measured on the picture, against the ticks.
    [Fact]
    public void Draw_ShortItem_HasNothingLeftFromWhereItEnds()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = RunTimeDrawing.DrawWithLabels(RunTimeReports.NotEnough, RunTimeReports.Start);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        DrawnLabel name = labels.First(l => l.Series == RunTimeBars.NameSeries), ten = labels.First(l => l.Text == "10:00"), two = labels.First(l => l.Text == "14:00");
        int first = Enumerable.Range(160, 900).First(x => bitmap.GetPixel(x, (int)name.Box.Bottom + 16) == Palette.Demand);
        // 245 min after 7:30 is 11:35.
        Assert.Equal(ten.Box.MidX + ((two.Box.MidX - ten.Box.MidX) * 95 / 240), first, 4.0);
    }

    [Fact]
    public void Draw_SixtyChanges_ListsTheFirstAndCountsTheRest()
    {
        IReadOnlyList<DrawnLabel> labels = RunTimeDrawing.DrawWithLabels(RunTimeReports.ManyChanges, RunTimeReports.Start).Labels;
        Assert.DoesNotContain(labels, l => l.Series == RunTimeRibbon.ChangeSeries);
        Assert.Equal("and 52 more", labels.Last(l => l.Series == RunTimeChanges.Series).Text);
    }

    [Fact]
    public async Task Draw_SameReport_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = RunTimeDrawing.Draw(RunTimeReports.Day, RunTimeReports.Start).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => RunTimeDrawing.Draw(RunTimeReports.Day, RunTimeReports.Start), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
        Assert.NotEqual(once, RunTimeDrawing.Draw(RunTimeReports.Day).Png);
    }

    [Fact]
    public void RunTimeFills_InBlackAndWhite_DifferInShape()
    {
        var box = new SKRect(20, 20, 220, 220);
        PaletteTests.Differ([("in use", s => RunTimeSymbols.Usable(s, box)), ("margin", s => RunTimeSymbols.Margin(s, box)), ("nothing left", s => RunTimeSymbols.Empty(s, box)), ("take", s => RunTimeSymbols.Take(s, box))], HeatDrawingTests.InkOnly);
        PaletteTests.Differ([("change", s => RunTimeSymbols.Change(s, new(120, 120), 30)), ("out", s => RunTimeSymbols.Out(s, new(120, 120)))]);
    }
}
