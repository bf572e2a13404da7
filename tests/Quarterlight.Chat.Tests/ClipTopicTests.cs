using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about a clip, and what is asked of the planner for them.</summary>
public sealed class ClipTopicTests
{
    private static readonly CrewMemory InSchoolRun = new() { SceneName = DemoData.MainScene };

    private readonly CannedClips clips = new();

    [Fact]
    public async Task Judge_OneChannel_DecisionReasonsFiguresTagsCertainty()
    {
        CrewAnswer answer = await clips.AskAsync("is this usable?", CannedClips.File());

        Assert.Equal(CrewIntent.JudgeClip, answer.Intent);
        Assert.Equal("Use with care: the fan runs. Switch it off.", answer.Headline);
        Assert.Equal(
            [
                "0:12 to 0:31, 1:11: a fan is heard. Switch it off for the take.",
                "Speech stands 16.5 dB over the noise. Move closer.",
                "Speech over noise 16 ± 2 dB(A), true peak -3.2 dBTP, loudness -23.4 LUFS, noise -52 ± 1 dBFS(A).",
                "Heard: fan (93 %); cannot tell about engine, so listen; no wind.",
            ],
            answer.Lines.Take(4).Select(l => l.Text));
        Assert.StartsWith("How sure: speech over noise ±2 dB", answer.Lines[4].Text, StringComparison.Ordinal);
        Assert.Single(answer.Pictures);
        Assert.Equal("clip-take-3.png", answer.Pictures[0].FileName);
        Assert.Equal(["where exactly?", "details"], answer.FollowUps);
        Assert.StartsWith("clip take 3.wav (WAV, 24-bit, 48 kHz, mono, 1:35), beside no plan", answer.Understood, StringComparison.Ordinal);
        Assert.Null(answer.Memory.SceneName);
    }

    [Fact]
    public async Task Judge_NoText_IsJudged() => Assert.Equal(CrewOutcome.Answered, (await clips.AskAsync("", CannedClips.File())).Outcome);

    [Fact]
    public async Task Judge_PlanInForce_GoesAlong()
    {
        await clips.AskAsync("this is the driver's mic", CannedClips.File(), InSchoolRun with { Plan = CannedClips.Plan() });

        Assert.Equal(DemoData.MainScene, clips.Headers[0].SentPlan.Scene.Name);
        Assert.Equal("parent", clips.Headers[0].TalkerId);
    }

    [Fact]
    public async Task Judge_SceneSet_IsNamed()
    {
        clips.Report.Comparisons.Add(CannedClips.Comparison());

        CrewAnswer answer = await clips.AskAsync("this is the driver's mic", CannedClips.File(), InSchoolRun);

        Assert.Equal(DemoData.MainScene, clips.Headers[0].Scene);
        Assert.Contains(answer.Lines, l => l.Text == "Beside the plan, Parent: less than planned, within what the forecast is good for.");
        Assert.EndsWith("beside a new plan of School run that goes wrong (invented)", answer.Understood, StringComparison.Ordinal);
        Assert.Contains("redo the plan with that noise", answer.FollowUps);
    }

    [Fact]
    public async Task Judge_OneChannelAndSeveralTalkers_JudgedWithoutThePlanAndAskedWhose()
    {
        clips.Refusal = h => h.PlanSourceCase == ClipHeader.PlanSourceOneofCase.None ? null : FakePlanner.Invalid(("header.talker_id", "the clip has one channel"));

        CrewAnswer answer = await clips.AskAsync("judge this", CannedClips.File(), InSchoolRun);
        clips.Refusal = null;
        CrewAnswer whose = await clips.AskAsync(answer.FollowUps[0], null, answer.Memory);

        Assert.Equal(CrewOutcome.Answered, answer.Outcome);
        Assert.Contains(answer.Lines, l => l.Text == "Not held against the plan yet: say whose microphone it is, such as \"it is the Parent's\".");
        Assert.Equal("it is the Parent's", answer.FollowUps[0]);
        Assert.Equal(CrewOutcome.Answered, whose.Outcome);
        Assert.Equal(("parent", DemoData.MainScene), (clips.Headers[^1].TalkerId, clips.Headers[^1].Scene));
    }

    [Fact]
    public async Task Judge_TalkerWithoutMicrophone_JudgedAndSaid()
    {
        clips.Refusal = h => h.TalkerId.Length == 0 ? null : FakePlanner.Invalid(("header.talker_id", "the plan has no microphone for it"));

        CrewAnswer answer = await clips.AskAsync("this is the driver's mic", CannedClips.File(), InSchoolRun);

        Assert.Contains(answer.Lines, l => l.Text.StartsWith("The plan has no microphone for Parent", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Judge_ChannelAndCylindersSaid_GoAlong()
    {
        await clips.AskAsync("show me channel 2 of this, six cylinders", CannedClips.File());

        Assert.Equal((2, 6, true), (clips.Headers[0].PictureChannel, clips.Headers[0].Cylinders, clips.Headers[0].IncludePicture));
    }

    [Fact]
    public async Task Judge_BadFile_PrivateSentence()
    {
        clips.Refusal = _ => FakePlanner.Invalid(("piece", "this is a picture, not sound. Send a WAV file"));

        CrewAnswer answer = await clips.AskAsync("judge this", CannedClips.File());

        Assert.True(answer.Private);
        Assert.Equal("Please check the file: this is a picture, not sound. Send a WAV file.", answer.Headline);
        Assert.Null(answer.Memory.LastClip);
    }

    [Fact]
    public async Task Judge_HostileName_IsCleanAndShort()
    {
        CrewAnswer answer = await clips.AskAsync("judge this", CannedClips.File(name: $"@everyone **<b>`{new string('x', 300)}\u202e\u001b[31m.wav"));

        Assert.DoesNotContain(answer.Understood, c => c is '@' or '*' or '<' or '`' or '\u202e' or '\u001b');
        Assert.InRange(answer.Understood.Length, 10, 160);
        Assert.InRange(answer.Pictures[0].FileName.Length, 5, 60);
    }

    [Theory]
    [InlineData("why?", "Use with care: the fan runs. Switch it off.", "Measured 16.5, limit 20 dB.")]
    [InlineData("where exactly?", "First at 0:12.", "0:12 to 0:31, 1:11: a fan is heard.")]
    [InlineData("loudness?", "-23.4 LUFS, range 5.0 LU.", "True peak -3.2 dBTP at 0:14")]
    [InlineData("what rpm", "About 1800 rpm, taken as 4 cylinders, four-stroke (confidence 90 %).", "It fires at 60.1 Hz.")]
    [InlineData("is the fan on", "Heard: fan (93 %); cannot tell about engine, so listen; no wind.", "1 dropout: 1:01.")]
    [InlineData("details", "take 3.wav (WAV, 24-bit, 48 kHz, mono, 1:35): use with care: the fan runs. Switch it off.", "Held against: use from 20 dB")]
    [InlineData("which channel", "The clip has one channel.", "Channel 1: use it with care")]
    [InlineData("can we use it?", "Use with care: the fan runs. Switch it off.", "A fan")]
    [InlineData("how does it compare with the plan", "The clip was not held against a plan.", "Ask for the plan")]
    [InlineData("what format is the file", "take 3.wav (WAV, 24-bit, 48 kHz, mono, 1:35).", "The recorder wrote nothing")]
    public async Task Ask_AboutTheLastClip_AnsweredFromMemory(string question, string headline, string line)
    {
        CrewAnswer judged = await clips.AskAsync("judge this", CannedClips.File());
        CrewAnswer answer = await clips.AskAsync(question, null, judged.Memory);

        Assert.Equal(headline, answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text.Contains(line, StringComparison.OrdinalIgnoreCase));
        Assert.Single(clips.Headers);
        Assert.All(answer.FollowUps, f => Assert.NotEmpty(f));
    }

    [Fact]
    public async Task Ask_WithoutAClip_OneSentenceHowToSendOne()
    {
        CrewAnswer answer = await clips.AskAsync("is this clip usable?", null);

        Assert.True(answer.Private);
        Assert.Equal("There is no clip yet: give its path in the terminal, such as \"judge ./take3.wav\", or attach the file in the chat.", answer.Headline);
    }

    [Fact]
    public async Task Ask_AfterThePlanWasTalkedAbout_WhyMeansThePlanAgain()
    {
        CrewAnswer judged = await clips.AskAsync("judge this", CannedClips.File(), InSchoolRun);
        CrewAnswer plan = await clips.AskAsync("where do the mics go?", null, judged.Memory);
        CrewAnswer loud = await clips.AskAsync("loudness?", null, plan.Memory);

        Assert.False(plan.Memory.LastClip!.Current);
        Assert.Equal(CrewIntent.ClipQuestion, loud.Intent);
        Assert.True(loud.Memory.LastClip!.Current);
    }

    [Fact]
    public async Task Picture_OfAChannel_ReadsTheFileAgain()
    {
        clips.Report.Format.ChannelCount = 2;
        clips.Report.Channels.Add(CannedClips.Channel(2));
        CrewAnswer judged = await clips.AskAsync("judge this", CannedClips.File());
        CrewAnswer answer = await clips.AskAsync("show me channel 2", null, judged.Memory);
        CrewAnswer beyond = await clips.AskAsync("show me channel 3", null, judged.Memory);

        Assert.Equal("Channel 2 of take 3.wav.", answer.Headline);
        Assert.Equal("clip-take-3-channel-2.png", answer.Pictures[0].FileName);
        Assert.Equal(2, clips.Headers[1].PictureChannel);
        Assert.Equal("The clip has 2 channels.", beyond.Headline);
    }

    [Fact]
    public async Task Picture_FileGone_SaysItIsNeeded()
    {
        bool there = true;
        var file = new CrewAttachment("take.wav", 1000, _ => there ? Task.FromResult<Stream>(new MemoryStream(new byte[1000])) : throw new FileNotFoundException());
        CrewAnswer judged = await clips.AskAsync("judge this", file);
        there = false;
        CrewAnswer answer = await clips.AskAsync("show me channel 1", null, judged.Memory);

        Assert.Equal("That needs take.wav itself, and it is not there any more: send it once more with the question.", answer.Headline);
        Assert.True(answer.Private);
    }

    [Fact]
    public async Task Replan_WithTheMeasuredNoise_GoesIntoTheDriveConditionsAndIsRemembered()
    {
        clips.Report.Comparisons.Add([CannedClips.Comparison(shift: 4), CannedClips.Comparison("child", 6)]);
        CrewAnswer judged = await clips.AskAsync("judge this", CannedClips.File(), InSchoolRun);
        CrewAnswer answer = await clips.AskAsync("redo the plan with that noise", null, judged.Memory);
        CrewAnswer rain = await clips.AskAsync("and in the rain?", null, answer.Memory);

        Assert.StartsWith("With the noise of take 3.wav, the mean of 2 channels", answer.Headline, StringComparison.Ordinal);
        Assert.Equal(Enumerable.Repeat(5.0, 7), answer.Memory.LastChanges!.DriveConditions.NoiseCorrection.Shifts.LevelsDb);
        Assert.Equal("take 3.wav", answer.Memory.LastChanges.DriveConditions.NoiseCorrection.Source);
        Assert.Equal(DemoData.Scenes[^1].DriveConditions.SpeedKmPerHour, answer.Memory.LastChanges.DriveConditions.SpeedKmPerHour);
        Assert.NotNull(rain.Memory.LastChanges!.DriveConditions.NoiseCorrection);
        Assert.Contains("with the noise of a clip", rain.Understood, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Judge_OnceMoreWithCylinders_KeepsTheTalker()
    {
        clips.Report.Comparisons.Add(CannedClips.Comparison("child"));
        CrewAnswer judged = await clips.AskAsync("this is the child's mic", CannedClips.File(), InSchoolRun);
        await clips.AskAsync("it has four cylinders", null, judged.Memory);

        Assert.Equal((4, "child"), (clips.Headers[1].Cylinders, clips.Headers[1].TalkerId));
    }

    [Fact]
    public async Task Replan_NothingCompared_SaysWhatIsMissing()
    {
        CrewAnswer judged = await clips.AskAsync("judge this", CannedClips.File(), InSchoolRun);
        CrewAnswer answer = await clips.AskAsync("redo the plan with that noise", null, judged.Memory);

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.StartsWith("That clip was not held against a plan", answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Judge_OlderPlanner_SaysSo()
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(r => new PlanPlacementResponse { Plan = CannedClips.Plan(r) });
        CrewAnswer answer = await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "judge this", Attachment = CannedClips.File() }, TestContext.Current.CancellationToken);

        Assert.StartsWith("This planner is older", answer.Headline, StringComparison.Ordinal);
    }
}
