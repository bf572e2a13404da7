using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

public class SpectrumFramesTests
{
    // Closed form: a sine of amplitude A has the mean square A²/2, wherever it lies between the bins.
    [Theory]
    [InlineData(1000)]
    [InlineData(1011.7)]
    [InlineData(7003.3)]
    public void Add_Sine_BinsAddUpToItsMeanSquare(double hz)
    {
        var mean = new SpectrumMean(1025);
        var frames = new SpectrumFrames(48000, 2048, (_, power) => mean.Add(power));
        frames.Add(Sound.Sine(hz, 0.5, 2));
        Assert.Equal(0.125, mean.Mean().ToArray().Sum(), 0.0005);
    }

    // White noise of variance 1/12 (uniform, width 1) spreads evenly: 1/12 over half the rate.
    [Fact]
    public void Add_WhiteNoise_DensityIsFlat()
    {
        var random = new Random(3);
        float[] x = [.. Enumerable.Range(0, 480000).Select(_ => (float)(random.NextDouble() - 0.5))];
        var mean = new SpectrumMean(1025);
        new SpectrumFrames(48000, 2048, (_, power) => mean.Add(power)).Add(x);
        double[] power = mean.Mean().ToArray();
        for (int part = 0; part < 8; part++)
        {
            Assert.Equal(128 / 12.0 / 1024, power.AsSpan(1 + (part * 127), 127).ToArray().Sum() * 128 / 127, 0.0003);
        }
    }

    [Fact]
    public void SecondMeans_LoudSecondSecond_StandsOut()
    {
        var levels = new List<(long Second, double Power)>();
        var seconds = new SecondMeans(1025, 1024 / 48000.0, (second, power) => levels.Add((second, power.ToArray().Sum())));
        var frames = new SpectrumFrames(48000, 2048, seconds.Add);
        frames.Add(Sound.Sine(1000, 0.1, 1));
        frames.Add(Sound.Sine(1000, 1, 1));
        frames.Add(Sound.Sine(1000, 0.1, 1));
        seconds.Finish();
        Assert.Equal([0L, 1L, 2L], levels.Select(l => l.Second));
        Assert.InRange(levels[0].Power, 0.004, 0.02);
        Assert.InRange(levels[1].Power, 0.48, 0.5);
        Assert.InRange(levels[2].Power, 0.004, 0.02);
    }

    // Pass band flat, and what folds (1200 Hz and up for a slow rate of 2000 Hz) gone: both as the class says.
    [Theory]
    [InlineData(48000)]
    [InlineData(44100)]
    [InlineData(8000)]
    [InlineData(192000)]
    public void Decimator_PassAndStop_AsStated(double rateHz)
    {
        foreach (double hz in new[] { 3.0, 100, 400, 795 })
        {
            Assert.Equal(0, Level(hz, rateHz), 0.02);
        }

        double slowHz = rateHz / (int)(rateHz / 2000);
        Assert.InRange(Level(slowHz - 795, rateHz), -300, -78);
        Assert.InRange(Level(slowHz + 333, rateHz), -300, -78);
    }

    private static double Level(double hz, double rateHz)
    {
        var decimator = new Decimator(rateHz);
        var mean = new SpectrumMean(1025);
        var frames = new SpectrumFrames(decimator.RateHz, 2048, (index, power) => { if (index > 0) { mean.Add(power); } });
        decimator.Add(Sound.Sine(hz, 1, 4, rateHz), frames);
        return FullScale.Level(mean.Mean().ToArray().Sum());
    }
}
