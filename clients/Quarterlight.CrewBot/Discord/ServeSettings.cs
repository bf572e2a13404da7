namespace Quarterlight.CrewBot.Discord;

/// <summary>How interactions come in.</summary>
internal enum DiscordWay
{
    /// <summary>Over a lasting connection of ours.</summary>
    Gateway,

    /// <summary>As signed requests to an address of ours.</summary>
    Signed,
}

/// <summary>What <c>crewbot serve</c> was asked for, secrets aside.</summary>
internal sealed record ServeSettings
{
    /// <summary>Port of the health page unless another is named.</summary>
    public const int DefaultHealthPort = 5190;

    /// <summary>Name of the delegate the planner knows the bot as, unless another is given.</summary>
    public const string DefaultDelegate = "discord";

    public required DiscordWay Way { get; init; }

    /// <summary>The planner's address; null starts one in this process.</summary>
    public Uri? Server { get; init; }

    /// <summary>Folder for notes of open answers and identifies, and of the planner in this process.</summary>
    public required string DataFolder { get; init; }

    /// <summary>The one server commands are registered for; null for all.</summary>
    public ulong? Guild { get; init; }

    /// <summary>Where signed requests are taken; not used by the other way.</summary>
    public required System.Net.IPEndPoint Listen { get; init; }

    /// <summary>Port of the health page on the loopback address; 0 shows none.</summary>
    public int HealthPort { get; init; } = DefaultHealthPort;

    /// <summary>Beginning of all teams' ids.</summary>
    public string Delegate { get; init; } = DefaultDelegate;

    /// <summary>Times and limits.</summary>
    public DiscordTransportOptions Transport { get; init; } = new();
}
