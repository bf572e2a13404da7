using Quarterlight.Placement.Noise;

using SkiaSharp;

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
            Assert.DoesNotContain(labels, l => l.Text.Contains("NaN", StringComparison.Ordinal) || l.Text.Contains('∞', StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Indices_All_CoverEveryReport() => Assert.Equal(NoiseReports.All.Count, NoiseReports.Indices.Count);

    [Fact]
    public void Draw_City_LabelsEverythingAskedFor()
    {
        IReadOnlyList<DrawnLabel> labels = NoiseDrawing.DrawWithLabels(NoiseReports.City).Labels;
        Assert.Equal("With care at 50 km/h; works up to 40 km/h, with care up to 75 km/h", labels[0].Text);
        string[] notes = ["63 dB(A) at the driver's ear, give or take 4 dB", "Worst talker, speech 6 dB(A) over noise: Passenger behind", "Loudest: tyres 62, wind 55, engine 53 dB(A)"];
        Assert.Equal(notes, labels.Where(l => l.Series == PictureTitle.NoteSeries).Select(l => l.Text));
        string[] legend = ["all together, 63 dB(A)", "tyres 62 dB(A)", "wind 55 dB(A)", "engine 53 dB(A)", "fan 49 dB(A)", "works", "with care: get wild lines", "unusable"];
        Assert.Equal(legend, labels.Where(l => l.Series == SymbolLegend.Series).Select(l => l.Text));
        Assert.Equal(["0", "20", "30", "50", "60", "80", "100", "120"], labels.Where(l => l.Series == NoiseTable.SpeedSeries).Select(l => l.Text));
        Assert.Equal(40, labels.Count(l => l.Series == NoiseTable.CellSeries));
        // (22 - 12) / 0.15 = 66.7 km/h.
        Assert.Equal("works to 67 km/h", labels.First(l => l.Series == NoiseTable.FastestSeries).Text);
        Assert.Equal("gap", labels.First(l => l.Series == NoiseTalkerPanel.GapSeries).Text);
        Assert.Equal(8, labels.Count(l => l.Series == NoiseTalkerPanel.GapSeries));
    }

    [Fact]
    public void Draw_FanOn_SaysWhyItDoesNotWork()
    {
        NoiseReport blown = NoiseReports.City with { Noise = NoiseReports.City.Noise with { Drive = NoiseReports.City.Noise.Drive with { FanStep = 1 } } };
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = NoiseDrawing.DrawWithLabels(blown);
        Assert.Contains(labels, l => l.Series == PictureTitle.NoteSeries && l.Text == "The fan is on: off for every take");
        Assert.Contains("The fan is on", picture.TextAlternative, StringComparison.Ordinal);
    }

    // A mile is 1.609344 km: 50 km/h are 31.1 mph, 100 km/h are 62.1 mph.
    [Fact]
    public void Draw_Miles_WritesEverySpeedInThem()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = NoiseDrawing.DrawWithLabels(NoiseReports.City, SpeedUnit.MilesPerHour);
        Assert.StartsWith("With care at 31 mph; works up to 25 mph", labels[0].Text, StringComparison.Ordinal);
        Assert.Equal(["0", "12", "19", "31", "37", "50", "62", "75"], labels.Where(l => l.Series == NoiseTable.SpeedSeries).Select(l => l.Text));
        Assert.DoesNotContain("km/h", picture.TextAlternative, StringComparison.Ordinal);
        Assert.DoesNotContain(labels, l => l.Text.Contains("km/h", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_NoTalkers_HasLevelsAndNoVerdicts()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = NoiseDrawing.DrawWithLabels(NoiseReports.NoTalkers);
        Assert.Equal("63 dB(A) at the driver's ear, at 50 km/h, give or take 4 dB", labels[0].Text);
        Assert.DoesNotContain(labels, l => l.Text.Contains("works", StringComparison.Ordinal) || l.Text.Contains("care", StringComparison.Ordinal) || l.Series == NoiseTalkerPanel.GapSeries);
        // 40 + 0.3 x 100.
        Assert.Equal("70", labels.Where(l => l.Series == NoiseTable.CellSeries).ElementAt(6).Text);
        Assert.Contains("70 at 100", picture.TextAlternative, StringComparison.Ordinal);
        Assert.DoesNotContain("works", picture.TextAlternative, StringComparison.Ordinal);
    }

    // In the first row green discs stand up to 60 km/h, orange lozenges at 80 and 100, a red square at 120.
    [Fact]
    public void Draw_City_SignsStandBesideTheirFigures()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = NoiseDrawing.DrawWithLabels(NoiseReports.City);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        SKColor[] expected = [Palette.Usable, Palette.Usable, Palette.Usable, Palette.Usable, Palette.Usable, Palette.Engine, Palette.Engine, Palette.Demand];
        DrawnLabel[] cells = [.. labels.Where(l => l.Series == NoiseTable.CellSeries).Take(8)];
        Assert.Equal(expected, cells.Select(c => bitmap.GetPixel((int)c.Box.Left - 7 - 29, (int)c.Box.MidY)));
    }

    [Fact]
    public void Of_City_NamesTheDecisiveFigures()
    {
        string text = NoiseDrawing.Draw(NoiseReports.City).TextAlternative;
        string[] figures = ["works up to 40 km/h", "63 dB(A)", "give or take 4 dB", "Passenger behind", "tyres 62", "Windows shut, rain: works to 40 km/h.", "All windows down: works at no speed."];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Kinds_Nine_AreFourAndTheRestTogether()
    {
        var view = new NoiseView(NoiseReports.Crowded, SpeedUnit.KmPerHour);
        Assert.Equal(NoiseView.MostKinds, view.Kinds.Count);
        Assert.Equal("5 more together", view.Kinds[^1].Words);
        // 78, 75, 72, 69 and 66 dB together: 10 lg(10^7.8 + 10^7.5 + 10^7.2 + 10^6.9 + 10^6.6) = 80.88.
        Assert.Equal(80.88, view.Kinds[^1].LevelDba, 0.01);
    }

    [Fact]
    public async Task Draw_SameReport_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = NoiseDrawing.Draw(NoiseReports.City).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => NoiseDrawing.Draw(NoiseReports.City), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
    }

    [Fact]
    public void NoiseMarks_InBlackAndWhite_DifferInShape()
    {
        PaletteTests.Differ([.. Enumerable.Range(0, NoiseView.MostKinds).Select<int, (string, Action<PictureSheet>)>(k => ($"kind {k}", s => Large(s, () => NoiseSymbols.Mark(s, k, new(15, 15)))))]);
        PaletteTests.Differ([.. Enum.GetValues<SceneVerdict>().Select<SceneVerdict, (string, Action<PictureSheet>)>(v => (v.ToString(), s => NoiseSymbols.Verdict(s, v, new(120, 120), 100)))]);
        var box = new SKRect(20, 20, 220, 220);
        PaletteTests.Differ([("over", s => NoiseSymbols.Over(s, box)), ("under", s => NoiseSymbols.Under(s, box))]);

        static void Large(PictureSheet sheet, Action draw)
        {
            sheet.Canvas.Scale(8);
            draw();
        }
    }
}
