using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The platform does not do as asked: nothing is lost without a word, nothing is answered twice.</summary>
public sealed class TransportTroubleTests
{
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(100);
    private static readonly CrewAnswer Drawn = new() { Headline = "Visor clip.", Pictures = [new CrewPicture(new byte[] { 1, 2, 3 }, "The clip sits on the visor.", "plan.png")] };

    [Theory]
    [InlineData(DiscordFault.TooLarge)]
    [InlineData(DiscordFault.Forbidden)]
    public async Task Reply_PictureRefused_SaysThePictureInWords(DiscordFault fault)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(Drawn);
        bench.Platform.Fail(Sent.Reply, fault);

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan"));

        Assert.Equal("**Visor clip.**\nThe picture could not be attached. In words: The clip sits on the visor.", shown.Content);
        Assert.Empty(shown.Files);
    }

    [Fact]
    public async Task Reply_PictureLargerThanTheServerTakes_IsNotEvenTried()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(Drawn);

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan") with { AttachmentSizeLimitBytes = 2 });

        Assert.Contains("In words: The clip sits on the visor.", shown.Content, StringComparison.Ordinal);
        Assert.Single(bench.Platform.Calls);
    }

    [Fact]
    public async Task Reply_AllRefused_EndsInOnePlainSentence()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Desk.RunsInto(Drawn);
        bench.Platform.Fail(Sent.Reply, DiscordFault.Malformed);
        bench.Platform.Fail(Sent.Reply, DiscordFault.Malformed);

        OutgoingMessage shown = await bench.AnswerToAsync(bench.Command("plan"));

        Assert.Contains("could not be shown here", shown.Content, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(DiscordFault.TooLate)]
    [InlineData(DiscordFault.AlreadyAnswered)]
    [InlineData(DiscordFault.TokenExpired)]
    public async Task Reply_NothingToBeSaidAnyMore_EndsQuietlyButNoted(DiscordFault fault)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Fail(Sent.Reply, fault);
        bench.Receive(bench.Command("plan"));
        await bench.EndedAsync();

        Assert.Single(bench.Platform.Calls);
        Assert.Contains(bench.Log.Lines, l => l.Contains($" {fault},", StringComparison.Ordinal) && l.Contains("end after", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Defer_TooLate_CallsTheWorkOff()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bool calledOff = false;
        bench.Desk.Runs = async (_, c) =>
        {
            try
            {
                await Task.Delay(Timeout.Infinite, c);
            }
            catch (OperationCanceledException)
            {
                calledOff = true;
                throw;
            }

            throw new InvalidOperationException();
        };
        bench.Platform.Fail(Sent.Defer, DiscordFault.TooLate);
        bench.Receive(bench.Command("plan"));
        await bench.MoveUntilAsync(() => bench.Log.Lines.Any(l => l.Contains("end after", StringComparison.Ordinal)), Step, "the end");
        await TransportBench.UntilAsync(() => calledOff, "the work to be called off");

        Assert.Equal(Sent.Defer, Assert.Single(bench.Platform.Calls).What);
        Assert.Empty(Directory.GetFiles(bench.LedgerFolder));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Reply_NoWordBack_AnswersExactlyOnceWhetherItArrivedOrNot(bool arrived)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Fail(Sent.Reply, DiscordFault.Unavailable, done: arrived);
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.EndedAsync();

        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
        Assert.Equal(arrived ? [Sent.Reply, Sent.Edit] : [Sent.Reply, Sent.Edit, Sent.Reply], bench.Platform.Calls.Select(c => c.What));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Defer_NoWordBack_AnswersExactlyOnceWhetherItArrivedOrNot(bool arrived)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        bench.Platform.Fail(Sent.Defer, DiscordFault.Unavailable, done: arrived);
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Calls.Count == 1, TimeSpan.FromMilliseconds(10), "the deferral");

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.EndedAsync();

        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
    }

    [Fact]
    public async Task Defer_NeverArrivedAndTimeIsOver_EndsAsNotDelivered()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        bench.Platform.Fail(Sent.Defer, DiscordFault.Unavailable);
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Time.Now > TimeSpan.FromSeconds(4), Step, "four seconds");

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.EndedAsync();

        Assert.Empty(bench.Platform.Shown(asked.Ticket.InteractionId));
        Assert.Contains(bench.Log.Lines, l => l.Contains("NotDelivered", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Edit_PlatformAwayForAWhile_IsTriedUntilItArrivesAndStandsOnce()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        for (int i = 0; i < 4; i++)
        {
            bench.Platform.Fail(Sent.Edit, i % 2 == 0 ? DiscordFault.Unavailable : DiscordFault.RateLimited);
        }

        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.MoveUntilAsync(() => bench.Log.Lines.Any(l => l.Contains("end after", StringComparison.Ordinal)), TimeSpan.FromSeconds(1), "the end");

        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
        Assert.Equal(5, bench.Platform.Calls.Count(c => c.What == Sent.Edit));
    }

    [Fact]
    public async Task Edit_FirstAnswerTakenAway_FollowsUp()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");
        bench.Platform.TakeAway(asked.Ticket.InteractionId);

        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));
        await bench.EndedAsync();

        Assert.Equal("**Visor clip.**", Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId)).Content);
    }

    [Theory]
    [InlineData("Delete")]
    [InlineData("FollowUp")]
    public async Task PrivateAfterPublic_PlatformAwayOnce_IsStillSaidOnce(string trouble)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        TaskCompletionSource<CrewOutput> answer = bench.Desk.Waits();
        bench.Platform.Fail(Enum.Parse<Sent>(trouble), DiscordFault.Unavailable);
        Interaction asked = bench.Command("plan");
        bench.Receive(asked);
        await bench.MoveUntilAsync(() => bench.Platform.Thinks(asked.Ticket.InteractionId), Step, "the deferral");
        answer.SetResult(new CrewOutput(new CrewAnswer { Headline = "No such scene.", Private = true }, null));
        await bench.MoveUntilAsync(() => bench.Log.Lines.Any(l => l.Contains("end after", StringComparison.Ordinal)), Step, "the end");

        OutgoingMessage shown = Assert.Single(bench.Platform.Shown(asked.Ticket.InteractionId));
        Assert.Equal(("**No such scene.**", true), (shown.Content, shown.Private));
    }
}
