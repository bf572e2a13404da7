namespace Quarterlight.Discord.Gateway;

/// <summary>What to do next after a connection has ended.</summary>
internal enum NextStep
{
    /// <summary>Go on with the session.</summary>
    Resume,

    /// <summary>Start a new session.</summary>
    Identify,

    /// <summary>Stop: trying again would not help.</summary>
    Stop,
}

/// <summary>Close codes of the gateway (Gateway Close Event Codes) and what follows from each.</summary>
internal static class CloseCodes
{
    /// <summary>Ours when the session is to be kept; 1000 or 1001 would end it.</summary>
    public const int WillResume = 4000;

    /// <summary>Ours at the end of the service.</summary>
    public const int Done = 1000;

    private const int BadToken = 4004;

    /// <summary>What follows from a close by the other side; null stands for a connection that broke or closed without code.</summary>
    public static NextStep Next(int? code) => code switch
    {
        BadToken or (>= 4010 and <= 4014) => NextStep.Stop,
        1000 or 4003 or 4007 or 4009 => NextStep.Identify,
        _ => NextStep.Resume,
    };

    /// <summary>The fault of a code that stops, in one sentence.</summary>
    public static DiscordException Fault(int code) => code switch
    {
        BadToken => new(DiscordFault.BadToken, "The gateway refused the bot token (4004): give the bot its current token and start it again.", code),
        4010 => new(DiscordFault.BadIdentify, "The gateway refused the shard number (4010): check the bot's shard settings.", code),
        4011 => new(DiscordFault.BadIdentify, "The bot is on more servers than one connection may hold (4011): run it with more shards.", code),
        4012 => new(DiscordFault.BadIdentify, "The gateway no longer speaks the API version of this bot (4012): install a newer release.", code),
        4013 => new(DiscordFault.BadIdentify, "The gateway does not know the intents asked for (4013): set them to 0.", code),
        _ => new(DiscordFault.BadIdentify, "The bot may not use the intents asked for (4014): set them to 0 or enable them in the application's settings.", code),
    };
}
