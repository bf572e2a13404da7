using Quarterlight.Clips.Tagging;
using Sound = Quarterlight.Clips.Tests.Spectrum.Sound;

namespace Quarterlight.Clips.Tests.Tagging;

public class FeatureFrontEndTests
{
    [Theory]
    [InlineData(48000)]
    [InlineData(44100)]
    [InlineData(8000)]
    public void Add_PiecesOfAnySize_SameToTheLastBit(double rateHz)
    {
        float[] sound = Sound.Mix(Sound.Speech(4.3, 1, rateHz).Samples, Sound.Noise(Sound.CarDensity, 4.3, 2, rateHz));
        ClipFeatures whole = Hear(sound, rateHz);
        var frontEnd = new FeatureFrontEnd(rateHz);
        var random = new Random(3);
        for (int at = 0; at < sound.Length;)
        {
            int take = Math.Min(sound.Length - at, random.Next(1, 3000));
            frontEnd.Add(sound.AsSpan(at, take));
            at += take;
        }

        ClipFeatures pieces = frontEnd.Finish();
        Assert.Equal(whole.Seconds.Count, pieces.Seconds.Count);
        Assert.All(whole.Seconds.Zip(pieces.Seconds), p => Assert.Equal(p.First.Row.ToArray(), p.Second.Row.ToArray()));
        Assert.Equal(Mean(whole), Mean(pieces));
    }

    [Theory]
    [InlineData(0.6, 1)]
    [InlineData(1.4, 1)]
    [InlineData(1.6, 2)]
    [InlineData(5.4, 5)]
    [InlineData(7.5, 8)]
    public void Finish_AnyLength_SecondsCoverTheClip(double seconds, int count)
    {
        ClipFeatures features = Hear(Sound.Noise(Sound.CarDensity, seconds, 4));
        Assert.Equal(count, features.Seconds.Count);
        Assert.Equal(0, features.Seconds[0].StartSeconds);
        Assert.Equal(seconds, features.Seconds[^1].EndSeconds, 0.001);
        Assert.All(features.Seconds.Zip(features.Seconds.Skip(1)), p => Assert.Equal(p.First.EndSeconds, p.Second.StartSeconds));
        Assert.All(features.Seconds, s => Assert.Equal(FeatureFrontEnd.Count, s.Row.Length));
    }

    [Fact]
    public void Finish_ShorterThanHalfASecond_NoSeconds()
    {
        ClipFeatures features = Hear(Sound.Silence(0.45));
        Assert.Empty(features.Seconds);
        Assert.Null(ClipTagger.Tag(features, new EvenTagger()));
    }

    [Fact]
    public void Finish_Silence_IsFinite() => Assert.All(Hear(Sound.Silence(3)).Seconds, s => Assert.All(s.Row.ToArray(), v => Assert.True(float.IsFinite(v))));

    [Fact]
    public void Add_NotANumber_CountsAsZero()
    {
        float[] sound = Sound.Noise(Sound.CarDensity, 3, 5), zeros = [.. sound];
        for (int i = 1000; i < sound.Length; i += 5000)
        {
            (sound[i], zeros[i]) = (i % 3 == 0 ? float.NaN : float.NegativeInfinity, 0);
        }

        Assert.Equal(Mean(Hear(zeros)), Mean(Hear(sound)));
    }

    // The same noise at two rates: the shape of the floor is the same where the clip's rate reaches (below 3.5 kHz at 8 kHz).
    [Theory]
    [InlineData(8000, 10)]
    [InlineData(22050, 16)]
    [InlineData(44100, 16)]
    [InlineData(96000, 16)]
    public void Row_OtherRate_SameFloor(double rateHz, int bands)
    {
        Assert.True(MelBands.EdgeHz(bands + 1) < 0.44 * rateHz);
        float[] a = Mean(Hear(Sound.Noise(Sound.CarDensity, 6, 6, 48000), 48000));
        float[] b = Mean(Hear(Sound.Noise(Sound.CarDensity, 6, 6, rateHz), rateHz));
        for (int band = 1; band < bands; band++)
        {
            double slopeA = Of(a, $"floor_mel{band}") - Of(a, "floor_mel0"), slopeB = Of(b, $"floor_mel{band}") - Of(b, "floor_mel0");
            Assert.Equal(slopeA, slopeB, 1.2);
        }
    }

    // Shapes and movement do not change with gain; levels change by it.
    [Fact]
    public void Row_Gain_ChangesOnlyTheLevels()
    {
        float[] sound = Sound.Noise(Sound.CarDensity, 4, 7);
        float[] a = Mean(Hear(sound)), b = Mean(Hear([.. sound.Select(x => 4 * x)]));
        for (int i = 0; i < a.Length; i++)
        {
            double change = FeatureFrontEnd.Names[i].StartsWith("level_", StringComparison.Ordinal) ? 20 * Math.Log10(4) : 0;
            Assert.Equal(a[i] + change, b[i], 0.1);
        }
    }

    // Noise with half its frames 40 dB down: the floor shows the quiet half, the mean the loud one (less 3 dB).
    [Fact]
    public void Row_NoiseWithPauses_FloorIsInThePauses()
    {
        float[] steady = Sound.Noise(_ => 1e-6, 6, 8);
        float[] broken = Sound.Shaped(steady, t => t % 1 < 0.5 ? 1 : 0.01);
        float[] a = Mean(Hear(steady)), b = Mean(Hear(broken));
        Assert.Equal(Of(a, "rise_all") + 40 - 3, Of(b, "rise_all"), 2.5);
    }

    // An engine's comb at 4 cylinders and 3000 rpm stands out from noise, also in the pulses of its treble.
    [Fact]
    public void Row_Engine_HasAComb()
    {
        float[] engine = Sound.Mix(Sound.Engine(_ => 3000, 4, 0.1, 5, 9), Sound.Noise(Sound.CarDensity, 5, 9), 0.3);
        float[] noise = Sound.Noise(Sound.CarDensity, 5, 9);
        Assert.True(Of(Mean(Hear(engine)), "comb") > Of(Mean(Hear(noise)), "comb") + 4);
    }

    [Fact]
    public void Names_AreDifferentAndAsManyAsValues()
    {
        Assert.Equal(FeatureFrontEnd.Count, FeatureFrontEnd.Names.Distinct().Count());
        Assert.InRange(FeatureFrontEnd.Count, 20, 200);
    }

    [Theory]
    [InlineData(7999)]
    [InlineData(192001)]
    [InlineData(double.NaN)]
    public void Constructor_RateOutOfRange_Throws(double rateHz) => Assert.Throws<ArgumentOutOfRangeException>(() => new FeatureFrontEnd(rateHz));

    [Fact]
    public void AddAndFinish_AfterTheEnd_Throw()
    {
        var frontEnd = new FeatureFrontEnd(48000);
        frontEnd.Finish();
        Assert.Throws<InvalidOperationException>(() => frontEnd.Add(new float[1]));
        Assert.Throws<InvalidOperationException>(frontEnd.Finish);
    }

    // The seconds' rows, weighted by length.
    private static float[] Mean(ClipFeatures features) => [.. Enumerable.Range(0, FeatureFrontEnd.Count)
        .Select(i => (float)features.Seconds.Sum(s => s.Row.Span[i] * (s.EndSeconds - s.StartSeconds) / features.DurationSeconds))];

    private static ClipFeatures Hear(float[] sound, double rateHz = Sound.RateHz)
    {
        var frontEnd = new FeatureFrontEnd(rateHz);
        frontEnd.Add(sound);
        return frontEnd.Finish();
    }

    private static double Of(float[] row, string name) => row[FeatureFrontEnd.Names.ToList().IndexOf(name)];

    private sealed class EvenTagger : ISoundTagger
    {
        public TaggerIdentity Identity { get; } = new("even", "1", "");

        public TagThresholds Thresholds { get; } = new(new(0.4, 0.6), new(0.4, 0.6), new(0.4, 0.6), new(0.4, 0.6));

        public TagProbabilities Score(ReadOnlySpan<float> features) => new(0.5, 0.5, 0.5, 0.5);
    }
}
