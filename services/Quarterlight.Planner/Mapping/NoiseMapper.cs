using Quarterlight.Acoustics;
using Quarterlight.Placement;
using Quarterlight.Placement.Noise;
using Quarterlight.Planner.Services;

namespace Quarterlight.Planner.Mapping;

/// <summary>Questions about noise, from the contract.</summary>
internal static class NoiseMapper
{
    /// <summary>A scene that is known to be good; its plan is put in by <see cref="Planned"/>.</summary>
    public static NoiseTask ToDomain(PlanningInput input) => new() { Car = input.Task.NoiseCar, Drive = input.Task.Scene.Drive };

    /// <summary>A car and how it is driven; nobody talks. Everything wrong with it is noted.</summary>
    public static NoiseTask ToDomain(V1.NoiseSetup setup, string at, FieldReader reader)
    {
        if (setup.Cabin is null)
        {
            reader.Add($"{at}.cabin", "the car is missing", "Send one");
        }
        else
        {
            CabinMapper.ToDomain(setup.Cabin, $"{at}.cabin", reader);
        }

        if (setup.DriveConditions is null)
        {
            reader.Add($"{at}.drive_conditions", "it is not said how the car is driven", "Send at least its speed");
        }

        DriveConditions drive = DriveMapper.ToDomain(setup.DriveConditions ?? new V1.DriveConditions(), $"{at}.drive_conditions", reader);
        reader.AddUnsaid(DriveConditionsRules.Validate(drive, $"{at}.drive_conditions"));
        return new NoiseTask { Car = CabinMapper.ToNoiseCar(setup.Cabin ?? new V1.Cabin()), Drive = drive };
    }

    /// <summary>The same question of a scene with its plan.</summary>
    public static NoiseTask Planned(NoiseTask task, PlanningInput? input, Func<PlanningInput, MountPlan> plan) =>
        input is null ? task : task with { Planned = new PlannedScene(input.Task, plan(input)) };
}
