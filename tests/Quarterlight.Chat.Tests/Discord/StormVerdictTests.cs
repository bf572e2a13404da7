using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Discord;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The verdict of the storm sees what it is there for: every kind of loss and of doubling, made on purpose.</summary>
public sealed class StormVerdictTests : IAsyncLifetime
{
    private static readonly CommandDefinition[] Commands = [new("plan", "Plans", CommandKind.Slash, [])];

    private EmulatedPlatform platform = null!;
    private RestClient client = null!;
    private AttachmentFetcher files = null!;
    private RestResponder responder = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(cancellation: Cancellation);
        client = new RestClient(new RestOptions { BaseAddress = platform.ApiBase, BotToken = platform.Token }, TimeProvider.System, NullLogger<RestClient>.Instance);
        files = new AttachmentFetcher(new AttachmentOptions(), TimeProvider.System, NullLogger<AttachmentFetcher>.Instance);
        responder = new RestResponder(client, files);
        await new RestRegistry(client).RegisterAsync(Commands, null, Cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        files.Dispose();
        await platform.DisposeAsync();
    }

    [Fact]
    public async Task Wrong_AnsweredOnce_Nothing()
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        await responder.DeferAsync(ticket, isPrivate: false, Cancellation);
        await responder.EditFirstAsync(ticket, Said("Working on it…"), Cancellation);
        await responder.EditFirstAsync(ticket, Said("one"), Cancellation);
        Assert.Null(Verdict().WrongWith(asked));
        Assert.Equal(0, Verdict().NeedlessFirstAnswers(asked));
    }

    [Fact]
    public async Task Wrong_AnsweredTwice_IsSeen()
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        await responder.ReplyAsync(ticket, Said("one"), Cancellation);
        await responder.FollowUpAsync(ticket, Said("one"), Cancellation);
        Assert.Contains("more than once", Verdict().WrongWith(asked), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_OneAnswerOverAnother_IsSeen()
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        await responder.ReplyAsync(ticket, Said("one"), Cancellation);
        await responder.EditFirstAsync(ticket, Said("two"), Cancellation);
        Assert.Contains("two different answers", Verdict().WrongWith(asked), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_PutOffAndLeft_IsSeen()
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        await responder.DeferAsync(ticket, isPrivate: false, Cancellation);
        Assert.Contains("after a first answer", Verdict().WrongWith(asked), StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_NeverAnswered_IsSeenUnlessNobodyWasThere()
    {
        SentInteraction asked = Ask().Asked;
        Assert.Contains("no reason on record", Verdict().WrongWith(asked), StringComparison.Ordinal);
        Assert.Null(Verdict(inGap: asked.Id).WrongWith(asked));
    }

    [Fact]
    public async Task Wrong_EveryFirstAnswerStruck_IsExplained()
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        platform.Faults.Add(new FaultRule(FaultKind.Status) { Path = "callback$", Times = null });
        await Assert.ThrowsAsync<DiscordException>(() => responder.ReplyAsync(ticket, Said("one"), Cancellation));
        Assert.Null(Verdict().WrongWith(asked));
        Assert.True(Verdict().IsStruck(asked));
    }

    [Theory]
    [InlineData(false, 1)]
    [InlineData(true, 0)]
    public async Task NeedlessFirstAnswers_SentAgain_OnlyWhenTheWordBeforeWasClear(bool struck, int expected)
    {
        (SentInteraction asked, InteractionTicket ticket) = Ask();
        if (struck)
        {
            platform.Faults.Add(new FaultRule(FaultKind.CutAfter) { Path = "callback$" });
        }

        await responder.DeferAsync(ticket, isPrivate: false, Cancellation);
        if (!struck)
        {
            await Assert.ThrowsAsync<DiscordException>(() => responder.DeferAsync(ticket, isPrivate: false, Cancellation));
        }

        await responder.EditFirstAsync(ticket, Said("one"), Cancellation);
        Assert.Equal(expected, Verdict().NeedlessFirstAnswers(asked));
        Assert.True(Verdict().WasThereBefore(asked));
        Assert.Null(Verdict().WrongWith(asked));
    }

    private static OutgoingMessage Said(string text) => new() { Content = text };

    private StormVerdict Verdict(params ulong[] inGap) => new(platform.Recording.Requests, inGap.ToHashSet());

    private (SentInteraction Asked, InteractionTicket Ticket) Ask()
    {
        SentInteraction asked = platform.Crew.Slash("plan");
        return (asked, new InteractionTicket(platform.ApplicationId, asked.Id, asked.Token) { ReceivedTimestamp = TimeProvider.System.GetTimestamp() });
    }
}
