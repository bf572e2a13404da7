using CsCheck;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class SpectrumDrawingTests
{
    [Theory]
    [MemberData(nameof(SpectrumMaps.Indices), MemberType = typeof(SpectrumMaps))]
    public void Draw_AnyMap_IsLegibleWithNothingOverlapping(int index)
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = SpectrumDrawing.DrawWithLabels(SpectrumMaps.All[index]);
        PictureChecks.SizeIsAsStated(picture);
        PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
        PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
    }

    [Fact]
    public void Draw_FewCarriers_NamesEachWithItsFrequency()
    {
        IReadOnlyList<DrawnLabel> labels = SpectrumDrawing.DrawWithLabels(SpectrumMaps.Eight).Labels;
        Assert.Equal(
            ["TX 1", "TX 2", "TX 3", "TX 4", "Unit B", "TX 5", "TX 6", "TX 7", "TX 8", "Unit C"],
            labels.Where(l => l.Series == SpectrumPainter.CarrierSeries).Select(l => l.Text));
        Assert.Contains(labels, l => l.Series == SpectrumPainter.FrequencySeries && l.Text == "518.2");
        Assert.Contains(labels, l => l.Series == SpectrumPainter.BlockSeries && l.Text == "A");
        Assert.Contains(labels, l => l.Series == SpectrumKey.ListSeries && l.Text == "A: not 526 to 527.5 MHz, a television channel");
        string[] legend = ["carrier, clean", "neighbour's carrier", "3rd-order product (lane 3rd)", "product on a carrier", "not to be used", "guard of 100 kHz"];
        Assert.All(legend, words => Assert.Contains(labels, l => l.Series == SpectrumKey.LegendSeries && l.Text == words));
    }

    [Fact]
    public void Draw_FortyCarriers_NumbersEachAndListsItBelow()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = SpectrumDrawing.DrawWithLabels(SpectrumMaps.Forty);
        float axis = labels.Where(l => l.Series == PlotPainter.TickSeries).Min(l => l.Box.Top);
        SpectrumChannel[] sorted = [.. SpectrumMaps.Forty.Channels.OrderBy(c => c.FrequencyMHz)];
        Assert.Equal(40, sorted.Length);
        for (int i = 0; i < sorted.Length; i++)
        {
            string number = CarrierLabels.Number(i);
            DrawnLabel[] badges = [.. labels.Where(l => l.Series == SpectrumPainter.CarrierSeries && l.Text == number)];
            Assert.Equal(2, badges.Length);
            Assert.Single(badges, l => l.Box.Bottom < axis);
            string line = Assert.Single(labels, l => l.Series == SpectrumKey.ListSeries && l.Text.EndsWith(" MHz " + sorted[i].Label + (sorted[i].IsClean ? "" : ", hit"), StringComparison.Ordinal)).Text;
            Assert.StartsWith(FigureWords.Number(sorted[i].FrequencyMHz, "0.000"), line, StringComparison.Ordinal);
        }

        Assert.Contains("Of 40 carriers", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_ClusterInAWideRange_IsCroppedAndSaysSo()
    {
        var view = new SpectrumView(SpectrumMaps.Forty);
        Assert.True(view.IsCropped);
        Assert.All(SpectrumMaps.Forty.Channels, c => Assert.True(view.Shows(c.FrequencyMHz)));
        Assert.Equal(2, view.Stretched.Count);
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = SpectrumDrawing.DrawWithLabels(SpectrumMaps.Forty);
        Assert.Contains(labels, l => l.Text.StartsWith("Cropped to ", StringComparison.Ordinal) && l.Text.Contains("470–970 MHz", StringComparison.Ordinal));
        Assert.Contains("excluded", string.Join(' ', labels.Where(l => l.Series == PlotPainter.CaptionSeries).Select(l => l.Text)), StringComparison.Ordinal);
        Assert.DoesNotContain("Cropped", SpectrumDrawing.Draw(SpectrumMaps.EvenlySpaced).TextAlternative, StringComparison.Ordinal);
        Assert.NotEmpty(picture.Png);
    }

    // Any carriers in any range: all of them are in the view, in the right order, and no stretch touches the next.
    [Fact]
    public void View_AnyCarriers_ShowsThemAllInOrder() =>
        Gen.Select(Gen.Double[470, 970].Array[1, 40], Gen.Double[0, 400]).Sample((frequencies, guardKHz) =>
        {
            var view = new SpectrumView(new()
            {
                Headline = "Any",
                LowMHz = 470,
                HighMHz = 970,
                GuardKHz = guardKHz,
                Channels = [.. frequencies.Select((f, i) => new SpectrumChannel($"{i}", f, true, false))],
            });
            var axis = new SpectrumAxis(view.Stretched, 90, 1168);
            Assert.Equal(frequencies.Length, view.Shown.Count);
            Assert.InRange(view.Stretched.Count, 1, 3);
            Assert.All(view.Stretched.Zip(view.Stretched.Skip(1)), p => Assert.True(p.First.HighMHz < p.Second.LowMHz));
            float[] at = [.. view.Shown.Select(c => axis.At(c.FrequencyMHz))];
            Assert.All(at, x => Assert.InRange(x, 90, 1168));
            Assert.All(at.Zip(at.Skip(1)), p => Assert.True(p.First <= p.Second));
        });

    // The bars are found by their color on the picture, and their distances compared with those of the frequencies.
    [Fact]
    public void Draw_Bars_StandWhereTheAxisSays()
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = SpectrumDrawing.DrawWithLabels(SpectrumMaps.EvenlySpaced);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        int row = (int)labels.First(l => l.Series == SpectrumPainter.LaneSeries).Box.Top - 32;
        DrawnLabel low = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "863"), high = labels.First(l => l.Series == PlotPainter.TickSeries && l.Text == "864");
        int[] ink = [.. Enumerable.Range(0, bitmap.Width).Where(x => bitmap.GetPixel(x, row) == Palette.Demand)];
        int[] starts = [.. ink.Where(x => !ink.Contains(x - 1))];
        Assert.Equal(6, starts.Length);
        for (int i = 0; i < starts.Length; i++)
        {
            int width = Enumerable.Range(0, 40).TakeWhile(k => ink.Contains(starts[i] + k)).Count();
            double mHz = 863 + ((starts[i] + (width / 2.0) - low.Box.MidX) / (high.Box.MidX - low.Box.MidX));
            Assert.Equal(863.2 + (0.3 * i), mHz, 0.005);
        }
    }

    [Fact]
    public void Of_Map_NamesTheDecisiveFigures()
    {
        string text = SpectrumDrawing.Draw(SpectrumMaps.Eight).TextAlternative;
        string[] figures = [SpectrumMaps.Eight.Headline, "Of 8 carriers 8 are clean", "TX 8 533.6", "Unit B 523.4", "guard of 100 kHz", "526 to 527.5 MHz, a television channel"];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
        // Eight carriers: 8 x 7 two-signal and 8 x 21 three-signal third-order products.
        Assert.Contains("There are 224 products of third and 0 of fifth order", text, StringComparison.Ordinal);
        Assert.Contains("The one carrier is clean. ", SpectrumDrawing.Draw(SpectrumMaps.One).TextAlternative, StringComparison.Ordinal);
        Assert.Contains("There are no products.", SpectrumDrawing.Draw(SpectrumMaps.One).TextAlternative, StringComparison.Ordinal);
        Assert.Contains("There is no own carrier.", SpectrumDrawing.Draw(SpectrumMaps.Nothing).TextAlternative, StringComparison.Ordinal);
        Assert.Contains("Of 6 carriers 0 are clean. Hit by a product: TX 1 863.2,", SpectrumDrawing.Draw(SpectrumMaps.EvenlySpaced).TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_OneCarrier_SaysThereAreNoProducts()
    {
        IReadOnlyList<DrawnLabel> labels = SpectrumDrawing.DrawWithLabels(SpectrumMaps.One).Labels;
        Assert.Contains(labels, l => l.Text == "no products");
        Assert.DoesNotContain(labels, l => l.Series == SpectrumKey.LegendSeries && l.Text.Contains("product", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Draw_SameMap_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = SpectrumDrawing.Draw(SpectrumMaps.Eight).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => SpectrumDrawing.Draw(SpectrumMaps.Eight), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
        Assert.NotEqual(once, SpectrumDrawing.Draw(SpectrumMaps.Eight with { Products = [] }).Png);
        Assert.NotEqual(once, SpectrumDrawing.Draw(SpectrumMaps.Eight with { Excluded = [] }).Png);
    }

    [Fact]
    public void Draw_FrequenciesOutOfOrder_Throws()
    {
        Assert.Throws<ArgumentException>(() => SpectrumDrawing.Draw(SpectrumMaps.Eight with { LowMHz = 700 }));
        Assert.Throws<ArgumentException>(() => SpectrumDrawing.Draw(SpectrumMaps.Eight with { Channels = [new("TX 1", double.NaN, true, false)] }));
        Assert.Throws<ArgumentException>(() => SpectrumDrawing.Draw(SpectrumMaps.Eight with { Excluded = [new(500, 490, "")] }));
    }

    [Fact]
    public void Spread_AnyPlaces_KeepsThePitchTheOrderAndTheBounds() =>
        Gen.Select(Gen.Float[0, 1000].Array[0, 30], Gen.Float[5, 60]).Sample((places, pitch) =>
        {
            float[] wanted = [.. places.Order()];
            IReadOnlyList<float> spread = LabelRow.Spread(wanted, pitch, 20, 980);
            float least = wanted.Length > 1 ? Math.Min(pitch, 960f / (wanted.Length - 1)) : 0;
            Assert.Equal(wanted.Length, spread.Count);
            Assert.All(spread, x => Assert.InRange(x, 19.9f, 980.1f));
            Assert.All(spread.Zip(spread.Skip(1)), p => Assert.True(p.Second - p.First >= least - 0.05f));
        });

    // Two labels wanted at one place move apart by half the pitch each: the least sum of squares by symmetry.
    [Fact]
    public void Spread_TwoAtOnePlace_MoveApartEvenly()
    {
        Assert.Equal([480f, 520f], LabelRow.Spread([500, 500], 40, 0, 1000));
        Assert.Equal([100f, 500f], LabelRow.Spread([100, 500], 40, 0, 1000));
        Assert.Equal([0f, 40f], LabelRow.Spread([0, 0], 40, 0, 1000));
    }
}
