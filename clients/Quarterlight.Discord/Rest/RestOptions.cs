namespace Quarterlight.Discord.Rest;

/// <summary>How the platform's REST API is reached.</summary>
public sealed record RestOptions
{
    /// <summary>Version of the API in use; written into the address, because leaving it out means an old one.</summary>
    public const int ApiVersion = 10;

    /// <summary>Beginning of all addresses. Version 10 of the platform unless a test says otherwise.</summary>
    public Uri BaseAddress { get; init; } = new("https://discord.com/api/v10");

    /// <summary>The bot's token; null when only interactions are answered, which needs none.</summary>
    public string? BotToken { get; init; }

    /// <summary>Address of the project in the User-Agent, which the platform asks for.</summary>
    public string ProductUrl { get; init; } = "https://quarterlight.invalid";

    /// <summary>Version of the bot in the User-Agent.</summary>
    public string ProductVersion { get; init; } = "1.0";

    /// <summary>Longest time for one try of a small request; a large one gets more, see <see cref="SlowestUploadBytesPerSecond"/>.</summary>
    public TimeSpan TryTimeout { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>An upload slower than this is given up, bytes per second.</summary>
    public int SlowestUploadBytesPerSecond { get; init; } = 50_000;

    /// <summary>Longest wait for a rate limit; a longer one ends the call with <see cref="DiscordFault.RateLimited"/> at once.</summary>
    public TimeSpan LongestWait { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>Longest wait for the turn behind other requests of the same bucket.</summary>
    public TimeSpan LongestQueue { get; init; } = TimeSpan.FromSeconds(90);

    /// <summary>Requests a second with the bot's token (Rate Limits, Global Rate Limit). Requests for interactions are not counted.</summary>
    public int BotRequestsPerSecond { get; init; } = 50;

    /// <summary>
    /// Refused requests (401, 403, 429) in 10 minutes after which nothing is sent any more. The platform shuts an address out at 10,000
    /// (Rate Limits, Invalid Request Limit); several processes may share one, so this is well below.
    /// </summary>
    public int RefusedRequestsLimit { get; init; } = 2_000;

    /// <summary>Seeds the jitter of waits. Replicas want different ones, so that they do not come back at the same moment.</summary>
    public int JitterSeed { get; init; } = 1;
}
