using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Placement.Tests.Noise;

/// <summary>One trace and a sum against the planner's own way: the two must be the same figures.</summary>
public class NoiseFieldTests
{
    private static readonly PlacementTask s_task = Tasks.Saloon(
        Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.6), Tasks.Turned(-40, 0.4)),
        Tasks.Talker("front", "front-passenger"),
        Tasks.Talker("back", "rear-left") with { NoBodyWorn = false }) with
    {
        Kit = Tasks.Kit with { Microphones = [Tasks.Lav, Tasks.Supercardioid, Tasks.Tube] },
    };

    private static readonly MountPlan s_plan = PlacementPlanner.Plan(s_task);

    [Fact]
    public void Talkers_AsPlanned_AreThePlansOwnFigures()
    {
        NoiseReport report = NoiseSurvey.Run(Question(s_task.Scene.Drive));
        Assert.Equal(s_plan.Best.Placements.Count, report.Talkers.Count);
        foreach ((TalkerPlacement planned, TalkerNoise now) in s_plan.Best.Placements.Zip(report.Talkers))
        {
            Assert.Equal(planned.TalkerId, now.TalkerId);
            AssertSame(planned.Figures, now);
        }

        Assert.Equal(s_plan.CabinNoiseDba.Value, report.Noise.LevelDba, 1e-9);
        Assert.Equal(s_plan.CabinNoiseDba.PlusMinus, report.Noise.UncertaintyDb, 1e-9);
    }

    // Seeded: any conditions, against figures worked out by the planner's sheet for the same placements in those conditions.
    [Fact]
    public void Talkers_AnyConditions_AreWhatAPlanOfTheSamePlacementsWouldSay()
    {
        var random = new Random(17);
        for (int i = 0; i < 40; i++)
        {
            DriveConditions drive = Conditions(random);
            NoiseReport report = NoiseSurvey.Run(Question(drive));
            var fields = new SpotFields(s_task with { Scene = s_task.Scene with { Drive = drive } }, PlacementOptions.Default);
            var sheet = new FigureSheet(fields, PlacementOptions.Default);
            foreach ((TalkerPlacement placement, TalkerNoise now) in s_plan.Best.Placements.Zip(report.Talkers))
            {
                int talker = s_task.Scene.Talkers.ToList().FindIndex(t => t.Id == placement.TalkerId);
                int wearer = placement.Site.Family == MountFamily.BodyWorn ? talker : -1;
                var spot = new MountSpot(placement.Site, placement.Capsule, wearer);
                Microphone microphone = s_task.Kit.Microphones.Single(m => m.Id == placement.MicrophoneId);
                AssertSame(sheet.For(spot, microphone, placement.Aim, talker, 0, 0, null), now);
            }

            SpeedNoise cell = report.Table[0].Cells.Single();
            Assert.Equal(report.Noise.LevelDba, cell.NoiseDba, 1e-9);
            Assert.Equal(report.Talkers.Min(t => t.SnrDba), cell.WorstSnrDba!.Value, 1e-9);
        }
    }

    private static NoiseTask Question(DriveConditions drive) => new()
    {
        Car = s_task.NoiseCar,
        Drive = drive,
        Planned = new PlannedScene(s_task, s_plan),
        TableSpeedsKmPerHour = [drive.SpeedKmPerHour],
    };

    private static void AssertSame(PlacementFigures expected, TalkerNoise now)
    {
        for (int b = 0; b < 7; b++)
        {
            Assert.Equal(expected.NoiseLevelsDb[b], now.NoiseLevelsDb[b], 1e-9);
            Assert.Equal(expected.SpeechLevelsDb[b], now.SpeechLevelsDb[b], 1e-9);
        }

        Assert.Equal(expected.SnrDba.Value, now.SnrDba, 1e-9);
    }

    private static DriveConditions Conditions(Random random) => new()
    {
        SpeedKmPerHour = random.Next(4) == 0 ? 0 : Math.Round(random.NextDouble() * 130, 1),
        Road = (RoadSurface)random.Next(5),
        Rain = (Rain)random.Next(3),
        FanStep = random.Next(5),
        Engine = (EngineState)random.Next(2),
        OpenWindows = [.. DriveConditionsRules.PaneIds.Where(_ => random.Next(2) == 0).Select(p => new WindowOpening(p, random.NextDouble()))],
        NoiseCorrection = random.Next(3) == 0 ? new NoiseCorrection(new(1, -2, 3, 0.5, -4, 2, 1), "clip") : null,
    };
}
