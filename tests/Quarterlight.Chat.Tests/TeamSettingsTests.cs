using Quarterlight.Crew;
using Quarterlight.Crew.Keeping;
using static Quarterlight.Chat.Tests.KeepingTalk;

namespace Quarterlight.Chat.Tests;

/// <summary>What a team settles on, and its conversations, with the real planner.</summary>
public sealed class TeamSettingsTests(KeepingPlanner planner) : IClassFixture<KeepingPlanner>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Settings_SetAndForgotten_AreShownOnOneScreen()
    {
        await using KeepingTalk talk = await planner.StrangersAsync();
        var team = new TeamSettingsClient(talk.Planner);
        Assert.Equal(TeamSettings.None, await team.TryReadAsync(Cancellation));

        CrewAnswer units = await talk.AnswerAsync("settings units", ("units", "imperial"));
        Assert.Equal((CrewOutcome.Answered, UnitPreference.Imperial), (units.Outcome, units.Memory.Units));
        Assert.Equal(CrewOutcome.Answered, (await talk.AnswerAsync("settings country", ("country", "the UK"))).Outcome);
        Assert.Equal(new TeamSettings(UnitPreference.Imperial, "GB"), await team.TryReadAsync(Cancellation));

        CrewAnswer shown = await talk.AnswerAsync("settings show");
        Assert.Equal("Units: inches, feet and mph. Country: the United Kingdom.", shown.Headline);
        Assert.Contains("Speech over noise", All(shown), StringComparison.Ordinal);
        Assert.InRange(shown.Lines.Count, 1, 8);

        await talk.AnswerAsync("settings country", ("country", "none"));
        Assert.Equal(new TeamSettings(UnitPreference.Imperial, null), await team.TryReadAsync(Cancellation));
    }

    [Theory]
    [InlineData("settings units", "units", "furlongs", "choose metric or imperial")]
    [InlineData("settings country", "country", "Ruritania", "two-letter code")]
    [InlineData("settings country", "country", "", "Which country")]
    [InlineData("settings clip-limits", "limit", "louder please", "no limit")]
    public async Task Settings_NotUnderstood_SaysWhatWouldBe(string command, string option, string value, string expected)
    {
        CrewAnswer answer = await planner.Talk.AnswerAsync(command, (option, value));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.True(answer.Private);
        Assert.Contains(expected, answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ClipLimits_SetShownAndReset_GoThroughTheTopic()
    {
        await using KeepingTalk talk = await planner.StrangersAsync();
        Assert.Contains("use from 18 dB", (await talk.AnswerAsync("settings clip-limits", ("limit", "speech over noise 18 dB"))).Headline, StringComparison.Ordinal);
        Assert.Contains("use from 18 dB", All(await talk.AnswerAsync("settings clip-limits")), StringComparison.Ordinal);
        Assert.Contains("default limits", (await talk.AnswerAsync("settings clip-limits", ("limit", "defaults"))).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlannerConversations_RealPlanner_AnotherReplicaGoesOn()
    {
        await using KeepingTalk talk = await planner.StrangersAsync();
        PlannerConversations one = new(talk.Borrowed.Invoker, new CrewDeskOptions()), two = new(talk.Borrowed.Invoker, new CrewDeskOptions());
        Assert.Null(await one.ReadAsync("m:abc", Cancellation));
        await one.WriteAsync("m:abc", CrewMemory.Empty with { SceneName = "scenes/a" }, Cancellation);
        Assert.Equal("scenes/a", (await two.ReadAsync("m:abc", Cancellation))?.SceneName);
        await two.WriteAsync("m:abc", CrewMemory.Empty with { SceneName = "scenes/b" }, Cancellation);

        // What was read a moment ago is not asked again at once; after that the newer state wins.
        string? seen = null;
        for (int i = 0; i < 100 && seen != "scenes/b"; i++)
        {
            await Task.Delay(50, Cancellation);
            seen = (await one.ReadAsync("m:abc", Cancellation))?.SceneName;
        }

        Assert.Equal("scenes/b", seen);
    }

    [Fact]
    public async Task Keeper_PlannerAway_SaysSoAndGivesTheTextBack()
    {
        var away = new PlannerClients(Grpc.Net.Client.GrpcChannel.ForAddress("http://127.0.0.1:1").CreateCallInvoker(), new CrewDeskOptions());

        CrewAnswer answer = await new Keeper(away).SubmitAsync(new Crew.Commands.CrewFormEntry("keep:car:new", new Dictionary<string, string> { ["name"] = "Grey one" }), CrewMemory.Empty, UnitPreference.Metric, Cancellation);
        Assert.Equal(CrewOutcome.PlannerUnreachable, answer.Outcome);
        Assert.Contains("Grey one", All(answer), StringComparison.Ordinal);
        Assert.Equal(CrewOutcome.PlannerUnreachable, (await new Keeper(away).RunAsync(new("settings show", new Dictionary<string, string>()), CrewMemory.Empty, UnitPreference.Metric, Cancellation)).Answer!.Outcome);
        Assert.Equal(TeamSettings.None, await new TeamSettingsClient(away).TryReadAsync(Cancellation));
    }
}
