using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>When a request is sent again, and when not.</summary>
public sealed class RestRepeatTests
{
    private static readonly OutgoingMessage Message = new() { Content = "a" };

    [Fact]
    public async Task Edit_ServerErrors_IsSentThreeTimes()
    {
        using var rig = new RestRig((_, n) => n < 3 ? ScriptedHandler.Empty(503) : ScriptedHandler.Json(200, "{}"));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Equal(3, rig.Sent.Count);
        Assert.All(rig.Sent, s => Assert.Equal(rig.Sent[0].Text, s.Text));
        Assert.True(rig.Sent[1].At - rig.Sent[0].At >= TimeSpan.FromMilliseconds(250));
    }

    [Fact]
    public async Task Edit_ServerErrorsForEver_IsUnavailable()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(500));
        Assert.Equal(DiscordFault.Unavailable, (await rig.FaultAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop))).Fault);
        Assert.Equal(3, rig.Sent.Count);
    }

    [Theory]
    [InlineData("status")]
    [InlineData("cut")]
    [InlineData("hang")]
    public async Task FollowUp_MayHaveArrived_IsNotSentAgain(string how)
    {
        using var rig = new RestRig(async (_, _, stop) =>
        {
            await Task.Delay(how == "hang" ? Timeout.Infinite : 0, stop);
            return how == "cut" ? throw new HttpRequestException(HttpRequestError.ResponseEnded) : ScriptedHandler.Empty(502);
        });
        Assert.Equal(DiscordFault.Unavailable, (await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop), 500)).Fault);
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task FollowUp_NoConnection_IsSentAgain()
    {
        using var rig = new RestRig((_, n) => n == 1 ? throw new HttpRequestException(HttpRequestError.ConnectionError) : ScriptedHandler.Json(200, "{}"));
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Equal(2, rig.Sent.Count);
    }

    [Fact]
    public async Task Reply_LostAnswerThenAlreadyAnswered_IsDone()
    {
        using var rig = new RestRig((_, n) => n == 1 ? throw new HttpRequestException(HttpRequestError.ResponseEnded) : ScriptedHandler.Error(400, 40060));
        await rig.RunAsync(rig.Responder.ReplyAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Equal(2, rig.Sent.Count);
    }

    [Fact]
    public async Task Reply_AlreadyAnsweredAtFirstTry_IsAFault()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(400, 40060));
        Assert.Equal(DiscordFault.AlreadyAnswered, (await rig.FaultAsync(rig.Responder.ReplyAsync(rig.Ticket(), Message, RestRig.Stop))).Fault);
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task Reply_ServerErrors_IsSentTwiceAndNoMore()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(500));
        Assert.Equal(DiscordFault.Unavailable, (await rig.FaultAsync(rig.Responder.ReplyAsync(rig.Ticket(), Message, RestRig.Stop))).Fault);
        Assert.Equal(2, rig.Sent.Count);
        Assert.True(rig.Sent[1].At < TimeSpan.FromSeconds(2.5));
    }

    [Fact]
    public async Task Reply_NoAnswer_IsSentAgainWhileThereIsTime()
    {
        using var rig = new RestRig(async (_, n, stop) =>
        {
            await Task.Delay(n == 1 ? Timeout.Infinite : 0, stop);
            return ScriptedHandler.Empty(204);
        });
        await rig.RunAsync(rig.Responder.DeferAsync(rig.Ticket(), false, RestRig.Stop));
        Assert.InRange(rig.Sent[1].At, TimeSpan.FromSeconds(1.2), TimeSpan.FromSeconds(1.6));
    }

    [Fact]
    public async Task Reply_ServerErrorTooLate_IsNotSentAgain()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(500));
        InteractionTicket ticket = rig.Ticket();
        rig.Time.Advance(TimeSpan.FromSeconds(2.45));
        await rig.FaultAsync(rig.Responder.ReplyAsync(ticket, Message, RestRig.Stop));
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task Reply_UnknownInteraction_IsTooLateAndSaysHowMuch()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(404, 10062));
        InteractionTicket ticket = rig.Ticket();
        rig.Time.Advance(TimeSpan.FromSeconds(4));
        Assert.Equal(DiscordFault.TooLate, (await rig.FaultAsync(rig.Responder.ReplyAsync(ticket, Message, RestRig.Stop))).Fault);
        Assert.Contains(rig.Log.Lines, l => l.Id == 3107 && l.Text.Contains("4000 ms", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Send_CallersDeadline_NoTryBeginsAfterIt()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(500));
        var call = new RestCall(RestRoute.GatewayBot()) { LastStart = rig.Time.GetTimestamp() + (rig.Time.TimestampFrequency / 10) };
        await rig.FaultAsync(rig.Client.SendAsync(call, RestRig.Stop));
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task Send_CallerGivesUp_EndsWithoutATry()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(500));
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(RestRig.Stop);
        Task work = rig.Responder.EditFirstAsync(rig.Ticket(), Message, stop.Token);
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
        Assert.Single(rig.Sent);
    }

    [Theory]
    [InlineData(401, 50027, DiscordFault.TokenExpired)]
    [InlineData(401, 0, DiscordFault.TokenExpired)]
    [InlineData(403, 50013, DiscordFault.Forbidden)]
    [InlineData(404, 10015, DiscordFault.NotFound)]
    [InlineData(413, 0, DiscordFault.TooLarge)]
    [InlineData(400, 40005, DiscordFault.TooLarge)]
    [InlineData(400, 50045, DiscordFault.TooLarge)]
    [InlineData(400, 50035, DiscordFault.Malformed)]
    [InlineData(405, 0, DiscordFault.Malformed)]
    [InlineData(302, 0, DiscordFault.Unavailable)]
    public async Task Edit_Refused_SaysWhy(int status, int code, DiscordFault expected)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(status, code));
        DiscordException fault = await rig.FaultAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Equal((expected, code == 0 ? status : code), (fault.Fault, fault.Code));
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task BadToken_Once_NothingIsSentWithItAgainAndInteractionsGoOn()
    {
        using var rig = new RestRig((s, _) => s.Authorization is null ? ScriptedHandler.Json(200, "{}") : ScriptedHandler.Error(401, 0));
        Assert.Equal(DiscordFault.BadToken, (await rig.FaultAsync(rig.ReadCommandsAsync())).Fault);
        Assert.Equal(DiscordFault.BadToken, (await rig.FaultAsync(rig.ReadCommandsAsync(5))).Fault);
        Assert.Equal($"Bot {RestRig.BotToken}", Assert.Single(rig.Sent).Authorization);
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Single(rig.Log.Lines, l => l.Id == 3105);
    }

    [Theory]
    [InlineData(404, 10015, 1)]
    [InlineData(401, 50027, 1)]
    [InlineData(404, 10008, 2)]
    public async Task GoneWebhook_IsNotTriedAgain_AGoneMessageIsNoGoneWebhook(int status, int code, int requests)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(status, code));
        await rig.FaultAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.Equal(requests, rig.Sent.Count);
    }
}
