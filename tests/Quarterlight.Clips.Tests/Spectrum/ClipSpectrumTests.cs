using CsCheck;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

public class ClipSpectrumTests
{
    private static readonly float[] s_mixture = Sound.Mix(Sound.Mix(Sound.Speech(5, 1).Samples, Sound.Engine(_ => 1500, 4, 0.02, 5, 1)), Sound.Noise(Sound.CarDensity, 5, 2), 0.2);
    private static readonly string s_whole = Text(Sound.Measure(s_mixture, 4));

    // One piece or many: the same to the last bit.
    [Fact]
    public void Add_AnyPieces_GiveTheSameResult() =>
        Gen.Int[1, 9000].Array[1, 40].Sample(
            sizes =>
            {
                var clip = new ClipSpectrum(Sound.RateHz, 4);
                int at = 0;
                for (int i = 0; at < s_mixture.Length; i++)
                {
                    int take = Math.Min(sizes[i % sizes.Length], s_mixture.Length - at);
                    clip.Add(s_mixture.AsSpan(at, take));
                    at += take;
                }

                return Text(clip.Finish()) == s_whole;
            },
            iter: 25);

    [Fact]
    public void Add_Block_AllocatesNothing()
    {
        var clip = new ClipSpectrum(Sound.RateHz, 4, (_, _) => { });
        clip.Add(s_mixture);
        long before = GC.GetAllocatedBytesForCurrentThread();
        clip.Add(s_mixture);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    // Twice as loud is 6.02 dB more, and changes nothing else.
    [Fact]
    public void Finish_TwiceAsLoud_MovesOnlyLevels()
    {
        ClipSpectrumReport soft = Sound.Measure(s_mixture, 4);
        ClipSpectrumReport loud = Sound.Measure([.. s_mixture.Select(x => 2 * x)], 4);
        Assert.Equal(soft.Bands!.AWeightedDb + 6.0206, loud.Bands!.AWeightedDb, 0.001);
        Assert.Equal(soft.SpeechNoise!.SpeechToNoiseDb!.Value, loud.SpeechNoise!.SpeechToNoiseDb!.Value, 0.001);
        Assert.Equal(soft.Engine!.Rpm!.Value, loud.Engine!.Rpm!.Value, 0.01);
        Assert.Equal(soft.Wind!.Wind, loud.Wind!.Wind, 0.001);
    }

    [Fact]
    public void Add_SamplesThatAreNoNumbers_CountAsZero()
    {
        float[] broken = [.. s_mixture];
        float[] zeroed = [.. s_mixture];
        for (int i = 1000; i < broken.Length; i += 7001)
        {
            broken[i] = i % 2 == 0 ? float.NaN : float.PositiveInfinity;
            zeroed[i] = 0;
        }

        Assert.Equal(Text(Sound.Measure(zeroed, 4)), Text(Sound.Measure(broken, 4)));
    }

    [Theory]
    [InlineData(8000)]
    [InlineData(11025)]
    [InlineData(22050)]
    [InlineData(44100)]
    [InlineData(96000)]
    [InlineData(192000)]
    public void Finish_OtherRates_FindTheSame(double rateHz)
    {
        float[] engine = Sound.Engine(_ => 2000, 4, 0.05, 5, 1, rateHz);
        ClipSpectrumReport report = Sound.Measure(Sound.Mix(engine, Sound.Noise(Sound.CarDensity, 5, 2, rateHz), 0.3), 4, rateHz);
        Assert.InRange(report.Engine!.Rpm!.Value, 1990, 2010);
        Assert.Equal(-20, Sound.Measure(Sound.Sine(1000, 0.1, 3, rateHz), rateHz: rateHz).Bands!.AWeightedDb, 0.05);
    }

    [Fact]
    public void Finish_NothingHeard_GivesNothing()
    {
        ClipSpectrumReport report = new ClipSpectrum(48000).Finish();
        Assert.Equal(new ClipSpectrumReport(null, null, null, null, null, null), report);
    }

    [Theory]
    [InlineData(7999)]
    [InlineData(192001)]
    [InlineData(double.NaN)]
    public void Constructor_RateOutOfRange_Throws(double rateHz) => Assert.Throws<ArgumentOutOfRangeException>(() => new ClipSpectrum(rateHz));

    [Fact]
    public void Add_AfterFinish_Throws()
    {
        var clip = new ClipSpectrum(48000);
        clip.Finish();
        Assert.Throws<InvalidOperationException>(() => clip.Add([0f]));
        Assert.Throws<InvalidOperationException>(() => clip.Finish());
    }

    private static string Text(ClipSpectrumReport r) => string.Join(
        '\n',
        [
            r.Bands!.AWeightedDb.ToString("R"), .. r.Bands.ThirdOctaveLevels().Select(b => b.ToString()), r.SpeechNoise!.ToString(),
            .. r.SpeechNoise.NoiseOctaves.Concat(r.SpeechNoise.SpeechOctaves).Select(b => b.ToString()), r.Engine!.ToString(),
            .. r.Engine.Moments.Select(m => m.ToString()), r.Wind!.ToString(), r.Hum50!.ToString(), r.Hum60!.ToString(),
        ]);
}
