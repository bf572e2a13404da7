using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about gain: what the planner is asked, and what the crew is told.</summary>
public sealed class LevelTopicTests
{
    private readonly CannedForecasts canned = new();

    [Theory]
    [InlineData("what gain for a shouted line?", "Gain: Parent 38 dB and Child 30 dB.")]
    [InlineData("gain for the driver", "Gain: Parent 38 dB.")]
    [InlineData("what if she whispers?", "A whisper drowns in the noise: Parent 10 dB under it and Child 10 dB under it. Gain stays as below.")]
    [InlineData("do I need a pad?", "No pad needed: the loudest peak stays at -6 dBFS without.")]
    [InlineData("will the mic clip if he screams?", "No: at 38 dB the loudest peaks reach -6 dBFS, and the capsule has 20 dB to spare.")]
    [InlineData("safety track?", "Safety track: Parent 26 dB (peaks -18 dBFS) and Child 18 dB (peaks -18 dBFS).")]
    [InlineData("how should I set the transmitter gain?", "Set the follow-car transmitter to -8 dB: the loudest peak stays 6 dB under full modulation.")]
    public async Task Ask_Levels_DecisionFirst(string question, string headline)
    {
        CrewAnswer answer = await canned.AskAsync(question);

        Assert.Equal(headline, answer.Headline);
        Assert.InRange(answer.Lines.Count, 2, 9);
    }

    [Fact]
    public async Task Ask_Lines_OneAnInput()
    {
        string[] lines = [.. (await canned.AskAsync("gain")).Lines.Select(l => l.Text)];

        Assert.Equal("Input 1, omni lavalier, Parent: 38 dB; peaks -6 dBFS, speech -30, cabin noise -48; safety track 26 dB.", lines[0]);
        Assert.Equal("Input 2, short supercardioid, Child: 30 dB; peaks -6 dBFS, speech -30, cabin noise -48; safety track 18 dB.", lines[1]);
        Assert.Contains("Switch the limiter on.", lines);
    }

    [Fact]
    public async Task Ask_EffortHeadroomAndTransmitter_ReachThePlanner()
    {
        await canned.AskAsync("what gain if the child shouts on the bodypack with 10 dB of headroom");
        PlanLevelsRequest asked = canned.LevelsAsked!;

        Assert.Equal(("scenes/demo-school-run", 10.0, "bodypack-audio"), (asked.Scene, asked.HeadroomDb, asked.MicrophoneTransmitterId));
        Assert.Equal([("child", VocalEffort.Shout)], asked.Efforts.Select(e => (e.TalkerId, e.Loudest)));

        await canned.AskAsync("with a headroom of 90 dB what gain?");
        Assert.Equal(90, canned.LevelsAsked!.HeadroomDb); // Too much is for the planner to refuse, not for the reader to drop.

        await canned.AskAsync("what gain for a shouted line?");
        Assert.Equal(["parent", "neighbour", "child"], canned.LevelsAsked!.Efforts.Select(e => e.TalkerId));
    }

    [Fact]
    public async Task Ask_CapsuleOverload_SaysSoFirst()
    {
        (canned.Levels.Inputs[0].Verdict, canned.Levels.Inputs[0].Words) = (ChainVerdict.CapsuleOverload, "The capsule is overdriven by 4 dB: move it away.");

        Assert.Equal("Yes, it clips: the capsule is overdriven by 4 dB: move it away.", (await canned.AskAsync("will the mic clip if he screams?")).Headline);
        Assert.Equal("Parent: the capsule is overdriven by 4 dB: move it away.", (await canned.AskAsync("what gain for a shouted line?")).Headline);
    }

    [Fact]
    public async Task Ask_KitWithoutRecorderGain_RefusesAndOffersAnother()
    {
        Kit[] bare = [.. DemoData.Kits.Select(k => k.Clone())];
        bare.Single(k => k.Name == "kits/demo-full").RecorderGain = null;
        CrewAnswer answer = await canned.AskAsync("gain", kits: bare);

        Assert.Equal((CrewOutcome.Refused, true), (answer.Outcome, answer.Private));
        Assert.Equal("The Full kit (invented) says nothing of its recorder's inputs, so no gain can be worked out.", answer.Headline);
        Assert.Equal(CrewOutcome.Answered, (await canned.AskAsync(answer.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal("kits/demo-small", canned.LevelsAsked!.Changes.Kit);
    }
}
