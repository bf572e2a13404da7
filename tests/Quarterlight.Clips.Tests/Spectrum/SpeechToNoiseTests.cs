using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

public class SpeechToNoiseTests
{
    private static readonly Func<double, double>[] s_densities = [_ => 1e-8, f => 1e-5 / f, Sound.CarDensity];

    public static TheoryData<int, double> Mixtures()
    {
        var data = new TheoryData<int, double>();
        for (int noise = 0; noise < 3; noise++)
        {
            foreach (double ratioDb in new[] { 0.0, 5, 10, 20, 30 })
            {
                data.Add(noise, ratioDb);
            }
        }

        return data;
    }

    // Oracle: both parts are measured apart before they are mixed; the speech over the time it is on.
    [Theory]
    [MemberData(nameof(Mixtures))]
    public void Report_SpeechInNoise_FindsFloorAndRatio(int kind, double ratioDb)
    {
        (float[] speech, bool[] on) = Sound.Speech(16, 1);
        float[] noise = Sound.Noise(s_densities[kind], 16, 11);
        double speechDb = Sound.Measure(speech).Bands!.AWeightedDb - (10 * Math.Log10(on.Average(x => x ? 1.0 : 0)));
        ClipBandLevels alone = Sound.Measure(noise).Bands!;
        double shift = speechDb - ratioDb - alone.AWeightedDb;
        SpeechNoiseReport report = Sound.Measure(Sound.Mix(speech, noise, Math.Pow(10, shift / 20))).SpeechNoise!;
        Assert.Equal(alone.AWeightedDb + shift, report.NoiseAWeightedDb, 1.0);
        Assert.Equal(ratioDb, report.SpeechToNoiseDb!.Value, 1.5);
        Assert.Equal(speechDb, report.SpeechAWeightedDb!.Value, 1.5);
        Assert.InRange(Math.Abs(report.SpeechToNoiseDb.Value - ratioDb), 0, 2 * report.SpeechToNoiseUncertaintyDb!.Value);

        // The octaves from 125 Hz up; below, the bins are too wide for the filter of the noise.
        for (int b = 2; b < ThirdOctaves.OctaveCount; b++)
        {
            Assert.Equal(alone.OctaveLevels()[b].LevelDb + shift, report.NoiseOctaves[b].LevelDb, 1.5);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Report_NoiseAlone_HasFloorAndNoSpeech(int kind)
    {
        float[] noise = Sound.Noise(s_densities[kind], 12, 5);
        ClipSpectrumReport report = Sound.Measure(noise);
        Assert.Equal(report.Bands!.AWeightedDb, report.SpeechNoise!.NoiseAWeightedDb, 0.2);
        Assert.Null(report.SpeechNoise.SpeechToNoiseDb);
        Assert.Equal(0, report.SpeechNoise.ActiveShare);
    }

    // A steady engine is harmonic, but does not come and go.
    [Fact]
    public void Report_EngineAlone_HasNoSpeech()
    {
        float[] engine = Sound.Mix(Sound.Engine(_ => 2400, 4, 0.1, 10, 1), Sound.Noise(Sound.CarDensity, 10, 2));
        Assert.Null(Sound.Measure(engine).SpeechNoise!.SpeechToNoiseDb);
    }

    [Fact]
    public void Report_SpeechTime_IsFound()
    {
        (float[] speech, bool[] on) = Sound.Speech(16, 2);
        float[] mix = Sound.Mix(speech, Sound.Noise(_ => 1e-9, 16, 3));
        Assert.Equal(on.Average(x => x ? 1.0 : 0), Sound.Measure(mix).SpeechNoise!.ActiveShare, 0.05);
    }

    [Fact]
    public void Report_SilenceOrTooShort_SaysNothingWrong()
    {
        SpeechNoiseReport silent = Sound.Measure(Sound.Silence(4)).SpeechNoise!;
        Assert.Equal(FullScale.SilenceDb, silent.NoiseAWeightedDb);
        Assert.Null(silent.SpeechToNoiseDb);
        Assert.Null(Sound.Measure(Sound.Silence(0.3)).SpeechNoise);
    }
}
