using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Tagging;
using Made = Quarterlight.Clips.Tests.Spectrum.Sound;

namespace Quarterlight.Clips.Tests;

public class ClipMeterTests
{
    private const int Rate = 48_000;

    private static readonly float[] s_mono = Made.Mix(Made.Speech(6, 1).Samples, Made.Noise(Made.CarDensity, 6, 2), 0.1);

    [Fact]
    public void Finish_AnyPieces_GivesTheSameToTheLastBit()
    {
        float[] stereo = Levels.Sound.Interleave(s_mono, [.. s_mono.Reverse()]);
        ClipMeasures whole = Measure(stereo, 2, [stereo.Length]);
        foreach (int[] pieces in new int[][] { [1, 7, 4096, 333], [48_000], [2048] })
        {
            ClipMeasures cut = Measure(stereo, 2, pieces);
            Assert.Equal(whole.DurationSeconds, cut.DurationSeconds);
            for (int c = 0; c < 2; c++)
            {
                ChannelMeasures a = whole.Channels[c], b = cut.Channels[c];
                Assert.Equal(a.TruePeak, b.TruePeak);
                Assert.Equal(a.SpeechLevel, b.SpeechLevel);
                Assert.Equal(a.Loudness, b.Loudness);
                Assert.Equal(a.Samples.RmsDbov, b.Samples.RmsDbov);
                Assert.Equal(a.Spectrum.SpeechNoise!.SpeechToNoiseDb, b.Spectrum.SpeechNoise!.SpeechToNoiseDb);
                Assert.Equal(a.Speech, b.Speech);
                Assert.Equal(a.Timeline.BandLevelsDb.ToArray(), b.Timeline.BandLevelsDb.ToArray());
                Assert.Equal(a.Timeline.PeakDb.ToArray(), b.Timeline.PeakDb.ToArray());
                Assert.Equal(a.Timeline.RmsDb.ToArray(), b.Timeline.RmsDb.ToArray());
                Assert.Equal(a.Tags!.Overall, b.Tags!.Overall);
            }

            Assert.Equal(whole.Pairs, cut.Pairs);
        }
    }

    // The meters on their own are checked against the outside; joined they must say the same.
    [Fact]
    public void Finish_TwoChannels_EqualsTheMetersOnTheirOwn()
    {
        float[] stereo = Levels.Sound.Interleave(s_mono, [.. s_mono.Select(v => 0.5f * v)]);
        ClipMeasures clip = Measure(stereo, 2, [5000]);
        var samples = new SampleMeter(Rate, 2);
        var peak = new TruePeakMeter(Rate, 2);
        var loudness = new LoudnessMeter(Rate, 2);
        var speech = new ActiveSpeechLevelMeter(Rate, 2);
        var relation = new ChannelRelationMeter(Rate, 2, 0, 1);
        samples.Add(stereo);
        peak.Add(stereo);
        loudness.Add(stereo);
        speech.Add(stereo);
        relation.Add(stereo);
        for (int c = 0; c < 2; c++)
        {
            Assert.Equal(samples.Measure()[c].PeakDbfs, clip.Channels[c].Samples.PeakDbfs);
            Assert.Equal(samples.Measure()[c].RmsDbov!.Value, clip.Channels[c].Samples.RmsDbov!.Value, 1e-9);
            Assert.Equal(samples.Measure()[c].Samples, clip.Channels[c].Samples.Samples);
            Assert.Equal(peak.Measure()[c], clip.Channels[c].TruePeak);
            Assert.Equal(loudness.Measure().Channels[c], clip.Channels[c].Loudness);
            Assert.Equal(speech.Measure()[c], clip.Channels[c].SpeechLevel);
        }

        Assert.Equal(loudness.Measure().Programme, clip.Programme);
        Assert.Equal(relation.Measure(), Assert.Single(clip.Pairs).Relation);
        Assert.Equal(6, clip.DurationSeconds, 1e-9);
    }

    // Made speech sounds from 0.7 to 2.1 s of every 2.3 s.
    [Fact]
    public void Finish_Speech_SaysWhere()
    {
        IReadOnlyList<TimeStretch> speech = Measure(s_mono, 1, [4096]).Channels[0].Speech;
        Assert.Equal(3, speech.Count);
        Assert.All(speech.Take(2).Select((s, i) => (s, i)), p =>
        {
            Assert.Equal((2.3 * p.i) + 0.7, p.s.StartSeconds, 0.25);
            Assert.Equal((2.3 * p.i) + 2.1, p.s.EndSeconds, 0.25);
        });
    }

    [Fact]
    public void Finish_NoiseOnly_HasNoSpeech() => Assert.Empty(Measure(Made.Noise(Made.CarDensity, 6, 2), 1, [4096]).Channels[0].Speech);

    // Words of 0.3 s a second apart, 0.6 s every fifth: of 260 the 200 longest are kept.
    [Fact]
    public void Finish_VeryManyWords_KeepsTheLongest()
    {
        const int rate = 8_000;
        float[] voice = Made.Speech(2.3, 1, rate).Samples[(int)(0.8 * rate)..(int)(1.4 * rate)];
        float[] noise = Made.Noise(_ => 1e-11, 300, 3, rate);
        for (int i = 0; i < 300; i++)
        {
            float[] word = i % 5 == 0 ? voice : voice[..(int)(0.3 * rate)];
            for (int k = 0; k < word.Length; k++)
            {
                noise[(i * rate) + k + 100] += word[k];
            }
        }

        var meter = new ClipMeter(rate, 1);
        meter.Add(noise);
        IReadOnlyList<TimeStretch> speech = meter.Finish().Channels[0].Speech;
        Assert.Equal(200, speech.Count);
        Assert.Equal(speech.OrderBy(s => s.StartSeconds), speech);
        Assert.True(speech.Count(s => s.EndSeconds - s.StartSeconds > 0.5) >= 58);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(4, 6)]
    [InlineData(5, 4)]
    [InlineData(16, 15)]
    public void Finish_Channels_AreComparedAllOrWithTheirNeighbours(int channels, int pairs)
    {
        float[][] sound = [.. Enumerable.Range(0, channels).Select(c => Levels.Sound.Noise(Rate, 0.1, (uint)(c + 1)))];
        ClipMeasures clip = Measure(Levels.Sound.Interleave(sound), channels, [3000]);
        Assert.Equal(pairs, clip.Pairs.Count);
        Assert.DoesNotContain(clip.Pairs, p => p.Relation.Identical);
        Assert.Equal(channels, clip.Channels.Count);
    }

    [Fact]
    public void Finish_ManyChannelsOfWhichSomeAreCopies_FindsThem()
    {
        float[] a = Levels.Sound.Noise(Rate, 0.1, 1), b = Levels.Sound.Noise(Rate, 0.1, 2), c = Levels.Sound.Noise(Rate, 0.1, 3), zero = new float[Rate];
        float[] almost = [.. a];
        almost[^1] *= 1.5f;
        ClipMeasures clip = Measure(Levels.Sound.Interleave(a, b, zero, a, c, almost, zero, a), 8, [3000]);
        Assert.Equal([(0, 3), (0, 7)], clip.Pairs.Where(p => p.Relation.Identical).Select(p => (p.First, p.Second)));
    }

    [Fact]
    public void Finish_Silence_HasNoTags()
    {
        ClipMeasures clip = Measure(new float[2 * Rate], 1, [4096]);
        Assert.True(clip.Channels[0].IsSilent);
        Assert.Null(clip.Channels[0].Tags);
        Assert.Equal(ClipReasonCodes.Silent, ClipJudge.Judge(clip, ClipThresholds.Default).Reasons[0].Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(100)]
    [InlineData(2047)]
    [InlineData(2049)]
    public void Finish_VeryShortClip_IsStillMeasuredAndJudged(int frames)
    {
        ClipMeasures clip = Measure(s_mono[1000..(1000 + frames)], 1, [64]);
        Assert.Equal(frames / (double)Rate, clip.DurationSeconds);
        ClipVerdict verdict = ClipJudge.Judge(clip, ClipThresholds.Default);
        Assert.NotEmpty(verdict.Headline);
        Assert.All(verdict.Reasons, r => Assert.DoesNotContain("NaN", r.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void Add_AfterTheEndOrPartOfAFrame_Throws()
    {
        var meter = new ClipMeter(Rate, 2);
        Assert.Throws<ArgumentException>(() => meter.Add(new float[3]));
        meter.Finish();
        Assert.Throws<InvalidOperationException>(() => meter.Add(new float[2]));
        Assert.Throws<InvalidOperationException>(() => meter.Finish());
        Assert.Throws<ArgumentOutOfRangeException>(() => new ClipMeter(4000, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ClipMeter(Rate, 65));
    }

    [Fact]
    public void Add_WithoutTags_AllocatesNothing()
    {
        var meter = new ClipMeter(Rate, 2);
        float[] stereo = Levels.Sound.Interleave(s_mono, s_mono);
        meter.Add(stereo);
        long before = GC.GetAllocatedBytesForCurrentThread();
        meter.Add(stereo);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    // 30 minutes of two channels at 8 kHz, engine speeds and timelines included: no more is held than was ever allocated. 100 MB for sixteen channels are 12.5 MB for two.
    [Fact]
    public void Add_ThirtyMinutes_StaysSmall()
    {
        float[] piece = Levels.Sound.Noise(2 * 8_000, 0.1, 5);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var meter = new ClipMeter(8_000, 2, new() { Cylinders = 4 });
        for (int s = 0; s < 1800; s++)
        {
            meter.Add(piece);
        }

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 12_500_000);
        Assert.Equal(1800, meter.Seconds);
    }

    private static ClipMeasures Measure(float[] interleaved, int channels, int[] pieces)
    {
        var meter = new ClipMeter(Rate, channels, new() { Tagger = new FlatTagger() });
        Levels.Sound.Pieces(interleaved, channels, pieces, p => meter.Add(p.Span));
        return meter.Finish();
    }

    // Says of every second what its first feature is, squeezed into 0 to 1.
    private sealed class FlatTagger : ISoundTagger
    {
        public TaggerIdentity Identity { get; } = new("flat", "1", "");

        public TagThresholds Thresholds { get; } = new(new(0.3, 0.7), new(0.3, 0.7), new(0.3, 0.7), new(0.3, 0.7));

        public TagProbabilities Score(ReadOnlySpan<float> features)
        {
            double p = 1 / (1 + Math.Exp(-features[0]));
            return new(p, p, p, p);
        }
    }
}
