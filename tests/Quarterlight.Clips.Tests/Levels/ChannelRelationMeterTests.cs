using CsCheck;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

public sealed class ChannelRelationMeterTests
{
    private static readonly Gen<int> s_rates = Gen.Int[0, 5].Select(i => new[] { 8_000, 16_000, 44_100, 48_000, 96_000, 192_000 }[i]);

    [Fact]
    public void Measure_DelayedAndTurned_IsRecovered() =>
        Gen.Select(s_rates, Gen.Double[-19.9, 19.9], Gen.Bool, Gen.Double[0.1, 3]).Sample(
            (rate, delayMs, turned, gain) =>
            {
                int delay = (int)Math.Round(delayMs * rate / 1000);
                float[] source = Voice(rate);
                float[] a = Sound.Noise(source.Length, 0.01, 2), b = Sound.Noise(source.Length, 0.01, 3);
                for (int i = 0; i < source.Length; i++)
                {
                    a[i] += source[i];
                    int from = i - delay;
                    b[i] = (float)(gain * (b[i] + (from >= 0 && from < source.Length ? (turned ? -1 : 1) * source[from] : 0)));
                }

                ChannelRelation r = Measure(rate, a, b);
                Assert.Equal(delay, r.DelaySamples!.Value, 0.1);
                Assert.Equal(delay * 1000.0 / rate, r.DelayMs!.Value, 0.02);
                Assert.Equal(turned, r.PolarityInverted);
                Assert.True(Math.Abs(r.Correlation) > 0.8);
                Assert.Equal(20 * Math.Log10(gain), r.LevelDifferenceDb!.Value, 0.3);
                Assert.False(r.Identical);
            },
            iter: 60);

    [Fact]
    public void Measure_SameTwice_IsIdenticalUntilOneSampleDiffers()
    {
        float[] a = Voice(48_000), b = [.. a];
        ChannelRelation same = Measure(48_000, a, b);
        Assert.True(same.Identical);
        Assert.Equal(1, same.Correlation, 1e-6);
        Assert.Equal(0, same.DelaySamples!.Value, 1e-3);
        foreach (int at in new[] { 0, 30_000, b.Length - 1 })
        {
            b[at] += 1e-6f;
            Assert.False(Measure(48_000, a, b).Identical);
            b[at] = a[at];
        }
    }

    [Theory]
    [InlineData(100)]
    [InlineData(1000)]
    public void Measure_SteadyToneTurned_IsTurnedAndNotLate(double hz)
    {
        float[] a = Sound.Tone(-20, 3, hz);
        ChannelRelation r = Measure(48_000, a, [.. a.Select(v => -v)]);
        Assert.True(r.PolarityInverted);
        Assert.Equal(0, r.DelaySamples!.Value, 0.5);
    }

    [Fact]
    public void Measure_NothingInCommon_IsNotRelated()
    {
        ChannelRelation r = Measure(48_000, Sound.Noise(96_000, 0.3, 1), Sound.Noise(96_000, 0.3, 77));
        Assert.False(r.Related);
        Assert.Equal((null, null, null), (r.PolarityInverted, r.DelaySamples, r.DelayMs));
        r = Measure(48_000, Sound.Noise(96_000, 0.3, 1), new float[96_000]);
        Assert.Equal((0, null, false), (r.Correlation, r.LevelDifferenceDb, r.Identical));
        Assert.False(Measure(48_000, [], []).Identical);
    }

    [Fact]
    public void Measure_AnyPieces_GiveTheSame() =>
        Gen.Int[1, 20_000].Array[1, 6].Sample(
            pieces =>
            {
                float[] a = Voice(44_100), x = Sound.Interleave(a, Sound.Noise(a.Length, 1, 1), [.. a.Skip(40), .. a.Take(40)]);
                (ChannelRelationMeter whole, ChannelRelationMeter cut) = (new(44_100, 3, 0, 2), new(44_100, 3, 0, 2));
                whole.Add(x);
                Sound.Pieces(x, 3, pieces, p => { cut.Add(p.Span); cut.Measure(); });
                Assert.Equal(whole.Measure(), cut.Measure());
            },
            iter: 10);

    [Fact]
    public void Meter_NoSuchChannel_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => new ChannelRelationMeter(48_000, 2, 0, 2));

    private static ChannelRelation Measure(int rate, float[] a, float[] b)
    {
        var meter = new ChannelRelationMeter(rate, 2, 0, 1);
        meter.Add(Sound.Interleave(a, b));
        return meter.Measure();
    }

    // Noise through a one-pole low-pass at about 800 Hz, swelling and falling four times a second: 1.5 s.
    private static float[] Voice(int rate)
    {
        float[] x = Sound.Noise(rate * 3 / 2, 1, 42);
        double y = 0, share = 1 - Math.Exp(-2 * Math.PI * 800 / rate);
        for (int i = 0; i < x.Length; i++)
        {
            y += share * (x[i] - y);
            x[i] = (float)(y * (1 + Math.Sin(2 * Math.PI * 4 * i / rate)) * Math.Sqrt(rate / 48_000.0));
        }

        return x;
    }
}
