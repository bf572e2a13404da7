using System.Net;

namespace Quarterlight.Planner;

/// <summary>How a planner is started.</summary>
public sealed record PlannerHostOptions
{
    /// <summary>Folder the store lives in; made when missing.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Address to listen on. Anything but loopback needs <see cref="KeyHashByTeam"/> or <see cref="KeyHashByDelegate"/>.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>Port for gRPC (HTTP/2 without TLS); 0 takes any free one.</summary>
    public int GrpcPort { get; init; }

    /// <summary>Port for JSON and the OpenAPI page (HTTP/1); 0 takes any free one, null offers none.</summary>
    public int? HttpPort { get; init; }

    /// <summary>SHA-256 of each team's key, in hex; empty, with no delegate either, asks for none.</summary>
    public IReadOnlyDictionary<string, string> KeyHashByTeam { get; init; } = new Dictionary<string, string>();

    /// <summary>SHA-256 of the key of each delegate, in hex: it acts for the teams whose ids begin with its name and a dash.</summary>
    public IReadOnlyDictionary<string, string> KeyHashByDelegate { get; init; } = new Dictionary<string, string>();

    /// <summary>True logs nothing below warnings.</summary>
    public bool Quiet { get; init; }

    /// <summary>True stops at Ctrl+C and SIGTERM, for a planner that has its process to itself.</summary>
    public bool StopOnSignals { get; init; }

    /// <summary>Longest a call may take that uploads nothing. Default 30 s.</summary>
    public TimeSpan CallLimit { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Largest message in bytes, either way. Default 4 MiB.</summary>
    public int LargestMessageBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Most plans under way or waiting. Default 64.</summary>
    public int MostWaitingPlans { get; init; } = 64;

    /// <summary>Longest an upload may take with all that is done with it. Default 10 minutes.</summary>
    public TimeSpan UploadLimit { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>Longest wait for the next byte of an upload. Default 30 s.</summary>
    public TimeSpan UploadIdleLimit { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Most clips under way at once. Default 32.</summary>
    public int MostClips { get; init; } = 32;

    /// <summary>Full path of the ffmpeg program; null looks for it on PATH.</summary>
    public string? FfmpegPath { get; init; }
}
