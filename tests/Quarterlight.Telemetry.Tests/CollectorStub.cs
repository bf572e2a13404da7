using System.Collections.Concurrent;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Telemetry.Tests;

/// <summary>Stands for a collector, and for whatever else is called: remembers what was posted to it.</summary>
public sealed class CollectorStub : IAsyncDisposable
{
    private readonly WebApplication _app;

    private CollectorStub(WebApplication app) => _app = app;

    /// <summary>Path and body of every post, the body byte by byte as Latin-1: texts of protobuf stand in it as they are.</summary>
    public ConcurrentQueue<(string Path, string ContentType, string Body)> Posts { get; } = [];

    public Uri Address => new(_app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());

    public static async Task<CollectorStub> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k => k.Listen(IPAddress.Loopback, 0));
        WebApplication app = builder.Build();
        var stub = new CollectorStub(app);
        app.Run(async http =>
        {
            using var body = new MemoryStream();
            await http.Request.Body.CopyToAsync(body, http.RequestAborted);
            stub.Posts.Enqueue((http.Request.Path, http.Request.ContentType ?? "", Encoding.Latin1.GetString(body.ToArray())));
            http.Response.StatusCode = http.Request.Path.StartsWithSegments("/refuse") ? StatusCodes.Status401Unauthorized : StatusCodes.Status200OK;
        });
        await app.StartAsync(TestContext.Current.CancellationToken);
        return stub;
    }

    /// <summary>All that was posted under a path, put together.</summary>
    public string BodyOf(string path) => string.Concat(Posts.Where(p => p.Path == path).Select(p => p.Body));

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();
}
