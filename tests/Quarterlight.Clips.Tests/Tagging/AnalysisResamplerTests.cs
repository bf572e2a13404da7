using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;
using Sound = Quarterlight.Clips.Tests.Spectrum.Sound;

namespace Quarterlight.Clips.Tests.Tagging;

public class AnalysisResamplerTests
{
    // A tone keeps its level where the class says it is flat.
    [Theory]
    [InlineData(8000, 3000)]
    [InlineData(11025, 4000)]
    [InlineData(16000, 6500)]
    [InlineData(22050, 6800)]
    [InlineData(44100, 6800)]
    [InlineData(47952, 6800)]
    [InlineData(48000, 6800)]
    [InlineData(192000, 6800)]
    public void Add_ToneBelowTheTop_KeepsItsLevel(double rateHz, double hz)
    {
        Assert.Equal(0, Level(rateHz, hz, all: true), 0.1);
        Assert.Equal(0, Level(rateHz, 440, all: true), 0.05);
    }

    // What would fold to below 7 kHz (above 9 kHz at a result of 16 kHz) is gone.
    [Theory]
    [InlineData(44100, 9500)]
    [InlineData(48000, 12000)]
    [InlineData(96000, 30000)]
    [InlineData(192000, 15000)]
    public void Add_ToneThatWouldFold_IsGone(double rateHz, double hz) => Assert.InRange(Level(rateHz, hz, all: false), -300, -55);

    private static double Level(double rateHz, double hz, bool all)
    {
        var mean = new SpectrumMean(257);
        var frames = new SpectrumFrames(16000, 512, (index, power) => { if (index > 1) { mean.Add(power); } });
        var resampler = new AnalysisResampler(rateHz, frames.Add);
        resampler.Add(Sound.Sine(hz, 1, 1, rateHz));
        resampler.Finish();
        ReadOnlySpan<double> power = mean.Mean();
        return FullScale.Level(power[..(all ? 257 : 224)].ToArray().Sum());
    }
}
