using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Many at once: doubles, haste, full queues, choices while typing.</summary>
public sealed class TransportCrowdTests
{
    [Fact]
    public async Task Receive_SameInteractionManyTimesAtOnce_AnswersOnce()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        Interaction asked = bench.Command("plan");

        bool[] taken = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => Task.Run(() => bench.Receive(asked), TestContext.Current.CancellationToken)));
        await bench.EndedAsync();

        Assert.All(taken, Assert.True);
        Assert.Single(bench.Desk.Ran);
        Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId));
    }

    [Fact]
    public async Task Receive_SameInteractionAfterItsAnswer_DoesNothing()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        Interaction asked = bench.Command("plan");
        await bench.AnswerToAsync(asked);
        bench.Time.Advance(TimeSpan.FromMinutes(14));

        Assert.True(bench.Receive(asked));
        await bench.AnswerToAsync(bench.Command("plan"));

        Assert.Equal(2, bench.Desk.Ran.Count);
    }

    [Fact]
    public void RecentInteractions_TakenLongAgoOrTooManySince_AreForgotten()
    {
        var time = new ManualTime();
        var recent = new RecentInteractions(time, 3);

        Assert.True(recent.Take(1));
        Assert.False(recent.Take(1));
        time.Advance(RecentInteractions.Remembered);
        Assert.False(recent.Take(1));
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.True(recent.Take(1));
        Assert.True(recent.Take(2) && recent.Take(3) && recent.Take(4));
        Assert.True(recent.Take(1));
    }

    [Fact]
    public async Task Haste_OneUser_IsToldWhenToTryAgainAndOthersAreAnswered()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { UserRate = new(2, 6) });
        await bench.AnswerToAsync(bench.Command("plan"));
        await bench.AnswerToAsync(bench.Command("plan"));

        OutgoingMessage told = await bench.AnswerToAsync(bench.Command("plan"));
        OutgoingMessage other = await bench.AnswerToAsync(bench.Command("plan") with { UserId = 5 });
        bench.Time.Advance(TimeSpan.FromSeconds(10));
        OutgoingMessage later = await bench.AnswerToAsync(bench.Command("plan"));

        Assert.Equal("You have asked a lot in a short time: ask again in 10 s.", told.Content);
        Assert.True(told.Private);
        Assert.Equal("**Visor clip.**", other.Content);
        Assert.Equal("**Visor clip.**", later.Content);
    }

    [Fact]
    public async Task Haste_OneTeam_IsToldAndOtherTeamsAreAnswered()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { TeamRate = new(1, 60) });
        await bench.AnswerToAsync(bench.Command("plan"));

        OutgoingMessage told = await bench.AnswerToAsync(bench.Command("plan") with { UserId = 5 });
        OutgoingMessage other = await bench.AnswerToAsync(bench.Command("plan") with { GuildId = 6 });

        Assert.StartsWith("This server has asked a lot", told.Content, StringComparison.Ordinal);
        Assert.Equal("**Visor clip.**", other.Content);
    }

    [Fact]
    public async Task Haste_AFormFilledIn_IsNeverRefusedForIt()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { UserRate = new(1, 1) });
        await bench.AnswerToAsync(bench.Command("plan"));

        await bench.AnswerToAsync(bench.Any(InteractionKind.FormSubmit) with
        {
            Form = new FormData("q1f:scene", new Dictionary<string, string>(), new Dictionary<string, IReadOnlyList<DiscordAttachment>>()),
        });

        Assert.Single(bench.Desk.Submitted);
    }

    [Fact]
    public void TokenBuckets_FullTable_ForgetsTheFullAndTheOldest()
    {
        var time = new ManualTime();
        var buckets = new TokenBuckets(new AskingRate(1, 1), time, 2);

        Assert.Equal(TimeSpan.Zero, buckets.Take(1));
        time.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal(TimeSpan.Zero, buckets.Take(2));
        Assert.Equal(TimeSpan.FromSeconds(30), buckets.Take(1));
        Assert.Equal(TimeSpan.Zero, buckets.Take(3));
        Assert.Equal(TimeSpan.FromMinutes(1), buckets.Take(2));
    }

    [Fact]
    public async Task Queue_Full_TellsAtOnceAndTakesAgainLater()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { QuestionsAtOnce = 1, QuestionsWaiting = 1 });
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction first = bench.Command("plan"), second = bench.Command("plan");
        bench.Receive(first);
        await TransportBench.UntilAsync(() => bench.Desk.Ran.Count == 1, "the first at the desk");
        bench.Receive(second);

        await TransportBench.UntilAsync(() => bench.Waiting == 1, "the second to wait");

        OutgoingMessage told = await bench.AnswerToAsync(bench.Command("plan"));
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Done." }, null));
        await TransportBench.UntilAsync(() => bench.Platform.Shown(second.Ticket.InteractionId).Count == 1, "the one that waited");

        Assert.Contains("Too many questions at once", told.Content, StringComparison.Ordinal);
        Assert.True(told.Private);
        await bench.AnswerToAsync(bench.Command("plan"));
    }

    [Fact]
    public async Task Queue_Waiting_IsPutOffInTimeAllTheSame()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { QuestionsAtOnce = 1 });
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction[] asked = [bench.Command("plan"), bench.Command("plan"), bench.Command("plan")];
        Array.ForEach(asked, a => bench.Receive(a));

        await bench.MoveUntilAsync(() => asked.All(a => bench.Platform.Thinks(a.Ticket.InteractionId)), TimeSpan.FromMilliseconds(10), "the deferrals");

        Assert.Single(bench.Desk.Ran);
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Done." }, null));
        await bench.EndedAsync(3);
        Assert.All(asked, a => Assert.Single(bench.Platform.Shown(a.Ticket.InteractionId)));
    }

    [Fact]
    public async Task Receive_FarTooMuchUnderWay_IsNotTaken()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { MostUnderWay = 2 });
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();

        Assert.True(bench.Receive(bench.Command("plan")));
        Assert.True(bench.Receive(bench.Command("plan")));
        Assert.False(bench.Receive(bench.Command("plan")));
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Done." }, null));
        await bench.EndedAsync(2);
    }

    [Fact]
    public async Task Typing_ChoicesAreOfferedAsThePlatformTakesThem()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        string? option = null;
        bench.Desk.Completes = (call, o, _) =>
        {
            option = o + "=" + call.Values[o];
            return Task.FromResult<IReadOnlyList<CrewChoice>>(
            [
                new CrewChoice(new string('n', 150), "a"), new CrewChoice("Car park", "car-park"), new CrewChoice("Car park", "other"), new CrewChoice("Too long", new string('v', 101)),
                .. Enumerable.Range(0, 40).Select(i => new CrewChoice($"Scene {i}", $"s{i}")),
            ]);
        };
        Interaction typing = Typing(bench);
        bench.Receive(typing);
        await TransportBench.UntilAsync(() => bench.Platform.Calls.Count == 1, "choices");

        IReadOnlyList<OutgoingChoice> offered = bench.Platform.Calls[0].Choices!;
        Assert.Equal("scene=car", option);
        Assert.Equal(25, offered.Count);
        Assert.Equal(100, offered[0].Name.Length);
        Assert.Equal(["car-park"], offered.Where(c => c.Name == "Car park").Select(c => c.Value));
        Assert.All(offered, c => Assert.InRange(c.Value.Length, 1, 100));
    }

    [Fact]
    public async Task Typing_SlowDesk_OffersNothingWithinASecond()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Completes = (_, _, _) => new TaskCompletionSource<IReadOnlyList<CrewChoice>>().Task;
        bench.Receive(Typing(bench));
        bench.Time.Advance(TimeSpan.FromMilliseconds(890));
        Assert.Empty(bench.Platform.Calls);

        bench.Time.Advance(TimeSpan.FromMilliseconds(50));
        await TransportBench.UntilAsync(() => bench.Platform.Calls.Count == 1, "choices");

        Assert.Empty(bench.Platform.Calls[0].Choices!);
    }

    [Fact]
    public async Task Typing_DeskFails_OffersNothing()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Completes = (_, _, _) => throw new InvalidOperationException();
        bench.Receive(Typing(bench));
        await TransportBench.UntilAsync(() => bench.Platform.Calls.Count == 1, "choices");

        Assert.Empty(bench.Platform.Calls[0].Choices!);
    }

    private static Interaction Typing(TransportBench bench) => bench.Any(InteractionKind.Autocomplete) with
    {
        Command = new CommandData { Name = "plan", Kind = CommandKind.Slash, Options = [new CommandOptionValue("scene", "car", Focused: true)] },
    };
}
