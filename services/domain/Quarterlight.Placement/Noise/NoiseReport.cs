using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>Whether dialogue recorded so can be used.</summary>
public enum SceneVerdict
{
    /// <summary>It works.</summary>
    Works,

    /// <summary>With care: have a wild track and wild lines.</summary>
    WithCare,

    /// <summary>Not usable.</summary>
    Unusable,
}

/// <summary>Everything one question about noise is about.</summary>
public sealed record NoiseTask
{
    /// <summary>The car.</summary>
    public required NoiseCar Car { get; init; }

    /// <summary>How it is driven.</summary>
    public required DriveConditions Drive { get; init; }

    /// <summary>The scene as planned, and its plan; null when nobody talks and there is nothing to judge by.</summary>
    public PlannedScene? Planned { get; init; }

    /// <summary>Side windows of the car that wind down; the cabin's own take their place when there is a plan.</summary>
    public IReadOnlyList<string> MovablePaneIds { get; init; } = DriveConditionsRules.PaneIds;

    /// <summary>Speeds of the table, km/h, 1 to 12 of 0 to 130, rising.</summary>
    public IReadOnlyList<double> TableSpeedsKmPerHour { get; init; } = [0, 20, 30, 50, 60, 80, 100, 120];
}

/// <summary>A scene with its plan, whose microphones stay where they are while the conditions change.</summary>
/// <param name="Task">The scene as planned; its drive conditions are those of the question.</param>
/// <param name="Plan">Its plan.</param>
public sealed record PlannedScene(PlacementTask Task, MountPlan Plan);

/// <summary>A talker's speech beside the noise on the planned microphone.</summary>
/// <param name="TalkerId">Talker of the scene.</param>
/// <param name="DisplayName">What the crew calls them.</param>
/// <param name="SpeechLevelsDb">Speech at the microphone's output by octave, dB re 20 µPa.</param>
/// <param name="NoiseLevelsDb">Noise at the microphone's output by octave, dB re 20 µPa.</param>
/// <param name="SnrDba">Speech over noise, dB(A).</param>
/// <param name="Verdict">Verdict.</param>
public sealed record TalkerNoise(string TalkerId, string DisplayName, BandLevels SpeechLevelsDb, BandLevels NoiseLevelsDb, double SnrDba, SceneVerdict Verdict);

/// <summary>The noise at one speed.</summary>
/// <param name="SpeedKmPerHour">Speed, km/h.</param>
/// <param name="NoiseDba">At the driver's ear, dB(A).</param>
/// <param name="WorstSnrDba">Worst talker's speech over noise, dB(A); null when nobody talks.</param>
/// <param name="Verdict">Verdict; null when nobody talks.</param>
/// <param name="DominantWords">Words of what is loudest, A-weighted.</param>
public sealed record SpeedNoise(double SpeedKmPerHour, double NoiseDba, double? WorstSnrDba, SceneVerdict? Verdict, string DominantWords);

/// <summary>One row of the table: the same speeds under other conditions.</summary>
/// <param name="Words">In words, such as "windows shut, rain".</param>
/// <param name="Cells">One for each speed of the table.</param>
/// <param name="FastestWorksKmPerHour">Fastest whole step at which it works, km/h; null when none does or nobody talks.</param>
public sealed record NoiseRow(string Words, IReadOnlyList<SpeedNoise> Cells, double? FastestWorksKmPerHour);

/// <summary>The answer about noise.</summary>
public sealed record NoiseReport
{
    /// <summary>As asked.</summary>
    public required CabinNoise Noise { get; init; }

    /// <summary>Each talker on the planned microphone; empty when nobody talks.</summary>
    public required IReadOnlyList<TalkerNoise> Talkers { get; init; }

    /// <summary>Verdict as asked; null when nobody talks.</summary>
    public SceneVerdict? Verdict { get; init; }

    /// <summary>Fastest speed at which the scene works, km/h; null when none does.</summary>
    public double? FastestWorksKmPerHour { get; init; }

    /// <summary>Fastest speed at which it works with care, km/h; null when none does.</summary>
    public double? FastestWithCareKmPerHour { get; init; }

    /// <summary>The table for the assistant director; the conditions asked about first.</summary>
    public required IReadOnlyList<NoiseRow> Table { get; init; }

    /// <summary>What to be careful about, most important first.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
