using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

public class EngineOrdersTests
{
    // Enough for orders, and quicker to make.
    private const double RateHz = 16000;
    private static readonly Lazy<float[]> s_noise = new(() => Sound.Noise(Sound.CarDensity, 12, 7, RateHz));

    public static TheoryData<int, double, double> Engines()
    {
        var data = new TheoryData<int, double, double>();
        foreach (int cylinders in new[] { 3, 4, 6 })
        {
            foreach (double rpm in new[] { 800.0, 1130, 1500, 2350, 3500, 4700, 6000 })
            {
                foreach (double ratioDb in new[] { 20.0, 6, 0 })
                {
                    data.Add(cylinders, rpm, ratioDb);
                }
            }
        }

        return data;
    }

    // Oracle: the speed the orders were made with.
    [Theory]
    [MemberData(nameof(Engines))]
    public void Report_OrdersInCarNoise_RecoversTheSpeed(int cylinders, double rpm, double ratioDb)
    {
        EngineReport report = Sound.Measure(InNoise(_ => rpm, cylinders, ratioDb, 8), cylinders, RateHz).Engine!;
        Assert.NotNull(report.Rpm);
        Assert.InRange(report.Rpm.Value / rpm, 0.98, 1.02);
        Assert.Equal(report.Rpm.Value * cylinders / 120, report.FiringHz!.Value, 1e-9);
        Assert.True(report.Confidence >= EngineOrders.ClaimFrom);
    }

    // An unbalanced crank: whole orders 14 dB below the firing order, which half the speed would explain as well.
    [Theory]
    [InlineData(4, 1400)]
    [InlineData(4, 1800)]
    [InlineData(4, 2700)]
    [InlineData(4, 3300)]
    public void Report_StrongCrankOrders_DoesNotHalveTheSpeed(int cylinders, double rpm)
    {
        float[] engine = Sound.Engine(_ => rpm, cylinders, 0.05, 8, 3, RateHz, crankOrders: 0.2);
        EngineReport report = Sound.Measure(Sound.Mix(engine, s_noise.Value[..engine.Length], Rms(engine) / Rms(s_noise.Value) * 0.3), cylinders, RateHz).Engine!;
        Assert.InRange(report.Rpm!.Value / rpm, 0.98, 1.02);
    }

    // Drowned orders: right or nothing, never wrong.
    [Theory]
    [InlineData(-10)]
    [InlineData(-20)]
    public void Report_DrownedOrders_ClaimsNothingWrong(double ratioDb)
    {
        foreach (int cylinders in new[] { 3, 4, 6 })
        {
            foreach (double rpm in new[] { 800.0, 1500, 2350, 3500, 6000 })
            {
                double? claimed = Sound.Measure(InNoise(_ => rpm, cylinders, ratioDb, 6), cylinders, RateHz).Engine!.Rpm;
                Assert.True(claimed is null || Math.Abs((claimed.Value / rpm) - 1) < 0.02, $"{claimed} for {rpm}");
            }
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(12)]
    public void Report_NoiseAlone_ClaimsNothing(int cylinders)
    {
        foreach (Func<double, double> density in new Func<double, double>[] { _ => 1e-8, f => 1e-5 / f, Sound.CarDensity, f => 1e-2 / (1 + (f * f)) })
        {
            for (int seed = 0; seed < 3; seed++)
            {
                EngineReport report = Sound.Measure(Sound.Noise(density, 8, seed), cylinders).Engine!;
                Assert.Null(report.Rpm);
                Assert.All(report.Moments, m => Assert.Null(m.Rpm));
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Report_SpeechAlone_ClaimsNothing(int seed)
    {
        float[] speech = Sound.Mix(Sound.Speech(8, seed).Samples, Sound.Noise(_ => 1e-10, 8, seed));
        Assert.Null(Sound.Measure(speech, 4).Engine!.Rpm);
    }

    // Two seconds hold too few moments to tell a voice from an engine.
    [Fact]
    public void Report_TwoSeconds_ClaimsNothing() => Assert.Null(Sound.Measure(InNoise(_ => 2350, 4, 20, 2), 4, RateHz).Engine!.Rpm);

    [Theory]
    [InlineData(100)]
    [InlineData(237)]
    [InlineData(440)]
    public void Report_LoneTone_ClaimsNothing(double hz) =>
        Assert.Null(Sound.Measure(Sound.Mix(Sound.Sine(hz, 0.05, 6), Sound.Noise(Sound.CarDensity, 6, 1), 0.3), 4).Engine!.Rpm);

    [Theory]
    [InlineData(30, 10)]
    [InlineData(60, 20)]
    public void Report_RisingSpeed_IsFollowed(double rpmPerSecond, double ratioDb)
    {
        EngineReport report = Sound.Measure(InNoise(t => 1500 + (rpmPerSecond * t), 4, ratioDb, 12), 4, RateHz).Engine!;
        Assert.NotNull(report.Rpm);
        foreach (EngineMoment moment in report.Moments.Skip(3))
        {
            // The three frames averaged reach back a second.
            Assert.InRange(moment.Rpm!.Value - 1500 - (rpmPerSecond * moment.Seconds), -1.2 * rpmPerSecond, 0.5 * rpmPerSecond);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(13)]
    public void Constructor_NoSuchEngine_Throws(int cylinders) => Assert.Throws<ArgumentOutOfRangeException>(() => new ClipSpectrum(48000, cylinders));

    private static float[] InNoise(Func<double, double> rpm, int cylinders, double ratioDb, double seconds)
    {
        float[] engine = Sound.Engine(rpm, cylinders, 0.05, seconds, 3, RateHz);
        float[] noise = s_noise.Value[..engine.Length];
        return Sound.Mix(engine, noise, Rms(engine) / Rms(noise) * Math.Pow(10, -ratioDb / 20));
    }

    private static double Rms(float[] x) => Math.Sqrt(x.Average(v => (double)v * v));
}
