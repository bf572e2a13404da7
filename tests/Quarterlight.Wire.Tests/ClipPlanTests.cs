using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Clips held against a plan.</summary>
public sealed class ClipPlanTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task PlanPlacement_Planned_LevelsByOctaveAddUpToTheFigures()
    {
        Plan plan = await PlanAsync("levels");
        foreach (TalkerPlacement placement in plan.Best.Placements)
        {
            Assert.Equal(7, placement.Figures.SpeechLevels.LevelsDb.Count);
            Assert.Equal(placement.Figures.NoiseDba.Value, AWeighted(placement.Figures.NoiseLevels), 0.01);
            Assert.True(AWeighted(placement.Figures.SelfNoiseLevels) < placement.Figures.NoiseDba.Value);
        }
    }

    [Fact]
    public async Task JudgeClip_OneChannelAndATalker_ComparedWithThatMicrophone()
    {
        Plan plan = await PlanAsync("mono");
        ClipReport report = await _planner.ReportAsync(Waves.Talk(6), new ClipHeader { Plan = plan.Name, TalkerId = "back" });
        PlanComparison comparison = Assert.Single(report.Comparisons);
        TalkerPlacement placement = plan.Best.Placements.Single(p => p.TalkerId == "back");
        Assert.Equal(1, comparison.Channel);
        Assert.Equal("back", comparison.TalkerId);
        Assert.Equal(placement.MicrophoneId, comparison.MicrophoneId);
        Assert.Equal(placement.Figures.NoiseDba.Value, comparison.NoiseDba.PredictedDb, 0.01);
        Assert.True(comparison.TiedToSpeech);
        Assert.Equal(7, comparison.Bands.Count);
        Assert.NotEqual("", comparison.Words);
    }

    [Fact]
    public async Task JudgeClip_OneChannelAndNoTalker_TalkersListed()
    {
        Plan plan = await PlanAsync("which");
        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync(Waves.Talk(1), new ClipHeader { Plan = plan.Name }));
        refused.Names("header.talker_id");
        Assert.Contains("driver, front, back", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task JudgeClip_TalkerNotInThePlan_TalkersListed()
    {
        Plan plan = await PlanAsync("stranger");
        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync(Waves.Talk(1), new ClipHeader { SentPlan = plan, TalkerId = "cousin" }));
        refused.Names("header.talker_id");
        Assert.Contains("driver, front, back", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task JudgeClip_SeveralChannels_EachIsTheRecorderInputOfItsNumber()
    {
        Plan plan = await PlanAsync("poly");
        byte[] file = Waves.Talk(4, 2);
        ClipReport report = await _planner.ReportAsync(file, new ClipHeader { SentPlan = plan, FullScaleSplDb = 120 });
        Assert.Equal([1, 2], report.Comparisons.Select(c => c.Channel));
        Assert.All(report.Comparisons, c => Assert.Equal(plan.Best.Placements.Single(p => p.RecorderInput == c.Channel).TalkerId, c.TalkerId));
        Assert.All(report.Comparisons, c => Assert.False(c.TiedToSpeech));
        Assert.All(report.Comparisons, c => Assert.Equal(120, c.FullScaleSplDb));
    }

    [Fact]
    public async Task JudgeClip_KeptScene_PlannedFirst()
    {
        Scene scene = await _planner.KeepSceneAsync("scene-first");
        ClipReport report = await _planner.ReportAsync(Waves.Talk(4, 2), new ClipHeader { Scene = scene.Name, TalkerId = "driver" });
        Assert.All(report.Comparisons, c => Assert.Equal("driver", c.TalkerId));
        // The car has an engine of four cylinders when nothing else is said.
        Assert.All(report.Channels, c => Assert.Equal(4, c.Engine.Cylinders));
    }

    [Fact]
    public async Task JudgeClip_PlanWithoutLevels_AdvisoryInsteadOfAComparison()
    {
        Plan plan = await PlanAsync("old");
        foreach (TalkerPlacement placement in plan.Best.Placements)
        {
            placement.Figures.SpeechLevels = null;
        }

        ClipReport report = await _planner.ReportAsync(Waves.Talk(2), new ClipHeader { SentPlan = plan, TalkerId = "driver" });
        Assert.Empty(report.Comparisons);
        Assert.Contains("plan-without-levels", report.Advisories.Select(a => a.Code));
    }

    [Fact]
    public async Task JudgeClip_SentPlanWithWrongLevels_FieldNamed()
    {
        Plan plan = await PlanAsync("wrong");
        plan.Best.Placements[1].Figures.NoiseLevels.LevelsDb[3] = double.NaN;
        plan.Best.Placements[2].Figures.SpeechLevels.LevelsDb.Add(1);
        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync(Waves.Talk(1), new ClipHeader { SentPlan = plan, TalkerId = "driver" }));
        refused.Names("header.sent_plan.best.placements[1].figures.noise_levels.levels_db[3]");
        refused.Names("header.sent_plan.best.placements[2].figures.speech_levels.levels_db");
    }

    [Fact]
    public async Task NoiseCorrection_PutIntoTheScene_ShiftsTheForecast()
    {
        SceneBundle bundle = Samples.Bundle();
        Plan before = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop)).Plan;
        bundle.Scene.DriveConditions.NoiseCorrection = new NoiseCorrection { Source = "clip of the lay-by", Shifts = new OctaveLevels { LevelsDb = { 6, 6, 6, 6, 6, 6, 6 } } };
        Plan after = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop)).Plan;
        Assert.Equal(6, after.CabinNoiseDba.Value - before.CabinNoiseDba.Value, 0.01);

        bundle.Scene.DriveConditions.NoiseCorrection = new NoiseCorrection { Shifts = new OctaveLevels { LevelsDb = { 50, 0, 0, 0, 0, 0, 0 } } };
        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop));
        refused.Names("bundle.scene.drive_conditions.noise_correction.shifts.levels_db[0]");
        bundle.Scene.DriveConditions.NoiseCorrection = new NoiseCorrection { Source = "empty" };
        refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop));
        refused.Names("bundle.scene.drive_conditions.noise_correction.shifts.levels_db");
    }

    // Octave A-weighting, IEC 61672-1:2013 table 3, 125 Hz to 8 kHz.
    private static double AWeighted(OctaveLevels levels)
    {
        double[] weights = [-16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1];
        return 10 * Math.Log10(levels.LevelsDb.Zip(weights).Sum(l => Math.Pow(10, (l.First + l.Second) / 10)));
    }

    private async Task<Plan> PlanAsync(string word)
    {
        Scene scene = await _planner.KeepSceneAsync(word);
        return (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Keep = true }, cancellationToken: Stop)).Plan;
    }
}
