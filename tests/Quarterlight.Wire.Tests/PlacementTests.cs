using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

public sealed class PlacementTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private async Task<PlanPlacementResponse> PlanAsync(PlanPlacementRequest request) =>
        await _planner.Placement.PlanPlacementAsync(request, cancellationToken: Stop);

    private async Task<ExplainSiteResponse> ExplainAsync(ExplainSiteRequest request) =>
        await _planner.Placement.ExplainSiteAsync(request, cancellationToken: Stop);

    [Fact]
    public async Task Plan_Bundle_EveryTalkerHasAMicrophoneAndTheChoiceIsProved()
    {
        Plan plan = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() })).Plan;

        Assert.Equal(["driver", "front", "back"], plan.Best.Placements.Select(p => p.TalkerId));
        Assert.Empty(plan.UncoveredTalkerIds);
        Assert.True(plan.Proof.ProvedOptimal);
        Assert.Equal(plan.Proof.WorstScoreDb, plan.Proof.WorstScoreBoundDb, 9);
        Assert.Equal("", plan.Name);
        Assert.All(plan.Best.Placements, p =>
        {
            Assert.NotEqual("", p.PlaceWords);
            Assert.NotEqual("", p.AimWords);
            Assert.True(p.Figures.SnrDba.PlusMinus > 0, "an absolute figure carries its uncertainty");
            Assert.Contains(p.Fixing, p.Site.PermittedFixings);
            Assert.InRange(p.RecorderInput, 1, 4);
        });
    }

    [Fact]
    public async Task Plan_SameBundleTwice_SamePlan()
    {
        Plan first = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() })).Plan;
        Plan second = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() })).Plan;
        second.CreateTime = first.CreateTime;
        Assert.Equal(first, second);
    }

    [Fact]
    public async Task Plan_PictureAskedFor_PngWithItsWords()
    {
        Picture picture = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle(), IncludePicture = true })).Picture;
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], picture.Png.Take(4));
        Assert.True(picture.WidthPx > 300 && picture.HeightPx > 300);
        Assert.True(picture.TextAlternative.Length > 100);
        Assert.Null((await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() })).Picture);
    }

    [Fact]
    public async Task Plan_KeptScene_KeptUnderItsNameAndReadBackWhole()
    {
        await _planner.KeepSceneAsync("kept");
        Plan made = (await PlanAsync(new PlanPlacementRequest { Scene = "scenes/kept", Keep = true })).Plan;

        Assert.Matches("^plans/kept-[0-9]{6}-[0-9]{6}-[a-z0-9]{4}$", made.Name);
        Assert.Equal(made, (await _planner.Plans.GetPlanAsync(new GetPlanRequest { Name = made.Name }, cancellationToken: Stop)).Plan);
        Assert.Contains(made.Name, (await _planner.Plans.ListPlansAsync(new ListPlansRequest(), cancellationToken: Stop)).Plans.Select(p => p.Name));

        Plan summary = (await _planner.Plans.GetPlanAsync(new GetPlanRequest { Name = made.Name, View = PlanView.Summary }, cancellationToken: Stop)).Plan;
        Assert.Equal(made.Best, summary.Best);
        Assert.Null(summary.Scene);
        Assert.Empty(summary.RefusedSites);

        Plan noted = (await _planner.Plans.UpdatePlanAsync(new UpdatePlanRequest { Name = made.Name, Note = "belt rubs", Revision = 1 }, cancellationToken: Stop)).Plan;
        Assert.Equal(2, noted.Revision);
        Assert.Equal(made.Best, noted.Best);
        Assert.Equal("belt rubs", (await _planner.Plans.GetPlanAsync(new GetPlanRequest { Name = made.Name, View = PlanView.Summary }, cancellationToken: Stop)).Plan.Note);
        Assert.Equal("belt rubs", (await _planner.Plans.GetPlanAsync(new GetPlanRequest { Name = made.Name }, cancellationToken: Stop)).Plan.Note);
        Assert.Equal(StatusCode.Aborted, (await Refused.ByAsync(_planner.Plans.UpdatePlanAsync(new UpdatePlanRequest { Name = made.Name, Note = "late", Revision = 1 }, cancellationToken: Stop))).Code);
        (await Refused.ForFieldsAsync(_planner.Plans.UpdatePlanAsync(new UpdatePlanRequest { Name = made.Name, Note = new string('x', 2001) }, cancellationToken: Stop))).Names("note");
        await _planner.Plans.DeletePlanAsync(new DeletePlanRequest { Name = made.Name }, cancellationToken: Stop);
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Plans.GetPlanAsync(new GetPlanRequest { Name = made.Name }, cancellationToken: Stop))).Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Any Words / at all")]
    public async Task Plan_BundleKeptWhateverItsSceneIsCalled_GetsAnId(string sceneName)
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Scene.Name = sceneName;
        Assert.StartsWith("plans/plan-", (await PlanAsync(new PlanPlacementRequest { Bundle = bundle, Keep = true })).Plan.Name, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_Changes_AnswerChangesAndTheKeptSceneDoesNot()
    {
        Scene scene = await _planner.KeepSceneAsync("changing");
        Plan before = (await PlanAsync(new PlanPlacementRequest { Scene = scene.Name })).Plan;
        var changes = new SceneChanges
        {
            DriveConditions = new DriveConditions { SpeedKmPerHour = 64, OpenWindows = { new WindowOpening { PaneId = "front-left", OpenFraction = 1 } } },
            Shots = { Samples.Shot("A") },
            RemovedMicrophoneIds = { "lav" },
        };

        Plan after = (await PlanAsync(new PlanPlacementRequest { Scene = scene.Name, Changes = changes })).Plan;

        Assert.True(after.CabinNoiseDba.Value > before.CabinNoiseDba.Value + 3, "an open window at speed is louder");
        Assert.DoesNotContain("lav", after.Best.Placements.Select(p => p.MicrophoneId));
        Assert.Single(after.Scene.Shots);
        Assert.Equal(scene, (await _planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = scene.Name }, cancellationToken: Stop)).Scene);
        Plan withoutShot = (await PlanAsync(new PlanPlacementRequest { Scene = scene.Name })).Plan;
        withoutShot.CreateTime = before.CreateTime;
        Assert.Equal(before, withoutShot);
    }

    [Fact]
    public async Task Plan_UnknownIdsInChanges_NameTheFields()
    {
        Scene scene = await _planner.KeepSceneAsync("unknown");
        var changes = new SceneChanges { RemovedShotIds = { "Z" }, RemovedMicrophoneIds = { "lav", "nothing" } };
        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Changes = changes }, cancellationToken: Stop));
        refused.Names("changes.removed_shot_ids[0]");
        refused.Names("changes.removed_microphone_ids[1]");

        async Task Names(SceneChanges wrong, string field) =>
            (await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = scene.Name, Changes = wrong }, cancellationToken: Stop))).Names(field);

        await Names(new SceneChanges { RemovedSiteIds = { "moon" } }, "changes.removed_site_ids[0]");
        await Names(new SceneChanges { Cabin = "cabins/none" }, "changes.cabin");
        await Names(new SceneChanges { Kit = "nonsense" }, "changes.kit");
        await Names(new SceneChanges { DriveConditions = new DriveConditions { FanStep = 9 } }, "changes.drive_conditions.fan_step");
        Shot lensless = Samples.Shot("B");
        lensless.FocalLengthMm = -1;
        await Names(new SceneChanges { Shots = { Samples.Shot("A"), lensless } }, "changes.shots[1].focal_length_mm");
    }

    [Fact]
    public async Task Plan_UnknownScene_NotFoundAndBadNameNamesTheField()
    {
        Assert.Equal(StatusCode.NotFound, (await Refused.ByAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = "scenes/none" }, cancellationToken: Stop))).Code);
        (await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Scene = "none" }, cancellationToken: Stop))).Names("scene");
        (await Refused.ForFieldsAsync(_planner.Placement.ExplainSiteAsync(new ExplainSiteRequest { Plan = "none" }, cancellationToken: Stop))).Names("plan");
        var changes = new SceneChanges { Cabin = "cabins/x" };
        (await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Samples.Bundle(), Changes = changes }, cancellationToken: Stop))).Names("changes.cabin");
    }

    [Fact]
    public async Task Explain_ChosenAndOtherSite_TellsWhyInNumbers()
    {
        Plan plan = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle(), Keep = true })).Plan;
        TalkerPlacement driver = plan.Best.Placements[0];

        ExplainSiteResponse chosen = await ExplainAsync(new ExplainSiteRequest { Plan = plan.Name, SiteId = driver.Site.Id, TalkerId = "driver" });
        Assert.True(chosen.Chosen);
        Assert.NotEqual("", chosen.Summary);

        var sites = await _planner.Placement.ListMountSitesAsync(new ListMountSitesRequest { Cabin = Samples.Cabin() }, cancellationToken: Stop);
        HashSet<string> refusedIds = [.. plan.RefusedSites.Select(r => r.SiteId)];
        HashSet<string> usedIds = [.. plan.Best.Placements.Select(p => p.Site.Id)];
        MountSite other = sites.Sites.First(s => !refusedIds.Contains(s.Id) && !usedIds.Contains(s.Id));
        ExplainSiteResponse why = await ExplainAsync(new ExplainSiteRequest { Plan = plan.Name, SiteId = other.Id, TalkerId = "driver" });
        Assert.False(why.Chosen);
        Assert.Equal(driver.Site.Id, why.Comparison.Chosen.Site.Id);
        Assert.Equal(why.Comparison.There.Figures.ScoreDb - why.Comparison.Chosen.Figures.ScoreDb, why.Comparison.ScoreDifferenceDb, 9);

        ExplainSiteResponse refused = await ExplainAsync(new ExplainSiteRequest { Bundle = Samples.Bundle(), SiteId = plan.RefusedSites[0].SiteId, TalkerId = "driver" });
        Assert.NotEmpty(refused.Refused.Reasons);

        (await Refused.ForFieldsAsync(_planner.Placement.ExplainSiteAsync(new ExplainSiteRequest { Plan = plan.Name, SiteId = "moon", TalkerId = "driver" }, cancellationToken: Stop))).Names("site_id");
        (await Refused.ForFieldsAsync(_planner.Placement.ExplainSiteAsync(new ExplainSiteRequest { Plan = plan.Name, SiteId = other.Id, TalkerId = "nobody" }, cancellationToken: Stop))).Names("talker_id");
    }

    [Fact]
    public async Task Explain_PlanThatLeftASiteOut_StillLeavesItOut()
    {
        await _planner.KeepSceneAsync("without");
        Plan first = (await PlanAsync(new PlanPlacementRequest { Scene = "scenes/without" })).Plan;
        string favorite = first.Best.Placements[0].Site.Id;
        Plan second = (await PlanAsync(new PlanPlacementRequest { Scene = "scenes/without", Keep = true, Changes = new SceneChanges { RemovedSiteIds = { favorite } } })).Plan;
        Assert.DoesNotContain(favorite, second.Best.Placements.Select(p => p.Site.Id));
        Assert.Equal([favorite], second.RemovedSiteIds);

        ExplainSiteResponse chosen = await ExplainAsync(new ExplainSiteRequest { Plan = second.Name, SiteId = second.Best.Placements[0].Site.Id, TalkerId = second.Best.Placements[0].TalkerId });
        Assert.True(chosen.Chosen, "the explanation is of the plan that was kept");
    }

    [Fact]
    public async Task Explain_PlanWhoseSceneChangedLater_ExplainsThePlanAsKept()
    {
        Scene scene = await _planner.KeepSceneAsync("later");
        Plan plan = (await PlanAsync(new PlanPlacementRequest { Scene = scene.Name, Keep = true })).Plan;
        scene.Talkers.RemoveAt(0);
        await _planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: Stop);

        Assert.True((await ExplainAsync(new ExplainSiteRequest { Plan = plan.Name, SiteId = plan.Best.Placements[0].Site.Id, TalkerId = "driver" })).Chosen);
    }

    [Fact]
    public async Task ListMountSites_Saloon_SixtyOrMoreAllDifferent()
    {
        ListMountSitesResponse sites = await _planner.Placement.ListMountSitesAsync(new ListMountSitesRequest { Cabin = Samples.Cabin() }, cancellationToken: Stop);
        Assert.InRange(sites.Sites.Select(s => s.Id).Distinct().Count(), 60, int.MaxValue);
        Assert.Equal("driver", sites.Seats[0].Id);
        Assert.True(sites.Measurements.ShoulderWidthM > 1);
        Assert.DoesNotContain(sites.Sites, s => s.Family == MountFamily.Unspecified || s.Material == SurfaceMaterial.Unspecified || s.VibrationGrade == VibrationGrade.Unspecified);
        (await Refused.ForFieldsAsync(_planner.Placement.ListMountSitesAsync(new ListMountSitesRequest { Cabin = new V1.Cabin() }, cancellationToken: Stop))).Names("cabin.body_style");
    }

    [Fact]
    public async Task DrawPlan_KeptOrSent_SamePictureAndUnknownOptionNamesTheField()
    {
        Plan plan = (await PlanAsync(new PlanPlacementRequest { Bundle = Samples.Bundle(), Keep = true })).Plan;
        ByteString kept = (await _planner.Placement.DrawPlanAsync(new DrawPlanRequest { Name = plan.Name }, cancellationToken: Stop)).Picture.Png;
        ByteString sent = (await _planner.Placement.DrawPlanAsync(new DrawPlanRequest { Plan = plan }, cancellationToken: Stop)).Picture.Png;
        Assert.Equal(kept, sent);
        Assert.NotEmpty(plan.RunnersUp);
        Assert.NotEqual(kept, (await _planner.Placement.DrawPlanAsync(new DrawPlanRequest { Plan = plan, OptionIndex = 1 }, cancellationToken: Stop)).Picture.Png);
        (await Refused.ForFieldsAsync(_planner.Placement.DrawPlanAsync(new DrawPlanRequest { Plan = plan, OptionIndex = 9 }, cancellationToken: Stop))).Names("option_index");
        (await Refused.ForFieldsAsync(_planner.Placement.DrawPlanAsync(new DrawPlanRequest { Plan = plan, OptionIndex = -1 }, cancellationToken: Stop))).Names("option_index");
    }
}
