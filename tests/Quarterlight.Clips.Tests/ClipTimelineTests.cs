using Made = Quarterlight.Clips.Tests.Spectrum.Sound;

namespace Quarterlight.Clips.Tests;

public class ClipTimelineTests
{
    private const int Rate = 48_000;

    [Fact]
    public void Finish_FullRate_HasSixtyFourBandsEvenlySpaced()
    {
        ClipTimeline timeline = Of(new float[Rate]);
        Assert.Equal(64, timeline.BandCentresHz.Count);
        double step = timeline.BandCentresHz[1] / timeline.BandCentresHz[0];
        Assert.All(timeline.BandCentresHz.Zip(timeline.BandCentresHz.Skip(1)), p => Assert.Equal(step, p.Second / p.First, 1e-9));
        Assert.Equal(50 * Math.Sqrt(step), timeline.BandCentresHz[0], 1e-6);
        Assert.Equal(16_000 / Math.Sqrt(step), timeline.BandCentresHz[^1], 1e-6);
        Assert.All(Of(new float[8_000], 8_000).BandCentresHz, hz => Assert.InRange(hz, 50, 4_000));
    }

    // A sine of full scale is 0 dBFS (AES17) in its band, in every column whose frame lies inside, and 3 dB more in neighbouring bands together at most.
    [Theory]
    [InlineData(1_000)]
    [InlineData(5_000)]
    [InlineData(12_000)]
    public void Finish_Sine_ReadsItsLevelInItsBand(double hz)
    {
        ClipTimeline timeline = Of(Made.Sine(hz, 0.1, 1));
        int band = Enumerable.Range(0, 64).MinBy(b => Math.Abs(Math.Log(timeline.BandCentresHz[b] / hz)));
        for (int c = 0; c < timeline.ColumnCount; c++)
        {
            double near = Enumerable.Range(band - 1, 3).Sum(b => Math.Pow(10, timeline.BandLevelsDb.Span[(c * 64) + b] / 10));
            Assert.Equal(-20, 10 * Math.Log10(near), 0.2);
            Assert.Equal(-20, timeline.RmsDb.Span[c], c == timeline.ColumnCount - 1 ? 1.0 : 0.2);
            Assert.Equal(-20, timeline.PeakDb.Span[c], 0.1);
        }
    }

    // White noise has the same density everywhere: the level of a band is that of its width, narrow bands too.
    [Fact]
    public void Finish_WhiteNoise_ReadsTheWidthOfEachBand()
    {
        ClipTimeline timeline = Of(Made.Noise(_ => 1e-8, 10, 4));
        double step = timeline.BandCentresHz[1] / timeline.BandCentresHz[0];
        for (int b = 0; b < 64; b++)
        {
            double mean = Enumerable.Range(0, timeline.ColumnCount).Average(c => Math.Pow(10, timeline.BandLevelsDb.Span[(c * 64) + b] / 10));
            double width = timeline.BandCentresHz[b] * (Math.Sqrt(step) - (1 / Math.Sqrt(step)));
            Assert.Equal(10 * Math.Log10(2e-8 * width), 10 * Math.Log10(mean), 0.8);
        }
    }

    [Fact]
    public void Finish_LongClip_MergesColumnsAndKeepsPlacesAndMeans()
    {
        // 100 s at 8 kHz: hops of 256 samples, 3125 of them, two to a column.
        const int rate = 8_000;
        float[] x = Made.Sine(1_000, 0.1, 100, rate);
        x.AsSpan(50 * rate).Clear();
        x[(80 * rate) + 5] = 0.5f;
        ClipTimeline timeline = Of(x, rate);
        Assert.Equal(2 * 256.0 / rate, timeline.ColumnSeconds);
        Assert.Equal(1563, timeline.ColumnCount);
        Assert.Equal(-20, timeline.RmsDb.Span[100], 0.1);
        Assert.True(timeline.RmsDb.Span[1000] < -150);
        int loud = (int)((80 + (5.0 / rate)) / timeline.ColumnSeconds);
        Assert.Equal(20 * Math.Log10(0.5), timeline.PeakDb.Span[loud], 1e-3);
        Assert.Equal(timeline.ColumnCount * timeline.BandCentresHz.Count, timeline.BandLevelsDb.Length);
    }

    [Fact]
    public void Finish_NotWanted_IsEmpty()
    {
        var meter = new ClipMeter(Rate, 1, new() { Timeline = false });
        meter.Add(new float[Rate]);
        Assert.Equal(0, meter.Finish().Channels[0].Timeline.ColumnCount);
    }

    private static ClipTimeline Of(float[] mono, int rate = Rate)
    {
        var meter = new ClipMeter(rate, 1);
        meter.Add(mono);
        return meter.Finish().Channels[0].Timeline;
    }
}
