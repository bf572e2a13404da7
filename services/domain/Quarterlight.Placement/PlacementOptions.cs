namespace Quarterlight.Placement;

/// <summary>The tuning of score and search. Immutable; every default is pinned by a test and explained in docs/models/score.md.</summary>
public sealed record PlacementOptions
{
    /// <summary>The defaults.</summary>
    public static PlacementOptions Default { get; } = new();

    /// <summary>Highest order of image sources, 1 to 8. Default 3: 63 images.</summary>
    public int ImageOrder { get; init; } = 3;

    /// <summary>Paths up to this much longer than the direct one, in metres, count as useful. Default 1.7 m, 5 ms (judgement).</summary>
    public double EarlyPathExcessM { get; init; } = 1.7;

    /// <summary>Share of the time that other talkers speak over this one, 0 to 1. Default 0.3 (judgement).</summary>
    public double OverlapFraction { get; init; } = 0.3;

    /// <summary>Pull of the worst head pose on the average, 0 to 1. Default 0.3 (judgement).</summary>
    public double WorstPosePull { get; init; } = 0.3;

    /// <summary>Margin around a camera's frame as a share of its half width, 0 to 0.5. Default 0.05 (judgement).</summary>
    public double FrameMarginFraction { get; init; } = 0.05;

    /// <summary>Least distance in metres from a head's surface to the capsule. Default 0.08 m (judgement).</summary>
    public double HeadClearanceM { get; init; } = 0.08;

    /// <summary>Distance in metres of the capsule from its surface. Default 0.03 m (judgement).</summary>
    public double StandoffM { get; init; } = 0.03;

    /// <summary>Distance in metres of the capsule from its surface on an articulated arm. Default 0.10 m (judgement).</summary>
    public double ArmStandoffM { get; init; } = 0.10;

    /// <summary>Most degrees between a directional aim and the talker's mouth. Default 35 (judgement).</summary>
    public double MostOffAxisDeg { get; init; } = 35;

    /// <summary>The same for an interference tube, whose lobe is narrow. Default 12 (judgement).</summary>
    public double MostOffAxisTubeDeg { get; init; } = 12;

    /// <summary>The same for each of several talkers who share a microphone. Default 60 (judgement).</summary>
    public double MostOffAxisSharedDeg { get; init; } = 60;

    /// <summary>Most branches the exact search may look into before it stops and states the gap. Default 400,000.</summary>
    public long NodeLimit { get; init; } = 400_000;
}
