using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Clips posted to the JSON side.</summary>
public sealed class ClipHttpTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Post_Clip_SameReportAsOverGrpc(bool lengthSaid)
    {
        byte[] file = Waves.Talk(2, 2);
        using HttpContent body = lengthSaid ? new ByteArrayContent(file) : new UnsizedContent(file);
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/clips:judge?file_name=take%203.wav&cylinders=6&include_picture=true", body, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        JudgedClip judged = JudgedClip.Parser.ParseJson(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal(await _planner.ReportAsync(file, new ClipHeader { FileName = "take 3.wav", Cylinders = 6 }), judged.Report);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], judged.Picture.Png.Take(4));
    }

    [Fact]
    public async Task Post_LargerThanAMessage_Judged()
    {
        using HttpResponseMessage answer = await PostAsync("", Waves.Talk(60));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("?cylinders=many", "cylinders")]
    [InlineData("?cylinders=99", "cylinders")]
    [InlineData("?full_scale_spl_db=loud", "full_scale_spl_db")]
    [InlineData("?include_picture=maybe", "include_picture")]
    [InlineData("?picture_channel=9", "")]
    [InlineData("?picture_channel=9&include_picture=true", "picture_channel")]
    [InlineData("?talker=driver", "talker")]
    [InlineData("?talker_id=driver", "talker_id")]
    [InlineData("?plan=plans/a&scene=scenes/b", "scene")]
    [InlineData("?plan=a", "plan")]
    [InlineData("?file_name=a&file_name=b", "file_name")]
    public async Task Post_WrongParameter_NamedAsEverywhere(string query, string field)
    {
        using HttpResponseMessage answer = await PostAsync(query, Waves.Talk(0.2));
        if (field.Length == 0)
        {
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            return;
        }

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal([field], await FieldsAsync(answer));
    }

    [Fact]
    public async Task Post_NoClip_RefusedLikeATranscodedCall()
    {
        using HttpResponseMessage answer = await PostAsync("", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0]);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(["piece"], await FieldsAsync(answer));

        using HttpResponseMessage transcoded = await _planner.Http.PutAsync("/v1/clipSettings", new StringContent("{}", Encoding.UTF8, "application/json"), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, transcoded.StatusCode);
        Assert.Equal(["thresholds"], await FieldsAsync(transcoded));
        Assert.Equal(Shape(await RootAsync(transcoded)), Shape(await RootAsync(answer)));
    }

    [Fact]
    public async Task Post_Nothing_Refused()
    {
        using HttpResponseMessage answer = await PostAsync("", []);
        Assert.Equal(["piece"], await FieldsAsync(answer));
    }

    [Fact]
    public async Task Post_Form_ToldToSendTheBytes()
    {
        using var form = new MultipartFormDataContent { { new ByteArrayContent(Waves.Talk(0.2)), "file", "take.wav" } };
        using HttpResponseMessage answer = await _planner.Http.PostAsync("/v1/clips:judge", form, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("--data-binary", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_MoreThanTheLimitSaid_RefusedBeforeItIsSent()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/clips:judge") { Content = new OnlySaidContent(209_715_201) };
        request.Headers.ExpectContinue = true;
        using HttpResponseMessage answer = await _planner.Http.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(["byte_count"], await FieldsAsync(answer));
    }

    [Fact]
    public async Task Post_UnknownPlan_NotFound()
    {
        using HttpResponseMessage answer = await PostAsync("?plan=plans/never", Waves.Talk(0.2));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(5, (await RootAsync(answer)).GetProperty("code").GetInt32());
    }

    [Fact]
    public async Task Post_TeamsWithKeys_KeyAskedFor()
    {
        var teams = new Dictionary<string, string> { ["north"] = Convert.ToHexStringLower(SHA256.HashData("key of the north"u8)) };
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { KeyHashByTeam = teams });
        using HttpResponseMessage without = await planner.Http.PostAsync("/v1/clips:judge", new ByteArrayContent(Waves.Talk(0.2)), Stop);
        Assert.Equal(HttpStatusCode.Unauthorized, without.StatusCode);
        planner.Http.DefaultRequestHeaders.Add("x-quarterlight-key", "key of the north");
        using HttpResponseMessage with = await planner.Http.PostAsync("/v1/clips:judge", new ByteArrayContent(Waves.Talk(0.2)), Stop);
        Assert.Equal(HttpStatusCode.OK, with.StatusCode);
        Assert.Contains(planner.Log.Lines, l => l.Text.Contains("/v1/clips:judge for team north", StringComparison.Ordinal));
    }

    private static async Task<JsonElement> RootAsync(HttpResponseMessage answer) => JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop)).RootElement;

    private static async Task<string?[]> FieldsAsync(HttpResponseMessage answer)
    {
        JsonElement detail = (await RootAsync(answer)).GetProperty("details").EnumerateArray().Single(d => d.GetProperty("@type").GetString() == "type.googleapis.com/google.rpc.BadRequest");
        return [.. detail.GetProperty("fieldViolations").EnumerateArray().Select(v => v.GetProperty("field").GetString())];
    }

    // Names of all properties, nested ones too, in the order they come.
    private static string Shape(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => $"{{{string.Join(",", element.EnumerateObject().Select(p => p.Name + Shape(p.Value)).Order(StringComparer.Ordinal))}}}",
        JsonValueKind.Array => $"[{string.Join(",", element.EnumerateArray().Select(Shape))}]",
        _ => "",
    };

    private Task<HttpResponseMessage> PostAsync(string query, byte[] file) => _planner.Http.PostAsync("/v1/clips:judge" + query, new ByteArrayContent(file), Stop);

    private sealed class UnsizedContent(byte[] bytes) : HttpContent
    {
        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => stream.WriteAsync(bytes, 0, bytes.Length);

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }

    private sealed class OnlySaidContent(long length) : HttpContent
    {
        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => throw new InvalidOperationException("It was asked to send.");

        protected override bool TryComputeLength(out long said)
        {
            said = length;
            return true;
        }
    }
}
