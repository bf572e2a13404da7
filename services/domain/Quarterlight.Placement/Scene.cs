using Quarterlight.Acoustics;
using Quarterlight.Cabin;

namespace Quarterlight.Placement;

/// <summary>Someone who speaks in the scene.</summary>
public sealed record Talker
{
    /// <summary>Id within the scene.</summary>
    public required string Id { get; init; }

    /// <summary>What the crew calls them: a role.</summary>
    public required string DisplayName { get; init; }

    /// <summary>Seat id of the cabin.</summary>
    public required string SeatId { get; init; }

    /// <summary>How hard they speak.</summary>
    public required VocalEffort Effort { get; init; }

    /// <summary>Head poses, 1 to 8; shares sum to 1 within 0.001.</summary>
    public required IReadOnlyList<HeadPose> HeadPoses { get; init; }

    /// <summary>True when nothing may be worn on clothing.</summary>
    public bool NoBodyWorn { get; init; }
}

/// <summary>A scene to record: who talks, where they sit and look, what the cameras see, how the car is driven.</summary>
public sealed record Scene
{
    /// <summary>Who talks, 1 to 8, ids and seats distinct.</summary>
    public required IReadOnlyList<Talker> Talkers { get; init; }

    /// <summary>Camera set-ups, 0 to 16, ids distinct.</summary>
    public IReadOnlyList<Shot> Shots { get; init; } = [];

    /// <summary>Seats taken by people who do not talk.</summary>
    public IReadOnlyList<string> SilentSeatIds { get; init; } = [];

    /// <summary>How the car is driven.</summary>
    public required DriveConditions Drive { get; init; }

    /// <summary>Site ids left out by request.</summary>
    public IReadOnlyList<string> RemovedSiteIds { get; init; } = [];
}
