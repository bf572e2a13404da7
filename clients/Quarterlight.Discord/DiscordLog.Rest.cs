using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord;

/// <summary>Everything the platform's client logs. No token, no address of an interaction or file, no body and no text of users.</summary>
internal static partial class DiscordLog
{
    [LoggerMessage(3101, LogLevel.Debug, "{Route}: {Status} in {Milliseconds:0} ms")]
    public static partial void RestAnswered(this ILogger logger, string route, int status, double milliseconds);

    [LoggerMessage(3102, LogLevel.Warning, "Refused after {Milliseconds:0} ms: {What}")]
    public static partial void RestRefused(this ILogger logger, string what, double milliseconds);

    [LoggerMessage(3103, LogLevel.Warning, "{What}; sent again, try {Attempt}, after {Milliseconds:0} ms")]
    public static partial void RestRepeats(this ILogger logger, string what, int attempt, double milliseconds);

    [LoggerMessage(3104, LogLevel.Information, "{Route}: limited by the platform (scope {Scope}), nothing sent for {Milliseconds:0} ms")]
    public static partial void RestLimited(this ILogger logger, string route, string scope, double milliseconds);

    [LoggerMessage(3105, LogLevel.Critical, "The bot's token was refused (401). Nothing is sent with it any more: put the right token in place and start again")]
    public static partial void RestBadToken(this ILogger logger);

    [LoggerMessage(3106, LogLevel.Critical, "{Count} requests were refused in 10 minutes. Nothing is sent until fewer were: at 10,000 the platform shuts this address out")]
    public static partial void RestShut(this ILogger logger, int count);

    [LoggerMessage(3107, LogLevel.Warning, "First answer too late: refused {Milliseconds:0} ms after the interaction was received")]
    public static partial void RestTooLate(this ILogger logger, double milliseconds);

    [LoggerMessage(3108, LogLevel.Information, "The first answer was there already: the try before had arrived")]
    public static partial void RestArrivedBefore(this ILogger logger);

    [LoggerMessage(3109, LogLevel.Information, "Commands registered: {Count} ({Scope})")]
    public static partial void RestRegistered(this ILogger logger, int count, string scope);

    [LoggerMessage(3110, LogLevel.Debug, "Commands are as they should be: {Count} ({Scope})")]
    public static partial void RestRegisteredBefore(this ILogger logger, int count, string scope);

    [LoggerMessage(3111, LogLevel.Warning, "A file was not fetched: {What}")]
    public static partial void RestFileRefused(this ILogger logger, string what);
}
