using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;

namespace Quarterlight.Emulator.Tests;

/// <summary>Mistakes of a REST client, each refused with the status and code that is documented (Opcodes and Status Codes, JSON Error Codes).</summary>
public sealed class BadRestClientTests : IAsyncLifetime
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47];
    private EmulatedPlatform platform = null!;
    private ApiClient api = null!;

    public static TheoryData<string, string> MessageFaults => new()
    {
        { $$"""{"content":"{{new string('x', 2001)}}"}""", "data.content" },
        { """{"content":3}""", "data.content" },
        { """{"content":"x","flags":32768}""", "data.flags" },
        { """{"content":"x","flags":128}""", "data.flags" },
        { """{"content":"x","allowed_mentions":{"parse":["users"],"users":["1"]}}""", "data.allowed_mentions" },
        { """{"content":"x","allowed_mentions":{"parse":["user"]}}""", "data.allowed_mentions.parse.0" },
        { $$"""{"embeds":[{"title":"{{new string('x', 257)}}"}]}""", "data.embeds.0.title" },
        { $$"""{"embeds":[{"description":"{{new string('x', 4000)}}"},{"description":"{{new string('x', 2001)}}"}]}""", "data.embeds" },
        { """{"embeds":[{"fields":[{"name":"a"}]}]}""", "data.embeds.0.fields.0.value" },
        { """{"embeds":[{"image":{"url":"attachment://not-there.png"}}]}""", "data.embeds.0.image.url" },
        { """{"embeds":[{},{},{},{},{},{},{},{},{},{},{}]}""", "data.embeds" },
        { """{"content":"x","attachments":[{"id":0,"description":"alt"}]}""", "data.attachments.0.id" },
        { Row(Button("a"), Button("a")), "data.components.0.components.1.custom_id" },
        { Row(Button(new string('k', 101))), "data.components.0.components.0.custom_id" },
        { Row(Button("")), "data.components.0.components.0.custom_id" },
        { Row(Button("1"), Button("2"), Button("3"), Button("4"), Button("5"), Button("6")), "data.components.0.components" },
        { Row("""{"type":2,"style":2,"label":"x"}"""), "data.components.0.components.0.custom_id" },
        { Row("""{"type":2,"style":5,"label":"x","url":"https://example.org","custom_id":"a"}"""), "data.components.0.components.0.custom_id" },
        { Row("""{"type":2,"style":9,"label":"x","custom_id":"a"}"""), "data.components.0.components.0.style" },
        { Row($$"""{"type":2,"style":2,"label":"{{new string('x', 81)}}","custom_id":"a"}"""), "data.components.0.components.0.label" },
        { Row("""{"type":3,"custom_id":"a","options":[]}"""), "data.components.0.components.0.options" },
        { """{"content":"x","components":[{"type":2,"style":2,"label":"x","custom_id":"a"}]}""", "data.components.0.type" },
        { """{"content":"x","components":[{"type":10,"content":"x"}]}""", "data.components.0.type" },
        { """{"content":"x","components":[{"type":1,"components":[]}]}""", "data.components.0.components" },
    };

    public static TheoryData<string, string> CommandFaults => new()
    {
        { """{"name":"Plan","description":"x"}""", "0.name" },
        { """{"name":"two words","description":"x"}""", "0.name" },
        { $$"""{"name":"{{new string('x', 33)}}","description":"x"}""", "0.name" },
        { """{"name":"plan","description":""}""", "0.description" },
        { $$"""{"name":"plan","description":"{{new string('x', 101)}}"}""", "0.description" },
        { """{"name":"Judge","description":"x","type":3}""", "0.description" },
        { """{"name":"plan","description":"x","type":9}""", "0.type" },
        { Command(Option("a"), Option("b", ""","required":true""")), "0.options.1" },
        { Command(Option("a"), Option("a")), "0.options.1.name" },
        { Command([.. Enumerable.Range(0, 26).Select(i => Option($"o{i}"))]), "0.options" },
        { Command(Option("a", $""","choices":[{Many(26, i => $$"""{"name":"n{{i}}","value":"v{{i}}"}""")}]""")), "0.options.0.choices" },
        { Command(Option("a", ""","choices":[{"name":"n","value":"v"}],"autocomplete":true""")), "0.options.0.autocomplete" },
        { Command(Option("a", ""","choices":[{"name":"n","value":1}]""")), "0.options.0.choices.0.value" },
        { Command(Option("a", ""","min_value":1""")), "0.options.0.min_value" },
        { Command("""{"type":3,"name":"a"}"""), "0.options.0.description" },
        { Command("""{"type":12,"name":"a","description":"x"}"""), "0.options.0.type" },
        { Command("""{"type":1,"name":"a","description":"x"}""", Option("b")), "0.options.0" },
        { Command("""{"type":1,"name":"a","description":"x","options":[{"type":1,"name":"b","description":"x"}]}"""), "0.options.0.options.0" },
        { Command([.. Enumerable.Range(0, 4).Select(i => Option($"o{i}", $""","choices":[{Many(25, c => $$"""{"name":"{{i}}{{new string('n', 40)}}{{c}}","value":"{{new string('v', 50)}}"}""")}]"""))]), "0" },
    };

    public static TheoryData<string, string> FormFaults => new()
    {
        { """{"custom_id":"f","components":[]}""", "data.title" },
        { Form(new string('t', 46)), "data.title" },
        { Form("t", """{"type":4,"custom_id":"a","style":1}"""), "data.components.0.type" },
        { Form("t", Field("a"), Field("a")), "data.components.1.component.custom_id" },
        { Form("t", Field("1"), Field("2"), Field("3"), Field("4"), Field("5"), Field("6")), "data.components" },
        { Form("t", Field("a", ""","max_length":4001""")), "data.components.0.component.max_length" },
        { Form("t", Field("a", ",\"max_length\":3,\"value\":\"four\"")), "data.components.0.component.value" },
        { Form("t", Field("a", ",\"label\":\"x\"")), "data.components.0.component.label" },
        { Form("t", Field("a", $",\"placeholder\":\"{new string('x', 101)}\"")), "data.components.0.component.placeholder" },
    };

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(StillClock.Options, TestContext.Current.CancellationToken);
        api = new ApiClient(platform);
        ApiResult put = await api.CallAsync("PUT", api.Commands, """[{"name":"ask","description":"x","options":[{"type":3,"name":"question","description":"y","autocomplete":true}]}]""");
        Assert.Equal(200, put.Status);
    }

    public async ValueTask DisposeAsync()
    {
        api.Dispose();
        await platform.DisposeAsync();
    }

    [Theory]
    [MemberData(nameof(MessageFaults))]
    public async Task Message_Mistaken_IsRefusedByField(string data, string field)
    {
        SentInteraction asked = platform.Crew.Slash("ask");
        ApiResult result = await api.CallAsync("POST", ApiClient.Callback(asked), $$"""{"type":4,"data":{{data}}}""");
        Assert.Equal((400, 50035), (result.Status, result.Code));
        Assert.Contains(field, result.Fields);
        Assert.Null(asked.FirstAnswer);
    }

    [Theory]
    [MemberData(nameof(CommandFaults))]
    public async Task Command_Mistaken_IsRefusedByField(string command, string field)
    {
        ApiResult result = await api.CallAsync("PUT", api.Commands, $"[{command}]");
        Assert.Equal((400, 50035), (result.Status, result.Code));
        Assert.Contains(field, result.Fields);
    }

    [Theory]
    [MemberData(nameof(FormFaults))]
    public async Task Form_Mistaken_IsRefusedByField(string data, string field)
    {
        ApiResult result = await api.CallAsync("POST", ApiClient.Callback(platform.Crew.Slash("ask")), $$"""{"type":9,"data":{{data}}}""");
        Assert.Equal((400, 50035), (result.Status, result.Code));
        Assert.Contains(field, result.Fields);
    }

    [Fact]
    public async Task Commands_OfOneName_AreRefused()
    {
        ApiResult result = await api.CallAsync("PUT", api.Commands, """[{"name":"a","description":"x"},{"name":"a","description":"y"}]""");
        Assert.Equal(["1.name"], result.Fields);
    }

    [Fact]
    public async Task Commands_OfAGuildWithoutTheBot_AreRefused()
    {
        ApiResult result = await api.CallAsync("PUT", $"/applications/{platform.ApplicationId}/guilds/12345/commands", "[]");
        Assert.Equal((403, 50001), (result.Status, result.Code));
    }

    [Theory]
    [InlineData(null, 403)]
    [InlineData("curl/8.0", 403)]
    public async Task UserAgent_OfNoBot_IsBlocked(string? agent, int status)
    {
        api.Agent = agent;
        Assert.Equal(status, (await api.CallAsync("GET", "/gateway")).Status);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("Bot another")]
    [InlineData("bare")]
    public async Task Token_WrongOrBare_IsRefused(string? authorization)
    {
        api.Authorization = authorization == "bare" ? platform.Token : authorization;
        Assert.Equal(401, (await api.CallAsync("GET", "/gateway/bot")).Status);
        Assert.Equal(401, (await api.CallAsync("PUT", api.Commands, "[]")).Status);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/v6")]
    public async Task Version_MissingOrGone_IsRefused(string version)
    {
        api.Version = version;
        Assert.Equal(50041, (await api.CallAsync("GET", "/gateway")).Code);
    }

    [Fact]
    public async Task Route_Unknown_Is404AndNoted()
    {
        Assert.Equal(404, (await api.CallAsync("GET", "/nowhere")).Status);
        Assert.Equal(405, (await api.CallAsync("DELETE", "/gateway")).Status);
        Assert.Equal(2, platform.Recording.UnknownRoutes.Count);
    }

    [Fact]
    public async Task Body_NoJsonOrOtherType_IsRefused()
    {
        string path = ApiClient.Callback(platform.Crew.Slash("ask"));
        Assert.Equal(50109, (await api.CallAsync("POST", path, "{")).Code);
        Assert.Equal(50035, (await api.CallAsync("POST", path, """{"type":5}""", "text/plain")).Code);
    }

    [Theory]
    [InlineData("""{"type":7,"data":{"content":"x"}}""")]
    [InlineData("""{"type":6}""")]
    [InlineData("""{"type":8,"data":{"choices":[]}}""")]
    [InlineData("""{"type":1}""")]
    [InlineData("""{"type":"4","data":{"content":"x"}}""")]
    [InlineData("""{}""")]
    public async Task Callback_OfATypeThatDoesNotFit_IsRefused(string json)
    {
        ApiResult result = await api.CallAsync("POST", ApiClient.Callback(platform.Crew.Slash("ask")), json);
        Assert.Equal(["type"], result.Fields);
    }

    [Fact]
    public async Task Callback_DeferralWithOtherFlags_IsRefused()
    {
        ApiResult result = await api.CallAsync("POST", ApiClient.Callback(platform.Crew.Slash("ask")), """{"type":5,"data":{"flags":4160}}""");
        Assert.Equal(["data.flags"], result.Fields);
    }

    [Fact]
    public async Task Callback_EmptyMessage_IsRefused()
    {
        ApiResult result = await api.CallAsync("POST", ApiClient.Callback(platform.Crew.Slash("ask")), """{"type":4,"data":{}}""");
        Assert.Equal((400, 50006), (result.Status, result.Code));
    }

    [Fact]
    public async Task Choices_TooManyOrUnfit_AreRefused()
    {
        SentInteraction typed = platform.Crew.Type("ask", "question", "x");
        ApiResult many = await api.CallAsync("POST", ApiClient.Callback(typed), $$$"""{"type":8,"data":{"choices":[{{{Many(26, i => $$"""{"name":"n{{i}}","value":"v"}""")}}}]}}""");
        ApiResult unfit = await api.CallAsync("POST", ApiClient.Callback(typed), """{"type":8,"data":{"choices":[{"name":"n","value":1}]}}""");
        ApiResult message = await api.CallAsync("POST", ApiClient.Callback(typed), """{"type":4,"data":{"content":"x"}}""");
        Assert.Equal(["data.choices"], many.Fields);
        Assert.Equal(["data.choices.0.value"], unfit.Fields);
        Assert.Equal(["type"], message.Fields);
    }

    [Fact]
    public async Task Callback_UnknownSecondOrLate_IsRefused()
    {
        SentInteraction asked = platform.Crew.Slash("ask");
        Assert.Equal((404, 10062), Of(await api.CallAsync("POST", $"/interactions/{asked.Id}/wrong/callback", """{"type":5}""")));
        Assert.Equal(204, (await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""")).Status);
        Assert.Equal((400, 40060), Of(await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""")));
        SentInteraction late = platform.Crew.Slash("ask");
        platform.Clock.Advance(TimeSpan.FromSeconds(3.1));
        Assert.Equal((404, 10062), Of(await api.CallAsync("POST", ApiClient.Callback(late), """{"type":5}""")));
        Assert.True(late.Failed);
        Assert.False(asked.Failed);
    }

    [Fact]
    public async Task Webhook_UnknownUnansweredOrOver_IsRefused()
    {
        SentInteraction asked = platform.Crew.Slash("ask");
        const string Body = """{"content":"x"}""";
        Assert.Equal((404, 10015), Of(await api.CallAsync("PATCH", api.Original(asked), Body)));
        Assert.Equal((404, 10015), Of(await api.CallAsync("POST", $"/webhooks/{platform.ApplicationId}/wrong", Body)));
        await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""");
        Assert.Equal((404, 10015), Of(await api.CallAsync("POST", $"/webhooks/1/{asked.Token}", Body)));
        Assert.Equal((404, 10008), Of(await api.CallAsync("GET", api.Webhook(asked, "/messages/1"))));
        Assert.Equal((400, 50006), Of(await api.CallAsync("PATCH", api.Original(asked), """{"content":""}""")));
        Assert.Equal(204, (await api.CallAsync("DELETE", api.Original(asked))).Status);
        Assert.Equal((404, 10008), Of(await api.CallAsync("PATCH", api.Original(asked), Body)));
        platform.Clock.Advance(TimeSpan.FromMinutes(15.1));
        Assert.Equal((401, 50027), Of(await api.CallAsync("POST", api.Webhook(asked), Body)));
    }

    [Fact]
    public async Task Upload_PartsMisnamedOrUnmatched_AreRefused()
    {
        SentInteraction asked = platform.Crew.Slash("ask");
        await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""");
        string path = api.Original(asked);
        Assert.Equal(["file"], (await api.FormAsync("PATCH", path, """{"content":"x"}""", ("file", "p.png", Png))).Fields);
        Assert.Equal(["files[0]"], (await api.FormAsync("PATCH", path, """{"content":"x"}""", ("files[0]", null, Png))).Fields);
        Assert.Equal(["attachments.0.id"], (await api.FormAsync("PATCH", path, """{"attachments":[{"id":3}]}""", ("files[0]", "p.png", Png))).Fields);
        Assert.Equal(["attachments.0.description"], (await api.FormAsync("PATCH", path, $$"""{"attachments":[{"id":0,"description":"{{new string('x', 1025)}}"}]}""", ("files[0]", "p.png", Png))).Fields);
        Assert.Equal(["embeds.0.image.url"], (await api.FormAsync("PATCH", path, """{"embeds":[{"image":{"url":"attachment://p.pdf"}}]}""", ("files[0]", "p.pdf", Png))).Fields);
        Assert.Equal(["files"], (await api.FormAsync("PATCH", path, "{}", [.. Enumerable.Range(0, 11).Select(i => ($"files[{i}]", (string?)"p.png", Png))])).Fields);
    }

    [Fact]
    public async Task Upload_TooLarge_IsRefused()
    {
        SentInteraction asked = platform.Crew.Slash("ask");
        await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""");
        byte[] file = new byte[10 * 1024 * 1024 + 1];
        Assert.Equal((400, 50045), Of(await api.FormAsync("PATCH", api.Original(asked), "{}", ("files[0]", "p.png", file))));
        Assert.Equal((413, 40005), Of(await api.FormAsync("PATCH", api.Original(asked), "{}", ("files[0]", "a.png", file), ("files[1]", "b.png", file), ("files[2]", "c.png", file))));
    }

    private static (int Status, int Code) Of(ApiResult result) => (result.Status, result.Code);

    private static string Many(int count, Func<int, string> make) => string.Join(',', Enumerable.Range(0, count).Select(make));

    private static string Row(params string[] parts) => $$"""{"content":"x","components":[{"type":1,"components":[{{string.Join(',', parts)}}]}]}""";

    private static string Button(string id) => $$"""{"type":2,"style":2,"label":"x","custom_id":"{{id}}"}""";

    private static string Command(params string[] options) => $$"""{"name":"plan","description":"x","options":[{{string.Join(',', options)}}]}""";

    private static string Option(string name, string more = "") => $$"""{"type":3,"name":"{{name}}","description":"x"{{more}}}""";

    private static string Form(string title, params string[] parts) => $$"""{"custom_id":"f","title":"{{title}}","components":[{{string.Join(',', parts)}}]}""";

    private static string Field(string id, string more = "") => $$$"""{"type":18,"label":"l","component":{"type":4,"custom_id":"{{{id}}}","style":1{{{more}}}}}""";
}
