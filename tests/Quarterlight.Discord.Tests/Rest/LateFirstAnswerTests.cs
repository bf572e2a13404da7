using Microsoft.Extensions.Logging.Abstractions;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>The platform knows no webhook of an interaction before its first answer: a change that comes too soon must not spoil what comes later.</summary>
public sealed class LateFirstAnswerTests
{
    [Fact]
    public async Task Reply_AfterAnEditFoundNothing_IsTheFirstAnswerAndCanBeChanged()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        Assert.Equal(DiscordFault.NotFound, await FaultAsync(() => rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "too soon" }, RestRig.Stop)));
        await rest.Responder.ReplyAsync(ticket, new OutgoingMessage { Content = "first" }, RestRig.Stop);
        await rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "second" }, RestRig.Stop);
        Assert.Equal("second", Assert.Single(asked.Readable).Content);
    }

    [Fact]
    public async Task Edit_AfterOneFoundNothingAndTheDeferralArrivedLate_GetsThrough()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        Assert.Equal(DiscordFault.NotFound, await FaultAsync(() => rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "too soon" }, RestRig.Stop)));
        using var late = new RestClient(new RestOptions { BaseAddress = rest.Platform.ApiBase }, TimeProvider.System, NullLogger<RestClient>.Instance);
        await new RestResponder(late, rest.Files).DeferAsync(ticket, isPrivate: false, RestRig.Stop);
        Assert.Equal(DiscordFault.AlreadyAnswered, await FaultAsync(() => rest.Responder.ReplyAsync(ticket, new OutgoingMessage { Content = "first" }, RestRig.Stop)));
        await rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "second" }, RestRig.Stop);
        Assert.Equal("second", Assert.Single(asked.Readable).Content);
    }

    private static async Task<DiscordFault> FaultAsync(Func<Task> act) => (await Assert.ThrowsAsync<DiscordException>(act)).Fault;
}
