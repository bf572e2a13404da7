namespace Quarterlight.Planner;

/// <summary>Everything the planner logs. No text that a user wrote and no key is ever logged.</summary>
internal static partial class PlannerLog
{
    [LoggerMessage(1001, LogLevel.Information, "{Method} for team {Team}: {Status} in {Milliseconds:0.0} ms")]
    public static partial void CallEnded(this ILogger logger, string method, string team, string status, double milliseconds);

    [LoggerMessage(1002, LogLevel.Error, "{Method} failed, reference {Reference}")]
    public static partial void CallFailed(this ILogger logger, Exception exception, string method, string reference);

    [LoggerMessage(1003, LogLevel.Information, "Planner listens for gRPC on {GrpcAddress} and for JSON on {HttpAddress}; data in {DataFolder}")]
    public static partial void Started(this ILogger logger, string grpcAddress, string httpAddress, string dataFolder);

    [LoggerMessage(1004, LogLevel.Warning, "Clips are judged without tags: the tagger could not be loaded. On Linux it needs libgomp (package libgomp1)")]
    public static partial void TaggerMissing(this ILogger logger, Exception exception);

    [LoggerMessage(1005, LogLevel.Warning, "Old conversations could not be dropped; it is tried again in some hours")]
    public static partial void SweepFailed(this ILogger logger, Exception exception);
}
