using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Chat.Emulator;

/// <summary>Listens on the loopback address and hands requests to the API, the gateway and the file host.</summary>
internal sealed class WebHost(EmulatedPlatform platform) : IAsyncDisposable
{
    private WebApplication? app;

    /// <summary>Asked before everything else, for programs that drive the emulator over HTTP; true when it answered.</summary>
    public Func<HttpContext, Task<bool>>? Control { get; set; }

    /// <summary>Starts to listen.</summary>
    public async Task<Uri> StartAsync(CancellationToken cancellation)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromMilliseconds(200));
        builder.WebHost.ConfigureKestrel(o =>
        {
            o.Listen(IPAddress.Loopback, platform.Options.Port);
            o.Limits.MaxRequestBodySize = null;
            o.Limits.MinRequestBodyDataRate = null;
            o.AddServerHeader = false;
        });
        app = builder.Build();
        app.UseWebSockets(new WebSocketOptions { KeepAliveInterval = Timeout.InfiniteTimeSpan });
        var api = new RestApi(platform);
        var files = new CdnEndpoint(platform);
        app.Run(http => HandleAsync(http, api, files));
        await app.StartAsync(cancellation).ConfigureAwait(false);
        return new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (app is not null)
        {
            await app.DisposeAsync().ConfigureAwait(false);
        }
    }

    private async Task HandleAsync(HttpContext http, RestApi api, CdnEndpoint files)
    {
        try
        {
            if (Control is { } control && await control(http).ConfigureAwait(false))
            {
                return;
            }

            if (http.Request.Path.StartsWithSegments("/gateway", StringComparison.Ordinal))
            {
                await platform.Gateway.HandleAsync(http, platform.Stopping).ConfigureAwait(false);
            }
            else if (http.Request.Path.StartsWithSegments(CdnEndpoint.Prefix, StringComparison.Ordinal))
            {
                await files.HandleAsync(http).ConfigureAwait(false);
            }
            else
            {
                await api.HandleAsync(http).ConfigureAwait(false);
            }
        }
        catch (Exception problem) when (problem is OperationCanceledException or IOException)
        {
            // The client went away.
        }
    }
}
