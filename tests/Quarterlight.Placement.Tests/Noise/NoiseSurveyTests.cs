using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Noise;

public class NoiseSurveyTests
{
    [Fact]
    public void Run_NobodyTalks_SaysHowLoudAndGivesNoVerdict()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Unplanned(Questions.Drive(50)));
        Assert.Empty(report.Talkers);
        Assert.Null(report.Verdict);
        Assert.Null(report.FastestWorksKmPerHour);
        Assert.Null(report.FastestWithCareKmPerHour);
        Assert.All(report.Table, r => Assert.Null(r.FastestWorksKmPerHour));
        Assert.All(report.Table.SelectMany(r => r.Cells), c => Assert.True(c.WorstSnrDba is null && c.Verdict is null && c.NoiseDba > 20));
    }

    [Fact]
    public void Run_WorstTalker_Decides()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Planned(Questions.Drive(90)));
        Assert.Equal(2, report.Talkers.Count);
        Assert.Equal(report.Talkers.Max(t => t.Verdict), report.Verdict);
        Assert.Equal(report.Talkers.Min(t => t.SnrDba), Questions.At(Questions.Planned(Questions.Drive(0)), 90).WorstSnrDba!.Value, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(14)]
    public void Run_FastestSpeeds_AreTheHighestThatHoldAndEverythingAboveFails(double louderDb)
    {
        NoiseTask task = Questions.Planned(Questions.Louder(Questions.Drive(50), louderDb));
        NoiseReport report = NoiseSurvey.Run(task);
        SceneVerdict[] bySpeed = [.. Enumerable.Range(0, 131).Select(v => Questions.At(task, v).Verdict!.Value)];
        Assert.Equal(Array.FindLastIndex(bySpeed, v => v == SceneVerdict.Works), (int)report.FastestWorksKmPerHour!.Value);
        Assert.Equal(Array.FindLastIndex(bySpeed, v => v != SceneVerdict.Unusable), (int)report.FastestWithCareKmPerHour!.Value);
        Assert.True(report.FastestWorksKmPerHour <= report.FastestWithCareKmPerHour);
    }

    [Fact]
    public void Run_HopelesslyLoud_HasNoFastestSpeed()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Planned(Questions.Louder(Questions.Drive(50), 40)));
        Assert.Null(report.FastestWorksKmPerHour);
        Assert.Null(report.FastestWithCareKmPerHour);
        Assert.Equal(SceneVerdict.Unusable, report.Verdict);
        Assert.Contains(report.Advisories, a => a.Code == "unusable");
    }

    // The forecast's own gears: just below 20 km/h the engine turns at 2470 rpm, at 20 at 1400.
    [Fact]
    public void Run_GearChangeMakesItQuieter_NamesTheSpeedsBelowThatFail()
    {
        NoiseTask task = Questions.Planned(Questions.Louder(Questions.Drive(0), 5));
        NoiseReport report = NoiseSurvey.Run(task);
        Assert.True(report.FastestWorksKmPerHour >= 20);
        Assert.NotEqual(SceneVerdict.Works, Questions.At(task, 19).Verdict);
        Assert.Contains("18 to 19 ", Assert.Single(report.Advisories, a => a.Code == "low-gear").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(NoiseSurvey.Run(Questions.Planned(Questions.Drive(0))).Advisories, a => a.Code == "low-gear");
        Assert.DoesNotContain(NoiseSurvey.Run(task with { Car = new NoiseCar(true) }).Advisories, a => a.Code == "low-gear");
    }

    // Common practice, no source: fan noise is never acceptable in a take.
    [Fact]
    public void Run_FanOn_IsForecastButNeverWorks()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Planned(Questions.Drive(0) with { FanStep = 1 }));
        Assert.Equal(SceneVerdict.Unusable, report.Verdict);
        Assert.Null(report.FastestWithCareKmPerHour);
        Assert.True(report.Talkers.Min(t => t.SnrDba) > DialogueUsability.ThinBelowDb);
        Assert.Contains(report.Advisories, a => a.Code == "fan-on");
        Assert.DoesNotContain("fan", report.Table[1].Words, StringComparison.Ordinal);
        Assert.NotNull(report.Table[1].FastestWorksKmPerHour);
    }

    // Common practice, no source: windows down at 40 mph is unusable. The levels alone say so too, for a normal and a raised voice.
    [Theory]
    [InlineData(VocalEffort.Normal)]
    [InlineData(VocalEffort.Raised)]
    public void Run_WindowsDownAtFortyMilesAnHour_IsUnusableByLevelsToo(VocalEffort effort)
    {
        DriveConditions drive = Questions.Drive(64.4) with { OpenWindows = Questions.AllDown };
        PlacementTask task = Tasks.Saloon(DriveSide.Left, [], drive, Tasks.Talker("driver", "driver") with { Effort = effort });
        var question = new NoiseTask { Car = task.NoiseCar, Drive = drive, Planned = new PlannedScene(task, PlacementPlanner.Plan(task)) };
        NoiseReport report = NoiseSurvey.Run(question);
        Assert.True(report.Talkers[0].SnrDba < DialogueUsability.UnusableBelowDb, $"{report.Talkers[0].SnrDba}");
        Assert.Equal(SceneVerdict.Unusable, report.Verdict);
        Assert.Contains("wind-shield", Assert.Single(report.Advisories, a => a.Code == "windows-open").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(NoiseSurvey.Run(question with { Drive = drive with { SpeedKmPerHour = 0 } }).Advisories, a => a.Code == "windows-open");
    }

    [Fact]
    public void Run_TalkerWithoutMicrophone_IsNeverFine()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Covering(1, Questions.Drive(0)));
        Assert.Equal(SceneVerdict.WithCare, report.Verdict);
        Assert.Null(report.FastestWorksKmPerHour);
        Assert.NotNull(report.FastestWithCareKmPerHour);
        Assert.Contains("back", Assert.Single(report.Advisories, a => a.Code == "talker-uncovered").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoMicrophoneAtAll_IsUnusable()
    {
        NoiseReport report = NoiseSurvey.Run(Questions.Covering(0, Questions.Drive(0)));
        Assert.Equal(SceneVerdict.Unusable, report.Verdict);
        Assert.Null(report.FastestWithCareKmPerHour);
        Assert.Null(report.Table[0].Cells[0].WorstSnrDba);
    }

    [Fact]
    public void Run_EightyFiveDecibelsAndMore_LimitsTheTime()
    {
        DriveConditions loud = Questions.Drive(130) with { OpenWindows = Questions.AllDown };
        NoiseReport report = NoiseSurvey.Run(Questions.Unplanned(loud));
        Assert.True(report.Noise.LevelDba > 85);
        Assert.Equal(AdvisorySeverity.Safety, Assert.Single(report.Advisories, a => a.Code == "hearing").Severity);
        Assert.DoesNotContain(NoiseSurvey.Run(Questions.Unplanned(Questions.Drive(130))).Advisories, a => a.Code == "hearing");
    }

    // A car and its mirror image, windows swapped, are as loud and as usable. Microphones without direction: the grid of aims is not its own mirror image.
    [Fact]
    public void Run_TheOtherHand_SaysTheSame()
    {
        (NoiseReport left, NoiseReport right) = (Of(DriveSide.Left, "front-left"), Of(DriveSide.Right, "front-right"));
        Assert.Equal(left.FastestWorksKmPerHour, right.FastestWorksKmPerHour);
        Assert.Equal(left.Talkers[0].SnrDba, right.Talkers[0].SnrDba, 1e-6);

        static NoiseReport Of(DriveSide side, string pane)
        {
            DriveConditions drive = Questions.Drive(25) with { OpenWindows = [new WindowOpening(pane, 0.4)] };
            PlacementTask task = Tasks.Saloon(side, [], drive, Tasks.Talker("driver", "driver")) with { Kit = Tasks.Kit with { Microphones = [Tasks.Lav] } };
            return NoiseSurvey.Run(new NoiseTask { Car = task.NoiseCar, Drive = drive, Planned = new PlannedScene(task, PlacementPlanner.Plan(task)) });
        }
    }

    [Fact]
    public void Run_Correction_SaysItIsAGuessElsewhere()
    {
        DriveConditions drive = Questions.Drive(60) with { NoiseCorrection = new NoiseCorrection(BandLevels.Flat(2), "clip of scene 12") };
        Assert.Contains("clip of scene 12", Assert.Single(NoiseSurvey.Run(Questions.Planned(drive)).Advisories, a => a.Code == "noise-from-clip").Message, StringComparison.Ordinal);
        Assert.Equal(2, Questions.At(Questions.Planned(drive), 30).NoiseDba - Questions.At(Questions.Planned(Questions.Drive(60)), 30).NoiseDba, 1e-9);
    }

    [Fact]
    public void Run_Advisories_AreMostImportantFirst() => Assert.All(
        new[] { Questions.Drive(0), Questions.Drive(130) with { OpenWindows = Questions.AllDown, FanStep = 2, EngineRpm = 3000 } },
        d =>
        {
            IReadOnlyList<Advisory> all = NoiseSurvey.Run(Questions.Covering(1, Questions.Louder(d, 3))).Advisories;
            Assert.Equal(all.OrderByDescending(a => a.Severity), all);
            Assert.Equal(all.Count, all.Select(a => a.Code).Distinct().Count());
        });

    [Fact]
    public void Run_NotValid_IsRefusedWhole()
    {
        NoiseTask task = Questions.Unplanned(Questions.Drive(-1)) with { TableSpeedsKmPerHour = [20, 10] };
        InvalidInputException refused = Assert.Throws<InvalidInputException>(() => NoiseSurvey.Run(task));
        Assert.Equal(["drive_conditions.speed_km_per_hour", "table_speeds_km_per_hour[1]"], refused.Violations.Select(v => v.Field));
    }

    [Fact]
    public void Run_PlanOfAnotherTask_IsAProgrammersMistake()
    {
        NoiseTask task = Questions.Planned(Questions.Drive(0));
        PlacementTask other = Tasks.Saloon(Tasks.Talker("stranger", "driver"));
        Assert.Throws<ArgumentException>(() => NoiseSurvey.Run(task with { Planned = task.Planned! with { Task = other } }));
    }
}
