using Quarterlight.Crew;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>What is remembered of a clip stays small, whatever the planner sends.</summary>
public sealed class ClipMemoryTests
{
    [Theory]
    [InlineData(1, 10)]
    [InlineData(2, 3600)]
    [InlineData(64, 20)]
    [InlineData(64, 3600)]
    public void Of_LongClipOfManyChannels_StaysBelowTheLimit(int channels, int seconds)
    {
        ClipReport report = CannedClips.Clip();
        report.Channels.Clear();
        for (int c = 1; c <= channels; c++)
        {
            ClipChannel channel = CannedClips.Channel(c);
            channel.Tags.Seconds.Add(Enumerable.Range(0, seconds).Select(s => new TaggedSecond { Stretch = new ClipStretch { StartS = s, EndS = s + 1 }, Chances = new TagChances { Engine = 0.5 } }));
            channel.SpeechAndNoise.Speech.Add(Enumerable.Range(0, 200).Select(s => new ClipStretch { StartS = s, EndS = s + 0.5 }));
            channel.Octaves.Add(Enumerable.Range(0, 10).Select(o => new BandLevel { CentreHz = 31.5 * Math.Pow(2, o), LevelDbfs = -50 }));
            report.Channels.Add(channel);
        }

        report.Verdict.Reasons.Add(Enumerable.Range(0, 200).Select(i => new ClipReason { Code = "clipping", Words = new string('w', 300), Channel = (i % channels) + 1 }));
        ClipMemory kept = ClipMemory.Of(report, null, null);

        Assert.InRange(kept.Report.CalculateSize(), 1, ClipMemory.LargestBytes);
        Assert.Equal(report.Verdict.Headline, kept.Report.Verdict.Headline);
        Assert.Equal("clipping", kept.Report.Verdict.Reasons[^1].Code);
        Assert.NotEmpty(kept.Report.Channels);
        Assert.Equal(seconds, report.Channels[0].Tags.Seconds.Count);
    }

    [Fact]
    public void Of_NothingButLongWords_KeepsTheDecision()
    {
        ClipReport report = CannedClips.Clip();
        report.Remarks.Add(Enumerable.Repeat(new string('x', 20_000), 10));

        Assert.InRange(ClipMemory.Of(report, null, null).Report.CalculateSize(), 1, ClipMemory.LargestBytes);
    }
}
