using Quarterlight.Endurance.Heat;

using SkiaSharp;

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
            Assert.DoesNotContain(labels, l => l.Text.Contains("NaN", StringComparison.Ordinal) || l.Text.Contains('∞', StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Indices_All_CoverEveryReport() => Assert.Equal(HeatReports.All.Count, HeatReports.Indices.Count);

    [Fact]
    public void Draw_Summer_LabelsEverythingAskedFor()
    {
        IReadOnlyList<DrawnLabel> labels = HeatDrawing.DrawWithLabels(HeatReports.Summer, HeatReports.Start).Labels;
        Assert.Equal("Roll 9 min, cool 6 min: 16 takes, rolling 60 % of the day", Assert.Single(labels, l => l.Series == PictureTitle.Series).Text);
        string[] notes =
        [
            "Comfort: 9.4 min of rolling, 7.1 min at worst; the predicted mean vote", "Caution: 24 min of rolling, 18 min at worst; the heat index",
            "Stop: not met, 71 min at worst; stale air", "Cool 12 min before the first take, from 48 °C",
        ];
        Assert.Equal(notes, labels.Where(l => l.Series == PictureTitle.NoteSeries).Select(l => l.Text));
        Assert.Equal(["roll", "cool", "comfort"], labels.Where(l => l.Series == HeatRibbon.LaneSeries).Select(l => l.Text));
        Assert.Equal("air", Text(labels, HeatTemperaturePanel.AirSeries));
        Assert.Equal("felt (operative)", Text(labels, HeatTemperaturePanel.OperativeSeries));
        Assert.Equal("trim and seats", Text(labels, HeatTemperaturePanel.InteriorSeries));
        // The first take starts at 9:40 + 12 min and may roll on for 9.4 min: 10:01.4.
        Assert.Equal("rolling on: comfort limit at 10:01", Text(labels, HeatTemperaturePanel.LimitSeries));
        Assert.Equal(["rolling, fan off", "cooling between takes", "cooling before the first take", "comfort: PMV within 0.7"], labels.Where(l => l.Series == SymbolLegend.Series).Select(l => l.Text));
        // Under the temperatures and under the carbon dioxide, by the local clock.
        Assert.Equal(2, labels.Count(l => l.Series == PlotPainter.TickSeries && l.Text == "10:00"));
    }

    // 48 C is 118.4 F; 18 C is 64.4 F.
    [Fact]
    public void Draw_Fahrenheit_WritesEveryTemperatureInIt()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = HeatDrawing.DrawWithLabels(HeatReports.Summer, HeatReports.Start, TemperatureUnit.Fahrenheit);
        Assert.DoesNotContain(labels, l => l.Text.Contains("°C", StringComparison.Ordinal));
        Assert.DoesNotContain("°C", picture.TextAlternative, StringComparison.Ordinal);
        Assert.Contains(labels, l => l.Text == "Cool 12 min before the first take, from 118 °F");
        Assert.Contains("from 64 °F to 118 °F", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_NoRhythm_SaysSoPlainly()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = HeatDrawing.DrawWithLabels(HeatReports.Impossible, HeatReports.Start);
        Assert.Equal("No rhythm keeps the comfort limit: even short takes go over it", labels[0].Text);
        Assert.Contains(labels, l => l.Series == HeatRibbon.NoneSeries && l.Text == "no take stays under the limit");
        Assert.Contains(labels, l => l.Text == "Cooling gets the air no lower than 31 °C, from 48 °C");
        Assert.StartsWith("No rhythm keeps the comfort limit", picture.TextAlternative, StringComparison.Ordinal);
        // No vote holds, so the heat index stands in for it.
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text == "Heat index, °C; highest 38");
    }

    // The bars of the roll lane are measured on the picture: 12 to 21 min, 27 to 36 min and so on.
    [Fact]
    public void Draw_RollLane_IsFilledWhenItRolls()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = HeatDrawing.DrawWithLabels(HeatReports.Summer, HeatReports.Start);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        DrawnLabel lane = labels.First(l => l.Text == "roll"), ten = labels.First(l => l.Text == "10:00"), eleven = labels.First(l => l.Text == "11:00");
        float perMinute = (eleven.Box.MidX - ten.Box.MidX) / 60;
        int Orange(double minute) => Enumerable.Range((int)(ten.Box.MidX + ((minute - 20) * perMinute)) - 8, 16).Count(x => bitmap.GetPixel(x, (int)lane.Box.MidY) == Palette.Engine);
        Assert.All(new[] { 16.5, 31.5, 181.5 }, minute => Assert.True(Orange(minute) > 4, $"{minute}"));
        Assert.All(new[] { 6.0, 24, 39, 189 }, minute => Assert.Equal(0, Orange(minute)));
    }

    [Fact]
    public void Of_Summer_NamesTheDecisiveFigures()
    {
        string text = HeatDrawing.Draw(HeatReports.Summer, HeatReports.Start).TextAlternative;
        string[] figures = ["Roll 9 min, cool 6 min", "9.4 min", "7.1 min at worst", "48 °C", "from 18 °C to 48 °C", "2900 ppm", "over 2500 ppm", "from 09:40 to 13:40", "People differ"];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_HalfMinutes_CoolingIsRoundedUp()
    {
        HeatReport report = HeatReports.Summer with { PrecoolMin = 40.5, Rhythm = HeatReports.Summer.Rhythm with { CoolMin = 11.5 } };
        string text = HeatDrawing.Draw(report, HeatReports.Start).TextAlternative;
        Assert.Contains("cool 12 min", text, StringComparison.Ordinal);
        Assert.Contains("Cool 41 min before the first take", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ChildrenAboard_SaysTheStrictestLimitOnce()
    {
        string text = HeatDrawing.Draw(HeatReports.Strict, HeatReports.Start).TextAlternative;
        Assert.Contains("only the strictest limit counts", text, StringComparison.Ordinal);
        Assert.Contains("The limit: ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Stop: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draw_SameReport_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = HeatDrawing.Draw(HeatReports.Summer, HeatReports.Start).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => HeatDrawing.Draw(HeatReports.Summer, HeatReports.Start), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
        Assert.NotEqual(once, HeatDrawing.Draw(HeatReports.Summer, HeatReports.Start.AddHours(1)).Png);
    }

    [Fact]
    public void HeatFills_InBlackAndWhite_DifferInShape()
    {
        var box = new SKRect(20, 20, 220, 220);
        PaletteTests.Differ([.. Enum.GetValues<HeatBlockKind>().Select<HeatBlockKind, (string, Action<PictureSheet>)>(k => (k.ToString(), s => HeatSymbols.Block(s, k, box)))], InkOnly);
    }

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(0.5, "30 s")]
    [InlineData(0.999, "59 s")]
    [InlineData(9.4, "9.4 min")]
    [InlineData(9.97, "9.9 min")]
    [InlineData(119.4, "119 min")]
    [InlineData(125, "2 h 5 min")]
    [InlineData(180, "3 h")]
    public void Length_Minutes_IsWrittenAsTheCrewSaysIt(double minutes, string words) => Assert.Equal(words, DayTime.Length(minutes));

    [Fact]
    public void Ticks_ByTheClock_AreWholeStepsOfIt()
    {
        var day = new DayTime(new DateTimeOffset(2031, 1, 1, 22, 50, 0, TimeSpan.Zero));
        Assert.Equal(["23:00", "23:30", "00:00", "00:30", "01:00", "01:30"], day.Ticks(180).Select(day.Tick));
        Assert.Equal(["0:00", "0:30", "1:00", "1:30", "2:00"], new DayTime(null).Ticks(120 + 30).Select(new DayTime(null).Tick).Take(5));
    }

    // Only the ink of edges and hatching counts: the grounds differ in color alone.
    internal const double InkOnly = 0.1;

    private static string Text(IEnumerable<DrawnLabel> labels, string series) => Assert.Single(labels, l => l.Series == series).Text;
}
