using CsCheck;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

/// <summary>Beside the cases of the EBU: other rates, channels, pieces, and what is no sound.</summary>
public sealed class LoudnessMeterTests
{
    // ITU-R BS.1770-5 Annex 1: a sine of 997 Hz and 0 dB re full scale in one front channel reads -3.01 LKFS. Low rates: the shelf is bent, see
    // KWeightingTests.
    [Theory]
    [InlineData(8_000, 1, 0.21)]
    [InlineData(11_025, 2, 0.11)]
    [InlineData(16_000, 3, 0.05)]
    [InlineData(44_100, 4, 0.01)]
    [InlineData(48_000, 5, 0.01)]
    [InlineData(48_000, 9, 0.01)]
    [InlineData(96_000, 2, 0.01)]
    [InlineData(192_000, 1, 0.01)]
    public void Measure_FullScaleSineInOneChannel_IsMinus301(int rate, int channels, double tolerance)
    {
        for (int with = 0; with < Math.Min(channels, 9); with += 4)
        {
            float[][] planes = [.. Enumerable.Range(0, channels).Select(_ => new float[5 * rate])];
            planes[with] = Sound.Tone(0, 5, 997, rate);
            var meter = new LoudnessMeter(rate, channels);
            meter.Add(Sound.Interleave(planes));
            LoudnessReport report = meter.Measure();
            Assert.Equal(-3.01, report.Programme.IntegratedLkfs!.Value, tolerance);
            Assert.Equal(-3.01, report.Channels[with].IntegratedLkfs!.Value, tolerance);
            Assert.All(report.Channels.Where((_, c) => c != with), c => Assert.Null(c.IntegratedLkfs));
        }
    }

    [Fact]
    public void Measure_LoudPartInside_IsFoundInTime()
    {
        var meter = new LoudnessMeter(Sound.Rate, 1);
        meter.Add(Sound.Steps((-40, 5), (-20, 3), (-40, 5)));
        Loudness l = meter.Measure().Programme;
        Assert.InRange(l.MaxMomentaryStartSeconds!.Value, 5.0, 7.7);
        Assert.Equal(5, l.MaxShortTermStartSeconds!.Value, 0.02);
    }

    [Fact]
    public void Measure_ShortSilentOrEmpty_SaysNothing()
    {
        var meter = new LoudnessMeter(Sound.Rate, 1);
        Assert.Equal(new Loudness(), meter.Measure().Programme);
        meter.Add(Sound.Tone(-20, 0.39));
        Assert.Equal(new Loudness(), meter.Measure().Programme);
        meter = new LoudnessMeter(Sound.Rate, 1);
        meter.Add(new float[10 * Sound.Rate]);
        Assert.Equal(new Loudness(), meter.Measure().Programme);
    }

    [Fact]
    public void Measure_SamplesThatAreNoNumber_CountAsZero()
    {
        float[] x = Sound.Tone(-20, 2), y = [.. x];
        (x[500], x[501], y[500], y[501]) = (float.NaN, float.PositiveInfinity, 0, 0);
        (LoudnessMeter a, LoudnessMeter b) = (new(Sound.Rate, 1), new(Sound.Rate, 1));
        a.Add(x);
        b.Add(y);
        Assert.Equal(b.Measure().Programme, a.Measure().Programme);
    }

    [Fact]
    public void Measure_AnyPieces_GiveTheSame() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[1, 5000].Array[1, 8]).Sample(
            (channels, pieces) =>
            {
                float[] x = Sound.Noise(channels * 40_000, 0.3, 7);
                (LoudnessMeter whole, LoudnessMeter cut) = (new(11_025, channels), new(11_025, channels));
                whole.Add(x);
                Sound.Pieces(x, channels, pieces, p => cut.Add(p.Span));
                (LoudnessReport a, LoudnessReport b) = (whole.Measure(), cut.Measure());
                Assert.Equal(a.Programme, b.Programme);
                Assert.Equal(a.Channels, b.Channels);
            },
            iter: 30);

    [Fact]
    public void Measure_LouderByAnyGain_RisesByIt() =>
        Gen.Double[-20, 20].Sample(
            gainDb =>
            {
                float[] x = Sound.Noise(4 * 16_000, 0.05, 3);
                float[] y = [.. x.Select(v => (float)(v * Math.Pow(10, gainDb / 20)))];
                (LoudnessMeter a, LoudnessMeter b) = (new(16_000, 1), new(16_000, 1));
                a.Add(x);
                b.Add(y);
                Assert.Equal(gainDb, b.Measure().Programme.IntegratedLkfs!.Value - a.Measure().Programme.IntegratedLkfs!.Value, 0.001);
            },
            iter: 20);

    [Fact]
    public void Meter_WrongUse_Throws()
    {
        Assert.Throws<ArgumentException>(() => new LoudnessMeter(48_000, 2, [1.0]));
        Assert.Throws<ArgumentException>(() => new LoudnessMeter(48_000, 1, [double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoudnessMeter(48_000, 0));
        Assert.Throws<ArgumentException>(() => new LoudnessMeter(48_000, 2).Add([1f]));
    }
}
