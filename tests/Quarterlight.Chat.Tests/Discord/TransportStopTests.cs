using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The process stops, or was killed.</summary>
public sealed class TransportStopTests
{
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(100);

    [Fact]
    public async Task Stop_AnswersUnderWay_AreFinishedFirst()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");

        bench.Stop();
        await TransportBench.UntilAsync(() => bench.Log.Lines.Any(l => l.Contains("Stopping: 1", StringComparison.Ordinal)), "stopping");
        bench.Time.Advance(TimeSpan.FromSeconds(3));
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await TransportBench.UntilAsync(() => bench.Run.IsCompleted, "the end");

        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
    }

    [Fact]
    public async Task Stop_AnswersNotFinishedInTime_AreToldSo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");

        bench.Stop();
        await bench.MoveUntilAsync(() => bench.Run.IsCompleted, TimeSpan.FromSeconds(1), "the end");

        Assert.Equal("I am being restarted: ask again in a minute.", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
        Assert.Empty(Directory.GetFiles(bench.LedgerFolder));
    }

    [Fact]
    public async Task Stop_WhatComesMeanwhile_IsToldSo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Waits();
        Interaction first = bench.Command("plan");
        bench.Receive(first);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(first.Ticket.InteractionId), Step, "the deferral");
        bench.Stop();

        OutgoingMessage told = await bench.AnswerToAsync(bench.Command("plan"));

        Assert.Contains("being restarted", told.Content, StringComparison.Ordinal);
        Assert.True(told.Private);
        Assert.Single(bench.Desk.Ran);
    }

    [Fact]
    public async Task Stop_PlatformHangs_EndsAllTheSameAndLeavesTheNote()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");
        bench.Platform.Before = (_, c) => Task.Delay(Timeout.Infinite, c);

        bench.Stop();
        await bench.MoveUntilAsync(() => bench.Run.IsCompleted, TimeSpan.FromSeconds(1), "the end");

        Assert.Contains(bench.Log.Lines, l => l.Contains("left for the next start", StringComparison.Ordinal));
        Assert.Single(Directory.GetFiles(bench.LedgerFolder));
    }

    [Fact]
    public async Task Start_SourceCannotGoOn_Throws()
    {
        string folder = Directory.CreateTempSubdirectory("quarterlight-transport-").FullName;
        try
        {
            var time = new ManualTime();
            using var meters = new CrewBotMeters();
            using var transport = new DiscordTransport(new DiscordTransportParts
            {
                Source = new FakeSource { Fails = new DiscordException(DiscordFault.BadToken, "no") },
                Responder = new FakePlatform(),
                Teams = new RecentTeams(_ => throw new InvalidOperationException()),
                Commands = TransportBench.Commands,
                Ledger = new PendingLedger(folder, time),
                Users = new UserHash("a secret of the test"),
                Meters = meters,
                Log = new ListLog(),
                Time = time,
            }, new DiscordTransportOptions());

            DiscordException e = await Assert.ThrowsAsync<DiscordException>(() => transport.RunAsync(TestContext.Current.CancellationToken));

            Assert.Equal(DiscordFault.BadToken, e.Fault);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
