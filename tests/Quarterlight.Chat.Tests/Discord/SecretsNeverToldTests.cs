using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using OpenTelemetry.Exporter;
using OpenTelemetry.Trace;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Telemetry;
using Quarterlight.Telemetry.Tests;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Everything the whole bot tells (lines at trace level, traces, metrics, what is on its console), while the platform fails, and what is never in it.</summary>
public sealed partial class SecretsNeverToldTests(SharedPlanner planner)
{
    private const string DelegateKey = "k3y-between-bot-and-planner-0123456789";
    private const string BotToken = "MTAwMDAwMDAwMDAwMDAwMDAw.Gabcde.abcdefghijklmnopqrstuvwxyz0123456789AB";

    // Words that stand nowhere else.
    private const string AskedWord = "marigoldish";
    private const string SceneWord = "Quincelane";
    private const string PostedWord = "periwinkled";
    private const string FileWord = "gooseberry";
    private const string FormWord = "Damsonyard";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Serve_WhileThePlatformFails_NoSecretAndNoWordOfTheCrewIsTold()
    {
        Told told = await TellAllAsync(TelemetrySetup.Add);

        Assert.Empty(Leaks(told));

        // It was told something: all three ways, with the places where secrets stood.
        Assert.Contains("/interactions/", told.Traces, StringComparison.Ordinal);
        Assert.Contains(SecretRedactor.Mark, told.Traces, StringComparison.Ordinal);
        Assert.Contains("interaction Command", told.Traces, StringComparison.Ordinal);
        Assert.Contains("crewbot.own_share", told.Metrics, StringComparison.Ordinal);
        Assert.Contains("discord.interactions", told.Metrics, StringComparison.Ordinal);
        Assert.Contains("plan in discord-", told.Logs, StringComparison.Ordinal);
        Assert.Contains("plan in discord-", told.Lines, StringComparison.Ordinal);
        Assert.NotEmpty(told.SignedQueries);
        Assert.True(told.FaultsPlayed >= 4, $"only {told.FaultsPlayed} calls failed");
    }

    [Fact]
    public async Task Scan_RedactionSwitchedOff_FindsTokens()
    {
        Told told = await TellAllAsync(ExportAsItIs);

        IReadOnlyList<string> leaks = Leaks(told);
        Assert.All(["interaction token in traces", "signed query in traces", "bot token in traces", "key of the planner in traces"], what => Assert.Contains(leaks, l => l.StartsWith(what, StringComparison.Ordinal)));
    }

    private static void ExportAsItIs(IServiceCollection services, ILoggingBuilder logging, TelemetryOptions? options, SecretRedactor redactor) =>
        services.AddOpenTelemetry().WithTracing(tracing => tracing
            .AddSource([.. options!.Sources, "System.Net.Http"])
            .AddOtlpExporter(o => (o.Protocol, o.Endpoint) = (OtlpExportProtocol.HttpProtobuf, new Uri(options.Endpoint, "v1/traces"))));

    private async Task<Told> TellAllAsync(Action<IServiceCollection, ILoggingBuilder, TelemetryOptions?, SecretRedactor> telemetry)
    {
        await using CollectorStub collector = await CollectorStub.StartAsync();
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(new PlatformOptions { Token = BotToken }, Cancellation);
        using var book = new LineBook();
        EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address, new EmulatedBot.Setup
        {
            LowestLevel = LogLevel.Trace,
            DelegateKey = DelegateKey,
            Collector = collector.Address,
            Book = book,
            AddTelemetry = telemetry,
        });
        await using (bot)
        {
            await TalkAsync(platform, bot);
            BeCareless(platform);
            bot.Stop();
            await bot.Run.WaitAsync(TimeSpan.FromSeconds(40), Cancellation);
        }

        return new Told(
            [.. platform.Interactions.Select(i => i.Token)],
            [.. platform.Interactions.SelectMany(i => Signed().Matches(Regex.Unescape(i.Json)).Select(m => m.Groups[1].Value)).Distinct()],
            string.Join('\n', book.Lines.Concat(bot.Log.Lines)) + bot.Error,
            collector.BodyOf("/v1/traces"), collector.BodyOf("/v1/metrics"), collector.BodyOf("/v1/logs"),
            platform.Faults.Played);
    }

    // The bot's own spans hold no secret. This is one that a careless hand might add, on its way through all that the bot has set up.
    private static void BeCareless(EmulatedPlatform platform)
    {
        using var source = new ActivitySource(CrewBotMeters.Name);
        using Activity? span = source.StartActivity("careless");
        Assert.NotNull(span);
        SentInteraction asked = platform.Interactions[0];
        span.SetTag("url.full", $"{platform.ApiBase}/interactions/{asked.Id}/{asked.Token}/callback");
        span.SetTag("said", $"Bot {BotToken}").SetTag("sent", DelegateKey);
        span.SetTag("file", platform.Interactions.Select(i => Signed().Match(Regex.Unescape(i.Json))).First(m => m.Success).Value);
    }

    private static async Task TalkAsync(EmulatedPlatform platform, EmulatedBot bot)
    {
        UserInChannel crew = platform.Crew;
        int asked = 0;
        async Task EndAsync(SentInteraction interaction)
        {
            asked++;
            await TransportBench.UntilAsync(() => bot.Log.Lines.Count(l => l.Contains("end after", StringComparison.Ordinal)) >= asked, $"the end of {interaction}");
            platform.Faults.Clear();
        }

        async Task WithFaultAsync(FaultRule fault, Func<SentInteraction> act)
        {
            platform.Faults.Add(fault);
            await EndAsync(act());
        }

        await EndAsync(crew.Slash("demo"));
        await EndAsync(crew.Slash("plan"));
        await EndAsync(crew.Slash("ask", ("question", $"where is the {AskedWord} microphone?")));
        await EndAsync(crew.Slash("plan", ("scene", $"{SceneWord} by night")));
        await crew.Type("plan", "scene", SceneWord).ChoicesAsync(Cancellation, TimeSpan.FromSeconds(30));
        VisibleMessage posted = crew.Post($"{PostedWord} take seven", new EmulatedFile($"{FileWord}.wav", "audio/wav", new byte[5000]));
        await EndAsync(crew.Menu("Judge this clip", posted));
        await EndAsync(crew.Slash("clip", ("file", new EmulatedFile($"{FileWord}.wav", "audio/wav", new byte[5000]))));

        SentInteraction opens = crew.Slash("scene new");
        OpenedForm form = await opens.FormAsync(Cancellation, TimeSpan.FromSeconds(30));
        await EndAsync(opens);
        await EndAsync(crew.SubmitUnchecked(form, new Dictionary<string, object> { ["name"] = FormWord }, opens));

        await WithFaultAsync(new FaultRule(FaultKind.Status) { Path = "callback$", Status = 500, Times = 1 }, () => crew.Slash("plan"));
        await WithFaultAsync(new FaultRule(FaultKind.Status) { Path = "callback$", Status = 403, Times = 1 }, () => crew.Slash("plan"));
        await WithFaultAsync(new FaultRule(FaultKind.CutBefore) { Path = "callback$", Times = 1 }, () => crew.Slash("scene list"));
        await WithFaultAsync(new FaultRule(FaultKind.Status) { Path = "callback$", Status = 404, Times = 1 }, () => crew.Slash("scene list"));
        await WithFaultAsync(new FaultRule(FaultKind.Status) { Path = "^/cdn/", Status = 404, Times = 3 }, () => crew.Menu("Judge this clip", posted));
    }

    private static IReadOnlyList<string> Leaks(Told told)
    {
        (string What, string Text)[] told4 = [("lines", told.Lines), ("traces", told.Traces), ("metrics", told.Metrics), ("logs", told.Logs)];
        IEnumerable<(string What, string Text)> secrets = told.Tokens.Select(t => ("interaction token", t))
            .Concat(told.SignedQueries.Select(q => ("signed query", q)))
            .Append(("bot token", BotToken)).Append(("key of the planner", DelegateKey))
            .Concat(new[] { AskedWord, SceneWord, PostedWord, FileWord, FormWord }.Select(w => ("word of the crew", w)));
        return [.. secrets.SelectMany(s => told4.Where(t => t.Text.Contains(s.Text, StringComparison.OrdinalIgnoreCase)).Select(t => $"{s.What} in {t.What}: {s.Text}"))];
    }

    [GeneratedRegex("hm=([0-9a-f]{16,})")]
    private static partial Regex Signed();

    private sealed record Told(IReadOnlyList<string> Tokens, IReadOnlyList<string> SignedQueries, string Lines, string Traces, string Metrics, string Logs, int FaultsPlayed);
}
