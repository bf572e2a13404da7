using System.Text.Json;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Every command there is, once, as the crew sends it, between the emulated platform and the real planner.</summary>
public sealed class WholeCommandTests(SharedPlanner planner)
{
    private static readonly EmulatedFile Clip = new("take 3.wav", "audio/wav", DemoClip.Make());

    // Asked one after the other against the demo; those that take a file or open a form are below.
    private static readonly string[] Lines =
    [
        "demo", "help", "help radio", "scene list", "scene show", "scene use driving lesson", "scene use school run", "car list", "car show", "kit list", "kit show small kit",
        "plan", "why visor", "what-if windows: open speed: 30 mph", "sites", "link", "link distance: 150 m country: Germany", "law country: Japan frequency: 863 MHz",
        "channels count: 8 range: 470-494 MHz", "quiet-channel heard: 97.7 strong, 98.5 faint", "heat outside: 35 C start: 14:00 shade: pop-up", "levels effort: shout",
        "run-time", "noise speed: 50 km/h", "noise show: table", "route rain: light", "ask how far can they trail us?",
        "settings show", "settings units imperial", "settings units metric", "settings country Germany", "settings clip-limits hum 12 dB",
    ];

    // Topics that are shown as well as told.
    private static readonly string[] Pictured = ["plan", "why", "what-if", "link", "heat", "noise", "clip"];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task EveryCommand_OfTheCatalogue_IsAnsweredWell()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        UserInChannel crew = platform.Crew, others = platform.In(platform.AddChannel(platform.AddGuild("Unit Two"), "sound"), platform.AddUser("second.unit"));
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address, NoLimits);
        var asked = new List<(string Command, SentInteraction Sent, VisibleMessage Answer)>();
        async Task<VisibleMessage> Ask(UserInChannel who, string line, EmulatedFile? file = null) => await Note(CommandLine.Read(line).Call!.Name, Send(who, line, file));
        async Task<VisibleMessage> Note(string command, SentInteraction sent)
        {
            VisibleMessage answer = await AnswerAsync(sent);
            asked.Add((command, sent, answer));
            return answer;
        }

        async Task Fill(string line, params (string Field, string Text)[] fields)
        {
            SentInteraction opening = Send(crew, line);
            OpenedForm form = await opening.FormAsync(Cancellation, Patience);
            VisibleMessage answer = await Note(CommandLine.Read(line).Call!.Name, crew.Submit(form, fields.ToDictionary(f => f.Field, f => (object)f.Text), opening));
            Assert.False(answer.IsPrivate, $"{line}: {answer.Content}");
        }

        foreach (string line in Lines)
        {
            await Ask(crew, line);
        }

        await Ask(crew, "clip", Clip);
        await Note("clip", crew.Menu(CrewCommands.Find("clip")!.MessageMenuName!, crew.Post("take 3", Clip)));
        await Fill("car new", ("name", "Green saloon"), ("shape", "saloon, left-hand drive"));
        await Fill("car edit Green saloon", ("details", "leather seats"));
        await Fill("kit new", ("name", "Bag kit"), ("microphones", "2 x omni lavalier"), ("fixings", "4 spring clips, 6 elastic ties"), ("inputs", "4"));
        await Fill("kit edit Bag kit", ("inputs", "6"));
        await Fill("scene new", ("name", "Scene 12"), ("car-and-kit", "Car: Green saloon\nKit: Bag kit"), ("talkers", "Ann driver, Bo front passenger loud"));
        await Fill("scene edit Scene 12", ("talkers", "Ann driver, Bo front passenger quiet"));
        foreach (string what in new[] { "scene export Scene 12", "car export Green saloon", "kit export Bag kit" })
        {
            VisibleFile file = Assert.Single((await Ask(crew, what)).Files);
            VisibleMessage taken = await Ask(others, what.Split(' ')[0] + " import", new EmulatedFile(file.Name, "application/json", file.Bytes));
            Assert.False(taken.IsPrivate, taken.Content);
        }

        Assert.Contains("Scene 12", (await Ask(others, "scene list")).Content, StringComparison.Ordinal);
        foreach (string gone in new[] { "scene remove Scene 12 confirm: yes", "car remove Green saloon confirm: yes", "kit remove Bag kit confirm: yes" })
        {
            Assert.False((await Ask(crew, gone)).IsPrivate);
        }

        Assert.DoesNotContain("Scene 12", (await Ask(crew, "scene list")).Content, StringComparison.Ordinal);
        Assert.Contains("Scene 12", (await Ask(others, "scene list")).Content, StringComparison.Ordinal);

        Assert.Empty(CrewCommands.All.Select(c => c.Name).Except(asked.Select(a => a.Command)));
        Assert.All(asked, a => LooksWell(a.Command, a.Sent, a.Answer));
        Assert.All(Pictured, name => Assert.Contains(asked, a => a.Command == name && a.Answer.Files.Any(f => f.ContentType == "image/png")));
        Assert.True(asked.Count(a => a.Sent.AcknowledgedAfter < TimeSpan.FromSeconds(1)) >= asked.Count * 0.95, "Acknowledged late: "
            + string.Join(", ", asked.Where(a => a.Sent.AcknowledgedAfter >= TimeSpan.FromSeconds(1)).Select(a => $"{a.Command} {a.Sent.AcknowledgedAfter}")));
        Assert.Empty(platform.Recording.Refused);
        Assert.Empty(platform.Recording.UnknownRoutes);
        Assert.DoesNotContain(bot.Log.Lines, l => l.Contains(" Failed", StringComparison.Ordinal));
        await WriteBodiesAsync(platform);
    }

    private static void LooksWell(string command, SentInteraction sent, VisibleMessage answer)
    {
        string what = $"{command}: {answer.Content}";
        Assert.True(sent.FirstAnswer is FirstAnswerKind.Message or FirstAnswerKind.DeferredMessage, what);
        Assert.False(sent.Failed, what);
        Assert.Single(Answers(sent));
        Assert.True(answer.IsPrivate == CrewCommands.Find(command)!.Private, what);
        Assert.DoesNotContain("went wrong", answer.Content, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(answer.Pings);
        Assert.InRange(answer.Content.Length, 10, 2000);
        Assert.InRange(answer.Buttons.Count, 0, 3);
        Assert.All(answer.Buttons, b => Assert.InRange(b.Label.Length, 1, 38));
        Assert.All(answer.Files.Where(f => f.ContentType == "image/png"), f => Assert.InRange(f.AltText?.Length ?? 0, 20, 1024));
    }

    // For the check against the published types: node tests/interop/payloads.js <this file>.
    private static async Task WriteBodiesAsync(EmulatedPlatform platform)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "bot-payloads.jsonl");
        await platform.Recording.DumpAsync(path, Cancellation);
        string[] kinds = [.. (await File.ReadAllLinesAsync(path, Cancellation)).Select(l => JsonDocument.Parse(l).RootElement.GetProperty("kind").GetString()!)];
        Assert.Superset(new HashSet<string> { "callback", "commands", "identify" }, new HashSet<string>(kinds));
        Assert.True(kinds.Count(k => k == "callback") >= CrewCommands.All.Count);
    }
}
