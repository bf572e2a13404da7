using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Tests.Judgement;

/// <summary>Measures made by hand: a channel with nothing wrong, to be changed with "with".</summary>
internal static class Made
{
    public const int Rate = 48_000;

    public static Stretches None { get; } = new(0, 0, []);

    public static SpeechNoiseReport Noise(double ratioDb, double noiseDb = -60, double activeSeconds = 12, double spreadDb = 0.3) => new(
        noiseDb, 0.5, Octaves(noiseDb, 3), noiseDb + ratioDb, Octaves(noiseDb + ratioDb, 4), ratioDb, spreadDb, activeSeconds, 0.4);

    public static SpeechNoiseReport NoSpeech(double noiseDb = -60) => new(noiseDb, 0.5, Octaves(noiseDb, 3), null, [], null, null, 0, 0);

    /// <summary>Ten octaves, one of them strong.</summary>
    public static IReadOnlyList<BandLevel> Octaves(double levelDb, int strong) =>
        [.. Enumerable.Range(0, ThirdOctaves.OctaveCount).Select(b => new BandLevel(ThirdOctaves.OctaveNominalHz(b), b == strong ? levelDb + 9 : levelDb - 12, true))];

    public static ChannelMeasures Channel(int index = 0) => new()
    {
        Index = index,
        Samples = new SampleLevels { PeakDbfs = -8, RmsDbov = -30, Samples = 30L * Rate, Clipping = None, DigitalSilence = None, Dropouts = None },
        TruePeak = new TruePeak(-7.8, 4),
        Loudness = new Loudness(),
        SpeechLevel = new ActiveSpeechLevel(-30, -26, 0.4),
        Spectrum = new ClipSpectrumReport(null, Noise(30), null, null, null, null),
        Speech = [new TimeStretch(1, 13)],
        Timeline = new ClipTimeline
        {
            ColumnSeconds = 0,
            BandCentresHz = [],
            BandLevelsDb = ReadOnlyMemory<float>.Empty,
            RmsDb = ReadOnlyMemory<float>.Empty,
            PeakDb = ReadOnlyMemory<float>.Empty,
        },
    };

    public static ChannelMeasures Silence(int index) => Channel(index) is var c
        ? c with
        {
            Samples = c.Samples with { PeakDbfs = null, RmsDbov = null },
            TruePeak = new TruePeak(null, null),
            SpeechLevel = new ActiveSpeechLevel(null, null, 0),
            Spectrum = new ClipSpectrumReport(null, null, null, null, null, null),
            Speech = [],
        }
        : c;

    public static ClipMeasures Clip(params IReadOnlyList<ChannelMeasures> channels) => new()
    {
        DurationSeconds = 30,
        SampleRateHz = Rate,
        Channels = channels,
        Programme = new Loudness(),
        Pairs = [],
    };

    public static ChannelMeasures With(this ChannelMeasures c, Func<ClipSpectrumReport, ClipSpectrumReport> spectrum) => c with { Spectrum = spectrum(c.Spectrum) };

    public static ChannelMeasures WithSamples(this ChannelMeasures c, Func<SampleLevels, SampleLevels> samples) => c with { Samples = samples(c.Samples) };

    public static Stretches Runs(int count, long samplesEach = 20) =>
        new(count, count * samplesEach, [.. Enumerable.Range(0, Math.Min(50, count)).Select(i => new Stretch(1 + i, samplesEach))]);

    /// <summary>Tags of 30 s; those of <paramref name="from"/> to <paramref name="to"/> seconds are heard, the others not.</summary>
    public static ChannelMeasures Tagged(this ChannelMeasures c, ClipTag tag, TagState state, int from = 12, int to = 31) => c with
    {
        Tags = new TagReport(
            Chances(tag, state == TagState.Present ? 0.9 : 0.5),
            Enum.GetValues<ClipTag>().ToDictionary(t => t, t => t == tag ? state : c.Tags?.States.GetValueOrDefault(t) ?? TagState.Absent),
            [.. Enumerable.Range(0, 30).Select(s => new TaggedSecond(s, s + 1, Chances(tag, s >= from && s < to ? 0.95 : 0.05)))],
            new TaggerIdentity("made", "1", "")),
    };

    public static ClipVerdict Judge(ChannelMeasures channel, ClipThresholds? thresholds = null) => ClipJudge.Judge(Clip(channel), thresholds ?? ClipThresholds.Default);

    private static TagProbabilities Chances(ClipTag tag, double chance) => new(
        tag == ClipTag.Engine ? chance : 0, tag == ClipTag.Wind ? chance : 0, tag == ClipTag.AirConditioning ? chance : 0, tag == ClipTag.Clean ? chance : 0);
}
