using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Tests.Judgement;

public class ClipJudgeTests
{
    [Fact]
    public void Judge_NothingWrong_SaysUseAndTheKeyFigures()
    {
        ClipVerdict verdict = Made.Judge(Made.Channel());
        Assert.Equal(ClipOutcome.Use, verdict.Outcome);
        Assert.Equal("Use: speech 30 dB over the noise, peak -8 dBTP.", verdict.Headline);
        Assert.Equal(ClipReasonCodes.Clean, Assert.Single(verdict.Reasons).Code);
    }

    // Each threshold turns its reason on at its own value: just inside is as before, just outside is not.
    public static TheoryData<string, string, double, ClipOutcome> Boundaries() => new()
    {
        { "peak", ClipReasonCodes.HighPeak, -1, ClipOutcome.Use },
        { "peak", ClipReasonCodes.HighPeak, -0.99, ClipOutcome.UseWithCare },
        { "clipping", ClipReasonCodes.Clipping, 0, ClipOutcome.Use },
        { "clipping", ClipReasonCodes.Clipping, 1, ClipOutcome.UseWithCare },
        { "clipping", ClipReasonCodes.Clipping, 2, ClipOutcome.UseWithCare },
        { "clipping", ClipReasonCodes.Clipping, 3, ClipOutcome.Redo },
        { "dropouts", ClipReasonCodes.Dropouts, 0, ClipOutcome.Use },
        { "dropouts", ClipReasonCodes.Dropouts, 1, ClipOutcome.UseWithCare },
        { "dropouts", ClipReasonCodes.Dropouts, 2, ClipOutcome.Redo },
        { "ratio", ClipReasonCodes.SpeechToNoise, 20, ClipOutcome.Use },
        { "ratio", ClipReasonCodes.SpeechToNoise, 19.99, ClipOutcome.UseWithCare },
        { "ratio", ClipReasonCodes.SpeechToNoise, 12, ClipOutcome.UseWithCare },
        { "ratio", ClipReasonCodes.SpeechToNoise, 11.99, ClipOutcome.Redo },
        { "level", ClipReasonCodes.LowLevel, -45, ClipOutcome.Use },
        { "level", ClipReasonCodes.LowLevel, -45.01, ClipOutcome.UseWithCare },
        { "level", ClipReasonCodes.HighLevel, -12, ClipOutcome.Use },
        { "level", ClipReasonCodes.HighLevel, -11.99, ClipOutcome.UseWithCare },
        { "offset", ClipReasonCodes.DcOffset, 0.0099, ClipOutcome.Use },
        { "offset", ClipReasonCodes.DcOffset, -0.01, ClipOutcome.UseWithCare },
        { "hum", ClipReasonCodes.Hum, -70, ClipOutcome.Use },
        { "hum", ClipReasonCodes.Hum, -69.9, ClipOutcome.UseWithCare },
        { "speech", ClipReasonCodes.NoSpeech, 1, ClipOutcome.Use },
        { "speech", ClipReasonCodes.NoSpeech, 0.99, ClipOutcome.UseWithCare },
    };

    [Theory]
    [MemberData(nameof(Boundaries))]
    public void Judge_AtEachThreshold_TurnsItsReason(string what, string code, double value, ClipOutcome outcome)
    {
        ChannelMeasures c = Made.Channel();
        c = what switch
        {
            "peak" => c with { TruePeak = new TruePeak(value, 3) },
            "clipping" => c.WithSamples(s => s with { Clipping = Made.Runs((int)value) }),
            "dropouts" => c.WithSamples(s => s with { Dropouts = Made.Runs((int)value) }),
            "ratio" => c.With(s => s with { SpeechNoise = Made.Noise(value) }),
            "level" => c with { SpeechLevel = new ActiveSpeechLevel(-30, value, 0.4) },
            "offset" => c.WithSamples(s => s with { DcOffset = value }),
            "hum" => c.With(s => s with { Hum50 = new HumReport(50, true, value, [1, 2], 0.9) }),
            _ => c.With(s => s with { SpeechNoise = Made.Noise(30, activeSeconds: value) }),
        };
        ClipVerdict verdict = ClipJudge.Judge(what == "dropouts" ? Made.Clip(c) with { DurationSeconds = 60 } : Made.Clip(c), ClipThresholds.Default);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Equal(outcome, verdict.ChannelOutcomes[0]);
        Assert.Equal(outcome != ClipOutcome.Use, verdict.Reasons.Any(r => r.Code == code));
    }

    // 30 s at 6 a minute: three runs are 6 a minute. In 5 s one run would be 12 a minute, but one alone is no rate.
    [Theory]
    [InlineData(1, 5, 6, ClipOutcome.UseWithCare)]
    [InlineData(2, 5, 6, ClipOutcome.Redo)]
    [InlineData(1, 5, 0, ClipOutcome.Redo)]
    [InlineData(2, 600, 6, ClipOutcome.UseWithCare)]
    public void Judge_ClippingOfAShortClip_ScalesButNeverRedoesForOne(int runs, double seconds, double perMinute, ClipOutcome outcome)
    {
        ClipMeasures clip = Made.Clip(Made.Channel().WithSamples(s => s with { PeakDbfs = 0, Clipping = Made.Runs(runs) })) with { DurationSeconds = seconds };
        Assert.Equal(outcome, ClipJudge.Judge(clip, ClipThresholds.Default with { ClippingRedoPerMinute = perMinute }).Outcome);
    }

    // A sine of 300 Hz cut for 0.8 ms rose 1/cos(pi 300 0.0008) = 2.7 dB above; with 1 dB over the limit and 3 dB to spare: 7 dB.
    [Theory]
    [InlineData(3, 0, "Gain down 6 dB and record again.")]
    [InlineData(38, 0, "Gain down 7 dB and record again.")]
    [InlineData(400, 0, "Gain down 16 dB and record again.")]
    [InlineData(3, -6, "Gain down 6 dB at the transmitter or preamp, where it is cut, and record again.")]
    public void Judge_Clipping_SaysHowFarTheGainComesDown(int samples, double peakDb, string remedy)
    {
        ChannelMeasures c = Made.Channel().WithSamples(s => s with { PeakDbfs = peakDb, Clipping = Made.Runs(5, samples) });
        Assert.Equal(remedy, Made.Judge(c with { TruePeak = new TruePeak(peakDb, 1) }).Reasons[0].Remedy);
    }

    [Fact]
    public void Judge_SpeechLow_TurnsTheGainUpAsFarAsThePeaksAllow()
    {
        ChannelMeasures low = Made.Channel() with { SpeechLevel = new ActiveSpeechLevel(-50, -50, 0.4), TruePeak = new TruePeak(-32, 2) };
        Assert.Equal("Gain up 24 dB.", Made.Judge(low).Reasons[0].Remedy);
        Assert.Equal("Gain up 14 dB.", Made.Judge(low with { TruePeak = new TruePeak(-20, 2) }).Reasons[0].Remedy);
        Assert.StartsWith("Move the microphone nearer", Made.Judge(low with { TruePeak = new TruePeak(-9, 2) }).Reasons[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_FanHeard_SaysWhereAndFanOff()
    {
        ClipVerdict verdict = Made.Judge(Made.Channel().Tagged(ClipTag.AirConditioning, TagState.Present));
        Assert.Equal("Use with care: the fan is running (12-30 s). Fan off.", verdict.Headline);
        ClipReason reason = verdict.Reasons[0];
        Assert.Equal([new TimeStretch(12, 30)], reason.Stretches);
        Assert.Contains("never during it", reason.Remedy, StringComparison.Ordinal);
        Assert.Equal(ClipOutcome.Use, Made.Judge(Made.Channel().Tagged(ClipTag.AirConditioning, TagState.Present), new() { AirConditioningNeedsCare = false }).Outcome);
    }

    [Theory]
    [InlineData(ClipTag.Engine, false, ClipOutcome.Use)]
    [InlineData(ClipTag.Engine, true, ClipOutcome.UseWithCare)]
    [InlineData(ClipTag.Wind, true, ClipOutcome.UseWithCare)]
    [InlineData(ClipTag.Wind, false, ClipOutcome.Use)]
    public void Judge_TagHeardInGoodSpeech_IsCareOrARemarkAsTheTeamWants(ClipTag tag, bool care, ClipOutcome outcome)
    {
        ClipVerdict verdict = Made.Judge(Made.Channel().Tagged(tag, TagState.Present, 0), new() { EngineNeedsCare = care, WindNeedsCare = care });
        Assert.Equal(outcome, verdict.Outcome);
        ClipReason reason = Assert.Single(verdict.Reasons, r => r.Code == (tag == ClipTag.Engine ? ClipReasonCodes.Engine : ClipReasonCodes.Wind));
        Assert.Empty(reason.Stretches);
        Assert.Equal(outcome == ClipOutcome.Use, verdict.Reasons[0].Code == ClipReasonCodes.Clean);
    }

    // 80 runs of which the meter keeps the first 50: the last that is known is not the last that is.
    [Fact]
    public void Judge_MoreClippingThanIsListed_SaysFromWhereOn()
    {
        ClipReason reason = Made.Judge(Made.Channel().WithSamples(s => s with { PeakDbfs = 0, Clipping = Made.Runs(80) })).Reasons[0];
        Assert.StartsWith("Clipped in 80 places (from 1.0 s on): ", reason.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_ClippingAndHotSpeech_OneGainForBoth()
    {
        ChannelMeasures c = Made.Channel().WithSamples(s => s with { PeakDbfs = 0, Clipping = Made.Runs(9) }) with { SpeechLevel = new ActiveSpeechLevel(-6, -3, 0.9) };
        ClipVerdict verdict = Made.Judge(c);
        Assert.Equal("Gain down 23 dB and record again.", verdict.Reasons.Single(r => r.Code == ClipReasonCodes.Clipping).Remedy);
        Assert.Equal("Gain down 23 dB.", verdict.Reasons.Single(r => r.Code == ClipReasonCodes.HighLevel).Remedy);
    }

    [Fact]
    public void Judge_EngineHeardBelowNoiseOfTheTreble_IsNotBlamedForIt()
    {
        SpeechNoiseReport hiss = Made.Noise(15) with { NoiseOctaves = Made.Octaves(-60, 8) };
        ClipVerdict verdict = Made.Judge(Made.Channel().With(s => s with { SpeechNoise = hiss }).Tagged(ClipTag.Engine, TagState.Present, 0));
        Assert.Equal([ClipReasonCodes.SpeechToNoise, ClipReasonCodes.Engine], verdict.Reasons.Select(r => r.Code));
        Assert.DoesNotContain("engine", verdict.Reasons[0].Words + verdict.Reasons[0].Remedy, StringComparison.Ordinal);
        Assert.Contains("the noise is mostly above", verdict.Reasons[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_TagUnderBadSpeechToNoise_IsFoldedIntoItAndKeepsItsRemedy()
    {
        ChannelMeasures c = Made.Channel().With(s => s with { SpeechNoise = Made.Noise(9) }).Tagged(ClipTag.Engine, TagState.Present);
        ClipVerdict verdict = Made.Judge(c, new() { EngineNeedsCare = true });
        ClipReason reason = Assert.Single(verdict.Reasons);
        Assert.Equal((ClipReasonCodes.SpeechToNoise, ClipOutcome.Redo), (reason.Code, reason.Outcome));
        Assert.Contains("engine", reason.Words, StringComparison.Ordinal);
        Assert.Contains("null toward the engine", reason.Remedy, StringComparison.Ordinal);
        Assert.Equal([new TimeStretch(12, 30)], reason.Stretches);
    }

    // The strong octave of the made noise is that of 250 Hz.
    [Fact]
    public void Judge_SpeechToNoiseOfUnknownCause_NamesTheBandAndTheWayOut()
    {
        ClipReason reason = Made.Judge(Made.Channel().With(s => s with { SpeechNoise = Made.Noise(9) })).Reasons[0];
        Assert.Equal("Speech stands 9 dB over the noise, 12 needed at least; the noise is mostly below 350 Hz.", reason.Words);
        Assert.Contains("nearer", reason.Remedy, StringComparison.Ordinal);
        Assert.Equal((9.0, 12.0, "dB"), (reason.Measured!.Value, reason.Limit!.Value, reason.Unit));
    }

    [Theory]
    [InlineData(11.5, 1, true)]
    [InlineData(11.5, 0.3, false)]
    [InlineData(12.5, 1, true)]
    public void Judge_LimitWithinTheUncertainty_SaysAbout(double ratio, double spread, bool about)
    {
        ClipReason reason = Made.Judge(Made.Channel().With(s => s with { SpeechNoise = Made.Noise(ratio, spreadDb: spread) })).Reasons[0];
        Assert.Equal(about, reason.Words.Contains("about", StringComparison.Ordinal));
        Assert.Equal(ratio < 12 ? ClipOutcome.Redo : ClipOutcome.UseWithCare, reason.Outcome);
    }

    [Fact]
    public void Judge_UnsureTags_AreARemarkToListen()
    {
        ClipVerdict verdict = Made.Judge(Made.Channel().Tagged(ClipTag.Wind, TagState.Unsure).Tagged(ClipTag.Engine, TagState.Unsure));
        Assert.Equal(ClipOutcome.Use, verdict.Outcome);
        ClipReason reason = Assert.Single(verdict.Reasons, r => r.Code == ClipReasonCodes.Unsure);
        Assert.Equal("Cannot tell whether wind or an engine is heard: listen.", reason.Words);
    }

    [Fact]
    public void Judge_Gusts_CountAsWindEvenWhenTheTaggerIsUnsure()
    {
        ChannelMeasures c = Made.Channel().Tagged(ClipTag.Wind, TagState.Unsure).With(s => s with { Wind = new WindReport(0.8, 0, 12, 0, 2, 2, 0) });
        ClipVerdict verdict = Made.Judge(c);
        Assert.Contains(verdict.Reasons, r => r.Code == ClipReasonCodes.Wind && r.Outcome == ClipOutcome.UseWithCare);
        Assert.DoesNotContain(verdict.Reasons, r => r.Code == ClipReasonCodes.Unsure);
    }

    [Fact]
    public void Judge_CabinPressure_DoesNotSendForAWindShield()
    {
        ClipReason reason = Made.Judge(Made.Channel().With(s => s with { Wind = new WindReport(0, 0.9, 5, 12, 0, 0, 0) })).Reasons[0];
        Assert.Equal((ClipReasonCodes.CabinPressure, ClipOutcome.UseWithCare), (reason.Code, reason.Outcome));
        Assert.Contains("A wind-shield does not help", reason.Remedy, StringComparison.Ordinal);
    }

    // At -26 dBov, -23 dBFS, speech stands 12 dB over noise of -35 dBFS(A).
    [Theory]
    [InlineData(-60, ClipOutcome.UseWithCare)]
    [InlineData(-35.1, ClipOutcome.UseWithCare)]
    [InlineData(-34.9, ClipOutcome.Redo)]
    public void Judge_NoSpeech_JudgesTheNoiseAlone(double noiseDb, ClipOutcome outcome)
    {
        ClipVerdict verdict = Made.Judge(Made.Channel().With(s => s with { SpeechNoise = Made.NoSpeech(noiseDb) }));
        Assert.Equal((ClipReasonCodes.NoSpeech, outcome), (verdict.Reasons[0].Code, verdict.Outcome));
    }

    [Fact]
    public void Judge_HumWithoutSpeech_IsHeldAgainstTheNoise()
    {
        ChannelMeasures Hum(double db) => Made.Channel().With(s => s with { SpeechNoise = Made.NoSpeech(), Hum60 = new HumReport(60, true, db, [1], 0.8) });
        Assert.Contains(Made.Judge(Hum(-59)).Reasons, r => r.Code == ClipReasonCodes.Hum);
        Assert.DoesNotContain(Made.Judge(Hum(-61)).Reasons, r => r.Code == ClipReasonCodes.Hum);
    }

    [Fact]
    public void Judge_AllWrongAtOnce_PutsDefectsFirstThenNoiseThenTags()
    {
        ChannelMeasures c = Made.Channel()
            .WithSamples(s => s with { PeakDbfs = 0, Clipping = Made.Runs(40), Dropouts = Made.Runs(9), DcOffset = 0.05 })
            .With(s => s with { SpeechNoise = Made.Noise(5), Hum50 = new HumReport(50, true, -60, [1], 1), Wind = new WindReport(0, 0.9, 5, 12, 0, 0, 0) });
        ClipVerdict verdict = Made.Judge(c);
        Assert.Equal(
            [ClipReasonCodes.Dropouts, ClipReasonCodes.Clipping, ClipReasonCodes.SpeechToNoise, ClipReasonCodes.CabinPressure, ClipReasonCodes.Hum, ClipReasonCodes.DcOffset],
            verdict.Reasons.Select(r => r.Code));
        Assert.All(verdict.Reasons, r => Assert.InRange(r.Stretches.Count, 0, 10));
        Assert.All(verdict.Reasons, r => Assert.EndsWith(".", r.Words, StringComparison.Ordinal));
        Assert.InRange(verdict.Headline.Length, 1, 110);
    }

    [Fact]
    public void Judge_NoNumbersOrNamesThatFit_Throws()
    {
        Assert.Throws<ArgumentException>(() => ClipJudge.Judge(Made.Clip(), ClipThresholds.Default));
        Assert.Throws<ArgumentException>(() => ClipJudge.Judge(Made.Clip(Made.Channel()), ClipThresholds.Default, ["a", "b"]));
    }
}
