using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Judgement;

public class ClipJudgeChannelTests
{
    [Fact]
    public void Judge_SilentChannelBesideSound_IsARemark()
    {
        ClipVerdict verdict = ClipJudge.Judge(Made.Clip(Made.Channel(), Made.Silence(1)), ClipThresholds.Default);
        Assert.Equal(ClipOutcome.Use, verdict.Outcome);
        Assert.Equal(1, Assert.Single(verdict.Reasons, r => r.Code == ClipReasonCodes.UnusedChannel).Channel);
    }

    [Fact]
    public void Judge_AllSilent_IsRedo()
    {
        ClipVerdict verdict = ClipJudge.Judge(Made.Clip(Made.Silence(0), Made.Silence(1)), ClipThresholds.Default);
        Assert.Equal(ClipReasonCodes.Silent, Assert.Single(verdict.Reasons).Code);
        Assert.Equal([ClipOutcome.Redo, ClipOutcome.Redo], verdict.ChannelOutcomes);
    }

    [Fact]
    public void Judge_CopiedChannel_IsSaidOnceAndNoBetterThanItsOriginal()
    {
        ChannelMeasures bad = Made.Channel().With(s => s with { SpeechNoise = Made.Noise(9) });
        ClipMeasures clip = Made.Clip(bad, bad with { Index = 1 }) with { Pairs = [new(0, 1, new ChannelRelation { Identical = true, Correlation = 1 })] };
        ClipVerdict verdict = ClipJudge.Judge(clip, ClipThresholds.Default);
        Assert.Single(verdict.Reasons, r => r.Code == ClipReasonCodes.SpeechToNoise);
        Assert.Equal("Channels 1 and 2 are the same sound.", Assert.Single(verdict.Reasons, r => r.Code == ClipReasonCodes.IdenticalChannels).Words);
        Assert.Equal([ClipOutcome.Redo, ClipOutcome.Redo], verdict.ChannelOutcomes);
    }

    [Fact]
    public void Judge_TwoSilentChannelsAlike_AreNotCalledTheSameSound()
    {
        ClipMeasures clip = Made.Clip(Made.Channel(), Made.Silence(1), Made.Silence(2)) with { Pairs = [new(1, 2, new ChannelRelation { Identical = true })] };
        Assert.DoesNotContain(ClipJudge.Judge(clip, ClipThresholds.Default).Reasons, r => r.Code == ClipReasonCodes.IdenticalChannels);
    }

    [Theory]
    [InlineData(-0.9, true)]
    [InlineData(-0.6, true)]
    [InlineData(-0.59, false)]
    [InlineData(0.95, false)]
    public void Judge_Polarity_IsSaidOfStrongOppositesOnly(double correlation, bool said)
    {
        ClipMeasures clip = Made.Clip(Made.Channel(), Made.Channel(1)) with { Pairs = [new(0, 1, new ChannelRelation { Correlation = correlation })] };
        ClipReason? reason = ClipJudge.Judge(clip, ClipThresholds.Default).Reasons.SingleOrDefault(r => r.Code == ClipReasonCodes.Polarity);
        Assert.Equal(said, reason is not null);
        Assert.True(reason is null || reason.Remedy.StartsWith("Flip the polarity of channel 2", StringComparison.Ordinal));
    }

    [Fact]
    public void Judge_SeveralChannels_NamesTheWorstInTheHeadline()
    {
        ClipMeasures clip = Made.Clip(Made.Channel(), Made.Channel(1).With(s => s with { SpeechNoise = Made.Noise(5) }));
        ClipVerdict verdict = ClipJudge.Judge(clip, ClipThresholds.Default, ["Boom", "Visor"]);
        Assert.StartsWith("Redo: channel 2 (Visor): speech 5 dB over the noise.", verdict.Headline, StringComparison.Ordinal);
        Assert.Equal(1, verdict.WorstChannel);
        Assert.Equal([ClipOutcome.Use, ClipOutcome.Redo], verdict.ChannelOutcomes);
    }

    [Fact]
    public void Judge_LongName_KeepsTheHeadlineShort()
    {
        ChannelMeasures bad = Made.Channel(1).With(s => s with { SpeechNoise = Made.Noise(5) });
        ClipVerdict verdict = ClipJudge.Judge(Made.Clip(Made.Channel(), bad), ClipThresholds.Default, ["", new string('x', 200)]);
        Assert.InRange(verdict.Headline.Length, 1, 110);
        Assert.StartsWith("Redo", verdict.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_ShortClipOfALowRate_IsARemarkEach()
    {
        ClipVerdict verdict = ClipJudge.Judge(Made.Clip(Made.Channel()) with { SampleRateHz = 16_000, DurationSeconds = 1.9 }, ClipThresholds.Default);
        Assert.Equal(ClipOutcome.Use, verdict.Outcome);
        Assert.Equal([ClipReasonCodes.Clean, ClipReasonCodes.LowRate, ClipReasonCodes.ShortClip], verdict.Reasons.Select(r => r.Code));
        Assert.DoesNotContain(
            ClipJudge.Judge(Made.Clip(Made.Channel()) with { SampleRateHz = 44_100, DurationSeconds = 2 }, ClipThresholds.Default).Reasons,
            r => r.Code is ClipReasonCodes.LowRate or ClipReasonCodes.ShortClip);
    }

    [Fact]
    public void Judge_ChannelsInAnotherOrder_GivesTheSameOutcomeAndReasons()
    {
        ChannelMeasures[] channels =
        [
            Made.Channel(), Made.Channel().With(s => s with { SpeechNoise = Made.Noise(15) }), Made.Silence(0),
            Made.Channel().WithSamples(s => s with { Dropouts = Made.Runs(1) }),
        ];
        int[][] orders = [[0, 1, 2, 3], [3, 2, 1, 0], [2, 0, 3, 1], [1, 3, 0, 2]];
        ClipVerdict[] verdicts = [.. orders.Select(o => ClipJudge.Judge(Made.Clip([.. o.Select((c, i) => channels[c] with { Index = i })]), ClipThresholds.Default))];
        Assert.All(verdicts, v => Assert.Equal(verdicts[0].Outcome, v.Outcome));
        Assert.All(verdicts, v => Assert.Equal(verdicts[0].Reasons.Select(r => r.Code), v.Reasons.Select(r => r.Code)));
        Assert.All(verdicts.Zip(orders), p => Assert.Equal(
            verdicts[0].ChannelOutcomes, Enumerable.Range(0, 4).Select(c => p.First.ChannelOutcomes[Array.IndexOf(p.Second, c)])));
    }
}
