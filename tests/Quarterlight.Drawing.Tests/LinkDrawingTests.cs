using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class LinkDrawingTests
{
    [Theory]
    [MemberData(nameof(LinkReports.Indices), MemberType = typeof(LinkReports))]
    public void Draw_AnyReport_IsLegibleWithNothingOverlapping(int index)
    {
        foreach (DistanceUnit unit in Enum.GetValues<DistanceUnit>())
        {
            (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.All[index], unit, unit == DistanceUnit.Feet ? 40 : null);
            PictureChecks.SizeIsAsStated(picture);
            PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
            PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
        }
    }

    [Fact]
    public void Draw_AnalogueLink_LabelsEverythingAskedFor()
    {
        IReadOnlyList<DrawnLabel> labels = LinkDrawing.DrawWithLabels(LinkReports.Fm, targetSnrDb: 40).Labels;
        // -40 dBm at 5 m and 40 dB a decade: -40 - 40 log10(60 / 5) = -83.2 dBm; the builder's SNR is that plus 132.
        Assert.Equal("gap 60 m: -83 dBm, SNR 49 dB", Text(labels, LinkLevelPanel.GapSeries));
        Assert.Equal("needed -92 dBm", Text(labels, LinkLevelPanel.NeededSeries));
        Assert.Equal("noise -104 dBm", Text(labels, LinkLevelPanel.NoiseSeries));
        Assert.Equal("lawful level", Text(labels, LinkLevelPanel.LawfulSeries));
        Assert.Equal("level", Text(labels, LinkLevelPanel.LevelSeries));
        Assert.Equal("target 40 dB", Text(labels, LinkSnrPanel.TargetSeries));
        Assert.Equal("lawful level: 95 % to 1.1 m", Text(labels, AvailabilityLadder.LawfulSeries));
        Assert.Equal(["99 % to 45 m", "95 % to 60 m", "90 % to 70 m", "50 % to 100 m"], labels.Where(l => l.Series == AvailabilityLadder.Series).Select(l => l.Text));
        Assert.StartsWith("Fall back to 45 m at most", Text(labels.Take(1), PictureTitle.Series), StringComparison.Ordinal);
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text.Contains("dBm", StringComparison.Ordinal));
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text.Contains("antennas, m", StringComparison.Ordinal));
        foreach (string tick in new[] { "5", "10", "20", "50", "100" })
        {
            // Under both panels; the upright axes' ticks stand left of the frames.
            Assert.Equal(2, labels.Count(l => l.Series == PlotPainter.TickSeries && l.Text == tick && l.Box.MidX > SheetLayout.MarginPx + 84));
        }
    }

    // 1 ft = 0.3048 m: 45 m are 147.6 ft, 60 m are 196.9 ft, 100 m are 328.1 ft.
    [Fact]
    public void Draw_Feet_WritesEveryDistanceInFeet()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.Fm, DistanceUnit.Feet);
        Assert.Equal("99 % to 148 ft", labels.First(l => l.Series == AvailabilityLadder.Series).Text);
        Assert.StartsWith("gap 197 ft: ", Text(labels, LinkLevelPanel.GapSeries), StringComparison.Ordinal);
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text.Contains("antennas, ft", StringComparison.Ordinal));
        Assert.Contains("50 % to 328 ft", picture.TextAlternative, StringComparison.Ordinal);
        string figures = picture.TextAlternative[LinkReports.Fm.Headline.Length..];
        Assert.DoesNotContain(" m", figures.Replace(" more", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_DigitalLink_HasOnePanelAndSaysTheMargin()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.Digital);
        Assert.True(picture.HeightPx < LinkDrawing.Draw(LinkReports.Fm).HeightPx);
        Assert.DoesNotContain(labels, l => l.Series == LinkSnrPanel.TargetSeries || l.Text.Contains("SNR", StringComparison.Ordinal));
        // -37 - 30 log10(90 / 5) = -74.7 dBm, 11.3 dB over -86.
        Assert.Equal("gap 90 m: -75 dBm, margin 11 dB", Text(labels, LinkLevelPanel.GapSeries));
    }

    [Fact]
    public void Draw_NoLawfulLevel_DrawsNoneAndSaysSo()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.FmWithoutLawfulLevel);
        Assert.DoesNotContain(labels, l => l.Text.Contains("lawful", StringComparison.Ordinal));
        Assert.Contains("no licence-exempt level", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_GapBeyondTheModel_SaysSoAndMarksWhereItEnds()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.FmBeyondTheModel);
        Assert.EndsWith("(outside the model)", Text(labels, LinkLevelPanel.GapSeries), StringComparison.Ordinal);
        Assert.Equal("model ends at 800 m", Text(labels, LinkLevelPanel.ModelSeries));
        Assert.Contains("outside what the path model covers, 2 m to 800 m", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_HoldsNowhere_SaysSoForEveryShare()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.FmHoldsNowhere);
        Assert.Equal(["99 % nowhere", "95 % nowhere", "90 % nowhere", "50 % nowhere"], labels.Where(l => l.Series == AvailabilityLadder.Series).Select(l => l.Text));
        Assert.Contains("Reception holds at no distance", picture.TextAlternative, StringComparison.Ordinal);
    }

    // The bars are measured on the picture: on a logarithmic axis they are as long as the logarithms of their ranges ask.
    [Fact]
    public void Draw_Bars_EndWhereTheAxisSays()
    {
        var view = new LinkView(LinkReports.Fm, DistanceUnit.Metres, null);
        var layout = LinkLayout.For(view);
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.Fm);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        float ten = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "10").Box.MidX;
        float hundred = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "100").Box.MidX;
        DrawnLabel bar = labels.First(l => l.Text == "99 % to 45 m");
        int gap = (int)layout.Distance.At(60);
        int end = Enumerable.Range((int)bar.Box.Right + 10, 1200 - (int)bar.Box.Right - 10)
            .Last(x => Math.Abs(x - gap) > 8 && Palette.Luminance(bitmap.GetPixel(x, (int)bar.Box.MidY)) < 0.1);
        double expected = ten + ((hundred - ten) * Math.Log10(4.5));
        Assert.Equal(expected, end, 3.0);
    }

    // Curve and marker are looked for on the picture, against the ticks of the level axis.
    [Fact]
    public void Draw_CurveAndMarker_LieAtTheLevelsTold()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = LinkDrawing.DrawWithLabels(LinkReports.Fm);
        AxisScale distance = LinkLayout.For(new(LinkReports.Fm, DistanceUnit.Metres, null)).Distance;
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        DrawnLabel high = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "-40"), low = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "-80");
        float perDb = (low.Box.MidY - high.Box.MidY) / 40;
        // At 20 m the builder's level is -40 - 40 log10(4) = -64.1 dBm.
        int x = (int)distance.At(20);
        int[] blue = [.. Enumerable.Range((int)high.Box.MidY, (int)(low.Box.MidY - high.Box.MidY)).Where(y => bitmap.GetPixel(x, y) == Palette.Curve)];
        Assert.NotEmpty(blue);
        Assert.Equal(high.Box.MidY + (24.1 * perDb), blue.Average(), 3.0);
        // At the gap it is -83.2 dBm; seven pixels beside the gap's line only the marker is ink there.
        int beside = (int)distance.At(60) + 7;
        int[] ink = [.. Enumerable.Range((int)low.Box.MidY - 10, 60).Where(y => Palette.Luminance(bitmap.GetPixel(beside, y)) < 0.05)];
        Assert.InRange(ink.Length, 10, 22);
        Assert.Equal(high.Box.MidY + (43.2 * perDb), ink.Average(), 3.0);
    }

    [Fact]
    public void Of_Report_NamesTheDecisiveFigures()
    {
        string text = LinkDrawing.Draw(LinkReports.Fm, targetSnrDb: 40).TextAlternative;
        string[] figures = [LinkReports.Fm.Headline, "gap of 60 m", "-83 dBm", "8 dB", "49 dB", "-92 dBm", "95.2 %", "99 % to 45 m", "50 % to 100 m", "-104 dBm", "-153 dBm", "95 % to 1.1 m", "40 dB"];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_LongHeadline_KeepsGapRangesAndLaw()
    {
        string text = LinkDrawing.Draw(LinkReports.LongWinded).TextAlternative;
        string[] figures = ["gap of 60 m", "99 % to 45 m", "-153 dBm"];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Draw_SameReport_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = LinkDrawing.Draw(LinkReports.Fm).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => LinkDrawing.Draw(LinkReports.Fm), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
        Assert.NotEqual(once, LinkDrawing.Draw(LinkReports.Fm with { GapM = 50 }).Png);
        Assert.NotEqual(once, LinkDrawing.Draw(LinkReports.Fm with { NoiseDbm = -100 }).Png);
    }

    [Fact]
    public void Share_NearCertainty_IsNotRoundedUp()
    {
        Assert.Equal("over 99.9 %", FigureWords.Share(0.9996));
        Assert.Equal("99.9 %", FigureWords.Share(0.999));
        Assert.Equal("under 0.1 %", FigureWords.Share(0));
        Assert.Equal("0 dB", $"{FigureWords.Number(-0.4)} dB");
        Assert.Equal("10 m", FigureWords.Distance(9.97, DistanceUnit.Metres));
    }

    private static string Text(IEnumerable<DrawnLabel> labels, string series) => Assert.Single(labels, l => l.Series == series).Text;
}
