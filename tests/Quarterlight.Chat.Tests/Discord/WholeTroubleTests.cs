using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.CrewBot;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The whole bot when something around it goes wrong in the middle of an answer.</summary>
public sealed class WholeTroubleTests(SharedPlanner planner)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Gateway_DroppedInMidAnswer_TheAnswerComesAndNothingIsAskedTwice()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using var gate = new PlannerGate(planner.Address);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, gate.Address);
        await AnswerAsync(platform.Crew.Slash("demo"));
        gate.Hold();
        SentInteraction asked = platform.Crew.Slash("plan");
        await asked.AnsweredAsync(Cancellation, Patience);
        platform.Gateway.DropClients();
        SentInteraction meanwhile = platform.Crew.Slash("help");
        await platform.Gateway.ResumedAsync(1, Cancellation, Patience);
        asked.DeliverAgain();
        gate.Release();

        Assert.StartsWith("**", (await AnswerAsync(asked)).Content, StringComparison.Ordinal);
        await meanwhile.UntilAsync(m => m.FirstAnswer is not null || m.Failed, Cancellation, Patience);
        await AnswerAsync(platform.Crew.Slash("scene list"));
        Assert.Equal(FirstAnswerKind.DeferredMessage, asked.FirstAnswer);
        Assert.Single(Answers(asked));
        Assert.Equal(1, platform.Gateway.Identified);
        Assert.Single(platform.Recording.Requests, r => r.Path.Contains($"/interactions/{asked.Id}/", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Planner_DownSlowAndBack_EachAskerIsToldWhatIs()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using var gate = new PlannerGate(planner.Address);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, gate.Address);
        await AnswerAsync(platform.Crew.Slash("demo"));

        gate.Shut();
        VisibleMessage down = await AnswerAsync(platform.Crew.Slash("plan"));
        gate.Open();
        gate.Hold();
        SentInteraction slow = platform.Crew.Slash("plan");
        await slow.AnsweredAsync(Cancellation, Patience);
        gate.Release();
        VisibleMessage late = await AnswerAsync(slow);
        VisibleMessage back = await AnswerAsync(platform.Crew.Slash("plan"));

        Assert.True(down.IsPrivate);
        Assert.Contains("cannot be reached", down.Content, StringComparison.Ordinal);
        Assert.Equal(FirstAnswerKind.DeferredMessage, slow.FirstAnswer);
        Assert.InRange(slow.AcknowledgedAfter!.Value, TimeSpan.Zero, TimeSpan.FromSeconds(2.9));
        Assert.Single(Answers(slow));
        Assert.False(late.IsPrivate, late.Content);
        Assert.False(back.IsPrivate, back.Content);
        Assert.Single(back.Files);
    }

    [Fact]
    public async Task Token_OverInMidAnswer_IsLeftAndTheNextIsAnswered()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using var gate = new PlannerGate(planner.Address);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, gate.Address);
        await AnswerAsync(platform.Crew.Slash("demo"));
        gate.Hold();
        SentInteraction asked = platform.Crew.Slash("plan");
        await asked.AnsweredAsync(Cancellation, Patience);
        asked.KillToken();
        gate.Release();
        await TransportBench.UntilAsync(() => bot.Log.Lines.Any(l => l.Contains("TokenExpired", StringComparison.Ordinal)), "the end");
        VisibleMessage next = await AnswerAsync(platform.Crew.Slash("plan"));

        Assert.Empty(asked.Readable);
        Assert.False(next.IsPrivate, next.Content);
        Assert.InRange(platform.Recording.Requests.Count(r => r.Path.Contains(asked.Token, StringComparison.Ordinal)), 2, 3);
        Assert.Empty(Directory.GetFiles(Path.Combine(bot.DataFolder, "pending")));
    }

    [Fact]
    public async Task Stop_WhileAnAnswerIsUnderWay_TellsTheAskerAndEndsInOrder()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using var gate = new PlannerGate(planner.Address);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, gate.Address);
        gate.Hold();
        SentInteraction asked = platform.Crew.Slash("plan");
        await asked.AnsweredAsync(Cancellation, Patience);
        bot.Stop();

        Assert.Equal(CrewBotProgram.Answered, await bot.Run.WaitAsync(Patience, Cancellation));
        VisibleMessage told = Assert.Single(Answers(asked));
        Assert.Contains("restarted", told.Content, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Path.Combine(bot.DataFolder, "pending")));
        Assert.Equal(0, platform.Gateway.Connected);
    }
}
