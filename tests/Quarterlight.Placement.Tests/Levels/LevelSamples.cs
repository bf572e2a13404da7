using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement.Levels;

namespace Quarterlight.Placement.Tests.Levels;

/// <summary>Invented plans and gear for the tests.</summary>
internal static class LevelSamples
{
    public static RecorderGain Recorder { get; } = new() { FullScaleDbu = 20, GainMinDb = 6, GainMaxDb = 76, InputNoiseDbu = -128, DynamicRangeDb = 115 };

    public static TransmitterAudio Bodypack { get; } = new()
    {
        Id = "pack",
        DisplayName = "Bodypack",
        Feed = TransmitterFeed.Microphone,
        Modulation = TransmitterModulation.Digital,
        FullModulationDbu = -10,
        GainMinDb = -20,
        GainMaxDb = 40,
        DynamicRangeDb = 105,
    };

    public static TransmitterAudio Send { get; } = Bodypack with { Id = "send", DisplayName = "Send", Feed = TransmitterFeed.Recorder, FullModulationDbu = 12, GainMinDb = -30, GainMaxDb = 30 };

    /// <summary>Two talkers, each with a microphone on the clothing.</summary>
    public static LevelTask Worn { get; } = Make(VocalEffort.Normal);

    public static LevelTask Make(VocalEffort effort)
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("driver", "driver") with { NoBodyWorn = false, Effort = effort }, Tasks.Talker("front", "front-passenger") with { NoBodyWorn = false, Effort = effort });
        task = task with { Kit = task.Kit with { Microphones = [Tasks.Lav], FixingCounts = new Dictionary<Fixings, int> { [Fixings.BodyMount] = 4 } } };
        return new LevelTask { Placement = task, Plan = PlacementPlanner.Plan(task), Recorder = Recorder };
    }

    public static LevelTask WithMicrophone(this LevelTask task, Func<Microphone, Microphone> change) =>
        task with { Placement = task.Placement with { Kit = task.Placement.Kit with { Microphones = [.. task.Placement.Kit.Microphones.Select(change)] } } };

    public static LevelTask WithInputs(this LevelTask task, int count) =>
        task with { Placement = task.Placement with { Kit = task.Placement.Kit with { RecorderInputCount = count } } };

    public static LevelTask WithFigures(this LevelTask task, Func<PlacementFigures, PlacementFigures> change) => task.WithPlacements(p => p with { Figures = change(p.Figures) });

    public static LevelTask WithPlacements(this LevelTask task, Func<TalkerPlacement, TalkerPlacement> change) =>
        task with { Plan = task.Plan with { Best = task.Plan.Best with { Placements = [.. task.Plan.Best.Placements.Select(change)] } } };
}
