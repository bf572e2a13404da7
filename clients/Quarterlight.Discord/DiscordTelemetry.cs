using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace Quarterlight.Discord;

/// <summary>What the platform's side of the bot tells about itself. Never a token, an id or a word of a user.</summary>
public static class DiscordTelemetry
{
    /// <summary>Name of the meter and of the source of traces.</summary>
    public const string Name = "Quarterlight.Discord";

    private static readonly Meter Meter = new(Name);
    private static readonly ConcurrentDictionary<object, Func<TimeSpan?>> Watched = new();

    /// <summary>Traces.</summary>
    public static ActivitySource Activities { get; } = new(Name);

    /// <summary>Connections that ended and were made anew, by why they ended.</summary>
    internal static Counter<long> Reconnects { get; } = Meter.CreateCounter<long>("discord.gateway.reconnects", "{connection}", "Gateway connections that ended, by reason");

    /// <summary>Sessions that were gone on with.</summary>
    internal static Counter<long> Resumes { get; } = Meter.CreateCounter<long>("discord.gateway.resumes", "{session}", "Gateway sessions gone on with");

    /// <summary>Identifies sent.</summary>
    internal static Counter<long> Identifies { get; } = Meter.CreateCounter<long>("discord.gateway.identifies", "{identify}", "Identifies sent to the gateway");

    /// <summary>Interactions received, by kind, way in and whether they were taken.</summary>
    internal static Counter<long> Interactions { get; } = Meter.CreateCounter<long>("discord.interactions", "{interaction}", "Interactions received, by kind and way in");

    /// <summary>Frames and interactions that could not be read, by why.</summary>
    internal static Counter<long> Unreadable { get; } = Meter.CreateCounter<long>("discord.unreadable", "{frame}", "Frames and interactions that could not be read, by reason");

    /// <summary>Age of the last acknowledged heartbeat of every connection.</summary>
    internal static ObservableGauge<double> LastSign { get; } = Meter.CreateObservableGauge(
        "discord.gateway.last_ack_age", () => Watched.Values.Select(w => w()).OfType<TimeSpan>().Select(age => new Measurement<double>(age.TotalSeconds)), "s",
        "Time since the gateway last gave a sign of life");

    /// <summary>Shows the age of a connection's last sign of life while the result is not disposed of.</summary>
    internal static IDisposable Watch(Func<TimeSpan?> age)
    {
        var watch = new Watcher();
        Watched[watch] = age;
        return watch;
    }

    private sealed class Watcher : IDisposable
    {
        public void Dispose() => Watched.TryRemove(this, out _);
    }
}
