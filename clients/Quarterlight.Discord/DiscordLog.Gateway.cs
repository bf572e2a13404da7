using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord;

// Lines of both ways in. The id of a session is never among them.
internal static partial class DiscordLog
{
    [LoggerMessage(3001, LogLevel.Information, "Gateway session started")]
    public static partial void SessionStarted(this ILogger logger);

    [LoggerMessage(3002, LogLevel.Information, "Gateway session gone on with")]
    public static partial void SessionResumed(this ILogger logger);

    [LoggerMessage(3003, LogLevel.Warning, "Gateway connection ended: {Reason}, close code {Code}; next: {Next} in {Seconds:0.0} s")]
    public static partial void ConnectionEnded(this ILogger logger, string reason, int? code, string next, double seconds);

    [LoggerMessage(3004, LogLevel.Error, "Gateway connection stopped for good: {Why}")]
    public static partial void Stopped(this ILogger logger, string why);

    [LoggerMessage(3005, LogLevel.Warning, "No new gateway session for {Seconds:0} s: the day's allowance is nearly used up")]
    public static partial void IdentifyHeldBack(this ILogger logger, double seconds);

    [LoggerMessage(3006, LogLevel.Warning, "The count of gateway sessions could not be kept over restarts: {Error}")]
    public static partial void LedgerFailed(this ILogger logger, string error);

    [LoggerMessage(3007, LogLevel.Warning, "The gateway's address could not be asked for: {Error}; again in {Seconds:0.0} s")]
    public static partial void FindFailed(this ILogger logger, string error, double seconds);

    [LoggerMessage(3008, LogLevel.Warning, "A gateway frame could not be read, {InARow} in a row")]
    public static partial void FrameUnreadable(this ILogger logger, int inARow);

    [LoggerMessage(3009, LogLevel.Warning, "An interaction could not be read: {Flaw}")]
    public static partial void InteractionUnreadable(this ILogger logger, InteractionFlaw flaw);

    [LoggerMessage(3010, LogLevel.Error, "Whoever takes interactions failed with {Error}; the connection goes on")]
    public static partial void ReceiverFailed(this ILogger logger, string error);

    [LoggerMessage(3011, LogLevel.Warning, "Gateway connection cut: it did not close in time")]
    public static partial void ConnectionCut(this ILogger logger);

    [LoggerMessage(3012, LogLevel.Information, "Gateway connection closed at the end of the service")]
    public static partial void Closed(this ILogger logger);

    [LoggerMessage(3013, LogLevel.Warning, "A signed request was refused: {Reason}")]
    public static partial void SignatureRefused(this ILogger logger, Signed.SignatureVerdict reason);
}
