using Microsoft.Extensions.Logging;

namespace Quarterlight.Architecture.Tests.Offenders;

/// <summary>Changes under its owner's hands: a property and a field. One property is as it should be.</summary>
public sealed class ChangesLater
{
    /// <summary>May be set by anybody at any time.</summary>
    public double LevelDb { get; set; }

    /// <summary>As it should be.</summary>
    public double GainDb { get; init; }

#pragma warning disable CA1051, CA2211 // The offence is the point.
    /// <summary>Writable.</summary>
    public static double Floor;
#pragma warning restore CA1051, CA2211
}

public enum SaysNothing
{
    Unsaid,
}

/// <summary>One value is explained, one is not.</summary>
public enum SaysHalf
{
    /// <summary>Explained.</summary>
    Said,
    Unsaid,
}

internal static partial class FirstLog
{
    [LoggerMessage(9001, LogLevel.Debug, "first")]
    public static partial void First(this ILogger logger);
}

internal static partial class SecondPlaceThatLogs
{
    [LoggerMessage(9001, LogLevel.Debug, "second, with the number of the first")]
    public static partial void Second(this ILogger logger);
}
