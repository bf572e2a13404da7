using System.Text.Json;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>Against the emulated platform, which refuses what the platform refuses.</summary>
public sealed class EmulatedRestTests
{
    private static readonly byte[] PictureBytes = [.. Enumerable.Range(0, 200_000).Select(i => (byte)(i * 31))];
    private static readonly OutgoingFile Picture = new("plan.png", "image/png", PictureBytes, "The visor clip, 38 cm from the driver");
    private static readonly OutgoingButton[] Buttons = [new("Next best", "q1:abcdefgh:0", ButtonLook.Primary), new("Use feet", "q1:abcdefgh:1")];

    [Fact]
    public async Task EveryKind_OfBody_IsTakenAndWrittenDown()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        var message = new OutgoingMessage { Content = "Visor clip, @everyone", Files = [Picture], Buttons = Buttons };
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        await rest.Responder.ReplyAsync(ticket, message, RestRig.Stop);
        VisibleMessage answer = await asked.MessageAsync(RestRig.Stop);
        Assert.Equal("Visor clip, @everyone", answer.Content);
        Assert.Empty(answer.Pings);
        Assert.False(answer.IsPrivate);
        Assert.Equal(["Next best", "Use feet"], answer.Buttons.Select(b => b.Label));
        VisibleFile file = Assert.Single(answer.Files);
        Assert.Equal(("plan.png", "image/png", Picture.AltText), (file.Name, file.ContentType, file.AltText));
        Assert.Equal(PictureBytes, file.Bytes.ToArray());

        (SentInteraction deferred, InteractionTicket later) = rest.Ask();
        await rest.Responder.DeferAsync(later, isPrivate: true, RestRig.Stop);
        await rest.Responder.EditFirstAsync(later, message with { Private = true }, RestRig.Stop);
        Assert.True((await deferred.MessageAsync(RestRig.Stop)).IsPrivate);
        await rest.Responder.FollowUpAsync(later, message with { Private = true, LinkPreviews = true }, RestRig.Stop);
        Assert.True(Assert.Single(deferred.Later).IsPrivate);

        SentInteraction typed = rest.Platform.Crew.Type("why", "site", "vis");
        await rest.Responder.OfferAsync(rest.Ticket(typed), [new OutgoingChoice("Visor clip", "visor-clip")], RestRig.Stop);
        Assert.Equal("visor-clip", Assert.Single(await typed.ChoicesAsync(RestRig.Stop)).Value);

        SentInteraction wantsForm = rest.Platform.Crew.Slash("scene new");
        OutgoingField[] fields = [new("name", "Name") { Description = "As on the sheet", Placeholder = "12A", Value = "12", Required = true, MostCharacters = 80 }, new("notes", "Notes") { SeveralLines = true }];
        await rest.Responder.OpenFormAsync(rest.Ticket(wantsForm), new OutgoingForm("scene", "New scene", fields), RestRig.Stop);
        Assert.NotNull(await wantsForm.FormAsync(RestRig.Stop));

        Assert.True(await rest.Registry.RegisterAsync(EmulatedRest.Commands, rest.Platform.Guilds[0].Id, RestRig.Stop));
        Assert.Empty(rest.Platform.Recording.Refused);
        Assert.Empty(rest.Platform.Recording.UnknownRoutes);

        // For the check against the published types: node tests/interop/payloads.js <this file>.
        string path = Path.Combine(AppContext.BaseDirectory, "rest-payloads.jsonl");
        await rest.Platform.Recording.DumpAsync(path, RestRig.Stop);
        string[] kinds = [.. (await File.ReadAllLinesAsync(path, RestRig.Stop)).Select(l => JsonDocument.Parse(l).RootElement.GetProperty("kind").GetString()!)];
        Assert.Superset(new HashSet<string> { "callback", "edit", "followup", "commands" }, new HashSet<string>(kinds));
    }

    [Fact]
    public async Task Edit_WithAndWithoutFiles_KeepsNothingOfBefore()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        await rest.Responder.ReplyAsync(ticket, new OutgoingMessage { Content = "one", Files = [Picture], Buttons = Buttons }, RestRig.Stop);
        await rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "two", Files = [Picture with { Name = "other.png" }] }, RestRig.Stop);
        Assert.Equal("other.png", Assert.Single(asked.First!.Files).Name);
        Assert.Empty(asked.First!.Buttons);
        await rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "three" }, RestRig.Stop);
        Assert.Empty(asked.First!.Files);
        await rest.Responder.DeleteFirstAsync(ticket, RestRig.Stop);
        await rest.Responder.DeleteFirstAsync(ticket, RestRig.Stop);
        Assert.True(asked.First is null or { IsDeleted: true });
    }

    [Fact]
    public async Task Register_Twice_SecondDoesNothing()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        Assert.False(await rest.Registry.RegisterAsync(EmulatedRest.Commands, null, RestRig.Stop));
        Assert.Single(rest.Platform.Recording.Requests, r => r.Method == "PUT");
        Assert.True(await rest.Registry.RegisterAsync(EmulatedRest.Commands[..2], null, RestRig.Stop));
        GatewayInfo info = await new GatewayInfoReader(rest.Client).ReadAsync(RestRig.Stop);
        Assert.Equal(rest.Platform.GatewayUrl, info.Address.OriginalString);
    }

    [Theory]
    [InlineData(LimitScope.User, "edit")]
    [InlineData(LimitScope.Shared, "edit")]
    [InlineData(LimitScope.Global, "commands")]
    [InlineData(LimitScope.User, "follow-up")]
    [InlineData(LimitScope.User, "reply")]
    public async Task Limited_EachScope_GetsThrough(LimitScope scope, string way)
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        await GetsThroughAsync(rest, way, new FaultRule(FaultKind.RateLimited) { Scope = scope, RetryAfter = TimeSpan.FromMilliseconds(300) });
    }

    [Theory]
    [InlineData(FaultKind.RateLimitedPage, "edit")]
    [InlineData(FaultKind.Status, "edit")]
    [InlineData(FaultKind.ErrorAfter, "edit")]
    [InlineData(FaultKind.CutBefore, "edit")]
    [InlineData(FaultKind.CutAfter, "edit")]
    [InlineData(FaultKind.Hang, "edit")]
    [InlineData(FaultKind.Status, "reply")]
    [InlineData(FaultKind.ErrorAfter, "reply")]
    [InlineData(FaultKind.CutBefore, "reply")]
    [InlineData(FaultKind.CutAfter, "reply")]
    [InlineData(FaultKind.Hang, "defer")]
    [InlineData(FaultKind.CutAfter, "commands")]
    public async Task Fault_WhereASecondTryIsSafe_GetsThrough(FaultKind kind, string way)
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync(new RestOptions { TryTimeout = TimeSpan.FromSeconds(2) });
        await GetsThroughAsync(rest, way, new FaultRule(kind) { RetryAfter = TimeSpan.FromMilliseconds(200) });
    }

    [Theory]
    [InlineData(FaultKind.Status)]
    [InlineData(FaultKind.CutAfter)]
    [InlineData(FaultKind.ErrorAfter)]
    public async Task Fault_OfAFollowUp_NeverDoublesIt(FaultKind kind)
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        await rest.Responder.ReplyAsync(ticket, new OutgoingMessage { Content = "first" }, RestRig.Stop);
        rest.Platform.Faults.Add(new FaultRule(kind));
        DiscordException fault = await Assert.ThrowsAsync<DiscordException>(() => rest.Responder.FollowUpAsync(ticket, new OutgoingMessage { Content = "more" }, RestRig.Stop));
        Assert.Equal(DiscordFault.Unavailable, fault.Fault);
        Assert.Equal(kind == FaultKind.Status ? 0 : 1, asked.Later.Count);
    }

    [Fact]
    public async Task Answers_LateTwiceExpiredAndWrong_SayWhy()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        var message = new OutgoingMessage { Content = "a" };
        (SentInteraction _, InteractionTicket late) = rest.Ask();
        rest.Platform.Clock.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal(DiscordFault.TooLate, await FaultAsync(() => rest.Responder.ReplyAsync(late, message, RestRig.Stop)));
        (SentInteraction _, InteractionTicket ticket) = rest.Ask();
        await rest.Responder.ReplyAsync(ticket, message, RestRig.Stop);
        Assert.Equal(DiscordFault.AlreadyAnswered, await FaultAsync(() => rest.Responder.ReplyAsync(ticket, message, RestRig.Stop)));
        Assert.Equal(DiscordFault.Malformed, await FaultAsync(() => rest.Responder.FollowUpAsync(ticket, new OutgoingMessage { Content = new string('x', 2001) }, RestRig.Stop)));
        rest.Platform.Clock.Advance(TimeSpan.FromMinutes(16));
        Assert.Equal(DiscordFault.TokenExpired, await FaultAsync(() => rest.Responder.EditFirstAsync(ticket, message, RestRig.Stop)));
        int before = rest.Platform.Recording.Requests.Count;
        Assert.Equal(DiscordFault.TokenExpired, await FaultAsync(() => rest.Responder.FollowUpAsync(ticket, message, RestRig.Stop)));
        Assert.Equal(before, rest.Platform.Recording.Requests.Count);
    }

    [Fact]
    public async Task Limits_OfTheEmulator_AreKeptWithoutASingle429()
    {
        await using EmulatedRest rest = await EmulatedRest.StartAsync();
        rest.Platform.RateLimits.Set("POST /webhooks/:app/:token", 3, TimeSpan.FromMilliseconds(700));
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        await rest.Responder.ReplyAsync(ticket, new OutgoingMessage { Content = "first" }, RestRig.Stop);
        await Task.WhenAll(Enumerable.Range(0, 10).Select(i => rest.Responder.FollowUpAsync(ticket, new OutgoingMessage { Content = $"n{i}" }, RestRig.Stop)));
        Assert.Equal(Enumerable.Range(0, 10).Select(i => $"n{i}"), asked.Later.Select(m => m.Content));
        Assert.DoesNotContain(rest.Platform.Recording.Requests, r => r.Status == 429);
    }

    private static async Task<DiscordFault> FaultAsync(Func<Task> act) => (await Assert.ThrowsAsync<DiscordException>(act)).Fault;

    private static async Task GetsThroughAsync(EmulatedRest rest, string way, FaultRule rule)
    {
        var message = new OutgoingMessage { Content = "done", Files = [Picture] };
        (SentInteraction asked, InteractionTicket ticket) = rest.Ask();
        if (way is "edit" or "follow-up")
        {
            await rest.Responder.DeferAsync(ticket, false, RestRig.Stop);
            if (way == "follow-up")
            {
                await rest.Responder.EditFirstAsync(ticket, new OutgoingMessage { Content = "first" }, RestRig.Stop);
            }
        }

        rest.Platform.Faults.Add(rule);
        await (way switch
        {
            "edit" => rest.Responder.EditFirstAsync(ticket, message, RestRig.Stop),
            "follow-up" => rest.Responder.FollowUpAsync(ticket, message, RestRig.Stop),
            "reply" => rest.Responder.ReplyAsync(ticket, message, RestRig.Stop),
            "defer" => rest.Responder.DeferAsync(ticket, true, RestRig.Stop),
            _ => rest.Registry.RegisterAsync(EmulatedRest.Commands[..1], null, RestRig.Stop),
        });
        Assert.Equal(1, rest.Platform.Faults.Played);
        switch (way)
        {
            case "edit" or "reply":
                Assert.Equal("done", asked.First!.Content);
                Assert.Equal(PictureBytes, Assert.Single(asked.First!.Files).Bytes.ToArray());
                break;
            case "follow-up":
                Assert.Equal("done", Assert.Single(asked.Later).Content);
                break;
            case "defer":
                Assert.Equal(FirstAnswerKind.DeferredMessage, asked.FirstAnswer);
                break;
        }
    }
}
