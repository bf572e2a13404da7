using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class ClipDrawingTests
{
    [Theory]
    [MemberData(nameof(ClipViews.Indices), MemberType = typeof(ClipViews))]
    public void Draw_AnyClip_IsLegibleWithNothingOverlapping(int index)
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = ClipDrawing.DrawWithLabels(ClipViews.All[index]);
        PictureChecks.SizeIsAsStated(picture);
        PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
        PictureChecks.TextIsWholeAndShort(picture.TextAlternative);
    }

    [Fact]
    public void Indices_All_CoverEveryClip() => Assert.Equal(ClipViews.All.Count, ClipViews.Indices.Count);

    [Fact]
    public void Draw_ClipWithAPlan_LabelsEverythingAskedFor()
    {
        IReadOnlyList<DrawnLabel> labels = ClipDrawing.DrawWithLabels(ClipViews.Highway).Labels;
        Assert.Equal("Use with care", Text(labels, ClipHead.OutcomeSeries));
        Assert.Equal("Wind is heard for 14 of 83 s; it moves the capsule.", Text(labels, ClipHead.ReasonSeries));
        Assert.Equal("Speech over noise 23 dB · true peak -5.7 dBTP · -27 LUFS", Text(labels, ClipHead.FiguresSeries));
        Assert.Equal("S12_T03.wav · channel 1 of 2, Visor · 1:23", Text(labels, ClipHead.SourceSeries));
        Assert.Equal(["engine", "wind ?", "fan", "clean"], labels.Where(l => l.Series == TagRibbon.Series).Select(l => l.Text));
        Assert.Contains(labels, l => l.Series == PlotPainter.CaptionSeries && l.Text == "By octave, dB SPL, forecast beside measured");
        string[] legend = ["heard", "unsure: listen", "not heard", "level (rms)", "peak", "speech", "speech, forecast", "speech, measured", "noise, forecast", "noise, measured"];
        Assert.Equal(legend, labels.Where(l => l.Series == SymbolLegend.Series).Select(l => l.Text));
        foreach (string tick in new[] { "0:00", "0:15", "1:15" })
        {
            // Under the spectrum and under the level.
            Assert.Equal(2, labels.Count(l => l.Series == PlotPainter.TickSeries && l.Text == tick));
        }
    }

    [Fact]
    public void Draw_ChannelBetterThanTheClip_SaysItsOwnOutcome()
    {
        IReadOnlyList<DrawnLabel> labels = ClipDrawing.DrawWithLabels(ClipViews.Clipped with { Channel = 1 }).Labels;
        Assert.Equal("Redo", Text(labels, ClipHead.OutcomeSeries));
        Assert.Contains("channel 2 of 2 (use)", Text(labels, ClipHead.SourceSeries), StringComparison.Ordinal);
    }

    // Red triangles are looked for just above the line of full scale, at the times listed and away from them.
    [Fact]
    public void Draw_Clipping_StandsAtItsTimes()
    {
        ClipView view = ClipViews.WithChannel(ClipViews.Good, c => c with { Samples = c.Samples with { Clipping = new(2, 20, [new(3, 10), new(9, 10)]) } });
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = ClipDrawing.DrawWithLabels(view);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        ClipLayout layout = LayoutOf(view);
        int row = (int)(layout.Level.Top + ClipLayout.ClipLanePx - 12);
        int[] red = [.. Enumerable.Range((int)layout.Level.Left, (int)layout.Level.Width).Where(x => bitmap.GetPixel(x, row) == Palette.Demand)];
        Assert.NotEmpty(red);
        Assert.All(red, x => Assert.True(Math.Min(Math.Abs(x - layout.Time.At(3)), Math.Abs(x - layout.Time.At(9))) < 16));
        Assert.Contains(red, x => Math.Abs(x - layout.Time.At(3)) < 3);
        Assert.Contains(red, x => Math.Abs(x - layout.Time.At(9)) < 3);
        Assert.Contains(labels, l => l.Series == SymbolLegend.Series && l.Text == "clipping, 2 times");
        Assert.Contains("There are 2 clipping runs, the first at 0:03.0.", picture.TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_MoreClippingThanIsListed_SaysHowManyAreMarked() =>
        Assert.Contains(ClipDrawing.DrawWithLabels(ClipViews.Clipped).Labels, l => l.Series == SymbolLegend.Series && l.Text == "clipping, first 50 of 62");

    [Fact]
    public void Draw_Dropouts_HaveALaneOfTheirOwn()
    {
        IReadOnlyList<DrawnLabel> with = ClipDrawing.DrawWithLabels(ClipViews.Clipped).Labels, without = ClipDrawing.DrawWithLabels(ClipViews.Good).Labels;
        Assert.Equal(["speech", "dropouts"], with.Where(l => l.Series == ClipLevelPanel.LaneSeries).Select(l => l.Text));
        Assert.Equal(["speech"], without.Where(l => l.Series == ClipLevelPanel.LaneSeries).Select(l => l.Text));
        Assert.Contains(with, l => l.Text == "dropout, 3 times");
    }

    // Speech bars in the picture begin and end where the phrases do.
    [Fact]
    public void Draw_Speech_StandsAtItsTimes()
    {
        ClipLayout layout = LayoutOf(ClipViews.Good);
        using SKBitmap bitmap = SKBitmap.Decode(ClipDrawing.Draw(ClipViews.Good).Png);
        int row = (int)layout.Speech.MidY;
        int[] blue = [.. Enumerable.Range(0, bitmap.Width).Where(x => bitmap.GetPixel(x, row) == Palette.Speech)];
        int[] starts = [.. blue.Where(x => !blue.Contains(x - 1))], ends = [.. blue.Where(x => !blue.Contains(x + 1))];
        Assert.Equal(ClipViews.Good.Measures.Channels[0].Speech.Count, starts.Length);
        Assert.All(ClipViews.Good.Measures.Channels[0].Speech.Zip(starts.Zip(ends)), p =>
        {
            Assert.Equal(layout.Time.At(p.First.StartSeconds), p.Second.First, 3.0);
            Assert.Equal(layout.Time.At(p.First.EndSeconds), p.Second.Second, 3.0);
        });
    }

    // One loud band in one second: the brightest spot of the spectrogram lies at its time and frequency.
    [Fact]
    public void Draw_OneTone_IsBrightWhereTheAxesSay()
    {
        ClipView view = ClipViews.WithChannel(ClipViews.Good, c =>
        {
            int bands = c.Timeline.BandCentresHz.Count;
            float[] levels = [.. Enumerable.Repeat(-90f, c.Timeline.BandLevelsDb.Length)];
            int band = c.Timeline.BandCentresHz.ToList().FindIndex(hz => hz > 1000);
            for (int column = 0; column < c.Timeline.ColumnCount; column++)
            {
                double t = column * c.Timeline.ColumnSeconds;
                levels[(column * bands) + band] = t is > 6 and < 7 ? -20 : -90;
            }

            return c with { Timeline = c.Timeline with { BandLevelsDb = levels } };
        });
        ClipLayout layout = LayoutOf(view);
        using SKBitmap bitmap = SKBitmap.Decode(ClipDrawing.Draw(view).Png);
        SKColor loud = SpectrogramColors.At(1);
        List<SKPoint> bright = [];
        for (int y = (int)layout.Spectrum.Top + 3; y < layout.Spectrum.Bottom - 3; y++)
        {
            bright.AddRange(Enumerable.Range((int)layout.Spectrum.Left + 3, (int)layout.Spectrum.Width - 6).Where(x => bitmap.GetPixel(x, y) == loud).Select(x => new SKPoint(x, y)));
        }

        Assert.NotEmpty(bright);
        Assert.Equal(layout.Time.At(6), bright.Min(p => p.X), 5.0);
        Assert.Equal(layout.Time.At(7), bright.Max(p => p.X), 5.0);
        double hz = SpectrogramPanel.LowHz * Math.Pow(SpectrogramPanel.HighHz / SpectrogramPanel.LowHz, (layout.Spectrum.Bottom - bright.Average(p => p.Y)) / layout.Spectrum.Height);
        double expected = view.Measures.Channels[0].Timeline.BandCentresHz.First(f => f > 1000);
        Assert.InRange(hz / expected, 0.97, 1.03);
    }

    // Measured, not made up: a tone of 1 kHz from 2 to 3 s is brightest at its time and frequency.
    [Fact]
    public void Draw_MeasuredTone_IsBrightWhereItSounds()
    {
        const int Rate = 48000;
        var meter = new ClipMeter(Rate, 1);
        meter.Add([.. Enumerable.Range(0, 5 * Rate).Select(i => (float)((i / Rate == 2 ? 0.1 * Math.Sin(2 * Math.PI * 1000 * i / Rate) : 0) + (1e-3 * Math.Sin(0.37 * i * i))))]);
        ClipMeasures measures = meter.Finish();
        var view = new ClipView { Measures = measures, Verdict = ClipJudge.Judge(measures, ClipThresholds.Default), Channel = 0 };
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = ClipDrawing.DrawWithLabels(view);
        PictureChecks.LabelsAreApartLargeAndOnTheSheet(picture, labels);
        ClipLayout layout = LayoutOf(view);
        using SKBitmap bitmap = SKBitmap.Decode(picture.Png);
        float y = layout.Spectrum.Bottom - (float)(layout.Spectrum.Height * Math.Log(1000 / SpectrogramPanel.LowHz) / Math.Log(SpectrogramPanel.HighHz / SpectrogramPanel.LowHz));
        double Bright(double seconds, float dy) => Palette.Luminance(bitmap.GetPixel((int)layout.Time.At(seconds), (int)(y + dy)));
        Assert.True(Bright(2.5, 0) > 0.5);
        Assert.All(new[] { Bright(1.5, 0), Bright(3.5, 0), Bright(2.5, 60), Bright(2.5, -60) }, b => Assert.True(b < 0.3, $"{b:0.00}"));
    }

    [Fact]
    public void Draw_EightKilohertz_SaysNothingIsAbove()
    {
        IReadOnlyList<DrawnLabel> labels = ClipDrawing.DrawWithLabels(ClipViews.EightKilohertz).Labels;
        Assert.Equal("nothing above 4 kHz at this sample rate", Text(labels, SpectrogramPanel.MissingSeries));
        Assert.DoesNotContain(ClipDrawing.DrawWithLabels(ClipViews.Good).Labels, l => l.Series == SpectrogramPanel.MissingSeries);
    }

    [Fact]
    public void Draw_NothingToShow_SaysWhy()
    {
        (DrawnPicture silent, IReadOnlyList<DrawnLabel> silence) = ClipDrawing.DrawWithLabels(ClipViews.Silent);
        Assert.Equal("Digital silence", Text(silence, ClipHead.FiguresSeries));
        Assert.Equal("digital silence", Text(silence, SpectrogramPanel.MissingSeries));
        Assert.Contains("The channel is digital silence.", silent.TextAlternative, StringComparison.Ordinal);
        (DrawnPicture blink, IReadOnlyList<DrawnLabel> nothing) = ClipDrawing.DrawWithLabels(ClipViews.Blink);
        Assert.Equal("not listened for", Text(nothing, TagRibbon.NoneSeries));
        Assert.Equal("too short to tell", Text(nothing, OctavePanel.NoneSeries));
        Assert.Contains("too short to part speech from noise", blink.TextAlternative, StringComparison.Ordinal);
        Assert.StartsWith("No speech · ", Text(ClipDrawing.DrawWithLabels(ClipViews.WithoutSpeech).Labels, ClipHead.FiguresSeries), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Clip_NamesTheDecisiveFigures()
    {
        string text = ClipDrawing.Draw(ClipViews.Highway).TextAlternative;
        string[] figures =
        [
            "Use with care: Wind is heard for 14 of 83 s", "At 0:12 to 0:19, 0:41 to 0:48.", "Speech is 23 dB over noise", "-32 dBFS", "-55 dBFS", "-5.7 dBTP at 0:26", "-27 LUFS",
            "heard engine (93 %); unsure of wind (55 %); not heard fan (8 %), clean (4 %)", "within what is to be expected", "Forecast was 15 dB of speech over noise, measured 13 dB, give or take 4 dB",
            "farthest from the forecast at 8000 Hz: 6 dB less", "66, 59, 53, 46, 39, 33, 26", "S12_T03.wav, channel 1 of 2, Visor, 1:23 long",
        ];
        Assert.All(figures, f => Assert.Contains(f, text, StringComparison.Ordinal));
        Assert.StartsWith("Redo: 62 runs at full scale", ClipDrawing.Draw(ClipViews.Clipped).TextAlternative, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TooMuchToSay_KeepsReasonRatioAndComparison()
    {
        string text = ClipDrawing.Draw(ClipViews.OddNames with { Verdict = ClipViews.OddNames.Verdict with { Reasons = [.. Enumerable.Repeat(ClipViews.OddNames.Verdict.Reasons[0], 3)] } }).TextAlternative;
        Assert.StartsWith("Use with care: the supply of the follow car hums", text, StringComparison.Ordinal);
        Assert.Contains("Speech is 23 dB over noise", text, StringComparison.Ordinal);
        Assert.Contains("within what is to be expected", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draw_SameClip_GivesTheSameBytesAlsoSideBySide()
    {
        byte[] once = ClipDrawing.Draw(ClipViews.Good).Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => ClipDrawing.Draw(ClipViews.Good), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
        Assert.NotEqual(once, ClipDrawing.Draw(ClipViews.Good with { FileName = "other.wav" }).Png);
        Assert.NotEqual(once, ClipDrawing.Draw(ClipViews.WithChannel(ClipViews.Good, c => c with { Speech = [] })).Png);
    }

    [Fact]
    public void Draw_NoSuchChannelOrNoLength_Throws()
    {
        Assert.Throws<ArgumentException>(() => ClipDrawing.Draw(ClipViews.Good with { Channel = 2 }));
        Assert.Throws<ArgumentException>(() => ClipDrawing.Draw(ClipViews.Good with { Channel = -1 }));
        Assert.Throws<ArgumentException>(() => ClipDrawing.Draw(ClipViews.Good with { Measures = ClipViews.Good.Measures with { DurationSeconds = 0 } }));
    }

    [Theory]
    [InlineData(0, 0, "0:00")]
    [InlineData(59.96, 1, "1:00.0")]
    [InlineData(59.94, 1, "0:59.9")]
    [InlineData(0.254, 2, "0:00.25")]
    [InlineData(1800, 0, "30:00")]
    public void Time_AnySeconds_IsMinutesAndSeconds(double seconds, int decimals, string expected) => Assert.Equal(expected, ClipWords.Time(seconds, decimals));

    [Theory]
    [InlineData(0.1, 0.02)]
    [InlineData(12, 2)]
    [InlineData(83, 15)]
    [InlineData(1800, 300)]
    public void StepSeconds_AnyLength_GivesNoMoreThanSevenParts(double duration, double expected) => Assert.Equal(expected, TimeAxis.StepSeconds(duration));

    private static ClipLayout LayoutOf(ClipView view) => ClipLayout.For(new ClipFacts(view), 0);

    private static string Text(IEnumerable<DrawnLabel> labels, string series) => Assert.Single(labels, l => l.Series == series).Text;
}
