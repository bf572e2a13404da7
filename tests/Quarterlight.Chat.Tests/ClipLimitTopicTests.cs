using Quarterlight.Crew;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>The team's limits for clips: shown, set, put back.</summary>
public sealed class ClipLimitTopicTests
{
    private readonly CannedClips clips = new();

    [Fact]
    public async Task Show_Defaults_EveryLimitWithItsUnit()
    {
        CrewAnswer answer = await clips.AskAsync("what are the limits", null);

        Assert.Equal("Clips are held against the default limits.", answer.Headline);
        Assert.Equal("Speech over noise: use from 20 dB, with care from 12 dB, else record again.", answer.Lines[0].Text);
        Assert.Equal("Care when heard: engine no, wind yes, fan yes.", answer.Lines[^1].Text);
    }

    [Theory]
    [InlineData("set the least speech over noise to 18 dB", "Set for the whole team: use from 18 dB of speech over noise.")]
    [InlineData("engine needs care on", "Set for the whole team: an engine that is heard needs care.")]
    [InlineData("wind needs care off", "Set for the whole team: wind that is heard needs no care.")]
    [InlineData("set the highest true peak to -3 dBTP", "Set for the whole team: care above a true peak of -3 dBTP.")]
    public async Task Set_OneLimit_ConfirmedAsItIsInForce(string question, string headline)
    {
        CrewAnswer answer = await clips.AskAsync(question, null);

        Assert.Equal(headline, answer.Headline);
        Assert.False(answer.Private);
        Assert.Equal(1, clips.Settings.Revision);
    }

    [Fact]
    public async Task Set_SecondLimit_KeepsTheFirst()
    {
        await clips.AskAsync("engine needs care on", null);
        await clips.AskAsync("set the least speech over noise to 18 dB", null);

        Assert.True(clips.Settings.InForce.EngineNeedsCare);
        Assert.Equal(18, clips.Settings.InForce.SpeechToNoiseUseDb);
    }

    [Fact]
    public async Task Set_BelowTheLimitForCare_TakesThatAlongAndSaysSo()
    {
        CrewAnswer answer = await clips.AskAsync("set the least speech over noise to 9 dB", null);

        Assert.Equal(9, clips.Settings.InForce.SpeechToNoiseCareDb);
        Assert.Contains("went along to 9 dB", answer.Lines[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Set_SomebodyWasFaster_SetOnTopOfTheirs()
    {
        clips.BeforeUpdate = c =>
        {
            c.BeforeUpdate = null;
            c.Set(new ClipThresholds { HumCareDb = 30 });
        };

        CrewAnswer answer = await clips.AskAsync("set the least speech over noise to 18 dB", null);

        Assert.Equal(CrewOutcome.Answered, answer.Outcome);
        Assert.Equal((30.0, 18.0), (clips.Settings.InForce.HumCareDb, clips.Settings.InForce.SpeechToNoiseUseDb));
        Assert.Equal(2, clips.Updates.Count);
    }

    [Fact]
    public async Task Set_SomebodyIsAlwaysFaster_SaysSo()
    {
        clips.BeforeUpdate = c => c.Set(new ClipThresholds { HumCareDb = 30 });

        Assert.StartsWith("Somebody changed it in the meantime.", (await clips.AskAsync("engine needs care on", null)).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Set_BackToTheDefaults_NothingIsLeft()
    {
        await clips.AskAsync("engine needs care on", null);
        CrewAnswer answer = await clips.AskAsync("back to the defaults", null);

        Assert.Equal("Back to the default limits for clips, for the whole team.", answer.Headline);
        Assert.Equal(0, clips.Settings.Thresholds.CalculateSize());
    }
}
