using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.CrewBot;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The bot as a real process: killed, ended, refused, and taking signed requests.</summary>
public sealed class WholeProcessTests(SharedPlanner planner) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-process-").FullName;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Process_KilledInMidAnswer_TheNextTellsTheAsker()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using var gate = new PlannerGate(planner.Address);
        gate.Hold();
        SentInteraction asked;
        await using (BotProcess first = BotProcess.Start(platform, folder, null, "discord", "--server", gate.Address))
        {
            await ReadyAsync(platform, first);
            asked = platform.Crew.Slash("plan");
            await asked.AnsweredAsync(Cancellation, Patience);
            Assert.NotEmpty(Directory.GetFiles(Path.Combine(folder, "pending")));
            await first.KillAsync();
        }

        gate.Release();
        await using BotProcess second = BotProcess.Start(platform, folder, null, "discord", "--server", gate.Address);
        VisibleMessage told = await AnswerAsync(asked);
        await platform.Gateway.IdentifiedAsync(2, Cancellation, Patience);
        await TransportBench.UntilAsync(() => Directory.GetFiles(Path.Combine(folder, "pending")).Length == 0, "the note to be gone");
        VisibleMessage next = await AnswerAsync(platform.Crew.Slash("help"));

        Assert.Contains("I was restarted in the middle of this", told.Content, StringComparison.Ordinal);
        Assert.Single(Answers(asked));
        Assert.NotEqual("", next.Content);
        await second.TerminateAsync();
        Assert.Equal(CrewBotProgram.Answered, await second.ExitAsync());
        Assert.Equal(0, platform.Gateway.Connected);
        Assert.DoesNotContain(platform.Token, second.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(asked.Token, second.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Process_BadToken_EndsWithOneClearLine()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using BotProcess bot = BotProcess.Start(platform, folder, "no.such.token", "discord", "--server", planner.Address);

        Assert.Equal(CrewBotProgram.PlatformRefused, await bot.ExitAsync());
        Assert.Single(bot.Error.Split('\n'), l => l.StartsWith("The platform refused the bot's token", StringComparison.Ordinal));
        Assert.DoesNotContain("no.such.token", bot.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", bot.Error, StringComparison.Ordinal);
        Assert.InRange(platform.Recording.Requests.Count, 1, 4);
    }

    [Fact]
    public async Task Process_SignedRequests_AreServedFromEndToEnd()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        int port = EmulatedBot.FreePort();
        var url = new Uri($"http://127.0.0.1:{port}/");
        await using BotProcess bot = BotProcess.Start(platform, folder, null, "discord-http", "--listen", $"127.0.0.1:{port}", "--server", planner.Address);
        await CommandsAsync(platform, bot);
        await SetEndpointAsync(platform, url);
        foreach (SignatureFlaw flaw in Enum.GetValues<SignatureFlaw>().Where(f => f is not (SignatureFlaw.None or SignatureFlaw.Old)))
        {
            Assert.Equal((flaw, 401), (flaw, (await platform.Endpoint.PingAsync(url, flaw, Cancellation)).Status));
        }

        await AnswerAsync(platform.Crew.Slash("demo"));
        VisibleMessage plan = await AnswerAsync(platform.Crew.Slash("plan"));
        VisibleMessage pressed = await AnswerAsync(platform.Crew.Press(plan, plan.Buttons[0].CustomId!));
        IReadOnlyList<OfferedChoice> choices = await platform.Crew.Type("plan", "scene", "").ChoicesAsync(Cancellation, Patience);

        Assert.Contains(plan.Files, f => f.ContentType == "image/png");
        Assert.False(plan.IsPrivate);
        Assert.NotEqual(plan.Id, pressed.Id);
        Assert.NotEqual(plan.Content, pressed.Content);
        Assert.NotEmpty(choices);
        Assert.Equal(0, platform.Gateway.Identified);
        Assert.Empty(platform.Recording.Refused);
        await bot.TerminateAsync();
        Assert.Equal(CrewBotProgram.Answered, await bot.ExitAsync());
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static async Task ReadyAsync(EmulatedPlatform platform, BotProcess bot)
    {
        await platform.Gateway.ConnectedAsync(Cancellation, within: Patience);
        await CommandsAsync(platform, bot);
    }

    private static Task CommandsAsync(EmulatedPlatform platform, BotProcess bot) =>
        TransportBench.UntilAsync(() => bot.Error.Contains("Commands registered", StringComparison.Ordinal), $"the commands at {platform.Address}");

    // The process listens a moment after it started.
    private static async Task SetEndpointAsync(EmulatedPlatform platform, Uri url)
    {
        for (int tries = 0; ; tries++)
        {
            try
            {
                await platform.Endpoint.SetAsync(url, Cancellation);
                return;
            }
            catch (InvalidOperationException) when (tries < 100)
            {
                await Task.Delay(100, Cancellation);
            }
        }
    }
}
