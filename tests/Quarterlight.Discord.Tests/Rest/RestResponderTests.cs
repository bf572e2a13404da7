using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>What goes out: bodies, headers, files. Shapes: Receiving and Responding, Message resource, Uploading Files.</summary>
public sealed class RestResponderTests
{
    private static readonly OutgoingFile Picture = new("plan.png", "image/png", new byte[] { 1, 2, 3, 13, 10, 45, 45 }, "The visor clip, 38 cm away");

    [Fact]
    public async Task Reply_TextAndButtons_WritesTypeFourWithoutBotToken()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        OutgoingButton[] buttons = [.. Enumerable.Range(0, 6).Select(i => new OutgoingButton($"b{i}", $"id{i}"))];
        await rig.RunAsync(rig.Responder.ReplyAsync(rig.Ticket(), new OutgoingMessage { Content = "Hä <@1>", Buttons = buttons, Private = true }, RestRig.Stop));
        SentRequest sent = Assert.Single(rig.Sent);
        Assert.Equal($"/api/v10/interactions/20/{RestRig.InteractionToken}-20/callback", sent.Path);
        Assert.Equal("POST", sent.Method);
        Assert.Null(sent.Authorization);
        Assert.Equal("DiscordBot (https://quarterlight.invalid, 1.0)", sent.UserAgent);
        Assert.Equal("application/json", sent.ContentType);
        using var json = JsonDocument.Parse(sent.Body);
        Assert.Equal(4, json.RootElement.GetProperty("type").GetInt32());
        JsonElement data = json.RootElement.GetProperty("data");
        Assert.Equal("Hä <@1>", data.GetProperty("content").GetString());
        Assert.Equal(64 | 4, data.GetProperty("flags").GetInt32());
        Assert.Equal("""{"parse":[]}""", data.GetProperty("allowed_mentions").GetRawText());
        Assert.Equal([5, 1], data.GetProperty("components").EnumerateArray().Select(r => r.GetProperty("components").GetArrayLength()));
        Assert.False(data.TryGetProperty("attachments", out _));
    }

    [Theory]
    [InlineData(true, """{"type":5,"data":{"flags":64}}""")]
    [InlineData(false, """{"type":5}""")]
    public async Task Defer_PrivateOrNot_CarriesThatAndNothingElse(bool isPrivate, string body)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        await rig.RunAsync(rig.Responder.DeferAsync(rig.Ticket(), isPrivate, RestRig.Stop));
        Assert.Equal(body, Assert.Single(rig.Sent).Text);
    }

    [Fact]
    public async Task Offer_Choices_WritesTypeEight()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        await rig.RunAsync(rig.Responder.OfferAsync(rig.Ticket(), [new OutgoingChoice("Visor \"left\"", "v1")], RestRig.Stop));
        Assert.Equal("""{"type":8,"data":{"choices":[{"name":"Visor \"left\"","value":"v1"}]}}""", Assert.Single(rig.Sent).Text);
    }

    [Fact]
    public async Task OpenForm_Fields_WritesLabelsAroundInputs()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        var field = new OutgoingField("name", "Name") { Description = "Short", Value = "12A", Required = true, SeveralLines = true, MostCharacters = 80 };
        await rig.RunAsync(rig.Responder.OpenFormAsync(rig.Ticket(), new OutgoingForm("f", "New scene", [field]), RestRig.Stop));
        Assert.Equal(
            """{"type":9,"data":{"custom_id":"f","title":"New scene","components":[{"type":18,"label":"Name","description":"Short","component":{"type":4,"custom_id":"name","style":2,"required":true,"max_length":80,"value":"12A"}}]}}""",
            Assert.Single(rig.Sent).Text);
    }

    [Fact]
    public async Task EditFirst_NoFilesNoButtons_TakesOldOnesAway()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, "{}"));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(), new OutgoingMessage { Content = "a", Private = true, LinkPreviews = true }, RestRig.Stop));
        SentRequest sent = Assert.Single(rig.Sent);
        Assert.Equal(("PATCH", $"/api/v10/webhooks/10/{RestRig.InteractionToken}-20/messages/@original"), (sent.Method, sent.Path));
        Assert.Equal("""{"content":"a","flags":0,"allowed_mentions":{"parse":[]},"attachments":[],"components":[]}""", sent.Text);
        Assert.Null(sent.Authorization);
    }

    [Theory]
    [InlineData("reply")]
    [InlineData("edit")]
    [InlineData("follow-up")]
    public async Task Send_Picture_GoesAsQuotedPartsWithAltText(string way)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, "{}"));
        var message = new OutgoingMessage { Content = "here", Files = [Picture, new OutgoingFile("kit.json", "application/json", "{}"u8.ToArray(), null)] };
        await rig.RunAsync(way switch
        {
            "reply" => rig.Responder.ReplyAsync(rig.Ticket(), message, RestRig.Stop),
            "edit" => rig.Responder.EditFirstAsync(rig.Ticket(), message, RestRig.Stop),
            _ => rig.Responder.FollowUpAsync(rig.Ticket(), message, RestRig.Stop),
        });
        SentRequest sent = Assert.Single(rig.Sent);
        IReadOnlyList<(string Disposition, string Type, byte[] Bytes)> parts = await PartsAsync(sent);
        Assert.Equal(["form-data; name=\"payload_json\"", "form-data; name=\"files[0]\"; filename=\"plan.png\"", "form-data; name=\"files[1]\"; filename=\"kit.json\""], parts.Select(p => p.Disposition));
        Assert.Equal(["application/json", "image/png", "application/json"], parts.Select(p => p.Type));
        Assert.Equal(Picture.Bytes.ToArray(), parts[1].Bytes);
        using var json = JsonDocument.Parse(parts[0].Bytes);
        JsonElement body = way == "reply" ? json.RootElement.GetProperty("data") : json.RootElement;
        Assert.Equal("""[{"id":"0","filename":"plan.png","description":"The visor clip, 38 cm away"},{"id":"1","filename":"kit.json"}]""", body.GetProperty("attachments").GetRawText());
        Assert.Equal("""{"parse":[]}""", body.GetProperty("allowed_mentions").GetRawText());
        Assert.Equal(way == "follow-up", sent.Path.EndsWith("?wait=true", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Send_FileHoldsABoundary_StaysWhole()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        byte[] hostile = Encoding.ASCII.GetBytes("\r\n--quarterlight-part-0-end\r\nContent-Disposition: form-data; name=\"payload_json\"\r\n\r\n{}\r\n--quarterlight-part-1-end--");
        await rig.RunAsync(rig.Responder.ReplyAsync(rig.Ticket(), new OutgoingMessage { Files = [new OutgoingFile("a.txt", "text/plain", hostile, null)] }, RestRig.Stop));
        IReadOnlyList<(string Disposition, string Type, byte[] Bytes)> parts = await PartsAsync(Assert.Single(rig.Sent));
        Assert.Equal(2, parts.Count);
        Assert.Equal(hostile, parts[1].Bytes);
    }

    [Theory]
    [InlineData("plan\".png\r\nX: y", "image/png\r\nX: y", "plan-.png--X--y", "application/octet-stream")]
    [InlineData("Überlauf.png", "text/plain; charset=utf-8", "-berlauf.png", "text/plain; charset=utf-8")]
    [InlineData("...", "nonsense", "file-0", "application/octet-stream")]
    public async Task Send_HostileFileName_CannotLeaveItsHeader(string name, string type, string sentName, string sentType)
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        await rig.RunAsync(rig.Responder.ReplyAsync(rig.Ticket(), new OutgoingMessage { Files = [new OutgoingFile(name, type, new byte[] { 1 }, null)] }, RestRig.Stop));
        IReadOnlyList<(string Disposition, string Type, byte[] Bytes)> parts = await PartsAsync(Assert.Single(rig.Sent));
        Assert.Equal(($"form-data; name=\"files[0]\"; filename=\"{sentName}\"", sentType), (parts[1].Disposition, parts[1].Type));
        Assert.Contains($"\"filename\":\"{sentName}\"", Encoding.UTF8.GetString(parts[0].Bytes), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Send_MoreThanARequestMayHold_IsRefusedWithoutSending()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        var message = new OutgoingMessage { Files = [new OutgoingFile("a.bin", "application/octet-stream", new byte[25 * 1024 * 1024], null)] };
        DiscordException fault = await Assert.ThrowsAsync<DiscordException>(() => rig.Responder.FollowUpAsync(rig.Ticket(), message, RestRig.Stop));
        Assert.Equal(DiscordFault.TooLarge, fault.Fault);
        Assert.Empty(rig.Sent);
    }

    [Fact]
    public async Task DeleteFirst_GoneAlready_IsDone()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(404, 10008));
        await rig.RunAsync(rig.Responder.DeleteFirstAsync(rig.Ticket(), RestRig.Stop));
        Assert.Equal("DELETE", Assert.Single(rig.Sent).Method);
    }

    [Fact]
    public async Task Send_TokenWithSlashes_StaysInItsPlace()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Empty(204));
        await rig.RunAsync(rig.Responder.DeferAsync(new InteractionTicket(10, 20, "../../gateway?x=#"), false, RestRig.Stop));
        Assert.Equal("/api/v10/interactions/20/..%2F..%2Fgateway%3Fx%3D%23/callback", Assert.Single(rig.Sent).Path);
    }

    private static async Task<IReadOnlyList<(string Disposition, string Type, byte[] Bytes)>> PartsAsync(SentRequest sent)
    {
        string boundary = HeaderUtilities.RemoveQuotes(MediaTypeHeaderValue.Parse(sent.ContentType).Boundary).Value!;
        var reader = new MultipartReader(boundary, new MemoryStream(sent.Body));
        List<(string, string, byte[])> parts = [];
        while (await reader.ReadNextSectionAsync(RestRig.Stop) is { } section)
        {
            using var bytes = new MemoryStream();
            await section.Body.CopyToAsync(bytes, RestRig.Stop);
            parts.Add((section.ContentDisposition!, section.ContentType!, bytes.ToArray()));
        }

        return parts;
    }
}
