using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.CrewBot;
using Quarterlight.Planner;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>A thousand interactions while everything around the bot fails now and then: none lost without a word, none answered twice.</summary>
public sealed class WholeStormTests
{
    private const int Waves = 10;
    private const int UsersOfAServer = 25;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Storm_AThousandInteractions_NoneLostNoneTwice()
    {
        string folder = Directory.CreateTempSubdirectory("quarterlight-storm-").FullName;
        int port = EmulatedBot.FreePort();
        PlannerHost planner = await StartPlannerAsync(folder, port);
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(new PlatformOptions { Seed = 7 }, Cancellation);
        UserInChannel[] crowd = [.. Enumerable.Range(0, 4).SelectMany(g => Crowd(platform, g))];
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, $"http://127.0.0.1:{port}", NoLimits);
        foreach (UserInChannel one in crowd.DistinctBy(c => c.Channel.Id))
        {
            Assert.False((await AnswerAsync(one.Slash("demo"))).IsPrivate);
        }

        var storm = new WholeStorm(platform, seed: 11);
        storm.Strike();
        var quiet = new HashSet<ulong>();
        for (int wave = 0; wave < Waves; wave++)
        {
            int resumed = platform.Gateway.Resumed, identified = platform.Gateway.Identified;
            IReadOnlyList<SentInteraction> asked = storm.Wave(crowd);
            switch (wave)
            {
                case 2:
                    platform.Gateway.DropClients();
                    await platform.Gateway.ResumedAsync(resumed + 1, Cancellation, Patience);
                    break;
                case 4:
                    platform.Gateway.RequestReconnect();
                    await platform.Gateway.ResumedAsync(resumed + 1, Cancellation, Patience);
                    break;
                case 6:
                    await planner.DisposeAsync();
                    planner = await StartPlannerAsync(folder, port);
                    break;
                default:
                    quiet.UnionWith(asked.Select(a => a.Id));
                    break;
            }

            await WholeStorm.SettleAsync(asked, Cancellation);
            if (wave is 7 or 8)
            {
                // What comes while there is no session at all is lost on the platform's side, so nothing is sent then.
                platform.Gateway.Invalidate(resumable: wave == 7);
                await platform.UntilAsync(() => platform.Gateway.Resumed + platform.Gateway.Identified > resumed + identified && platform.Gateway.Connected == 1, "the gateway", Cancellation, Patience);
            }
        }

        bot.Stop();
        Assert.Equal(CrewBotProgram.Answered, await bot.Run.WaitAsync(Patience, Cancellation));
        await planner.DisposeAsync();

        IReadOnlySet<ulong> struck = storm.Struck();
        SentInteraction[] unanswered = [.. storm.All.Where(a => Answers(a).Count == 0)];
        TestContext.Current.TestOutputHelper!.WriteLine($"{storm.All.Count} asked, {storm.Repeated} delivered twice, {platform.Faults.Played} faults, {struck.Count} struck in the first answer, {unanswered.Length} told by the platform");
        Assert.Equal(1000, storm.All.Count);
        Assert.InRange(storm.Repeated, 50, 200);
        Assert.InRange(platform.Faults.Played, 100, 1000);
        Assert.InRange(struck.Count, 50, 500);
        Assert.True(platform.Gateway.Resumed >= 2 && platform.Gateway.Identified >= 2);

        // Lost without a word: nothing to read although the platform believes there will be.
        Assert.DoesNotContain(unanswered, a => a.FirstAnswer is not null);

        // Told by the platform itself, because no first answer came through in time: only where one was struck or the way was cut.
        Assert.DoesNotContain(unanswered, a => quiet.Contains(a.Id) && !struck.Contains(a.Id));
        Assert.InRange(unanswered.Length, 0, 60);

        Assert.DoesNotContain(storm.All, a => Answers(a).Count > 1);
        Assert.DoesNotContain(storm.All, a => a.Later.Count > 0 && a.First is { IsLoading: true, IsDeleted: false });
        Assert.InRange(storm.All.Count(a => Answers(a).Count == 1 && !Answers(a)[0].Content.Contains("cannot be reached", StringComparison.Ordinal)), 850, 1000);
        Assert.DoesNotContain(storm.All.SelectMany(Answers), m => m.Content.Contains("went wrong", StringComparison.Ordinal));
        Assert.Empty(platform.Recording.UnknownRoutes);
        Directory.Delete(folder, recursive: true);
    }

    private static IEnumerable<UserInChannel> Crowd(EmulatedPlatform platform, int number)
    {
        // Servers known when the session starts; the first is there from the beginning.
        var channel = number == 0 ? platform.Crew.Channel : platform.AddChannel(platform.AddGuild($"Unit {number + 1}"), "sound");
        return Enumerable.Range(0, UsersOfAServer).Select(u => platform.In(channel, platform.AddUser($"crew.{number}.{u}")));
    }

    private static Task<PlannerHost> StartPlannerAsync(string folder, int port) => PlannerHost.StartAsync(
        new PlannerHostOptions { DataFolder = folder, GrpcPort = port, HttpPort = null, Quiet = true }, _ => { }, TestContext.Current.CancellationToken);
}
