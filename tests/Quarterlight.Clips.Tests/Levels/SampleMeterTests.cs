using CsCheck;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

public sealed class SampleMeterTests
{
    [Fact]
    public void Measure_SineWithOffset_HasTheClosedForm()
    {
        float[] x = [.. Sound.Tone(-12, 2).Select(v => v + 0.01f)];
        SampleLevels s = Measure(x);
        double a = Math.Pow(10, -12 / 20.0);
        Assert.Equal(0.01, s.DcOffset, 1e-7);
        Assert.Equal(20 * Math.Log10(a + 0.01), s.PeakDbfs!.Value, 1e-5);
        Assert.Equal(10 * Math.Log10((a * a / 2) + 0.0001), s.RmsDbov!.Value, 1e-5);
        Assert.Equal((0, 0, 0), (s.Clipping.Count, s.DigitalSilence.Count, s.Dropouts.Count));
    }

    // AES17 and P.56: a square wave of full scale has an rms of 0 dBov, a sine -3.01 dBov.
    [Fact]
    public void RmsDbov_SquareAndSineOfFullScale_Are0AndMinus301()
    {
        Assert.Equal(0, Measure([.. Sound.Tone(0, 1, 997).Select(v => v < 0 ? -1f : 1f)]).RmsDbov!.Value, 1e-6);
        Assert.Equal(-3.0103, Measure(Sound.Tone(0, 1, 1000)).RmsDbov!.Value, 1e-4);
    }

    // A sine driven over a limit: the limited samples are known, so every run is.
    [Theory]
    [InlineData(1.0, 1.5, 200)]
    [InlineData(1.0, 4.0, 1000)]
    [InlineData(0.5, 0.8, 200)]
    [InlineData(0.3, 0.9, 440)]
    public void Clipping_SineOverALimit_IsEveryRunAtTheLimit(double limit, double amplitude, double hz)
    {
        float[] x = [.. Sound.Tone(20 * Math.Log10(amplitude), 1, hz).Select(v => (float)Math.Clamp(v, -limit, limit))];
        List<Stretch> expected = Runs(x, v => Math.Abs(v) == (float)limit, 3);
        Stretches found = Measure(x, 100_000).Clipping;
        Assert.True(expected.Count > 100);
        Assert.Equal(expected.Count, found.Count);
        Assert.Equal(expected.Select(r => r.StartSeconds), found.First.Select(r => r.StartSeconds), (a, b) => Math.Abs(a - b) < 2.5 / Sound.Rate);
        Assert.InRange(found.Samples, expected.Sum(r => r.Samples), expected.Sum(r => r.Samples + 2));
    }

    [Theory]
    [InlineData(-0.01, 20)]
    [InlineData(-6, 20)]
    [InlineData(-6, 50)]
    [InlineData(-1, 997)]
    [InlineData(-20, 30)]
    public void Clipping_WholeSineOf16Bits_IsNone(double db, double hz)
    {
        float[] x = [.. Sound.Tone(db, 3, hz).Select(v => (float)(Math.Round(v * 32767) / 32768))];
        Assert.Equal(0, Measure(x).Clipping.Count);
    }

    [Fact]
    public void Clipping_MoreThanListed_IsCountedAll()
    {
        float[] x = [.. Sound.Tone(6, 1, 500).Select(v => Math.Clamp(v, -1, 1))];
        Stretches s = Measure(x, 7).Clipping;
        Assert.Equal((1000, 7), (s.Count, s.First.Count));
        Assert.Equal(s.First.OrderBy(r => r.StartSeconds), s.First);
    }

    [Fact]
    public void Clipping_CutLevelPassedLater_IsKept()
    {
        float[] x = [.. Sound.Tone(0, 1, 500).Select(v => Math.Clamp(v, -0.4f, 0.4f)), .. Sound.Tone(-2, 0.1, 500)];
        Assert.Equal(1000, Measure(x).Clipping.Count);
    }

    [Fact]
    public void Dropouts_CutsInsideSound_AreFoundWhereTheyAre() =>
        Gen.Select(Gen.Int[2_000, 40_000], Gen.Int[100, 4_000], Gen.Bool).Sample(
            (start, length, held) =>
            {
                float[] x = Sound.Noise(48_000, 0.3, 5);
                x.AsSpan(start, length).Fill(held ? x[start - 1] : 0);
                Stretches found = Measure(x).Dropouts;
                Stretch one = Assert.Single(found.First);
                Assert.Equal(held ? start - 1 : start, one.StartSeconds * Sound.Rate, 1e-6);
                Assert.Equal(held ? length + 1 : length, one.Samples);
                Assert.Equal(!held && length >= 480 ? 1 : 0, Measure(x).DigitalSilence.Count);
            },
            iter: 100);

    [Fact]
    public void Dropouts_SilenceAtTheEndsOrAfterAFade_IsNone()
    {
        float[] sound = Sound.Faded(Sound.Noise(48_000, 0.3, 5), 12_000);
        SampleLevels s = Measure([.. new float[4800], .. sound, .. new float[9600], .. sound, .. new float[4800]]);
        Assert.Equal(0, s.Dropouts.Count);
        Assert.Equal(3, s.DigitalSilence.Count);
        Assert.InRange(s.DigitalSilence.Samples, 19_200, 19_210);
    }

    [Fact]
    public void Dropouts_LongClippedTops_AreClippingInstead()
    {
        float[] x = [.. Sound.Tone(20, 1, 20).Select(v => Math.Clamp(v, -1, 1))];
        SampleLevels s = Measure(x);
        Assert.Equal(0, s.Dropouts.Count);
        Assert.Equal(40, s.Clipping.Count);
    }

    [Fact]
    public void Measure_AnyPieces_GiveTheSame() =>
        Gen.Select(Gen.Int[1, 4000].Array[1, 8], Gen.Double[0.2, 3]).Sample(
            (pieces, gain) =>
            {
                float[] x = [.. Sound.Noise(30_001 * 2, 1, 9).Select(v => (float)Math.Clamp(v * gain, -1, 1))];
                x.AsSpan(20_000, 3_000).Clear();
                (SampleMeter whole, SampleMeter cut) = (new(44_100, 2), new(44_100, 2));
                whole.Add(x);
                Sound.Pieces(x, 2, pieces, p => { cut.Add(p.Span); cut.Measure(); });
                Assert.Equivalent(whole.Measure(), cut.Measure(), strict: true);
            },
            iter: 30);

    [Fact]
    public void Measure_SilentEmptyOrNoNumbers_SaysSo()
    {
        Assert.Null(Measure([]).PeakDbfs);
        SampleLevels s = Measure([0, float.NaN, float.NegativeInfinity, 0]);
        Assert.Equal((2, 4, null), (s.NotNumbers, s.Samples, s.RmsDbov));
        s = Measure(new float[Sound.Rate]);
        Assert.Equal((1, Sound.Rate), (s.DigitalSilence.Count, s.DigitalSilence.Samples));
    }

    private static SampleLevels Measure(float[] x, int listed = 50)
    {
        var meter = new SampleMeter(Sound.Rate, 1, listed);
        meter.Add(x);
        return Assert.Single(meter.Measure());
    }

    private static List<Stretch> Runs(float[] x, Func<float, bool> at, int shortest)
    {
        List<Stretch> runs = [];
        for (int i = 0; i < x.Length; i++)
        {
            int end = i;
            while (end < x.Length && at(x[end]))
            {
                end++;
            }

            if (end - i >= shortest)
            {
                runs.Add(new Stretch((double)i / Sound.Rate, end - i));
            }

            i = Math.Max(i, end - 1);
        }

        return runs;
    }
}
