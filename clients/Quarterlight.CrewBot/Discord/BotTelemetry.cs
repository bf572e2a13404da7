using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Quarterlight.Discord;
using Quarterlight.Discord.Rest;
using Quarterlight.Telemetry;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Logs of a bot that serves and, when the environment names a collector, its traces and metrics too. No secret is in any of them.</summary>
internal sealed class BotTelemetry : IAsyncDisposable
{
    private const string ServiceName = "quarterlight-crewbot";

    private readonly ServiceProvider services;

    private BotTelemetry(ServiceProvider services) => this.services = services;

    /// <summary>The logs.</summary>
    public ILoggerFactory Logs => services.GetRequiredService<ILoggerFactory>();

    /// <summary>Starts it.</summary>
    /// <param name="secrets">What must never be told.</param>
    /// <param name="surroundings">Where lines go, and the environment that may name a collector.</param>
    /// <exception cref="TelemetryOptionsException">The environment names no collector but something else.</exception>
    public static BotTelemetry Start(ServeSecrets secrets, CrewBotSurroundings surroundings)
    {
        TelemetryOptions? options = TelemetryOptions.FromEnvironment(ServiceName, surroundings.Environment) is not { } named ? null : named with
        {
            Sources = [CrewBotMeters.Name, DiscordTelemetry.Name, RestClient.ActivitySourceName],
            Meters = [CrewBotMeters.Name, DiscordTelemetry.Name, RestClient.MeterName],
        };
        var redactor = new SecretRedactor();
        foreach (string secret in new[] { secrets.Token, secrets.DelegateKey ?? "" }.Where(s => s.Length >= SecretRedactor.ShortestSecret))
        {
            redactor.Register(secret);
        }

        var collection = new ServiceCollection();
        collection.AddLogging(logging =>
        {
            surroundings.Logging(logging);

            // Last of the providers: it stands before all of them.
            surroundings.AddTelemetry(collection, logging, options, redactor);
        });
        ServiceProvider services = collection.BuildServiceProvider();
        if (options is not null)
        {
            TelemetrySetup.Start(services);
        }

        return new BotTelemetry(services);
    }

    /// <summary>Sends what is left, and ends.</summary>
    public ValueTask DisposeAsync() => services.DisposeAsync();
}
