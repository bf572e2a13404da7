using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// The two pages of the bot: GET /healthz on the loopback address, which answers 200 while questions can come in and be answered and 503 otherwise, and, for signed
/// requests, POST / on the address asked for.
/// </summary>
internal sealed class BotWebHost : IAsyncDisposable
{
    private const int MostConnections = 200;

    private readonly WebApplication? app;

    private BotWebHost(WebApplication? app) => this.app = app;

    /// <summary>Starts listening, if there is anything to listen for.</summary>
    /// <param name="settings">Where.</param>
    /// <param name="source">How the way in is.</param>
    /// <param name="planner">Whether the planner answers.</param>
    /// <param name="handle">Takes a signed request; null when none are taken.</param>
    /// <param name="logs">Logs.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="IOException">A port is taken.</exception>
    public static async Task<BotWebHost> StartAsync(
        ServeSettings settings, IInteractionSource source, PlannerWatch planner, Func<HttpContext, Task>? handle, ILoggerFactory logs, CancellationToken cancellation)
    {
        if (settings.HealthPort == 0 && handle is null)
        {
            return new BotWebHost(null);
        }

        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.Services.AddSingleton(logs);
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Limits.MaxRequestBodySize = Quarterlight.Discord.Signed.SignedSource.MostBodyBytes + 1;
            if (settings.HealthPort > 0)
            {
                kestrel.Listen(IPAddress.Loopback, settings.HealthPort, listen => listen.Protocols = HttpProtocols.Http1);
            }

            if (handle is not null)
            {
                kestrel.Listen(settings.Listen, listen => listen.Protocols = HttpProtocols.Http1);
            }
        });
        WebApplication app = builder.Build();
        app.Run(context => context switch
        {
            { Request: { Method: "GET", Path.Value: "/healthz" } } when context.Connection.LocalPort == settings.HealthPort => HealthAsync(context, source, planner),
            { Request: { Method: "POST", Path.Value: "/" } } when handle is not null && context.Connection.LocalPort == settings.Listen.Port => handle(context),
            _ => NotFoundAsync(context),
        });
        try
        {
            await app.StartAsync(cancellation).ConfigureAwait(false);
        }
        catch
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw;
        }

        return new BotWebHost(app);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (app is null)
        {
            return;
        }

        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        await app.StopAsync(patience.Token).ConfigureAwait(false);
        await app.DisposeAsync().ConfigureAwait(false);
    }

    private static async Task HealthAsync(HttpContext context, IInteractionSource source, PlannerWatch planner)
    {
        SourceHealth way = source.Health;
        bool serves = await planner.ServesAsync(context.RequestAborted).ConfigureAwait(false);
        context.Response.StatusCode = way.Ready && serves ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        context.Response.ContentType = "text/plain; charset=utf-8";
        string sign = way.SinceLastSign is { } since ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", last sign {since.TotalSeconds:0} s ago") : "";
        await context.Response.WriteAsync($"platform: {way.Detail}{sign}\nplanner: {(serves ? "serving" : "not answering")}\n", context.RequestAborted).ConfigureAwait(false);
    }

    private static Task NotFoundAsync(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    }
}
