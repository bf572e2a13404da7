using System.Net;
using System.Text;
using System.Text.Json;
using Grpc.Core;
using Microsoft.Extensions.Logging;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Refusals as callers without gRPC see them, and the limits of a call.</summary>
public sealed class ErrorTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private async Task<(HttpStatusCode Code, JsonElement Body)> PostAsync(string path, string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        using HttpResponseMessage response = await _planner.Http.PostAsync(path, content, Stop);
        string body = await response.Content.ReadAsStringAsync(Stop);
        Assert.DoesNotContain("Exception", body, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", body, StringComparison.Ordinal);
        return (response.StatusCode, JsonDocument.Parse(body).RootElement);
    }

    [Fact]
    public async Task Json_GoodRequest_RoundTrip()
    {
        (HttpStatusCode code, JsonElement made) = await PostAsync(
            "/v1/cabins", """{"cabinId":"json","cabin":{"displayName":"By JSON","bodyStyle":"BODY_STYLE_SALOON","driveSide":"DRIVE_SIDE_LEFT","engineLayout":"ENGINE_LAYOUT_FRONT"}}""");
        Assert.Equal(HttpStatusCode.OK, code);
        Assert.Equal("cabins/json", made.GetProperty("cabin").GetProperty("name").GetString());

        string read = await _planner.Http.GetStringAsync("/v1/cabins/json", Stop);
        Assert.Equal("By JSON", JsonDocument.Parse(read).RootElement.GetProperty("cabin").GetProperty("displayName").GetString());

        using var patch = new StringContent("""{"displayName":"Patched","bodyStyle":"BODY_STYLE_SALOON","driveSide":"DRIVE_SIDE_RIGHT","engineLayout":"ENGINE_LAYOUT_FRONT"}""", Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.OK, (await _planner.Http.PatchAsync("/v1/cabins/json", patch, Stop)).StatusCode);
        Assert.Equal(DriveSide.Right, (await _planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = "cabins/json" }, cancellationToken: Stop)).Cabin.DriveSide);
        Assert.Equal(HttpStatusCode.OK, (await _planner.Http.DeleteAsync("/v1/cabins/json", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await _planner.Http.GetAsync("/v1/cabins/json", Stop)).StatusCode);
    }

    [Fact]
    public async Task Json_WrongFields_400WithEveryDetail()
    {
        (HttpStatusCode code, JsonElement body) = await PostAsync("/v1/cabins", """{"cabinId":"wrong","cabin":{"displayName":"No body"}}""");

        Assert.Equal(HttpStatusCode.BadRequest, code);
        JsonElement[] details = [.. body.GetProperty("details").EnumerateArray()];
        JsonElement info = Assert.Single(details, d => d.GetProperty("@type").GetString() == "type.googleapis.com/google.rpc.ErrorInfo");
        Assert.Equal("INVALID_FIELDS", info.GetProperty("reason").GetString());
        Assert.Equal("quarterlight", info.GetProperty("domain").GetString());
        JsonElement bad = Assert.Single(details, d => d.GetProperty("@type").GetString() == "type.googleapis.com/google.rpc.BadRequest");
        Assert.Contains("cabin.body_style", bad.GetProperty("fieldViolations").EnumerateArray().Select(f => f.GetProperty("field").GetString()));
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("""{"cabin":{"bodyStyle":"BODY_STYLE_SPACESHIP"}}""")]
    [InlineData("""{"cabin":{"measurements":{"shoulderWidthM":"wide"}}}""")]
    public async Task Json_NotARequest_400AndNoExceptionText(string json) =>
        Assert.Equal(HttpStatusCode.BadRequest, (await PostAsync("/v1/cabins", json)).Code);

    [Fact]
    public async Task Json_NaN_NamesTheField()
    {
        (HttpStatusCode code, JsonElement body) = await PostAsync(
            "/v1/placement:sites", """{"cabin":{"bodyStyle":"BODY_STYLE_SALOON","driveSide":"DRIVE_SIDE_LEFT","engineLayout":"ENGINE_LAYOUT_FRONT","measurements":{"shoulderWidthM":"NaN"}}}""");
        Assert.Equal(HttpStatusCode.BadRequest, code);
        Assert.Contains("cabin.measurements.shoulder_width_m", body.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Grpc_MessageOverFourMebibytes_ResourceExhausted()
    {
        V1.Cabin cabin = Samples.Cabin(new string('x', 5 * 1024 * 1024));
        RpcException refused = await Assert.ThrowsAsync<RpcException>(() => _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "big", Cabin = cabin }, cancellationToken: Stop).ResponseAsync);
        Assert.Equal(StatusCode.ResourceExhausted, refused.StatusCode);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = "cabins/big" }, cancellationToken: Stop))).Code);
    }

    [Fact]
    public async Task Json_BodyOverFourMebibytes_Refused()
    {
        using var content = new StringContent("""{"cabinId":"big","cabin":{"displayName":"LONG"}}""".Replace("LONG", new string('x', 5 * 1024 * 1024), StringComparison.Ordinal), Encoding.UTF8, "application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/cabins") { Content = content };

        // Asked first, the host says no before the body is on its way: otherwise it may hang up in the middle of it.
        request.Headers.ExpectContinue = true;
        using HttpResponseMessage response = await _planner.Http.SendAsync(request, Stop);
        Assert.InRange((int)response.StatusCode, 400, 499);
    }

    [Fact]
    public async Task Grpc_CallersDeadlinePassed_DeadlineExceeded()
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(
            () => _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() }, deadline: DateTime.UtcNow.AddMilliseconds(-1), cancellationToken: Stop).ResponseAsync);
        Assert.Equal(StatusCode.DeadlineExceeded, refused.StatusCode);
    }

    [Fact]
    public async Task Grpc_ServersLimitPassed_DeadlineExceededWithReason()
    {
        await using RunningPlanner hasty = await RunningPlanner.StartAsync(o => o with { CallLimit = TimeSpan.FromTicks(1) });
        Refused refused = await Refused.ByAsync(hasty.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() }, cancellationToken: Stop));
        Assert.Equal(StatusCode.DeadlineExceeded, refused.Code);
        Assert.Equal("TOO_SLOW", refused.Info.Reason);
        hasty.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task Plan_MoreAtOnceThanMayWait_SomeToldBusyAndNoneFails()
    {
        await using RunningPlanner small = await RunningPlanner.StartAsync(o => o with { MostWaitingPlans = 2 });
        string[] ends = await Task.WhenAll(Enumerable.Range(0, 24).Select(async i =>
        {
            SceneBundle bundle = Samples.Bundle();
            bundle.Scene.DriveConditions.SpeedKmPerHour = 20 + i;
            try
            {
                await small.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop);
                return "planned";
            }
            catch (RpcException refused) when (refused.StatusCode == StatusCode.ResourceExhausted)
            {
                return refused.GetRpcStatus()!.GetDetail<Google.Rpc.ErrorInfo>()!.Reason;
            }
        }));
        Assert.Contains("planned", ends);
        Assert.Contains("BUSY", ends);
        Assert.DoesNotContain(ends, e => e is not ("planned" or "BUSY"));
        small.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task AnyCall_Ended_LoggedOnceWithoutWhatTheCrewWrote()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        await planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = "hush", Cabin = Samples.Cabin("Nobody must read this") }, cancellationToken: Stop);
        await Refused.ByAsync(planner.Cabins.GetCabinAsync(new GetCabinRequest { Name = "cabins/other" }, cancellationToken: Stop));

        string[] calls = [.. planner.Log.Lines.Where(l => l.Event.Id == 1001).Select(l => l.Text)];
        Assert.Equal(2, calls.Length);
        Assert.Matches(@"^/quarterlight\.v1\.CabinService/CreateCabin for team local: OK in [0-9.]+ ms", calls[0]);
        Assert.Matches(@"^/quarterlight\.v1\.CabinService/GetCabin for team local: NotFound in [0-9.]+ ms", calls[1]);
        Assert.DoesNotContain(planner.Log.Lines, l => l.Text.Contains("Nobody must read", StringComparison.Ordinal));
        Assert.DoesNotContain(planner.Log.Lines, l => l.Level >= LogLevel.Warning);
    }
}
