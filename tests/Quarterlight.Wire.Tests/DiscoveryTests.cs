using System.Net;
using System.Text.Json;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;

namespace Quarterlight.Wire.Tests;

/// <summary>How a stranger finds out what the planner offers.</summary>
public sealed class DiscoveryTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly string[] s_services =
        [
            "quarterlight.v1.CabinService", "quarterlight.v1.ClipService", "quarterlight.v1.EnduranceService", "quarterlight.v1.KitService", "quarterlight.v1.NoiseService",
            "quarterlight.v1.PlacementService", "quarterlight.v1.PlanService", "quarterlight.v1.RadioService", "quarterlight.v1.SceneService",
            "quarterlight.v1.TeamService",
        ];

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Health_Running_Serving()
    {
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, (await _planner.Health.CheckAsync(new HealthCheckRequest(), cancellationToken: Stop)).Status);
        Assert.Equal("ok", await _planner.Http.GetStringAsync("/healthz", Stop));
    }

    [Fact]
    public async Task Reflection_AskedForServices_ListsAllTen()
    {
        using var call = new ServerReflection.ServerReflectionClient(_planner.Channel).ServerReflectionInfo(cancellationToken: Stop);
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" }, Stop);
        Assert.True(await call.ResponseStream.MoveNext(Stop));
        string[] listed = [.. call.ResponseStream.Current.ListServicesResponse.Service.Select(s => s.Name)];
        Assert.Superset(s_services.ToHashSet(), listed.ToHashSet());
        await call.RequestStream.CompleteAsync();
    }

    [Fact]
    public async Task OpenApi_Asked_DescribesEveryMethodOnItsRealPath()
    {
        JsonElement document = JsonDocument.Parse(await _planner.Http.GetStringAsync("/openapi/v1.json", Stop)).RootElement;
        string[] operations = [.. document.GetProperty("paths").EnumerateObject().SelectMany(p => p.Value.EnumerateObject().Select(o => $"{o.Name} {p.Name}"))];
        foreach (string kind in new[] { "cabin", "kit", "scene", "plan" })
        {
            Assert.Contains($"post /v1/{kind}s", operations);
            Assert.Contains($"get /v1/{kind}s", operations);
            Assert.Contains($"get /v1/{kind}s/{{{kind}}}", operations);
            Assert.Contains($"patch /v1/{kind}s/{{{kind}}}", operations);
            Assert.Contains($"delete /v1/{kind}s/{{{kind}}}", operations);
        }

        Assert.Contains("post /v1/placement:plan", operations);
        Assert.Contains("post /v1/clips:judge", operations);
        Assert.Contains("put /v1/clipSettings", operations);
        foreach (string added in new[] { "endurance:forecastHeat", "endurance:forecastRunTime", "noise:forecast", "noise:findQuietStretches", "placement:levels" })
        {
            Assert.Contains($"post /v1/{added}", operations);
        }

        foreach (string added in new[] { "get /v1/teamSettings", "put /v1/teamSettings", "get /v1/conversations/{conversationId}", "put /v1/conversations/{conversationId}" })
        {
            Assert.Contains(added, operations);
        }

        Assert.Equal(41, operations.Length);
    }

    [Fact]
    public async Task OpenApi_Page_Reachable()
    {
        using HttpResponseMessage page = await _planner.Http.GetAsync("/openapi/index.html", Stop);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Equal("text/html", page.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task Grpc_UnknownMethod_Unimplemented()
    {
        var method = new Method<string, string>(MethodType.Unary, "quarterlight.v1.CabinService", "Fly", Marshallers.StringMarshaller, Marshallers.StringMarshaller);
        RpcException refused = await Assert.ThrowsAsync<RpcException>(
            () => _planner.Channel.CreateCallInvoker().AsyncUnaryCall(method, null, new CallOptions(cancellationToken: Stop), "").ResponseAsync);
        Assert.Equal(StatusCode.Unimplemented, refused.StatusCode);
    }
}
