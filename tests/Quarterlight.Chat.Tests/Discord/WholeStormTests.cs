using System.Globalization;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.CrewBot;
using Quarterlight.Planner;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>A thousand interactions while everything around the bot fails now and then: none lost without a word, none answered twice.</summary>
public sealed class WholeStormTests
{
    // Another storm, by hand: see docs/guides/emulator.md.
    private const string SeedVariable = "QUARTERLIGHT_STORM_SEED";
    private const int UsualSeed = 11;
    private const int SentInGap = 10;
    private const int LongestMilliseconds = 170_000;
    private static readonly TimeSpan PlannerEnd = TimeSpan.FromSeconds(30);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact(Timeout = LongestMilliseconds)]
    public async Task Storm_AThousandInteractions_NoneLostNoneTwice()
    {
        int seed = int.TryParse(Environment.GetEnvironmentVariable(SeedVariable), CultureInfo.InvariantCulture, out int other) ? other : UsualSeed;
        string folder = Directory.CreateTempSubdirectory("quarterlight-storm-").FullName;
        int port = EmulatedBot.FreePort();
        PlannerHost planner = await StartPlannerAsync(folder, port);
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(new PlatformOptions { Seed = seed }, TestContext.Current.CancellationToken);
        var storm = new WholeStorm(platform, seed);
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, $"http://127.0.0.1:{port}", NoLimits);
        foreach (UserInChannel one in storm.Crowd.DistinctBy(c => c.Channel.Id))
        {
            Assert.False((await AnswerAsync(one.Slash("demo"))).IsPrivate);
        }

        storm.Begin();
        int cutInMidAnswer = 0;
        foreach (StormStrike strike in storm.Strikes)
        {
            long began = TimeProvider.System.GetTimestamp();
            IReadOnlyList<SentInteraction> asked = storm.Ask(storm.Crowd.SkipLast(SentInGap));
            int back = platform.Gateway.Resumed + platform.Gateway.Identified + 1;
            if (strike != StormStrike.None)
            {
                await platform.UntilAsync(() => asked.Any(a => a.FirstAnswer is not null), "the first of a wave", Cancellation, Patience);
                cutInMidAnswer += Math.Min(1, WholeStorm.UnderWay(asked));
            }

            switch (strike)
            {
                case StormStrike.Cut:
                    platform.Gateway.DropClients();
                    break;
                case StormStrike.Reconnect:
                    platform.Gateway.RequestReconnect();
                    break;
                case StormStrike.SessionRefused or StormStrike.SessionGone:
                    platform.Gateway.Invalidate(resumable: strike == StormStrike.SessionRefused);
                    break;
                case StormStrike.PlannerRestart:
                    await planner.DisposeAsync().AsTask().WaitAsync(PlannerEnd, Cancellation);
                    break;
            }

            // While there is no session at all what is sent is lost on the platform's side, so nothing is sent then.
            bool gap = strike is StormStrike.Cut or StormStrike.Reconnect or StormStrike.SessionRefused;
            IReadOnlyList<SentInteraction> late = strike == StormStrike.SessionGone ? [] : storm.Ask(storm.Crowd.TakeLast(SentInGap), gap);
            if (strike == StormStrike.PlannerRestart)
            {
                planner = await StartPlannerAsync(folder, port);
            }
            else if (strike != StormStrike.None)
            {
                await BackAsync(platform, bot, back);
            }

            asked = [.. asked, .. late.Count > 0 ? late : storm.Ask(storm.Crowd.TakeLast(SentInGap))];
            await storm.SettleAsync(asked, open: 5, Cancellation);
            Write($"{strike}: {TimeProvider.System.GetElapsedTime(began).TotalSeconds:0.0} s, {asked.Count(a => Answers(a).Any(m => m.Content.Contains("cannot be reached", StringComparison.Ordinal)))} unreachable, {asked.Count(a => a.FirstAnswer is null)} unanswered");
        }

        await storm.SettleAsync(storm.All, open: 0, Cancellation);
        bot.Stop();
        Assert.Equal(CrewBotProgram.Answered, await bot.Run.WaitAsync(Patience, Cancellation));
        await planner.DisposeAsync().AsTask().WaitAsync(PlannerEnd, Cancellation);

        var verdict = new StormVerdict(platform.Recording.Requests, storm.InGap);
        SentInteraction[] silent = [.. storm.All.Where(a => a.FirstAnswer is null)], struck = [.. storm.All.Where(verdict.IsStruck)], before = [.. storm.All.Where(verdict.WasThereBefore)];
        int needless = storm.All.Sum(verdict.NeedlessFirstAnswers), gaveUp = bot.Log.Lines.Count(l => l.Contains("/callback: no answer in time", StringComparison.Ordinal));
        Write($"Seed {seed}: {storm.All.Count} asked, {storm.Repeated} delivered once more, {platform.Faults.Played} faults, {struck.Length} struck in the first answer, {before.Length} found it there already, "
            + $"{silent.Length} told by the platform, {needless} sent needlessly, {gaveUp} waited for in vain, {cutInMidAnswer} strikes in mid-answer, {platform.Gateway.Resumed} resumes, {platform.Gateway.Identified} sessions");
        bot.Log.Lines.Where(l => l.StartsWith("Error", StringComparison.Ordinal)).Take(5).ToList().ForEach(Write);
        Assert.Equal(1000, storm.All.Count);
        Assert.InRange(storm.Repeated, 50, 250);
        Assert.InRange(platform.Faults.Played, 100, 1000);
        Assert.InRange(struck.Length, 50, 500);
        Assert.NotEmpty(before);
        Assert.True(cutInMidAnswer >= 5, $"{cutInMidAnswer} of the strikes met answers under way");
        Assert.True(platform.Gateway.Resumed >= 4 && platform.Gateway.Identified >= 2);

        string[] wrong = [.. storm.All.Select(verdict.WrongWith).OfType<string>()];
        Assert.Empty(wrong);
        Assert.InRange(silent.Length, 0, 150);
        Assert.InRange(needless, 0, gaveUp);

        // The bot's own account: each of them taken up once, whatever came of it.
        int demos = WholeStorm.Servers, accounts = bot.Log.Lines.Count(l => l.Contains(", end after ", StringComparison.Ordinal));
        Assert.Equal(storm.All.Count(a => a.Kind != SentKind.Autocomplete) + demos, accounts);
        Assert.InRange(storm.All.Count(a => Answers(a) is [var one] && !one.Content.Contains("cannot be reached", StringComparison.Ordinal)), 700, 1000);
        string[] faulty = [.. storm.All.SelectMany(a => Answers(a).Where(m => m.Content.Contains("went wrong", StringComparison.Ordinal)).Select(m => $"{a}: {m.Content}"))];
        Assert.Empty(faulty);
        Assert.Empty(Directory.GetFiles(Path.Combine(bot.DataFolder, "pending")));
        Assert.Empty(platform.Recording.UnknownRoutes);
        Directory.Delete(folder, recursive: true);
    }

    private static async Task BackAsync(EmulatedPlatform platform, EmulatedBot bot, int times)
    {
        try
        {
            await platform.UntilAsync(() => platform.Gateway.Resumed + platform.Gateway.Identified >= times && platform.Gateway.Connected == 1, "the gateway", Cancellation, Patience);
        }
        catch (TimeoutException)
        {
            // Heard by whoever looks for the cause.
            Write($"{platform.Gateway.Connected} connected, {platform.Gateway.Resumed} resumes, {platform.Gateway.Identified} sessions, {times} wanted");
            foreach (RecordedFrame frame in platform.Recording.Frames.Where(f => f.Event is null or "READY" or "RESUMED"))
            {
                Write($"{frame.At.TotalSeconds:0.000} {frame}{(frame.ByPlatform ? " by the platform" : "")}");
            }

            bot.Log.Lines.Where(l => l.Contains("onnection", StringComparison.Ordinal) || l.Contains("ession", StringComparison.Ordinal)).TakeLast(20).ToList().ForEach(Write);
            throw;
        }
    }

    private static void Write(string line) => TestContext.Current.TestOutputHelper!.WriteLine(line);

    private static Task<PlannerHost> StartPlannerAsync(string folder, int port) => PlannerHost.StartAsync(
        new PlannerHostOptions { DataFolder = folder, GrpcPort = port, HttpPort = null, Quiet = true }, _ => { }, TestContext.Current.CancellationToken);
}
