using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using Quarterlight.Crew;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Answers laid out as messages: readable, within the platform's limits, and never more than the text they came from.</summary>
public sealed class MessageLayoutTests
{
    private static readonly CrewAnswer Whole = new()
    {
        Headline = "Visor clip, 38 cm from the driver's mouth.",
        Lines = [new CrewLine(CrewLineKind.Talker, "Driver: small omni on the visor."), new CrewLine(CrewLineKind.Certainty, "Sure within 2 dB.")],
        Understood = "mount plan for Car park, night",
        Pictures = [new CrewPicture(new byte[] { 1 }, "The clip sits on the visor. The camera does not see it.", "plan.png")],
        FollowUps = ["why not the dash?", "and in the rain?", "list sites", "a fourth"],
    };

    [Fact]
    public void Of_WholeAnswer_ReadsDecisionFirst()
    {
        OutgoingMessage message = Of(Whole);

        Assert.Equal(
            "**Visor clip, 38 cm from the driver's mouth.**\nDriver: small omni on the visor.\nSure within 2 dB.\n-# Understood: mount plan for Car park, night.",
            message.Content);
        Assert.Equal(["why not the dash?", "and in the rain?", "list sites"], message.Buttons.Select(b => b.Label));
        Assert.Equal([ButtonLook.Primary, ButtonLook.Secondary, ButtonLook.Secondary], message.Buttons.Select(b => b.Look));
        OutgoingFile picture = Assert.Single(message.Files);
        Assert.Equal(("plan.png", "image/png", "The clip sits on the visor. The camera does not see it."), (picture.Name, picture.MediaType, picture.AltText));
    }

    [Fact]
    public void Of_LongAltText_IsCutAtASentence()
    {
        string words = string.Concat(Enumerable.Repeat("The clip sits on the visor. ", 60));

        string alt = Of(Whole with { Pictures = [Whole.Pictures[0] with { TextAlternative = words }] }).Files[0].AltText!;

        Assert.InRange(alt.Length, 900, DiscordLimits.AltTextCharacters);
        Assert.EndsWith("visor.", alt, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LongQuestion_HasAShortLabelAndTheWholeQuestionBehind()
    {
        const string Question = "coordinate 8 transmitters between 470 and 494 MHz please";

        OutgoingButton button = Of(Whole with { FollowUps = [Question] }).Buttons[0];

        Assert.Equal("coordinate 8 transmitters between 470…", button.Label);
        Assert.EndsWith(Question, button.CustomId, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_QuestionTooLongForAButton_IsSaidInWords()
    {
        string question = "why not " + string.Join(' ', Enumerable.Repeat("there", 20)) + "?";

        OutgoingMessage message = Of(Whole with { FollowUps = [question, "list sites"] });

        Assert.Equal(["list sites"], message.Buttons.Select(b => b.Label));
        Assert.EndsWith($"-# Ask next: {question}", message.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LongAnswer_ShowsWholeLinesAndSendsAllAsAFile()
    {
        CrewAnswer answer = Whole with { Lines = [.. Enumerable.Range(1, 80).Select(i => new CrewLine(CrewLineKind.Plain, $"Site number {i} of the car, with *its* figures and words."))] };

        OutgoingMessage message = Of(answer);

        Assert.True(message.Content.Length <= MessageLayout.LongestShown);
        string[] lines = message.Content.Split('\n');
        Assert.Equal("-# The whole answer is in answer.txt.", lines[^1]);
        Assert.StartsWith("-# Understood: ", lines[^2], StringComparison.Ordinal);
        Assert.All(lines[1..^2], l => Assert.EndsWith("figures and words.", l, StringComparison.Ordinal));
        OutgoingFile file = message.Files[^1];
        string text = Encoding.UTF8.GetString(file.Bytes.Span);
        Assert.Equal("answer.txt", file.Name);
        Assert.Contains("Site number 80 of the car, with *its* figures", text, StringComparison.Ordinal);
        Assert.StartsWith("Visor clip, 38 cm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LongAnswerWithCautionsLast_ShowsThemBeforeFigures()
    {
        CrewLine[] figures = [.. Enumerable.Range(1, 40).Select(i => new CrewLine(CrewLineKind.Figures, $"Talker {i}: signal to noise 13 dB and all the other figures of the place."))];
        CrewLine caution = new(CrewLineKind.Caution, "Safety: nobody adjusts a microphone while the car moves.");

        string[] lines = Of(Whole with { Lines = [.. figures, caution, new CrewLine(CrewLineKind.Proof, "Proved best of many.")] }).Content.Split('\n');

        Assert.Contains(caution.Text, lines);
        Assert.Contains(figures[0].Text, lines);
        Assert.DoesNotContain(figures[^1].Text, lines);
    }

    [Fact]
    public void Of_FilesOfTheAnswer_AreAttached()
    {
        OutgoingFile file = Of(Whole with { Pictures = [], Files = [new CrewFile("scene-12a.json", "application/json", new byte[] { 1 })] }).Files[0];

        Assert.Equal(("scene-12a.json", "application/json", null), (file.Name, file.MediaType, file.AltText));
    }

    [Fact]
    public void WithoutFiles_LongAnswer_SaysThatItIsCut()
    {
        CrewAnswer answer = Whole with { Lines = [.. Enumerable.Repeat(new CrewLine(CrewLineKind.Plain, "A line of some length, as they are."), 100)], Files = [new CrewFile("a.json", "application/json", new byte[] { 1 })] };

        OutgoingMessage message = MessageLayout.WithoutFiles(answer, false, _ => null);

        Assert.Empty(message.Files);
        Assert.EndsWith("Ask for less at once.", message.Content, StringComparison.Ordinal);
        Assert.True(message.Content.Length <= MessageLayout.LongestShown);
    }

    [Theory]
    [InlineData("*bold* _it_ ~~no~~ ||spoiler|| `code`", @"\*bold\* \_it\_ \~\~no\~\~ \|\|spoiler\|\| \`code\`")]
    [InlineData("# heading", @"\# heading")]
    [InlineData("> quote", @"\> quote")]
    [InlineData("- list", @"\- list")]
    [InlineData("-# small", @"\-# small")]
    [InlineData("12. list", @"12\. list")]
    [InlineData("38 cm - 2 dB > 1 # 4", "38 cm - 2 dB > 1 # 4")]
    [InlineData("12.5 MHz", @"12\.5 MHz")]
    [InlineData("[text](https://a.example)", @"\[text\]\(https\://a.example)")]
    [InlineData("@everyone @here", "@\u200Beveryone @\u200Bhere")]
    [InlineData("<@123> <#5> </plan:1> <t:1:R> <:x:1>", "<\u200B@123> <\u200B#5> <\u200B/plan:1> <\u200Bt\\:1:R> <\u200B\\:x:1>")]
    [InlineData(":smile: at 10:30:00", @"\:smile: at 10\:30:00")]
    [InlineData("a\nb\u202Ec\0d", "a bc d")]
    [InlineData(@"back\slash", @"back\\slash")]
    public void Escape_Markup_ShowsAsText(string text, string escaped) => Assert.Equal(escaped, Markdown.Escape(text));

    [Fact]
    public void Escape_AnyText_ShowsAsTheSameTextAndNothingElse() =>
        Hostile.Sample(text => Assert.Equal(Markdown.Plain(text), Shown(Markdown.Escape(text))), iter: 5_000, seed: "0000KzGxbuhA");

    [Fact]
    public void Of_AnyAnswer_IsWithinThePlatformsLimits() =>
        Gen.Select(Hostile, Hostile.Array[0, 40], Hostile.Array[0, 6], Hostile).Sample((headline, lines, follows, other) =>
        {
            var answer = new CrewAnswer
            {
                Headline = headline,
                Lines = [.. lines.Select(l => new CrewLine(CrewLineKind.Plain, l))],
                FollowUps = follows,
                Understood = other,
                Pictures = [new CrewPicture(new byte[] { 1 }, string.Concat(lines), other)],
                Files = [.. follows.Select(f => new CrewFile(f, "text/plain", new byte[] { 1 }))],
            };
            foreach (OutgoingMessage message in new[] { Of(answer), MessageLayout.WithoutFiles(answer, true, Id) })
            {
                Assert.InRange(message.Content.Length, 1, DiscordLimits.ContentCharacters);
                Assert.True(message.Buttons.Count <= MessageLayout.MostButtons);
                Assert.True(message.Files.Count <= 10);
                Assert.Equal(message.Buttons.Count, message.Buttons.Select(b => b.CustomId).Distinct().Count());
                Assert.All(message.Buttons, b =>
                {
                    Assert.InRange(b.Label.Length, 1, MessageLayout.LongestLabel);
                    Assert.InRange(b.CustomId.Length, 1, DiscordLimits.CustomIdCharacters);
                });
                Assert.All(message.Files, f =>
                {
                    Assert.Matches("^[A-Za-z0-9][A-Za-z0-9.-]*$", f.Name);
                    Assert.True(f.AltText is null or { Length: > 0 and <= DiscordLimits.AltTextCharacters });
                    Assert.False(f.Bytes.IsEmpty);
                });
                foreach (string line in message.Content.Split('\n'))
                {
                    Shown(Unwrapped(line));
                }
            }
        }, iter: 500, seed: "0000KzGxbuhA");

    private static readonly Regex Markup = new(@"\G(\*|_|~|`|\|\||<(@|#|/|t:|a?:|id:|https?:)|@everyone|@here|https?://|\[[^\]]*\]\(|:[A-Za-z0-9_+~-]+:)", RegexOptions.Compiled);
    private static readonly Regex LineMarkup = new(@"^(#{1,3} |>|-# |[-+*] |\d+[.)] )", RegexOptions.Compiled);

    private static readonly string[] Marks =
    [
        "*", "_", "~", "|", ">", "`", "#", "-", "-#", "1.", "[", "]", "(", ")", "<", "@", ":", "\\", "@everyone", "<@123>", "<#5>", "</plan:1>",
        "<t:1:R>", ":smile:", "https://a.example/x_y", "\n", " ", "\u200B", "\u202E", "\uD83D", "😀", "é", "\0",
    ];

    // Text as crews write it, full of what the platform could take for markup.
    private static readonly Gen<string> Hostile = Gen.Frequency(
        (3, Gen.Int[0, Marks.Length - 1].Select(i => Marks[i])),
        (2, Gen.String[Gen.Char.AlphaNumeric, 0, 12]),
        (1, Gen.Const(new string('x', 700)))).Array[0, 14].Select(string.Concat);

    private static string Id(string question) => new ButtonId("abcdefgh", Markdown.Plain(question), false).Write()!;

    private static OutgoingMessage Of(CrewAnswer answer) => MessageLayout.Of(answer, false, DiscordLimits.DefaultAttachmentBytes, Id);

    private static string Unwrapped(string line) =>
        line.StartsWith("**", StringComparison.Ordinal) && line.EndsWith("**", StringComparison.Ordinal) ? "x" + line[2..^2] : line.StartsWith("-# ", StringComparison.Ordinal) ? line[3..] : line;

    // An own small reading of what the platform shows; fails where it would see markup. Written against its list of markup, not against the escaper.
    private static string Shown(string escaped)
    {
        var shown = new StringBuilder();
        Assert.False(LineMarkup.IsMatch(escaped), $"markup at the start of {escaped}");
        for (int i = 0; i < escaped.Length; i++)
        {
            if (escaped[i] == '\\')
            {
                i++;
                if (i == escaped.Length || char.IsLetterOrDigit(escaped[i]) || escaped[i] == ' ')
                {
                    Assert.Fail($"stray backslash in {escaped}");
                }
            }
            else if (Markup.IsMatch(escaped, i))
            {
                Assert.Fail($"markup at {i} of {escaped}");
            }

            if (escaped[i] != Markdown.Nothing)
            {
                shown.Append(escaped[i]);
            }
        }

        return shown.ToString();
    }
}
