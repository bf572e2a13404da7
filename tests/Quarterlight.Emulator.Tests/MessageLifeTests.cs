using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;

namespace Quarterlight.Emulator.Tests;

/// <summary>What becomes of answers: privacy, files, pings, and what a user sees in the end (Interactions; Message resource, Edit Message).</summary>
public sealed class MessageLifeTests : IAsyncLifetime
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47];
    private EmulatedPlatform platform = null!;
    private ApiClient api = null!;

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(StillClock.Options, TestContext.Current.CancellationToken);
        api = new ApiClient(platform);
        ApiResult put = await api.CallAsync("PUT", api.Commands, """
            [{"name":"ask","description":"x","options":[{"type":4,"name":"count","description":"y","required":true,"min_value":1},
              {"type":3,"name":"unit","description":"y","choices":[{"name":"metre","value":"m"}]},{"type":11,"name":"clip","description":"y"}]},
             {"name":"help","description":"x"}]
            """);
        Assert.Equal(200, put.Status);
    }

    public async ValueTask DisposeAsync()
    {
        api.Dispose();
        await platform.DisposeAsync();
    }

    [Fact]
    public async Task Deferral_DecidesPrivacyForGood()
    {
        SentInteraction asked = await DeferAsync("""{"type":5,"data":{"flags":64}}""");
        Assert.True(asked.First!.IsLoading);
        Assert.Empty(asked.Readable);
        ApiResult opened = await api.CallAsync("PATCH", api.Original(asked), """{"content":"done","flags":64}""");
        Assert.Equal(["flags"], opened.Fields);
        await api.CallAsync("PATCH", api.Original(asked), """{"content":"done"}""");
        VisibleMessage seen = await asked.MessageAsync(TestContext.Current.CancellationToken);
        Assert.True(seen.IsPrivate);
        Assert.Equal(("done", 0), (seen.Content, seen.Edits));
    }

    [Fact]
    public async Task FollowUp_BehindADeferral_FillsTheWaitingMessageWithItsPrivacy()
    {
        SentInteraction asked = await DeferAsync("""{"type":5}""");
        await api.CallAsync("POST", api.Webhook(asked), """{"content":"secret","flags":64}""");
        Assert.True(asked.UsedFollowUpAsEdit);
        Assert.False(asked.First!.IsPrivate);
        await api.CallAsync("POST", api.Webhook(asked), """{"content":"more","flags":64}""");
        Assert.True(Assert.Single(asked.Later).IsPrivate);
    }

    [Fact]
    public async Task Files_OfAnEdit_AreKeptReplacedOrTakenAway()
    {
        SentInteraction asked = await DeferAsync("""{"type":5}""");
        await api.FormAsync("PATCH", api.Original(asked), """{"content":"a","attachments":[{"id":0,"description":"plan"}]}""", ("files[0]", "a.png", Png));
        Assert.Equal(("a.png", "plan"), (asked.First!.Files[0].Name, asked.First.Files[0].AltText));
        Assert.Equal(Png, asked.First.Files[0].Bytes.ToArray());
        string first = (string)JsonNode.Parse(asked.First.Json)!["attachments"]![0]!["id"]!;

        await api.CallAsync("PATCH", api.Original(asked), """{"content":"b"}""");
        Assert.Single(asked.First!.Files);
        await api.FormAsync("PATCH", api.Original(asked), $$"""{"attachments":[{"id":"{{first}}"},{"id":0}]}""", ("files[0]", "b.png", Png));
        Assert.Equal(["a.png", "b.png"], asked.First!.Files.Select(f => f.Name));
        await api.FormAsync("PATCH", api.Original(asked), """{"attachments":[{"id":"0","description":"new"}]}""", ("files[0]", "c.png", Png));
        Assert.Equal(["c.png"], asked.First!.Files.Select(f => f.Name));
        await api.CallAsync("PATCH", api.Original(asked), """{"attachments":[]}""");
        Assert.Empty(asked.First!.Files);
        Assert.Equal("b", asked.First.Content);
        Assert.Equal(4, asked.First.Edits);
    }

    [Fact]
    public async Task Link_SignedOverOrTampered_OpensOrNot()
    {
        SentInteraction asked = await DeferAsync("""{"type":5}""");
        await api.FormAsync("PATCH", api.Original(asked), "{}", ("files[0]", "a.png", Png));
        string url = asked.First!.Files[0].Url;
        using var http = new HttpClient();
        Assert.Equal(Png, await http.GetByteArrayAsync(url, TestContext.Current.CancellationToken));
        Assert.Equal(404, (int)(await http.GetAsync(url.Replace("hm=", "hm=0", StringComparison.Ordinal), TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(404, (int)(await http.GetAsync(url.Split('?')[0], TestContext.Current.CancellationToken)).StatusCode);
        platform.Clock.Advance(TimeSpan.FromHours(25));
        Assert.Equal(404, (int)(await http.GetAsync(url, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Theory]
    [InlineData("""{"content":"<@1> <@&2> @everyone","allowed_mentions":{"parse":[]}}""", "")]
    [InlineData("""{"content":"<@1> <@&2> @everyone"}""", "<@1>")]
    [InlineData("""{"content":"<@1> <@&2> @here","allowed_mentions":{"parse":["everyone"],"roles":["2"]}}""", "<@&2> @here")]
    public async Task Mentions_PingWhatIsAllowed(string body, string pings)
    {
        SentInteraction asked = await DeferAsync("""{"type":5}""");
        await api.CallAsync("PATCH", api.Original(asked), body);
        Assert.Equal(pings, string.Join(' ', asked.First!.Pings));
    }

    [Fact]
    public async Task Press_OfAButton_ChangesItsMessage()
    {
        SentInteraction asked = await DeferAsync("""{"type":5}""");
        await api.CallAsync("PATCH", api.Original(asked), """{"content":"a","components":[{"type":1,"components":[{"type":2,"style":1,"label":"Next","custom_id":"n"},{"type":2,"style":2,"label":"Off","custom_id":"o","disabled":true}]}]}""");
        VisibleMessage message = asked.First!;
        SentInteraction pressed = platform.Crew.Press(message, "Next");
        Assert.Throws<ArgumentException>(() => platform.Crew.Press(message, "Off"));
        Assert.Throws<ArgumentException>(() => platform.Crew.Press(message, "There is none"));
        Assert.Equal(204, (await api.CallAsync("POST", ApiClient.Callback(pressed), """{"type":7,"data":{"content":"b","components":[]}}""")).Status);
        Assert.Equal(("b", 1), (asked.First!.Content, asked.First.Edits));
        Assert.Empty(asked.First.Buttons);
    }

    [Fact]
    public void Slash_ThatAnAppWouldNotSend_IsRefusedByTheDriver()
    {
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("unknown"));
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("ask"));
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("ask", ("count", 0)));
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("ask", ("count", "three")));
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("ask", ("count", 1), ("unit", "ft")));
        Assert.Throws<ArgumentException>(() => platform.Crew.Slash("ask", ("count", 1), ("colour", "red")));
        Assert.Throws<ArgumentException>(() => platform.Crew.Type("ask", "unit", "m", ("count", 1)));
    }

    [Fact]
    public async Task Slash_WithAFile_TellsWhereItIs()
    {
        SentInteraction asked = platform.Crew.Slash("ask", ("count", 2), ("unit", "m"), ("clip", new EmulatedFile("t.wav", "audio/wav", Png) { ClaimedSize = 9 }));
        JsonNode data = JsonNode.Parse(asked.Json)!["data"]!;
        string id = (string)data["options"]![2]!["value"]!;
        JsonNode file = data["resolved"]!["attachments"]![id]!;
        Assert.Equal(9, (int)file["size"]!);
        using var http = new HttpClient();
        Assert.Equal(Png, await http.GetByteArrayAsync((string)file["url"]!, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Command_PutAgain_KeepsItsId()
    {
        string before = (string)(await api.CallAsync("GET", api.Commands)).Json![0]!["id"]!;
        ApiResult put = await api.CallAsync("PUT", api.Commands, """[{"name":"ask","description":"z","options":[{"type":3,"name":"a","description":"b","required":false,"choices":[]}]}]""");
        Assert.Equal(before, (string)put.Json![0]!["id"]!);
        Assert.Equal(["type", "name", "description"], put.Json[0]!["options"]![0]!.AsObject().Select(p => p.Key));
        Assert.Single((await api.CallAsync("GET", api.Commands)).Json!.AsArray());
    }

    private async Task<SentInteraction> DeferAsync(string callback)
    {
        SentInteraction asked = platform.Crew.Slash("help");
        Assert.Equal(204, (await api.CallAsync("POST", ApiClient.Callback(asked), callback)).Status);
        return asked;
    }
}
