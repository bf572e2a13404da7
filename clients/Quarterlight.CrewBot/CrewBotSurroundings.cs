using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Quarterlight.Telemetry;

namespace Quarterlight.CrewBot;

/// <summary>What the program touches outside itself, so that tests can stand in for it.</summary>
public sealed record CrewBotSurroundings
{
    /// <summary>Where questions come from.</summary>
    public required TextReader Input { get; init; }

    /// <summary>Where answers go.</summary>
    public required TextWriter Output { get; init; }

    /// <summary>Where usage errors go.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>True when a person types, so that a prompt is wanted.</summary>
    public bool Prompts { get; init; }

    /// <summary>True when a person watches <see cref="Error"/>, so that progress is shown there.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>What a leading ~ of a path stands for; null leaves it as it is.</summary>
    public string? HomeFolder { get; init; }

    /// <summary>Reads an environment variable.</summary>
    public Func<string, string?> Environment { get; init; } = _ => null;

    /// <summary>Starts the planner inside this process, with its store in the folder named.</summary>
    public required Func<string, CancellationToken, Task<IPlanner>> StartEmbedded { get; init; }

    /// <summary>Clock of a bot that serves.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Says where the log lines of a bot that serves go; they come there without secrets.</summary>
    public Action<ILoggingBuilder> Logging { get; init; } = LogToError;

    /// <summary>Keeps secrets out of all that a bot that serves tells. A test that shows what would be told without puts something else here.</summary>
    internal Action<IServiceCollection, ILoggingBuilder, TelemetryOptions?, SecretRedactor> AddTelemetry { get; init; } = TelemetrySetup.Add;

    /// <summary>Folder of the embedded planner's store when none is named.</summary>
    public string DefaultDataFolder { get; init; } = "quarterlight-data";

    /// <summary>Folder of pictures when none is named.</summary>
    public string DefaultPictureFolder { get; init; } = "quarterlight-pictures";

    /// <summary>The console and environment of this process.</summary>
    /// <param name="startEmbedded">Starts the planner inside this process.</param>
    public static CrewBotSurroundings OfThisProcess(Func<string, CancellationToken, Task<IPlanner>> startEmbedded)
    {
        string local = System.Environment.GetFolderPath(System.Environment.SpecialFolder.LocalApplicationData);
        var surroundings = new CrewBotSurroundings
        {
            Input = Console.In,
            Output = Console.Out,
            Error = Console.Error,
            StartEmbedded = startEmbedded,
            ShowsProgress = !Console.IsErrorRedirected,
            HomeFolder = System.Environment.GetFolderPath(System.Environment.SpecialFolder.UserProfile) is { Length: > 0 } home ? home : null,
            Prompts = !Console.IsInputRedirected && !Console.IsOutputRedirected,
            Environment = System.Environment.GetEnvironmentVariable,
        };
        return local.Length == 0 ? surroundings : surroundings with { DefaultDataFolder = Path.Combine(local, "quarterlight") };
    }

    // Standard output carries answers; logs must not stand between them.
    private static void LogToError(ILoggingBuilder logging)
    {
        logging.AddJsonConsole(o => (o.UseUtcTimestamp, o.TimestampFormat) = (true, "yyyy-MM-dd'T'HH:mm:ss.fff'Z'"));
        logging.AddFilter("Microsoft", LogLevel.Warning);
        logging.Services.Configure<ConsoleLoggerOptions>(o => o.LogToStandardErrorThreshold = LogLevel.Trace);
    }
}
