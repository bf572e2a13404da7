using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A planner over real gRPC that answers as a test tells it to, for what the real one will not do on demand.</summary>
public sealed class FakePlanner : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly GrpcChannel channel;

    private FakePlanner(WebApplication app)
    {
        this.app = app;
        channel = GrpcChannel.ForAddress(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    public CallInvoker Invoker => channel.CreateCallInvoker();

    /// <summary>Starts one whose PlanPlacement does this; it keeps the demo data unless told to be empty.</summary>
    /// <param name="plan">What PlanPlacement does.</param>
    /// <param name="empty">True keeps nothing.</param>
    /// <param name="radio">What the radio service does; null has none of it.</param>
    /// <param name="scenes">Scenes kept; null keeps those of the demo.</param>
    /// <param name="kits">Kits kept; null keeps those of the demo.</param>
    /// <param name="clips">What the clip service does; null has none of it.</param>
    /// <param name="forecasts">What the services of heat, run time, levels and noise do; null has none of them.</param>
    public static async Task<FakePlanner> StartAsync(Func<PlanPlacementRequest, PlanPlacementResponse> plan, bool empty = false, RadioService.RadioServiceBase? radio = null, IReadOnlyList<Scene>? scenes = null, IReadOnlyList<Kit>? kits = null, ClipService.ClipServiceBase? clips = null, CannedForecasts? forecasts = null)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k => k.Listen(System.Net.IPAddress.Loopback, 0, l => l.Protocols = HttpProtocols.Http2));
        builder.Services.AddGrpc();
        builder.Services.AddSingleton(new Placing(plan, forecasts)).AddSingleton(new Scenes(empty ? [] : scenes ?? DemoData.Scenes)).AddSingleton(new Cabins(empty)).AddSingleton(new Kits(empty ? [] : kits ?? DemoData.Kits));
        builder.Services.AddSingleton(new FakeRadio(radio)).AddSingleton(new FakeClips(clips)).AddSingleton(new FakeEndurance(forecasts)).AddSingleton(new FakeNoise(forecasts));
        WebApplication app = builder.Build();
        app.MapGrpcService<Placing>();
        app.MapGrpcService<Scenes>();
        app.MapGrpcService<Cabins>();
        app.MapGrpcService<Kits>();
        app.MapGrpcService<FakeRadio>();
        app.MapGrpcService<FakeClips>();
        app.MapGrpcService<FakeEndurance>();
        app.MapGrpcService<FakeNoise>();
        await app.StartAsync();
        return new FakePlanner(app);
    }

    /// <summary>A refusal as the planner sends it: fields, each with a problem and a way out.</summary>
    public static RpcException Invalid(params (string Field, string Description)[] violations)
    {
        var bad = new BadRequest();
        bad.FieldViolations.Add(violations.Select(v => new BadRequest.Types.FieldViolation { Field = v.Field, Description = v.Description }));
        return new Google.Rpc.Status { Code = (int)Code.InvalidArgument, Message = "raw scene.talkers[1] text", Details = { Any.Pack(bad) } }.ToRpcException();
    }

    /// <summary>A refusal with a reason and its details.</summary>
    public static RpcException Refusal(Code code, string reason, string key, string value)
    {
        var info = new ErrorInfo { Domain = "quarterlight", Reason = reason, Metadata = { [key] = value } };
        return new Google.Rpc.Status { Code = (int)code, Message = "System.Exception: raw", Details = { Any.Pack(info) } }.ToRpcException();
    }

    public async ValueTask DisposeAsync()
    {
        channel.Dispose();
        await app.DisposeAsync();
    }

    private sealed class Placing(Func<PlanPlacementRequest, PlanPlacementResponse> plan, CannedForecasts? forecasts) : PlacementService.PlacementServiceBase
    {
        public override Task<PlanPlacementResponse> PlanPlacement(PlanPlacementRequest request, ServerCallContext context) => Task.FromResult(plan(request));

        public override Task<PlanLevelsResponse> PlanLevels(PlanLevelsRequest request, ServerCallContext context) => forecasts is null ? base.PlanLevels(request, context) : Task.FromResult(forecasts.Answer(request));

        public override Task<ListMountSitesResponse> ListMountSites(ListMountSitesRequest request, ServerCallContext context) => forecasts is null ? base.ListMountSites(request, context)
            : Task.FromResult(new ListMountSitesResponse { Sites = { new[] { "driver", "front-passenger", "rear-left", "rear-right" }.Select(s => new MountSite { Id = s, SeatId = s, OnMovingGlass = true }) } });
    }

    private sealed class Scenes(IReadOnlyList<Scene> kept) : SceneService.SceneServiceBase
    {
        public override Task<ListScenesResponse> ListScenes(ListScenesRequest request, ServerCallContext context) => Task.FromResult(new ListScenesResponse { Scenes = { kept } });
    }

    private sealed class Cabins(bool empty) : CabinService.CabinServiceBase
    {
        public override Task<ListCabinsResponse> ListCabins(ListCabinsRequest request, ServerCallContext context) => Task.FromResult(new ListCabinsResponse { Cabins = { empty ? [] : DemoData.Cabins } });
    }

    private sealed class Kits(IReadOnlyList<Kit> kept) : KitService.KitServiceBase
    {
        public override Task<ListKitsResponse> ListKits(ListKitsRequest request, ServerCallContext context) => Task.FromResult(new ListKitsResponse { Kits = { kept } });
    }
}
