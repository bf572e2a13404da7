using Quarterlight.Crew;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Buttons go on from the answer they stand under, whoever presses them; conversations in a channel stay apart.</summary>
public sealed class TransportButtonTests
{
    private static readonly CrewAnswer First = new()
    {
        Headline = "Visor clip.",
        FollowUps = ["why not the dash?"],
        Memory = new CrewMemory { SceneName = "scenes/night", Units = UnitPreference.Imperial },
    };

    [Fact]
    public async Task Press_ByAColleagueLater_GoesOnFromThatAnswer()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        OutgoingButton button = await FirstButtonAsync(bench);
        bench.Desk.RunsInto(new CrewAnswer { Headline = "Another scene.", Memory = new CrewMemory { SceneName = "scenes/other" } });
        await bench.AnswerToAsync(bench.Command("plan"));

        OutgoingMessage shown = await bench.AnswerToAsync(Press(bench, button.CustomId) with { UserId = 5 });

        (string conversation, CrewQuestion question) = Assert.Single(bench.Desk.Asked);
        Assert.Equal("why not the dash?", question.Text);
        Assert.Equal(First.Memory, question.Memory);
        Assert.StartsWith("m:", conversation, StringComparison.Ordinal);
        Assert.False(shown.Private);
    }

    [Fact]
    public async Task Press_Twice_GoesOnFromTheSameAnswerBothTimes()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        OutgoingButton button = await FirstButtonAsync(bench);
        bench.Desk.Answers = (_, _) => Task.FromResult(new CrewAnswer { Headline = "Because.", FollowUps = ["and in the rain?"], Memory = new CrewMemory { SceneName = "scenes/changed" } });

        await bench.AnswerToAsync(Press(bench, button.CustomId));
        await bench.AnswerToAsync(Press(bench, button.CustomId));

        Assert.All(bench.Desk.Asked, a => Assert.Equal("scenes/night", a.Question.Memory.SceneName));
        Assert.Equal(2, bench.Desk.Asked.Select(a => a.Conversation).Distinct().Count());
    }

    [Fact]
    public async Task Press_AnswerNoLongerKept_SaysWhatToTypeInstead()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        await bench.Conversations.WriteAsync($"c:{TransportBench.Channel}:{TransportBench.User}", First.Memory, TestContext.Current.CancellationToken);

        OutgoingMessage shown = await bench.AnswerToAsync(Press(bench, "q1:abcdefgh:why not the dash?"));

        Assert.True(shown.Private);
        Assert.Contains("/ask question: why not the dash?", shown.Content, StringComparison.Ordinal);
        Assert.Empty(bench.Desk.Asked);
        Assert.Equal(First.Memory, await bench.Conversations.ReadAsync($"c:{TransportBench.Channel}:{TransportBench.User}", TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("")]
    [InlineData("q2:abcdefgh:why?")]
    [InlineData("q1:ABCDEFGH:why?")]
    [InlineData("q1:short:why?")]
    [InlineData("q1:abcdefgh:")]
    [InlineData("q1:abcdefgh")]
    [InlineData("v1:plan:5")]
    public async Task Press_OfAnotherVersion_SaysSo(string customId)
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(Press(bench, customId));

        Assert.True(shown.Private);
        Assert.Contains("another version of me", shown.Content, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Press_UnderAPrivateCommandsAnswer_IsAnsweredPrivately()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(First);
        OutgoingMessage judged = await bench.AnswerToAsync(bench.Any(InteractionKind.Command) with
        {
            Command = new CommandData { Name = "Judge this clip", Kind = CommandKind.Message, TargetAttachments = [new DiscordAttachment(1, "a.wav", 10, "https://cdn.discordapp.com/a.wav")] },
        });

        OutgoingMessage shown = await bench.AnswerToAsync(Press(bench, judged.Buttons[0].CustomId));

        Assert.True(shown.Private);
    }

    [Fact]
    public async Task Press_ThenType_GoesOnFromWhatTheButtonAnswered()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        OutgoingButton button = await FirstButtonAsync(bench);
        bench.Desk.Answers = (_, _) => Task.FromResult(new CrewAnswer { Headline = "Because.", Memory = new CrewMemory { SceneName = "scenes/changed" } });
        await bench.AnswerToAsync(Press(bench, button.CustomId) with { UserId = 5 });

        Assert.Equal("scenes/changed", (await bench.Conversations.ReadAsync($"c:{TransportBench.Channel}:5", TestContext.Current.CancellationToken))!.SceneName);
    }

    [Fact]
    public async Task Type_FirstTimeInAChannel_StartsWithTheSceneTalkedAboutThere()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(First with { Memory = First.Memory with { LastRadio = null } });
        await bench.AnswerToAsync(bench.Command("plan"));

        await bench.AnswerToAsync(bench.Command("plan") with { UserId = 5 });

        CrewMemory begun = (await bench.Conversations.ReadAsync($"c:{TransportBench.Channel}:5", TestContext.Current.CancellationToken))!;
        Assert.Equal(("scenes/night", UnitPreference.Imperial), (begun.SceneName, begun.Units));
        Assert.Equal([$"c:{TransportBench.Channel}:{TransportBench.User}", $"c:{TransportBench.Channel}:5"], bench.Desk.Ran.Select(r => r.Conversation));
    }

    [Fact]
    public async Task Type_AfterSomebodysPrivateAnswer_KnowsNothingOfIt()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(First with { Private = true });
        await bench.AnswerToAsync(bench.Command("plan"));

        await bench.AnswerToAsync(bench.Command("plan") with { UserId = 5 });

        Assert.Null(await bench.Conversations.ReadAsync($"c:{TransportBench.Channel}:5", TestContext.Current.CancellationToken));
    }

    [Fact]
    public void ButtonId_TooLongForAButton_IsNone()
    {
        Assert.NotNull(new ButtonId("abcdefgh", new string('q', 88), false).Write());
        Assert.Null(new ButtonId("abcdefgh", new string('q', 89), false).Write());
        Assert.True(ButtonId.TryRead("q1p:abcdefgh:is 10:30 too late?", out ButtonId? id));
        Assert.Equal(new ButtonId("abcdefgh", "is 10:30 too late?", true), id);
    }

    private static async Task<OutgoingButton> FirstButtonAsync(TransportBench bench)
    {
        bench.Desk.RunsInto(First);
        return Assert.Single((await bench.AnswerToAsync(bench.Command("plan"))).Buttons);
    }

    private static Interaction Press(TransportBench bench, string customId) => bench.Any(InteractionKind.Component) with { Component = new ComponentData(customId, [], 3) };
}
