using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

/// <summary>Wind, cabin pressure and hum on made signals, and none where there is none.</summary>
public class LowEndTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Wind_GustsWithABroadLowEnd_AreWindAndNotPressure(int seed)
    {
        WindReport wind = Sound.Measure(Gusts(seed)).Wind!;
        Assert.True(wind.IsGusty && !wind.IsPressure, wind.ToString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Wind_SteadyRumbleBelow20Hz_IsPressureAndNotWind(int seed)
    {
        float[] rumble = Sound.Noise(f => f is > 3 and < 18 ? 1e-3 : 0, 10, seed);
        WindReport wind = Sound.Measure(Sound.Mix(rumble, Sound.Noise(Sound.CarDensity, 10, seed + 1), 0.5)).Wind!;
        Assert.True(!wind.IsGusty && wind.IsPressure, wind.ToString());
    }

    [Fact]
    public void Wind_OtherSounds_AreNeither()
    {
        float[] car = Sound.Noise(Sound.CarDensity, 10, 4);
        float[][] others = [car, Sound.Noise(f => 1e-5 / f, 10, 5), Sound.Noise(_ => 1e-8, 10, 6), Sound.Mix(Sound.Engine(_ => 1530, 4, 0.1, 10, 7), car), Sound.Mix(Sound.Speech(10, 8).Samples, car, 0.1)];
        Assert.All(others, x =>
        {
            WindReport wind = Sound.Measure(x).Wind!;
            Assert.True(wind is { IsGusty: false, IsPressure: false }, wind.ToString());
        });
    }

    [Fact]
    public void Wind_SilentOrShort_SaysNothing()
    {
        Assert.Null(Sound.Measure(Sound.Silence(5)).Wind);
        Assert.Null(Sound.Measure(Sound.Noise(_ => 1e-8, 1.5, 1)).Wind);
    }

    // Closed form: two lines of amplitude 0.01 and 0.005 are 10 lg(0.01² + 0.005²) = -39.03 dBFS (AES17).
    [Theory]
    [InlineData(50, 60)]
    [InlineData(60, 50)]
    public void Hum_LinesInCarNoise_AreFoundWithTheirLevel(double mainsHz, double otherHz)
    {
        float[] hum = Sound.Mix(Sound.Sine(mainsHz * 1.0004, 0.01, 12), Sound.Sine(3 * mainsHz * 1.0004, 0.005, 12));
        ClipSpectrumReport report = Sound.Measure(Sound.Mix(hum, Sound.Noise(Sound.CarDensity, 12, 2), 0.7));
        HumReport found = mainsHz == 50 ? report.Hum50! : report.Hum60!;
        HumReport other = otherHz == 50 ? report.Hum50! : report.Hum60!;
        Assert.True(found.IsPresent);
        Assert.Equal([1, 3], found.Lines);
        Assert.Equal(-39.03, found.LevelDb, 1.0);
        Assert.False(other.IsPresent);
    }

    [Fact]
    public void Hum_WhereThereIsNone_IsNotFound()
    {
        for (int seed = 0; seed < 12; seed++)
        {
            Func<double, double> density = (seed % 3) switch { 0 => _ => 1e-8, 1 => f => 1e-5 / f, _ => Sound.CarDensity };
            None(Sound.Measure(Sound.Noise(density, seed < 6 ? 3 : 12, seed)));
        }

        None(Sound.Measure(Sound.Speech(10, 1).Samples));
        None(Sound.Measure(Sound.Silence(6)));

        // Four cylinders at 1530 and 1770 rpm fire at 51 and 59 Hz.
        None(Sound.Measure(Sound.Engine(_ => 1530, 4, 0.1, 10, 1)));
        None(Sound.Measure(Sound.Engine(_ => 1770, 4, 0.1, 10, 1)));
    }

    private static void None(ClipSpectrumReport report)
    {
        Assert.False(report.Hum50!.IsPresent);
        Assert.False(report.Hum60!.IsPresent);
    }

    private static float[] Gusts(int seed)
    {
        var random = new Random(seed);
        double[] gains = [.. Enumerable.Range(0, 20).Select(_ => Math.Pow(10, (random.NextDouble() - 0.5) * 14 / 20))];
        double Gain(double t) => gains[(int)(t / 0.8)] + ((t / 0.8 % 1) * (gains[(int)(t / 0.8) + 1] - gains[(int)(t / 0.8)]));
        return Sound.Mix(Sound.Shaped(Sound.Noise(f => 3e-2 / (1 + Math.Pow(f / 10, 2.3)), 10, seed), Gain), Sound.Noise(_ => 1e-9, 10, seed + 9));
    }
}
