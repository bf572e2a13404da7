using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>One question from receipt to answer, when the platform does as asked.</summary>
public sealed class TransportAnswerTests
{
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(100);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Command_AnswerAtOnce_IsTheFirstReplyWithItsOwnPrivacy(bool isPrivate)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(new CrewAnswer { Headline = "Visor clip.", Private = isPrivate });
        Interaction asked = bench.Command("plan", null, new CommandOptionValue("scene", "Car park"));

        OutgoingMessage shown = await bench.AnswerToAsync(asked);
        await bench.EndedAsync();

        Assert.Equal("**Visor clip.**", shown.Content);
        Assert.Equal(isPrivate, shown.Private);
        Assert.Equal(Sent.Reply, Assert.Single(bench.Platform.Calls).What);
        Assert.Equal("Car park", Assert.Single(bench.Desk.Ran).Call.Values["scene"]);
    }

    [Fact]
    public async Task Command_SubcommandOfTwoWords_IsTheDesksName()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        await bench.AnswerToAsync(bench.Command("scene", "list"));

        Assert.Equal("scene list", Assert.Single(bench.Desk.Ran).Call.Name);
    }

    [Fact]
    public async Task Command_SlowAnswer_IsPutOffOnceAndThenPutInPlace()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);

        bench.Time.Advance(TimeSpan.FromMilliseconds(599));
        Assert.Empty(bench.Platform.Calls);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), TimeSpan.FromMilliseconds(1), "the deferral");
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.EndedAsync();

        Assert.Equal([Sent.Defer, Sent.Edit], bench.Platform.Calls.Select(c => c.What));
        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
        Assert.False(bench.Platform.Calls[0].Private);
        Assert.Empty(Directory.GetFiles(bench.LedgerFolder));
    }

    [Fact]
    public async Task Command_AnswersAroundTheMomentOfPuttingOff_AreEachGivenOnce()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { UserRate = new(1000, 1000), TeamRate = new(1000, 1000), QuestionsAtOnce = 200 });
        var random = new Random(7);
        var asked = new List<Interaction>();
        bench.Desk.Runs = async (_, c) =>
        {
            TimeSpan wait;
            lock (random)
            {
                wait = TimeSpan.FromMilliseconds(560 + random.Next(80));
            }

            await Task.Delay(wait, bench.Time, c);
            return new CrewOutput(new CrewAnswer { Headline = "Visor clip.", Private = wait.Milliseconds % 3 == 0 }, null);
        };
        for (int i = 0; i < 150; i++)
        {
            asked.Add(bench.Command("plan"));
            bench.Receive(asked[^1]);
        }

        await bench.MoveUntilAsync(() => bench.Log.Lines.Count(l => l.Contains("end after", StringComparison.Ordinal)) == asked.Count, TimeSpan.FromMilliseconds(1), "all to end");

        Assert.All(asked, a =>
        {
            Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(a.Ticket.InteractionId)).Content);
            Assert.Single(bench.Platform.CallsOf(a.Ticket.InteractionId), c => c.What is Sent.Reply or Sent.Defer);
        });
    }

    [Fact]
    public async Task Command_ErrorAfterAPublicDeferral_IsSaidPrivatelyAndLeavesNothingPublic()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "There is no such scene.", Private = true, Outcome = CrewOutcome.Refused }, null));
        await bench.EndedAsync();

        OutgoingMessage shown = Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId));
        Assert.True(shown.Private);
        Assert.Equal([Sent.Defer, Sent.Delete, Sent.FollowUp], bench.Platform.Calls.Select(c => c.What));
    }

    [Fact]
    public async Task Command_OfItsAskerAlone_IsPutOffPrivately()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = Menu(bench, Wav);
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Use it." }, null));
        await bench.EndedAsync();

        Assert.True(Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Private);
        Assert.Equal([Sent.Defer, Sent.Edit], bench.Platform.Calls.Select(c => c.What));
    }

    [Fact]
    public async Task Command_TakesLong_SaysSoOnceAndThenAnswers()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");
        bench.Time.Advance(TimeSpan.FromSeconds(4.9) - bench.Time.Now);
        Assert.Single(bench.Platform.Calls);
        bench.Time.Advance(TimeSpan.FromSeconds(0.2));
        await TransportBench.UntilAsync(() => bench.Platform.Calls.Any(c => c.What == Sent.Edit), "the word on progress");
        bench.Time.Advance(TimeSpan.FromMinutes(2));

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.EndedAsync();

        Assert.Equal(["Working on it…", "**Visor clip.**"], bench.Platform.Calls.Where(c => c.What == Sent.Edit).Select(c => c.Message!.Content));
    }

    [Fact]
    public async Task Command_TakesTooLong_IsGivenUpWithAWordWhileThePlatformStillTakesOne()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        // A desk that does not listen when it is called off.
        bench.Desk.Runs = (_, _) => new TaskCompletionSource<CrewOutput>().Task;
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Log.Lines.Any(l => l.Contains("end after", StringComparison.Ordinal)), TimeSpan.FromSeconds(1), "the end");

        Assert.Contains("took too long", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content, StringComparison.Ordinal);
        Assert.True(bench.Time.Now < DiscordLimits.TokenLife);
    }

    [Fact]
    public async Task Command_DeskFails_IsAnsweredWithAReferenceAndLogsNoText()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Runs = (_, _) => throw new InvalidOperationException("unreleased dialogue");

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan"));
        await bench.EndedAsync();

        Assert.True(shown.Private);
        string reference = shown.Content.Split("reference ")[1].TrimEnd('.');
        Assert.Contains(bench.Log.Lines, l => l.Contains("InvalidOperationException", StringComparison.Ordinal) && l.Contains(reference, StringComparison.Ordinal));
        Assert.DoesNotContain(bench.Log.Lines, l => l.Contains("unreleased", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Command_PlannerAway_IsAPrivateAnswer()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(new CrewAnswer { Headline = "The planner cannot be reached.", Outcome = CrewOutcome.PlannerUnreachable, Private = true });

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan"));
        await bench.EndedAsync();

        Assert.True(shown.Private);
        Assert.Contains(bench.Log.Lines, l => l.Contains("PlannerUnreachable", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Command_NotInAServer_SaysWhereItWorks()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan") with { GuildId = null });

        Assert.True(shown.Private);
        Assert.Contains("server", shown.Content, StringComparison.Ordinal);
        Assert.Empty(bench.Desk.Ran);
    }

    [Fact]
    public async Task Command_NoLongerInTheCatalogue_SaysSo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("teleport"));
        await bench.EndedAsync();

        Assert.Contains("That command is gone", shown.Content, StringComparison.Ordinal);
        Assert.DoesNotContain(bench.Log.Lines, l => l.Contains("teleport", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Form_IsTheFirstAnswer()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        var form = new CrewForm("scene:new", "A new scene", [new CrewFormField("name", "Name")]);
        bench.Desk.Runs = (_, _) => Task.FromResult(new CrewOutput(null, form));
        bench.Receive(bench.Command("scene", "new"));
        await bench.EndedAsync();

        SentCall opened = Assert.Single(bench.Platform.Calls);
        Assert.Equal(Sent.Form, opened.What);
        Assert.Equal("q1f:scene:new", opened.Form!.CustomId);
    }

    [Fact]
    public async Task Form_NotThereInTime_IsNeverPutOffButSaidInTime()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.Waits();
        Interaction asked = bench.Command("scene", "new");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Log.Lines.Any(l => l.Contains("end after", StringComparison.Ordinal)), Step, "the end");

        Assert.Equal(Sent.Reply, Assert.Single(bench.Platform.Calls).What);
        Assert.True(Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Private);
        Assert.Contains(bench.Log.Lines, l => l.Contains("TookTooLong", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Form_FilledIn_GoesToTheDeskAndItsAnswerIsPublic()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        Interaction sent = bench.Any(InteractionKind.FormSubmit) with
        {
            Form = new FormData("q1f:scene:new", new Dictionary<string, string> { ["name"] = "12A" }, new Dictionary<string, IReadOnlyList<DiscordAttachment>>()),
        };

        OutgoingMessage shown = await bench.AnswerToAsync(sent);

        CrewFormEntry entry = Assert.Single(bench.Desk.Submitted);
        Assert.Equal(("scene:new", "12A"), (entry.FormId, entry.Values["name"]));
        Assert.False(shown.Private);
    }

    [Fact]
    public async Task Form_OfAnotherVersion_SaysSo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        Interaction sent = bench.Any(InteractionKind.FormSubmit) with { Form = new FormData("v9:scene", new Dictionary<string, string>(), new Dictionary<string, IReadOnlyList<DiscordAttachment>>()) };

        OutgoingMessage shown = await bench.AnswerToAsync(sent);

        Assert.Contains("another version", shown.Content, StringComparison.Ordinal);
        Assert.Empty(bench.Desk.Submitted);
    }

    private static readonly DiscordAttachment Wav = new(5, "take.wav", 1000, "https://cdn.discordapp.com/attachments/1/2/take.wav");

    private static Interaction Menu(TransportBench bench, params DiscordAttachment[] files) => bench.Any(InteractionKind.Command) with
    {
        Command = new CommandData { Name = "Judge this clip", Kind = CommandKind.Message, TargetAttachments = files },
    };
}
