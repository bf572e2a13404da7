using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>The source against the emulated platform, which was made by another hand and is held against a widespread client.</summary>
public sealed class EmulatorTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Connected_Interactions_ArriveAsSent()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        SentInteraction asked = run.Platform.Crew.Slash("plan", ("scene", "ferry"));
        SentInteraction typed = run.Platform.Crew.Type("plan", "scene", "fe");
        await run.ReceivedAsync(2);
        Interaction[] got = [.. run.Received];
        Assert.Equal([asked.Id, typed.Id], got.Select(i => i.Ticket.InteractionId));
        Assert.Equal([InteractionKind.Command, InteractionKind.Autocomplete], got.Select(i => i.Kind));
        Assert.Equal(new CommandOptionValue("scene", "ferry"), Assert.Single(got[0].Command!.Options));
        Assert.Equal(new CommandOptionValue("scene", "fe", true), Assert.Single(got[1].Command!.Options));
        Assert.Equal((run.Platform.Guilds[0].Id, run.Platform.Crew.Channel.Id, run.Platform.Crew.User.Id), (got[0].GuildId!.Value, got[0].ChannelId!.Value, got[0].UserId));
        await run.StopAsync();
        Assert.Equal(1000, Closes(run)[^1]);
        Assert.Equal(0, run.Platform.Gateway.LiveSessions);
        Assert.Empty(run.Platform.Recording.Refused);
    }

    [Fact]
    public async Task Dropped_WhatHappensMeanwhile_IsReplayedOnce()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        var asked = new List<ulong>();
        for (int round = 1; round <= 5; round++)
        {
            asked.Add(run.Platform.Crew.Slash("plan").Id);
            await run.ReceivedAsync(asked.Count);
            run.Platform.Gateway.DropClients();
            asked.Add(run.Platform.Crew.Slash("plan").Id);
            await run.Platform.Gateway.ResumedAsync(round, Cancellation);
        }

        await run.ReceivedAsync(asked.Count);
        Assert.Equal(asked, run.Received.Select(i => i.Ticket.InteractionId));
        Assert.Equal(1, run.Platform.Gateway.Identified);
    }

    [Fact]
    public async Task ReconnectAsked_ResumesAndKeepsTheSession()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.RequestReconnect();
        await run.Platform.Gateway.ResumedAsync(1, Cancellation);
        run.Platform.Crew.Slash("plan");
        await run.ReceivedAsync(1);
        Assert.Equal(4000, Closes(run)[0]);
        Assert.Equal(1, run.Platform.Gateway.Identified);
    }

    [Fact]
    public async Task SessionGone_StartsANewOne()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.Invalidate(resumable: false);
        await run.Platform.Gateway.IdentifiedAsync(2, Cancellation);
        run.Platform.Crew.Slash("plan");
        await run.ReceivedAsync(1);
        Assert.Equal(0, run.Platform.Gateway.Resumed);
    }

    [Fact]
    public async Task SessionRefusedForNow_Resumes()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.Invalidate(resumable: true);
        await run.Platform.Gateway.ResumedAsync(1, Cancellation);
        Assert.Equal(1, run.Platform.Gateway.Identified);
    }

    [Fact]
    public async Task SessionForgotten_ResumeIsRefusedAndANewOneStarted()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.ForgetSessions();
        run.Platform.Gateway.DropClients();
        await run.Platform.Gateway.IdentifiedAsync(2, Cancellation);
        await Eventually.TrueAsync(() => run.Source.Health.Ready);
    }

    [Fact]
    public async Task BeatsNotAnswered_ResumesOnANewConnection()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync(new PlatformOptions { HeartbeatInterval = TimeSpan.FromMilliseconds(700) });
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.AcknowledgesHeartbeats = false;
        await Eventually.TrueAsync(() => run.Platform.Recording.Frames.Count(f => f.Kind == FrameKind.Opened) > 1);
        run.Platform.Gateway.AcknowledgesHeartbeats = true;
        await run.Platform.Gateway.ResumedAsync(1, Cancellation);
        run.Platform.Crew.Slash("plan");
        await run.ReceivedAsync(1);
        Assert.Equal(4000, Closes(run)[0]);
    }

    [Fact]
    public async Task BeatAskedFor_IsSent()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        int before = Beats(run);
        run.Platform.Gateway.RequestHeartbeat();
        await Eventually.TrueAsync(() => Beats(run) > before);
    }

    [Fact]
    public async Task Unreadable_ManyInARow_Resumes()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        for (int i = 0; i < 6; i++)
        {
            run.Platform.Gateway.SendRaw("{\"op\":");
        }

        await run.Platform.Gateway.ResumedAsync(1, Cancellation);
    }

    [Fact]
    public async Task BadToken_Stops()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync(token: "another.token");
        DiscordException stopped = await Assert.ThrowsAsync<DiscordException>(() => Eventually.EndsAsync(run.Running));
        Assert.Equal((DiscordFault.BadToken, (int?)4004), (stopped.Fault, stopped.Code));
        Assert.Single(run.Platform.Recording.Frames, f => f.Kind == FrameKind.Opened);
    }

    [Fact]
    public async Task Gateway_AwayAndBack_IsFoundAgain()
    {
        await using EmulatedRun run = await EmulatedRun.StartAsync();
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Gateway.TakesConnections = false;
        run.Platform.Gateway.DropClients();
        await Eventually.TrueAsync(() => run.Logged.Count(l => l.Text.Contains("NotOpened", StringComparison.Ordinal)) >= 2);
        run.Platform.Gateway.TakesConnections = true;
        await run.Platform.Gateway.ConnectedAsync(Cancellation);
        run.Platform.Crew.Slash("plan");
        await run.ReceivedAsync(1);
    }

    private static int?[] Closes(EmulatedRun run) => [.. run.Platform.Recording.Frames.Where(f => f.Kind == FrameKind.Closed).Select(f => f.CloseCode)];

    private static int Beats(EmulatedRun run) => run.Platform.Recording.Frames.Count(f => f is { Kind: FrameKind.Received, Op: 1 });
}
