using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Noise;

/// <summary>Invented questions about noise: a saloon with two talkers, planned once.</summary>
internal static class Questions
{
    private static readonly PlacementTask s_task = Tasks.Saloon(
        DriveSide.Left, [], new DriveConditions { SpeedKmPerHour = 50 }, Tasks.Talker("driver", "driver"), Tasks.Talker("back", "rear-right"));

    private static readonly MountPlan s_plan = PlacementPlanner.Plan(s_task);

    public static WindowOpening[] AllDown { get; } = [.. DriveConditionsRules.PaneIds.Select(p => new WindowOpening(p, 1))];

    public static DriveConditions Drive(double speed) => new() { SpeedKmPerHour = speed };

    /// <summary>All noise louder by as many dB: moves the verdicts where a test wants them.</summary>
    public static DriveConditions Louder(DriveConditions drive, double db) => drive with { NoiseCorrection = new NoiseCorrection(BandLevels.Flat(db), "") };

    public static NoiseTask Planned(DriveConditions drive) => new() { Car = s_task.NoiseCar, Drive = drive, Planned = new PlannedScene(s_task, s_plan) };

    public static NoiseTask Unplanned(DriveConditions drive) => new() { Car = s_task.NoiseCar, Drive = drive };

    /// <summary>The same with microphones for the first few talkers only.</summary>
    public static NoiseTask Covering(int talkers, DriveConditions drive) => Planned(drive) with
    {
        Planned = new PlannedScene(s_task, s_plan with { Best = s_plan.Best with { Placements = [.. s_plan.Best.Placements.Take(talkers)] } }),
    };

    public static SpeedNoise At(NoiseTask task, double speed) => new NoiseBoard(task, PlacementOptions.Default).At(task.Drive with { SpeedKmPerHour = speed });
}
