using System.Globalization;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Planner;

namespace Quarterlight.Bench;

/// <summary>
/// The chat bot at work: its own share of an answer, resident memory after 1,000 answers, and deadlines of the platform missed at 50 interactions a second. Emulated
/// platform and planner run in this process, the bot in its own.
/// </summary>
public static class ChatBench
{
    private const int PerSecond = 50;

    private static readonly TimeSpan s_firstAnswer = new PlatformOptions().FirstAnswer;

    private static readonly Func<UserInChannel, SentInteraction>[] s_asked =
    [
        crew => crew.Slash("plan"),
        crew => crew.Slash("scene list"),
        crew => crew.Slash("levels"),
        crew => crew.Slash("ask", ("question", "where do the mics go?")),
        crew => crew.Slash("help"),
        crew => crew.Slash("car list"),
    ];

    /// <summary>Measures and prints.</summary>
    /// <param name="dry">True: one short round, to see that it still works.</param>
    /// <param name="published">A published crewbot.dll; null for the one built beside this program, which is not compiled ahead.</param>
    public static async Task RunAsync(bool dry, string? published)
    {
        string folder = Directory.CreateTempSubdirectory("quarterlight-chat").FullName;
        try
        {
            await using PlannerHost planner = await PlannerHost.StartAsync(new PlannerHostOptions { DataFolder = Path.Combine(folder, "planner"), GrpcPort = 0, HttpPort = null, Quiet = true });
            await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync();
            await using BotProcess bot = await BotProcess.StartAsync(platform, planner.GrpcAddress, Path.Combine(folder, "bot"), published);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"resident memory when started: {bot.ResidentMegabytes:0} MB; load of the machine {Load()}"));
            await DoneAsync(platform.Crew.Slash("demo"));
            await OneByOneAsync(platform, bot, warmUp: dry ? 2 : 100, answers: dry ? 6 : 300);
            await InCrowdAsync(platform, bot, dry ? 10 : 1000);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task OneByOneAsync(EmulatedPlatform platform, BotProcess bot, int warmUp, int answers)
    {
        for (int i = 0; i < warmUp + answers; i++)
        {
            await DoneAsync(s_asked[i % s_asked.Length](platform.Crew));
        }

        double[] own = await EndedAsync(bot, 1 + warmUp + answers);
        Print("one by one", own[(1 + warmUp)..]);
    }

    private static async Task InCrowdAsync(EmulatedPlatform platform, BotProcess bot, int count)
    {
        int before = bot.OwnMilliseconds.Length;
        UserInChannel[] crowd = [.. Enumerable.Range(0, 25).Select(n => platform.In(platform.Crew.Channel, platform.AddUser($"crew {n}")))];
        var sent = new List<SentInteraction>();
        TimeSpan processor = bot.ProcessorTime;
        long start = TimeProvider.System.GetTimestamp();
        for (int i = 0; i < count; i++)
        {
            TimeSpan wait = TimeSpan.FromSeconds((double)i / PerSecond) - TimeProvider.System.GetElapsedTime(start);
            if (wait > TimeSpan.Zero)
            {
                await Task.Delay(wait);
            }

            sent.Add(s_asked[i % s_asked.Length](crowd[i % crowd.Length]));
        }

        double seconds = TimeProvider.System.GetElapsedTime(start).TotalSeconds;
        foreach (SentInteraction one in sent)
        {
            await DoneAsync(one);
        }

        double[] own = await EndedAsync(bot, before + count);
        double busy = (bot.ProcessorTime - processor).TotalSeconds / TimeProvider.System.GetElapsedTime(start).TotalSeconds;
        int missed = sent.Count(s => s.AcknowledgedAfter is not { } after || after > s_firstAnswer);
        double[] first = [.. sent.Select(s => s.AcknowledgedAfter?.TotalMilliseconds ?? double.PositiveInfinity)];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} interactions at {count / seconds:0.0} a second: {missed} deadlines missed; first answer median {Share(first, 0.5):0} ms, 95th percentile {Share(first, 0.95):0} ms, longest {first.Max():0} ms; bot's processor {100 * busy:0} % of one core; load of the machine {Load()}"));
        Print("in the crowd", own[before..]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"resident memory after {own.Length} answers: {bot.ResidentMegabytes:0} MB{(bot.HoldsThePlanner ? ", with the planner's code loaded" : "")}"));
    }

    // Until there is something to read that is no word on progress.
    private static Task DoneAsync(SentInteraction sent) => sent.UntilAsync(s => s.Readable.Any(m => !m.IsLoading), CancellationToken.None, TimeSpan.FromMinutes(2));

    // The line of an answer comes a moment after the answer.
    private static async Task<double[]> EndedAsync(BotProcess bot, int count)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (bot.OwnMilliseconds.Length < count)
        {
            if (TimeProvider.System.GetElapsedTime(start) > TimeSpan.FromMinutes(2))
            {
                throw new TimeoutException($"{bot.OwnMilliseconds.Length} of {count} answers ended.");
            }

            await Task.Delay(10);
        }

        return bot.OwnMilliseconds;
    }

    private static void Print(string how, double[] own) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"own share of an answer, {how}: median {Share(own, 0.5):0.0} ms, 95th percentile {Share(own, 0.95):0.0} ms, longest {own.Max():0} ms, {own.Length} answers"));

    private static double Share(double[] values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted[(int)Math.Min(sorted.Length - 1, Math.Floor(share * sorted.Length))];
    }

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "not known";
}
