using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing.Tests;

/// <summary>Invented judged clips, every figure written down rather than measured, so that it is known in advance.</summary>
internal static class ClipViews
{
    private static readonly double[] OctavesHz = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000];
    private static readonly double[] NoiseDb = [-38, -41, -46, -52, -57, -62, -67, -72, -77, -82];
    private static readonly double[] SpeechDb = [-200, -200, -44, -36, -33, -38, -43, -49, -55, -66];

    public static ClipView Good => Clip(12, ClipOutcome.Use, [Reason(ClipReasonCodes.Clean, ClipOutcome.Use, "Nothing was found that would hurt.")]) with { FileName = "T01_take2.wav" };

    public static ClipView Highway => Tagged(Clip(83, ClipOutcome.UseWithCare,
        [
            Reason(ClipReasonCodes.Wind, ClipOutcome.UseWithCare, "Wind is heard for 14 of 83 s; it moves the capsule.", new(12, 19), new(41, 48)),
            Reason(ClipReasonCodes.Engine, ClipOutcome.Use, "An engine is heard."),
        ]), new(0.93, 0.55, 0.08, 0.04), TagState.Present, TagState.Unsure, TagState.Absent, TagState.Absent) with
    {
        FileName = "S12_T03.wav",
        Channel = 0,
        ChannelName = "Visor",
        Comparison = Comparison(false),
    };

    public static ClipView Clipped => Damaged(Tagged(Clip(41, ClipOutcome.Redo,
        [
            Reason(ClipReasonCodes.Clipping, ClipOutcome.Redo, "62 runs at full scale in 41 s: 91 a minute where 6 are too many.", new(6.4, 6.5), new(7.1, 7.2), new(19, 19.3), new(20, 21), new(33, 34)),
            Reason(ClipReasonCodes.Dropouts, ClipOutcome.Redo, "3 dropouts in 41 s.", new(11.2, 11.21), new(27.5, 27.52), new(28.9, 28.91)),
            Reason(ClipReasonCodes.AirConditioning, ClipOutcome.UseWithCare, "A fan is heard."),
        ]), new(0.2, 0.1, 0.97, 0.02), TagState.Absent, TagState.Absent, TagState.Present, TagState.Absent)) with
    { FileName = "pickup.flac" };

    public static ClipView Tenth
    {
        get
        {
            double[] fast = [.. Enumerable.Range(0, 1025).Select(k => 1e-7 / (1 + (k * 0.02)))];
            return Bare(Clip(0.1, ClipOutcome.UseWithCare, [Reason(ClipReasonCodes.NoSpeech, ClipOutcome.UseWithCare, "0.1 s is too short to judge speech.")]), new ClipBandLevels([], 1, fast, 48000 / 2048.0, 0));
        }
    }

    public static ClipView HalfHour => Tagged(Clip(1800, ClipOutcome.UseWithCare, [Reason(ClipReasonCodes.SpeechToNoise, ClipOutcome.UseWithCare, "Speech is 16 dB over the noise; 20 dB would do.")]), new(0.5, 0.88, 0.52, 0.1), TagState.Unsure, TagState.Present, TagState.Unsure, TagState.Absent);

    public static ClipView Silent
    {
        get
        {
            ClipView view = Bare(Clip(20, ClipOutcome.Redo, [Reason(ClipReasonCodes.Silent, ClipOutcome.Redo, "There is nothing but zeros on the channel.")]), null);
            return WithChannel(view, c => c with
            {
                Samples = c.Samples with { PeakDbfs = null, RmsDbov = null },
                TruePeak = new(null, null),
                Loudness = new(),
                Timeline = c.Timeline with
                {
                    BandLevelsDb = Enumerable.Repeat(-200f, c.Timeline.BandLevelsDb.Length).ToArray(),
                    RmsDb = Enumerable.Repeat(-200f, c.Timeline.ColumnCount).ToArray(),
                    PeakDb = Enumerable.Repeat(float.NegativeInfinity, c.Timeline.ColumnCount).ToArray(),
                },
            });
        }
    }

    public static ClipView WithoutSpeech => WithChannel(Clip(30, ClipOutcome.UseWithCare, [Reason(ClipReasonCodes.NoSpeech, ClipOutcome.UseWithCare, "No speech was found, so only the noise was judged.")], speech: false), c => c with
    {
        Spectrum = c.Spectrum with { SpeechNoise = c.Spectrum.SpeechNoise! with { SpeechAWeightedDb = null, SpeechOctaves = [], SpeechToNoiseDb = null, SpeechToNoiseUncertaintyDb = null, ActiveSeconds = 0, ActiveShare = 0 } },
        Tags = null,
        Speech = [],
    });

    public static ClipView EightKilohertz => WithChannel(Clip(9.5, ClipOutcome.UseWithCare, [Reason(ClipReasonCodes.LowLevel, ClipOutcome.UseWithCare, "Speech is recorded low, at -48 dBov.")], rateHz: 8000), c => c with
    {
        Spectrum = c.Spectrum with { SpeechNoise = c.Spectrum.SpeechNoise! with { NoiseOctaves = [.. c.Spectrum.SpeechNoise.NoiseOctaves.Take(8)], SpeechOctaves = [.. c.Spectrum.SpeechNoise.SpeechOctaves.Take(6)] } },
    });

    public static ClipView OddNames => Highway with
    {
        FileName = "\u202Egpj\u0007 \r\n" + string.Join('_', Enumerable.Repeat("the_very_long_name_of_a_take", 30)) + ".wav",
        ChannelName = string.Join(' ', Enumerable.Repeat("Sonnenblende Mitte A\u0301", 20)),
        Verdict = Highway.Verdict with { Reasons = [Reason(ClipReasonCodes.Hum, ClipOutcome.UseWithCare, string.Join(' ', Enumerable.Repeat("the supply of the follow car hums at a hundred hertz behind the second row", 12)) + ".", new TimeStretch(1, 2))] },
    };

    public static ClipView Blink => WithChannel(Tenth, c => c with
    {
        Spectrum = new(null, null, null, null, null, null),
        Timeline = c.Timeline with { BandLevelsDb = default, RmsDb = default, PeakDb = default },
    }) with
    { Measures = WithChannel(Tenth, c => c with { Spectrum = new(null, null, null, null, null, null), Timeline = c.Timeline with { BandLevelsDb = default, RmsDb = default, PeakDb = default } }).Measures with { DurationSeconds = 0.02 } };

    public static ClipView Tied => Highway with { Comparison = Comparison(true) };

    public static IReadOnlyList<ClipView> All => [Good, Highway, Clipped, Tenth, HalfHour, Silent, WithoutSpeech, EightKilohertz, OddNames, Blink, Tied];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 11)];

    public static ClipView WithChannel(ClipView view, Func<ChannelMeasures, ChannelMeasures> change) =>
        view with { Measures = view.Measures with { Channels = [.. view.Measures.Channels.Select((c, i) => i == view.Channel ? change(c) : c)] } };

    /// <summary>A second half of a second long for each, phrases of 2.2 s every 4 s.</summary>
    public static ClipView Clip(double seconds, ClipOutcome outcome, ClipReason[] reasons, int rateHz = 48000, bool speech = true)
    {
        TimeStretch[] phrases = speech ? [.. Enumerable.Range(0, 200).Select(i => new TimeStretch(0.8 + (4 * i), 3 + (4 * i))).Where(s => s.EndSeconds < seconds)] : [];
        var channel = new ChannelMeasures
        {
            Index = 0,
            Samples = new() { PeakDbfs = -6.2, RmsDbov = -31, Samples = (long)(seconds * rateHz), Clipping = None, DigitalSilence = None, Dropouts = None },
            TruePeak = new(-5.7, 0.31 * seconds),
            Loudness = new() { IntegratedLkfs = -27.4 },
            SpeechLevel = new(-31, -29, 0.5),
            Spectrum = new(
                null,
                new(-55, 0.5, Levels(NoiseDb), -31.6, Levels(SpeechDb), 23.4, 0.7, phrases.Length * 2.2, 0.5),
                null, null, null, null),
            Speech = phrases,
            Tags = null,
            Timeline = ClipTimelines.Make(seconds, rateHz, phrases, NoiseDb),
        };
        var view = new ClipView
        {
            Measures = new() { DurationSeconds = seconds, SampleRateHz = rateHz, Channels = [channel, channel with { Index = 1 }], Programme = channel.Loudness, Pairs = [] },
            Verdict = new(outcome, "A headline.", reasons, [outcome, ClipOutcome.Use], 0),
            Channel = 0,
        };
        return Tagged(view, new(0.03, 0.05, 0.02, 0.95), TagState.Absent, TagState.Absent, TagState.Absent, TagState.Present);
    }

    private static Stretches None { get; } = new(0, 0, []);

    private static ClipReason Reason(string code, ClipOutcome outcome, string words, params TimeStretch[] stretches) => new() { Code = code, Outcome = outcome, Harm = 1, Words = words, Stretches = stretches };

    private static BandLevel[] Levels(double[] db) => [.. OctavesHz.Zip(db).Where(p => p.Second > -200).Select(p => new BandLevel(p.First, p.Second, true))];

    private static ClipView Tagged(ClipView view, TagProbabilities overall, TagState engine, TagState wind, TagState fan, TagState clean)
    {
        double Sway(double p, int i, int k) => Math.Clamp(p + (0.25 * Math.Sin((0.37 * i) + k) * Math.Sin(0.11 * i * (k + 1))), 0, 1);
        TaggedSecond[] seconds = [.. Enumerable.Range(0, (int)Math.Ceiling(view.Measures.DurationSeconds))
            .Select(i => new TaggedSecond(i, Math.Min(i + 1, view.Measures.DurationSeconds), new(Sway(overall.Engine, i, 0), Sway(overall.Wind, i, 1), Sway(overall.AirConditioning, i, 2), Sway(overall.Clean, i, 3))))];
        Dictionary<ClipTag, TagState> states = new() { [ClipTag.Engine] = engine, [ClipTag.Wind] = wind, [ClipTag.AirConditioning] = fan, [ClipTag.Clean] = clean };
        return WithChannel(view, c => c with { Tags = new(overall, states, seconds, new("made up", "1", "none")) });
    }

    private static ClipView Bare(ClipView view, ClipBandLevels? bands) => WithChannel(view, c => c with { Spectrum = new(bands, null, null, null, null, null), Tags = null, Speech = [] });

    private static ClipView Damaged(ClipView view) => WithChannel(view, c => c with
    {
        Samples = c.Samples with
        {
            PeakDbfs = 0,
            Clipping = new(62, 800, [.. Enumerable.Range(0, 50).Select(i => new Stretch(6.4 + (0.9 * (i % 3)) + (i / 3 * 2.03), 12))]),
            Dropouts = new(3, 1500, [new(11.2, 480), new(27.5, 900), new(28.9, 480)]),
        },
        TruePeak = new(0.8, 19.02),
        Timeline = c.Timeline with { PeakDb = c.Timeline.PeakDb.ToArray().Select(p => Math.Min(0, p + 6)).ToArray() },
    });

    // Forecast noise falls by 5 dB an octave from 62 dB at 125 Hz; measured is 4 dB more at 125 Hz and 6 dB less at 8 kHz, evenly between.
    private static PlanComparison Comparison(bool tied)
    {
        double[] speech = [58, 63, 65, 60, 55, 49, 43], noise = [62, 57, 52, 47, 42, 37, 32];
        double Off(int i) => 4 - (i * 10 / 6.0);
        return new()
        {
            Channel = 0,
            Prediction = new("driver", "visor", new(speech), new(noise), BandLevels.Flat(10), 3),
            TiedToSpeech = tied,
            FullScaleSplDb = 112,
            SpeechDba = new(66, tied ? 66 : 65),
            NoiseDba = new(51, 52.4),
            SpeechToNoiseDb = new(15, 12.6),
            Bands = [.. OctaveBands.CentresHz.ToArray().Select((hz, i) => new ComparedBand(hz, new(speech[i], i == 6 && tied ? null : speech[i] - 1), new(noise[i], noise[i] + Off(i)), new(speech[i] - noise[i], speech[i] - 1 - noise[i] - Off(i))))],
            PlusMinusDb = 4,
            Words = "Speech over noise is 12.6 dB where the plan forecast 15 dB: within what is to be expected.",
        };
    }
}
