using System.Net;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc.ApiExplorer;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.OpenApi.Models;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Conversations;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Services;
using Quarterlight.Planner.Upload;
using Quarterlight.Store;
using Quarterlight.Tagger;

namespace Quarterlight.Planner;

/// <summary>A running planner: gRPC, and JSON beside it when asked for. Dispose to stop it.</summary>
public sealed class PlannerHost : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly LiteDocumentStore _store;

    private PlannerHost(WebApplication app, LiteDocumentStore store, string grpcAddress, string? httpAddress)
    {
        _app = app;
        _store = store;
        GrpcAddress = grpcAddress;
        HttpAddress = httpAddress;
    }

    /// <summary>Address for gRPC clients, such as http://127.0.0.1:5180.</summary>
    public string GrpcAddress { get; }

    /// <summary>Address for JSON; null when not offered.</summary>
    public string? HttpAddress { get; }

    /// <summary>Starts a planner.</summary>
    /// <param name="options">How.</param>
    /// <param name="cancellation">Gives up starting.</param>
    /// <exception cref="StoreInUseException">Another planner uses the data folder.</exception>
    /// <exception cref="PlannerStartException">The options ask for something unsafe.</exception>
    public static Task<PlannerHost> StartAsync(PlannerHostOptions options, CancellationToken cancellation = default) =>
        StartAsync(options, null, cancellation);

    /// <summary>The same with logs going somewhere else than the console.</summary>
    public static async Task<PlannerHost> StartAsync(PlannerHostOptions options, Action<ILoggingBuilder>? configureLogging, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!IPAddress.IsLoopback(options.Address) && options.KeyHashByTeam.Count + options.KeyHashByDelegate.Count == 0)
        {
            throw new PlannerStartException("Listening beyond this machine needs a key for each team: set Teams:<team> to the SHA-256 of its key (or Delegates:<name> for a bot that serves many teams), or listen on 127.0.0.1.");
        }

        LiteDocumentStore store = LiteDocumentStore.Open(options.DataFolder, TimeProvider.System);
        try
        {
            WebApplication app = Build(options, store, configureLogging);
            await app.StartAsync(cancellation).ConfigureAwait(false);
            string[] addresses = [.. app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses];
            var host = new PlannerHost(app, store, addresses[0], addresses.Length > 1 ? addresses[1] : null);
            app.Services.GetRequiredService<ILogger<PlannerHost>>().Started(host.GrpcAddress, host.HttpAddress ?? "no port", options.DataFolder);
            return host;
        }
        catch
        {
            await store.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    /// <summary>Waits until the process is asked to stop.</summary>
    public Task WaitForShutdownAsync(CancellationToken cancellation = default) => _app.WaitForShutdownAsync(cancellation);

    /// <summary>Stops taking calls, ends those under way, and closes the store.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync().ConfigureAwait(false);
        await _app.DisposeAsync().ConfigureAwait(false);
        await _store.DisposeAsync().ConfigureAwait(false);
    }

    private static WebApplication Build(PlannerHostOptions options, LiteDocumentStore store, Action<ILoggingBuilder>? configureLogging)
    {
        // Settings come from the options alone: not from files that happen to lie in the working folder of an embedding process.
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.Sources.Clear();
        builder.Logging.ClearProviders();
        if (configureLogging is not null)
        {
            configureLogging(builder.Logging);
        }
        else
        {
            builder.Logging.AddJsonConsole(o => o.UseUtcTimestamp = true);
        }

        builder.Logging.SetMinimumLevel(options.Quiet ? LogLevel.Warning : LogLevel.Information);
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("Grpc", LogLevel.Critical);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = options.LargestMessageBytes + 1024;
            kestrel.Listen(options.Address, options.GrpcPort, o => o.Protocols = HttpProtocols.Http2);
            if (options.HttpPort is { } port)
            {
                kestrel.Listen(options.Address, port, o => o.Protocols = HttpProtocols.Http1);
            }
        });
        AddServices(builder.Services, options, store);
        WebApplication app = builder.Build();
        MapEndpoints(app, options);
        return app;
    }

    private static void AddServices(IServiceCollection services, PlannerHostOptions options, LiteDocumentStore store)
    {
        services.AddSingleton(options);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<IDocumentStore>(store);
        services.AddSingleton<TeamLibrary>();
        services.AddSingleton(new TeamDirectory(options.KeyHashByTeam, options.KeyHashByDelegate));
        services.AddSingleton<PlanningGate>();
        services.AddSingleton<RecentPlans>();
        services.AddSingleton<CallGuard>();
        services.AddSingleton<ClipGate>().AddSingleton<ClipAskReader>().AddSingleton<ClipSettingsDesk>().AddSingleton<ClipDesk>().AddSingleton<ClipEndpoint>();
        services.AddSingleton(s => new TaggerSource(ModelTagger.LoadShipped, s.GetRequiredService<ILogger<TaggerSource>>()));
        if (!options.StopOnSignals)
        {
            services.AddSingleton<IHostLifetime, EmbeddedLifetime>();
        }

        services.AddSingleton<CabinAdapter>().AddSingleton<KitAdapter>().AddSingleton<SceneAdapter>().AddSingleton<PlanAdapter>().AddSingleton<PlacementAdapter>().AddSingleton<RadioAdapter>().AddSingleton<ClipAdapter>();
        services.AddSingleton<EnduranceAdapter>().AddSingleton<NoiseAdapter>();
        services.AddSingleton<TeamAdapter>().AddSingleton<TeamSettingsDesk>().AddSingleton<ConversationDesk>().AddHostedService<ConversationSweep>();
        services.AddGrpcHealthChecks().AddAsyncCheck("store", async cancellation =>
        {
            await store.GetAsync(new DocumentKey(TeamDirectory.LocalTeam, "health", "probe"), cancellation).ConfigureAwait(false);
            return HealthCheckResult.Healthy();
        });
        services.AddGrpcReflection();
        Grpc.AspNetCore.Server.IGrpcServerBuilder grpc = services.AddGrpc(o =>
        {
            o.Interceptors.Add<CallGuard>();
            o.MaxReceiveMessageSize = options.LargestMessageBytes;
            o.MaxSendMessageSize = options.LargestMessageBytes;
            o.EnableDetailedErrors = false;
        });
        if (options.HttpPort is not null)
        {
            // Without these the JSON side cannot print the details of a refusal and answers with an empty 500.
            grpc.AddJsonTranscoding(o => o.TypeRegistry = TypeRegistry.FromMessages(BadRequest.Descriptor, ErrorInfo.Descriptor));
            services.AddGrpcSwagger();
            services.AddSingleton<IApiDescriptionProvider, ResourcePaths>();
            services.AddSwaggerGen(o =>
            {
                o.SwaggerDoc("v1", new OpenApiInfo { Title = "Quarterlight planner", Version = "v1", Description = "Sound for dialogue recorded in cars: microphone placement and gain, the radio link, test clips, cabin heat, batteries and media, and noise by speed, for callers without gRPC." });
                o.DocumentFilter<ClipUploadDocument>();
                string comments = Path.Combine(AppContext.BaseDirectory, "Quarterlight.Protos.xml");
                o.IncludeXmlComments(comments);
                o.IncludeGrpcXmlComments(comments, includeControllerXmlComments: true);
            });
        }
    }

    private static void MapEndpoints(WebApplication app, PlannerHostOptions options)
    {
        app.MapGrpcService<CabinAdapter>();
        app.MapGrpcService<KitAdapter>();
        app.MapGrpcService<SceneAdapter>();
        app.MapGrpcService<PlanAdapter>();
        app.MapGrpcService<PlacementAdapter>();
        app.MapGrpcService<RadioAdapter>();
        app.MapGrpcService<ClipAdapter>();
        app.MapGrpcService<EnduranceAdapter>();
        app.MapGrpcService<NoiseAdapter>();
        app.MapGrpcService<TeamAdapter>();
        app.MapGrpcHealthChecksService();
        app.MapGrpcReflectionService();
        if (options.HttpPort is not null)
        {
            // As a plain delegate: one with parameters is compiled at start.
            app.MapPost(ClipEndpoint.Path, static (HttpContext http) => http.RequestServices.GetRequiredService<ClipEndpoint>().HandleAsync(http));
            app.UseSwagger(o => o.RouteTemplate = "openapi/{documentName}.json");
            app.UseSwaggerUI(o =>
            {
                o.RoutePrefix = "openapi";
                o.SwaggerEndpoint("v1.json", "Quarterlight planner v1");
            });
            app.MapGet("/healthz", async (HealthCheckService health, CancellationToken cancellation) =>
                (await health.CheckHealthAsync(cancellation).ConfigureAwait(false)).Status == HealthStatus.Healthy ? Results.Text("ok") : Results.StatusCode(503));
        }
    }
}

/// <summary>For a planner inside another process: signals are that process's own business.</summary>
internal sealed class EmbeddedLifetime : IHostLifetime
{
    /// <inheritdoc/>
    public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}

/// <summary>The planner cannot start as asked; the message says what to change.</summary>
public sealed class PlannerStartException(string message) : Exception(message);
