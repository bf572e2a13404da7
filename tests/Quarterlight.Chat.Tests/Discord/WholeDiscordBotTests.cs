using System.Net;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.CrewBot;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The whole bot between the emulated platform and the real planner.</summary>
public sealed class WholeDiscordBotTests(SharedPlanner planner)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Serve_FirstAnswers_AreShownAsTheCrewSeesThem()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address);

        // A new server is a new team: nothing is there until the demo is loaded.
        VisibleMessage demo = await AnswerAsync(platform.Crew.Slash("demo"));
        SentInteraction asked = platform.Crew.Slash("plan");
        VisibleMessage plan = await AnswerAsync(asked);

        Assert.StartsWith("**", demo.Content, StringComparison.Ordinal);
        Assert.StartsWith("**", plan.Content, StringComparison.Ordinal);
        Assert.Contains("-# Understood: ", plan.Content, StringComparison.Ordinal);
        Assert.False(plan.IsPrivate);
        Assert.Empty(plan.Pings);
        VisibleFile picture = Assert.Single(plan.Files, f => f.Name.EndsWith(".png", StringComparison.Ordinal));
        Assert.InRange(picture.AltText!.Length, 20, 1024);
        Assert.InRange(plan.Buttons.Count, 1, 3);

        // A button's answer is a message of its own; the old one stays.
        VisibleMessage next = await AnswerAsync(platform.Crew.Press(plan, plan.Buttons[0].CustomId!));
        Assert.NotEqual(plan.Id, next.Id);
        Assert.NotEqual(plan.Content, next.Content);
        Assert.Equal(plan.Content, asked.First!.Content);

        // An error is for the asker alone and says what to change.
        VisibleMessage error = await AnswerAsync(platform.Crew.Slash("plan", ("scene", "no such scene @everyone")));
        Assert.True(error.IsPrivate);
        Assert.Empty(error.Pings);
        Assert.DoesNotContain("@everyone", error.Content, StringComparison.Ordinal);

        // Choices while typing.
        IReadOnlyList<OfferedChoice> choices = await platform.Crew.Type("plan", "scene", "").ChoicesAsync(Cancellation, TimeSpan.FromSeconds(10));
        Assert.NotEmpty(choices);

        Assert.Empty(platform.Recording.UnknownRoutes);
        Assert.DoesNotContain(bot.Log.Lines, l => l.Contains(platform.Token, StringComparison.Ordinal) || l.Contains(asked.Token, StringComparison.Ordinal));
        Assert.Contains(bot.Log.Lines, l => l.Contains($"plan in discord-{platform.Crew.Channel.Guild!.Id} by ", StringComparison.Ordinal));
        bot.Stop();
        Assert.Equal(CrewBotProgram.Answered, await bot.Run.WaitAsync(TimeSpan.FromSeconds(30), Cancellation));
        Assert.Equal("", bot.Error);
    }

    [Fact]
    public async Task Serve_TwoServers_AreTwoTeams()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        UserInChannel others = platform.In(platform.AddChannel(platform.AddGuild("Unit Two"), "sound"), platform.AddUser("second.unit"));
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address);
        await AnswerAsync(platform.Crew.Slash("demo"));

        VisibleMessage theirs = await AnswerAsync(others.Slash("scene list"));
        VisibleMessage ours = await AnswerAsync(platform.Crew.Slash("scene list"));

        Assert.Contains("No scenes are kept yet", theirs.Content, StringComparison.Ordinal);
        Assert.DoesNotContain("No scenes are kept yet", ours.Content, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Serve_PlannerAway_SaysSoAndHealthShowsIt()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, $"http://127.0.0.1:{EmulatedBot.FreePort()}");

        VisibleMessage answer = await AnswerAsync(platform.Crew.Slash("plan"));
        using var http = new HttpClient();
        using HttpResponseMessage health = await http.GetAsync(new Uri($"http://127.0.0.1:{bot.HealthPort}/healthz"), Cancellation);
        string page = await health.Content.ReadAsStringAsync(Cancellation);

        Assert.True(answer.IsPrivate);
        Assert.Contains("cannot be reached", answer.Content, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, health.StatusCode);
        Assert.Contains("planner: not answering", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Serve_AllWell_HealthIsTwoHundred()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address);
        using var http = new HttpClient();

        // The platform's side says so a moment before the bot has read it.
        string page = "";
        for (int tries = 0; tries < 100 && !page.StartsWith("200", StringComparison.Ordinal); tries++)
        {
            using HttpResponseMessage health = await http.GetAsync(new Uri($"http://127.0.0.1:{bot.HealthPort}/healthz"), Cancellation);
            page = $"{(int)health.StatusCode} {await health.Content.ReadAsStringAsync(Cancellation)}";
            await Task.Delay(50, Cancellation);
        }

        using HttpResponseMessage other = await http.GetAsync(new Uri($"http://127.0.0.1:{bot.HealthPort}/"), Cancellation);

        Assert.StartsWith("200 platform: ", page, StringComparison.Ordinal);
        Assert.Contains("planner: serving", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    [Fact]
    public async Task Serve_BadToken_EndsWithOneClearLineAndNoLoop()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        await using EmulatedBot bot = EmulatedBot.Start(platform, planner.Address, "a.wrong.token", "discord");

        int exit = await bot.Run.WaitAsync(TimeSpan.FromSeconds(30), Cancellation);

        Assert.Equal(CrewBotProgram.PlatformRefused, exit);
        Assert.StartsWith("The platform refused the bot's token", Assert.Single(bot.Error.Trim().Split('\n')), StringComparison.Ordinal);
        Assert.DoesNotContain("a.wrong.token", bot.Error, StringComparison.Ordinal);
        Assert.InRange(platform.Recording.Requests.Count, 1, 4);
    }

    // Not the word on progress that a busy machine may show first.
    private static async Task<VisibleMessage> AnswerAsync(SentInteraction asked)
    {
        VisibleMessage? answer = null;
        await asked.UntilAsync(a => (answer = a.Readable.FirstOrDefault(m => !m.IsLoading && m.Content != "Working on it…")) is not null, Cancellation, TimeSpan.FromSeconds(60));
        return answer!;
    }
}
