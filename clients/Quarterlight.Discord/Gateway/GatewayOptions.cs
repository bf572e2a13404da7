namespace Quarterlight.Discord.Gateway;

/// <summary>How the gateway is spoken to. Where no source is named, the figures are our own choice.</summary>
public sealed class GatewayOptions
{
    /// <summary>The bot's token.</summary>
    public required string Token { get; init; }

    /// <summary>Intent bits. None by default: interactions are sent whatever is asked for, and we want nothing else.</summary>
    public int Intents { get; init; }

    /// <summary>Which connection of several this is, from 0.</summary>
    public int ShardId { get; init; }

    /// <summary>Connections in all.</summary>
    public int ShardCount { get; init; } = 1;

    /// <summary>Identifies of the platform's day that are left alone, so that a person can still start the bot by hand.</summary>
    public int IdentifyReserve { get; init; } = 50;

    /// <summary>Most identifies of our own in any 24 hours: the platform resets the token at 1000 (Identifying).</summary>
    public int MostIdentifiesPerDay { get; init; } = 500;

    /// <summary>Least time between two identifies (Identifying: max_concurrency in five seconds).</summary>
    public TimeSpan IdentifySpacing { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Longest wait for the gateway's address.</summary>
    public TimeSpan FindTimeout { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest wait for an open connection.</summary>
    public TimeSpan ConnectTimeout { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Longest wait for the first frame.</summary>
    public TimeSpan HelloTimeout { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Longest wait from identify to READY, and from resume to RESUMED.</summary>
    public TimeSpan ReadyTimeout { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest time one frame may take to leave.</summary>
    public TimeSpan SendTimeout { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Longest time for each step of closing; then the connection is cut.</summary>
    public TimeSpan CloseTimeout { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Upper end of the first random wait before a new connection; it doubles each time.</summary>
    public TimeSpan FirstBackOff { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Upper end of any random wait before a new connection.</summary>
    public TimeSpan MostBackOff { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>A connection that lasted this long starts the waits anew.</summary>
    public TimeSpan StableAfter { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>Resumes that may fail one after the other before the session is given up.</summary>
    public int MostResumes { get; init; } = 3;

    /// <summary>Unreadable frames in a row that are passed over; one more and the connection is made anew.</summary>
    public int MostUnreadableFrames { get; init; } = 5;

    /// <summary>Largest frame taken, bytes; a larger one is passed over as unreadable.</summary>
    public int MostFrameBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Without the token.</summary>
    public override string ToString() => $"gateway, intents {Intents}, shard {ShardId} of {ShardCount}";
}
