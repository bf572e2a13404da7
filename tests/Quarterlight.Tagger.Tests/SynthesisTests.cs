using Quarterlight.Clips.Spectrum;
using Quarterlight.Training.Synthesis;

namespace Quarterlight.Tagger.Tests;

public sealed class SynthesisTests
{
    // Textbook: 9 blades at 1600 rpm pass 240 times a second; four cylinders at 3000 rpm fire 100 times.
    [Fact]
    public void Formulas_Textbook_Hold()
    {
        Assert.Equal(240, FanSound.BladePassHz(1600, 9), 1e-9);
        Assert.Equal(100, EngineSound.FiringHz(3000, 4), 1e-9);
    }

    // Over many made fans the blade-pass line stands above its neighbours, where it must.
    [Theory]
    [InlineData(240)]
    [InlineData(700)]
    public void Fan_BladePass_IsAtItsFrequency(double hz)
    {
        double sum = 0;
        const int fans = 12;
        for (int seed = 0; seed < fans; seed++)
        {
            sum += Height(FanSound.Make(seed, 5, hz), hz) / fans;
        }

        Assert.True(sum > 6, $"{sum:0.0} dB above the neighbours.");
        Assert.True(Height(FanSound.Make(3, 5, hz), hz * 1.31) < 6);
    }

    [Theory]
    [InlineData(3000, 4)]
    [InlineData(1500, 6)]
    public void Engine_Firing_IsAtItsFrequency(double rpm, int cylinders)
    {
        double sum = 0;
        const int engines = 12;
        for (int seed = 0; seed < engines; seed++)
        {
            sum += Height(EngineSound.Make(seed, 5, rpm, cylinders), EngineSound.FiringHz(rpm, cylinders)) / engines;
        }

        Assert.True(sum > 8, $"{sum:0.0} dB above the neighbours.");
    }

    // Wind has more below 200 Hz than a fan, and moves more: as a group, not one by one.
    [Fact]
    public void Wind_AsAGroup_SwellsMoreThanFans()
    {
        double wind = Enumerable.Range(0, 20).Average(s => Swell(WindSound.Make(s, 5))), fan = Enumerable.Range(0, 20).Average(s => Swell(FanSound.Make(s, 5)));
        Assert.True(wind > fan + 0.5, $"wind {wind:0.0} dB, fan {fan:0.0} dB");
    }

    [Fact]
    public void Make_SameSeed_SameSound_OtherSeed_Another()
    {
        Assert.Equal(WindSound.Make(1, 1), WindSound.Make(1, 1));
        Assert.NotEqual(FanSound.Make(1, 1), FanSound.Make(2, 1));
        Assert.All(RoadSound.Make(1, 2).Concat(RoomTone.Make(1, 2)), x => Assert.InRange(x, -1f, 1f));
    }

    // Highest bin near a frequency over the mean of the neighbourhood, dB.
    private static double Height(float[] sound, double hz)
    {
        var mean = new SpectrumMean(4097);
        new SpectrumFrames(16000, 8192, (_, power) => mean.Add(power)).Add(sound);
        ReadOnlySpan<double> p = mean.Mean();
        int k = (int)Math.Round(hz * 8192 / 16000);
        double top = 0, around = 0;
        for (int i = -2; i <= 2; i++)
        {
            top = Math.Max(top, p[k + i]);
        }

        for (int i = 6; i < 14; i++)
        {
            around += (p[k - i] + p[k + i]) / 16;
        }

        return 10 * Math.Log10(top / around);
    }

    // Spread of the level of 0.25 s pieces, dB.
    private static double Swell(float[] sound)
    {
        double[] levels = [.. sound.Chunk(4000).Select(c => 10 * Math.Log10(c.Average(x => x * (double)x) + 1e-12))];
        double mean = levels.Average();
        return Math.Sqrt(levels.Average(l => (l - mean) * (l - mean)));
    }
}
