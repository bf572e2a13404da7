using System.Text;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Crew;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>What a crew, or somebody who means ill, can send that is wrong: a clear private answer, and no ping.</summary>
public sealed class WholeBadInputTests(SharedPlanner planner)
{
    private static readonly Dictionary<string, object> Nothing = new() { ["name"] = "", ["car-and-kit"] = "", ["talkers"] = "", ["cameras"] = "", ["drive"] = "" };

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Wrong_Input_IsAnsweredPrivatelyAndClearly()
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        UserInChannel crew = platform.Crew;
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address, NoLimits);
        await AnswerAsync(crew.Slash("demo"));
        SentInteraction opening = crew.Slash("scene new");
        OpenedForm form = await opening.FormAsync(Cancellation, Patience);
        VisibleMessage plan = await AnswerAsync(crew.Slash("plan"));
        var text = new EmulatedFile("take.wav", "audio/wav", Encoding.UTF8.GetBytes("this is no sound at all, only words"));
        var wav = new EmulatedFile("take.wav", "audio/wav", new byte[64]);
        (string What, SentInteraction Sent)[] sent =
        [
            ("an empty form", crew.SubmitUnchecked(form, Nothing, opening)),
            ("a form of another version", crew.SubmitUnchecked(form with { CustomId = "no such form" }, Nothing, opening)),
            ("an unknown scene", crew.Slash("plan", ("scene", "the one that is not there"))),
            ("a file that is no sound", crew.Slash("clip", ("file", text))),
            ("an empty file", crew.Slash("clip", ("file", wav with { Bytes = Array.Empty<byte>() }))),
            ("a file that is too large", crew.Slash("clip", ("file", wav with { ClaimedSize = CrewAttachment.LargestBytes + 1 }))),
            ("a file on another host", crew.Slash("clip", ("file", wav with { OtherUrl = "http://169.254.169.254/latest" }))),
            ("a message without a file", crew.Menu("Judge this clip", crew.Post("no file here"))),
            ("an import that is no JSON", crew.Slash("scene import", ("file", new EmulatedFile("a.json", "application/json", text.Bytes)))),
            ("an import that is too large", crew.Slash("scene import", ("file", new EmulatedFile("a.json", "application/json", new byte[300 * 1024])))),
            ("a forged button", crew.PressForged(plan, "q1:zzzzzzzz:0")),
            ("a button of nobody", crew.PressForged(plan, "@everyone")),
            ("a private conversation", platform.In(platform.AddChannel(null, "private"), crew.User).Slash("plan")),
        ];

        foreach ((string what, SentInteraction one) in sent)
        {
            VisibleMessage answer = await AnswerAsync(one);
            Assert.True(answer.IsPrivate, $"{what}: {answer.Content}");
            Assert.InRange(answer.Content.Length, 20, 2000);
            Assert.DoesNotContain("went wrong", answer.Content, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("Exception", answer.Content, StringComparison.Ordinal);
            Assert.Empty(answer.Pings);
            Assert.Single(Answers(one));
        }

        Assert.Empty(platform.Recording.Refused);
        Assert.DoesNotContain(bot.Log.Lines, l => l.Contains(" Failed", StringComparison.Ordinal));
    }

    public static TheoryData<string> Hostile =>
    [
        "@everyone @here",
        "<@123456789012345678> <@&123456789012345678>",
        "``` **bold** __x__ ||spoiler|| [a](http://example.invalid) # big",
        "a\u200b@\u200beveryone\u202e\u2066b\ufeff",
        new string('@', 40) + "everyone",
    ];

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task Hostile_Names_PingNobodyAndBreakNothing(string name)
    {
        await using EmulatedPlatform platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        UserInChannel crew = platform.Crew;
        await using EmulatedBot bot = await EmulatedBot.StartAsync(platform, planner.Address, NoLimits);
        await AnswerAsync(crew.Slash("demo"));
        SentInteraction opening = crew.Slash("car new");
        OpenedForm form = await opening.FormAsync(Cancellation, Patience);
        string long4000 = string.Concat(Enumerable.Repeat(name + " ", 4000 / name.Length))[..3900];
        SentInteraction[] sent =
        [
            crew.SubmitUnchecked(form, new Dictionary<string, object> { ["name"] = name, ["shape"] = "saloon, left-hand drive" }, opening),
            crew.SubmitUnchecked(form, new Dictionary<string, object> { ["name"] = long4000, ["shape"] = long4000 }, opening),
            crew.Slash("plan", ("scene", name)),
            crew.Slash("plan", ("scene", long4000)),
            crew.Slash("ask", ("question", long4000)),
            crew.Slash("why", ("site", name), ("talker", name)),
            crew.Slash("clip", ("file", new EmulatedFile(name + ".wav", "audio/wav", new byte[100]))),
        ];
        foreach (SentInteraction one in sent)
        {
            await AnswerAsync(one);
        }

        VisibleMessage list = await AnswerAsync(crew.Slash("car list"));
        foreach (VisibleMessage answer in sent.SelectMany(Answers).Append(list))
        {
            Assert.Empty(answer.Pings);
            Assert.DoesNotContain("@everyone", answer.Content, StringComparison.Ordinal);
            Assert.DoesNotContain("@here", answer.Content, StringComparison.Ordinal);
            Assert.DoesNotContain("<@", answer.Content, StringComparison.Ordinal);
            Assert.DoesNotContain("```", answer.Content, StringComparison.Ordinal);
            Assert.DoesNotContain("](http", answer.Content, StringComparison.Ordinal);
            Assert.DoesNotContain('\u202e', answer.Content);
            Assert.DoesNotContain("went wrong", answer.Content, StringComparison.OrdinalIgnoreCase);
        }

        Assert.All(sent, s => Assert.Single(Answers(s)));
        Assert.Empty(platform.Recording.Refused);
    }
}
