using Grpc.Core;
using Grpc.Health.V1;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Bench;

/// <summary>A bare gRPC host whose one call does nothing: the ceiling that look-ups are held against.</summary>
public sealed class EmptyHost : IAsyncDisposable
{
    private readonly WebApplication _app;

    private EmptyHost(WebApplication app) => _app = app;

    public string Address => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();

    public static async Task<EmptyHost> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k => k.Listen(System.Net.IPAddress.Loopback, 0, o => o.Protocols = HttpProtocols.Http2));
        builder.Services.AddGrpc();
        WebApplication app = builder.Build();
        app.MapGrpcService<Nothing>();
        await app.StartAsync();
        return new EmptyHost(app);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }

    private sealed class Nothing : Health.HealthBase
    {
        private static readonly Task<HealthCheckResponse> s_answer = Task.FromResult(new HealthCheckResponse());

        public override Task<HealthCheckResponse> Check(HealthCheckRequest request, ServerCallContext context) => s_answer;
    }
}
