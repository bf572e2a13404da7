using System.Diagnostics.Metrics;
using Quarterlight.Crew;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>What is noted about questions, and what is not.</summary>
public sealed class TransportAuditTests
{
    [Fact]
    public async Task Audit_OneLineACommand_HoldsNoContentNamesOrTokens()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(new CrewAnswer { Headline = "Secret headline", Intent = CrewIntent.Plan, Understood = "secret scene" });

        await bench.AnswerToAsync(bench.Command("plan", null, new CommandOptionValue("scene", "secret scene")));
        await bench.EndedAsync();

        string line = Assert.Single(bench.Log.Lines, l => l.Contains("end after", StringComparison.Ordinal));
        Assert.Matches(@"^Information 2001 plan in bot-77 by [0-9a-f]{12}: Answered, Plan, first answer after \d+ ms, end after \d+ ms, planner \d+ ms ", line);
        Assert.All(bench.Log.Lines, l =>
        {
            Assert.DoesNotContain("secret", l, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(TransportBench.TokenText, l, StringComparison.Ordinal);
            Assert.DoesNotContain($"by {TransportBench.User}", l, StringComparison.Ordinal);
        });
    }

    [Fact]
    public async Task Typing_IsNotInTheAudit()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Receive(bench.Any(InteractionKind.Autocomplete) with { Command = new CommandData { Name = "plan", Kind = CommandKind.Slash } });
        await TransportBench.UntilAsync(() => bench.Platform.Calls.Count == 1, "choices");
        await bench.AnswerToAsync(bench.Command("plan"));
        await bench.EndedAsync();

        Assert.Single(bench.Log.Lines, l => l.Contains("end after", StringComparison.Ordinal));
    }

    [Fact]
    public void UserHash_SameSecret_IsStableAndAnotherSecretTellsNothing()
    {
        var users = new UserHash("one");

        Assert.Equal(users.Of(42), new UserHash("one").Of(42));
        Assert.NotEqual(users.Of(42), users.Of(43));
        Assert.NotEqual(users.Of(42), new UserHash("two").Of(42));
    }

    [Fact]
    public async Task Meters_CountByKindAndEnd()
    {
        var counted = new System.Collections.Concurrent.ConcurrentQueue<(string Name, string Tags)>();
        using var listener = new MeterListener { InstrumentPublished = (instrument, l) => { if (instrument.Meter.Name == CrewBotMeters.Name) { l.EnableMeasurementEvents(instrument); } } };
        listener.SetMeasurementEventCallback<long>((instrument, _, tags, _) => counted.Enqueue((instrument.Name, string.Join(",", tags.ToArray().Select(t => $"{t.Key}={t.Value}")))));
        listener.SetMeasurementEventCallback<double>((instrument, _, tags, _) => counted.Enqueue((instrument.Name, "")));
        listener.Start();
        await using TransportBench bench = await TransportBench.StartAsync();
        Interaction asked = bench.Command("plan");
        await bench.AnswerToAsync(asked);
        bench.Receive(asked);
        await bench.EndedAsync();

        Assert.Contains(("crewbot.interactions", "kind=Command,end=Answered"), counted);
        Assert.Contains(counted, c => c.Name == "crewbot.duplicates");
        Assert.Contains(counted, c => c.Name == "crewbot.first_answer");
        Assert.Contains(counted, c => c.Name == "crewbot.own_share");
    }

    [Fact]
    public async Task PlannerTime_CallsBesideEachOther_CountOnce()
    {
        var time = new ManualTime();
        var planner = new PlannerTime(time);
        TaskCompletionSource first = new(), second = new();

        Task both = Task.WhenAll(planner.WatchAsync(first.Task), planner.WatchAsync(second.Task));
        time.Advance(TimeSpan.FromSeconds(1));
        first.SetResult();
        time.Advance(TimeSpan.FromSeconds(1));
        second.SetResult();
        await both;
        time.Advance(TimeSpan.FromSeconds(5));

        Assert.Equal(TimeSpan.FromSeconds(2), planner.Total);
    }

    [Fact]
    public void RecentTeams_MoreThanKept_MakesTheOldestAnew()
    {
        int made = 0;
        var teams = new RecentTeams(g => new CrewTeam($"bot-{g}-{++made}", new FakeDesk(), new Crew.Keeping.RecentConversations()), 2);

        Assert.Same(teams.For(1), teams.For(1));
        teams.For(2);
        teams.For(1);
        teams.For(3);

        Assert.Equal("bot-1-1", teams.For(1).Id);
        Assert.Equal("bot-2-4", teams.For(2).Id);
    }
}
