using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Tagger.Tests;

public sealed class MixingTests
{
    // Known parts: a 1 kHz tone in bursts is the speech, a 3 kHz tone the noise. The A-weighted active level of the bursts is that of the tone itself.
    [Theory]
    [InlineData(-5)]
    [InlineData(10)]
    [InlineData(30)]
    public void SpeechOverNoise_KnownParts_RatioWithinATenth(double ratioDb)
    {
        float[] speech = Tone(1000, 0.2, t => t % 1 < 0.5), noise = Tone(3000, 0.01, _ => true);
        float[] mixed = Mixer.SpeechOverNoise(speech, noise, ratioDb)!;
        float[] under = [.. mixed.Zip(speech, (m, s) => m - s)];
        double active = SoundLevels.ActivePower(speech), below = SoundLevels.Power(under);
        Assert.Equal(ratioDb, 10 * Math.Log10(active / below), 0.1);
    }

    // IEC 61672-1 Table 3: A-weighting is 0 dB at 1 kHz and -19.1 dB at 100 Hz.
    [Theory]
    [InlineData(1000, 0)]
    [InlineData(100, -19.1)]
    public void Power_Tone_IsAWeighted(double hz, double weightDb) =>
        Assert.Equal(weightDb, 10 * Math.Log10(SoundLevels.Power(Tone(hz, 1, _ => true)) / 0.5), 0.5);

    [Fact]
    public void SpeechOverNoise_SilentNoise_GivesNothing() => Assert.Null(Mixer.SpeechOverNoise(Tone(1000, 0.2, _ => true), new float[16000], 10));

    [Fact]
    public void TwoNoises_KnownParts_RatioWithinATenth()
    {
        float[] first = Tone(1000, 0.2, _ => true);
        float[] under = [.. Mixer.TwoNoises(first, Tone(2000, 0.3, _ => true), 6)!.Zip(first, (m, s) => m - s)];
        Assert.Equal(6, 10 * Math.Log10(SoundLevels.Power(first) / SoundLevels.Power(under)), 0.1);
    }

    [Theory]
    [InlineData(-5, false)]
    [InlineData(20, false)]
    [InlineData(22, null)]
    [InlineData(25, true)]
    public void Truth_SpeechOverWind_CleanOnlyWhenFarUnder(double ratioDb, bool? clean)
    {
        Truth truth = Mixer.Truth(Truth.Only(ClipTag.Wind), ratioDb);
        Assert.True(truth.Wind);
        Assert.False(truth.Engine);
        Assert.Equal(clean, truth.Clean);
    }

    [Fact]
    public void And_UnknownAndYes_IsYes_UnknownAndNo_IsUnknown()
    {
        Truth unknown = Truth.None.With(ClipTag.Engine, null);
        Assert.True(unknown.And(Truth.Only(ClipTag.Engine)).Engine);
        Assert.Null(unknown.And(Truth.None).Engine);
    }

    [Fact]
    public void Fit_ShortSound_IsRepeatedToLength() => Assert.Equal(40000, Mixer.Fit(Tone(500, 0.1, _ => true)[..9000], 40000).Length);

    private static float[] Tone(double hz, double amplitude, Func<double, bool> on) =>
        [.. Enumerable.Range(0, 64000).Select(i => on(i / 16000.0) ? (float)(amplitude * Math.Sin(2 * Math.PI * hz * i / 16000)) : 0)];
}
