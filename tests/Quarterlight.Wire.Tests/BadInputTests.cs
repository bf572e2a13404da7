using Quarterlight.Quantities;
using Quarterlight.V1;
using CabinBuilder = Quarterlight.Cabin.CabinBuilder;
using CabinSpec = Quarterlight.Cabin.CabinSpec;

namespace Quarterlight.Wire.Tests;

/// <summary>What a crew can get wrong: each is refused naming the field, and nobody ever sees an exception.</summary>
public sealed class BadInputTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Dictionary<string, (Action<SceneBundle> Spoil, string Field)> s_wrong = new()
    {
        ["negative width"] = (b => b.Cabin.Measurements = Measured(m => m.ShoulderWidthM = -1.4), "cabin.measurements.shoulder_width_m"),
        ["absurd height"] = (b => b.Cabin.Measurements = Measured(m => m.FrontHeightM = 40), "cabin.measurements.front_height_m"),
        ["width is not a number"] = (b => b.Cabin.Measurements = Measured(m => m.ShoulderWidthM = double.NaN), "cabin.measurements.shoulder_width_m"),
        ["endless width"] = (b => b.Cabin.Measurements = Measured(m => m.ShoulderWidthM = double.PositiveInfinity), "cabin.measurements.shoulder_width_m"),
        ["no body"] = (b => b.Cabin.BodyStyle = BodyStyle.Unspecified, "cabin.body_style"),
        ["unknown body"] = (b => b.Cabin.BodyStyle = (BodyStyle)99, "cabin.body_style"),
        ["impossible enum"] = (b => b.Cabin.DriveSide = (DriveSide)int.MinValue, "cabin.drive_side"),
        ["cylinders"] = (b => b.Cabin.CylinderCount = -3, "cabin.cylinder_count"),
        ["shares"] = (b => b.Scene.Talkers[1].HeadPoses[0].ShareFraction = 0.7, "scene.talkers[1].head_poses"),
        ["share is not a number"] = (b => b.Scene.Talkers[0].HeadPoses[0].ShareFraction = double.NaN, "scene.talkers[0].head_poses[0].share_fraction"),
        ["negative share"] = (b => b.Scene.Talkers[0].HeadPoses[0].ShareFraction = -1, "scene.talkers[0].head_poses[0].share_fraction"),
        ["no poses"] = (b => b.Scene.Talkers[0].HeadPoses.Clear(), "scene.talkers[0].head_poses"),
        ["yaw"] = (b => b.Scene.Talkers[0].HeadPoses[0].YawDeg = 400, "scene.talkers[0].head_poses[0].yaw_deg"),
        ["two on one seat"] = (b => b.Scene.Talkers[2].SeatId = "driver", "scene.talkers[2].seat_id"),
        ["unknown seat"] = (b => b.Scene.Talkers[2].SeatId = "roof", "scene.talkers[2].seat_id"),
        ["same talker twice"] = (b => b.Scene.Talkers[2].Id = "driver", "scene.talkers[2].id"),
        ["nobody talks"] = (b => b.Scene.Talkers.Clear(), "scene.talkers"),
        ["no effort"] = (b => b.Scene.Talkers[0].VocalEffort = VocalEffort.Unspecified, "scene.talkers[0].vocal_effort"),
        ["silent head on a talker's seat"] = (b => b.Scene.SilentSeatIds.Add("driver"), "scene.silent_seat_ids[0]"),
        ["camera nowhere"] = (b => b.Scene.Shots.Add(Shot(s => s.Position = null)), "scene.shots[0].position"),
        ["camera is not a number"] = (b => b.Scene.Shots.Add(Shot(s => s.Position.XM = double.NaN)), "scene.shots[0].position.x_m"),
        ["camera in a seat"] = (b => b.Scene.Shots.Add(Shot(s => s.Position = InDriversBackrest())), "scene.shots[0].position"),
        ["no lens"] = (b => b.Scene.Shots.Add(Shot(s => s.FocalLengthMm = 0)), "scene.shots[0].focal_length_mm"),
        ["sensor is not a number"] = (b => b.Scene.Shots.Add(Shot(s => s.SensorWidthMm = double.NaN)), "scene.shots[0].sensor_width_mm"),
        ["speed"] = (b => b.Scene.DriveConditions.SpeedKmPerHour = -5, "scene.drive_conditions.speed_km_per_hour"),
        ["speed is not a number"] = (b => b.Scene.DriveConditions.SpeedKmPerHour = double.NaN, "scene.drive_conditions.speed_km_per_hour"),
        ["fan"] = (b => b.Scene.DriveConditions.FanStep = 11, "scene.drive_conditions.fan_step"),
        ["window"] = (b => b.Scene.DriveConditions.OpenWindows.Add(new WindowOpening { PaneId = "sunroof", OpenFraction = 0.5 }), "scene.drive_conditions.open_windows[0].pane_id"),
        ["window too far down"] = (b => b.Scene.DriveConditions.OpenWindows.Add(new WindowOpening { PaneId = "front-left", OpenFraction = 2 }), "scene.drive_conditions.open_windows[0].open_fraction"),
        ["empty kit"] = (b => b.Kit.Microphones.Clear(), "kit.microphones"),
        ["no inputs"] = (b => b.Kit.RecorderInputCount = 0, "kit.recorder_input_count"),
        ["no pattern"] = (b => b.Kit.Microphones[0].Pattern = PolarPattern.Unspecified, "kit.microphones[0].pattern"),
        ["tube without a length"] = (b => b.Kit.Microphones[0].Pattern = PolarPattern.InterferenceTube, "kit.microphones[0].tube_length_m"),
        ["sensitivity is not a number"] = (b => b.Kit.Microphones[1].SensitivityMvPerPa = double.NaN, "kit.microphones[1].sensitivity_mv_per_pa"),
        ["microphone as long as a car"] = (b => b.Kit.Microphones[1].BodyLengthM = 4, "kit.microphones[1].body_length_m"),
        ["nothing holds it"] = (b => b.Kit.Microphones[1].Fixings.Clear(), "kit.microphones[1].fixings"),
        ["fixing twice"] = (b => b.Kit.Fixings.Add(b.Kit.Fixings[0].Clone()), "kit.fixings[4].fixing"),
        ["fewer than none"] = (b => b.Kit.Fixings[0].Count = -1, "kit.fixings[0].count"),
    };

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Wrong => [.. s_wrong.Keys];

    private static CabinMeasurements Measured(Action<CabinMeasurements> spoil)
    {
        var good = new CabinMeasurements
        {
            ShoulderWidthM = 1.42,
            FrontHeightM = 1.2,
            RearHeightM = 1.17,
            DashToBackrestM = 1.0,
            DashDepthM = 0.6,
            DashHeightM = 0.75,
            RowSpacingM = 0.85,
            BehindLastRowM = 0.35,
            SeatSpacingM = 0.74,
            CushionHeightM = 0.32,
            SillHeightM = 0.72,
        };
        spoil(good);
        return good;
    }

    private static Position InDriversBackrest()
    {
        Vector3D center = CabinBuilder.Build(new CabinSpec { Body = Quarterlight.Cabin.BodyStyle.Saloon, DriveSide = Quarterlight.Cabin.DriveSide.Left, Engine = Quarterlight.Cabin.EngineLayout.Front }).Seats[0].Backrest.Center;
        return new Position { XM = center.X, YM = center.Y, ZM = center.Z };
    }

    private static Shot Shot(Action<Shot> spoil)
    {
        Shot good = Samples.Shot("A");
        spoil(good);
        return good;
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task Plan_WrongBundle_NamesTheField(string what)
    {
        SceneBundle bundle = Samples.Bundle();
        s_wrong[what].Spoil(bundle);
        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop));
        refused.Names("bundle." + s_wrong[what].Field);
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task Create_WrongPart_NamesTheFieldAndKeepsNothing(string what)
    {
        SceneBundle good = Samples.Bundle();
        SceneBundle bundle = Samples.Bundle();
        (Action<SceneBundle> spoil, string field) = s_wrong[what];
        spoil(bundle);
        string id = "w-" + what.Replace(' ', '-').Replace('\'', '-');
        if (field.StartsWith("cabin.", StringComparison.Ordinal))
        {
            (await Refused.ForFieldsAsync(_planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = bundle.Cabin }, cancellationToken: Stop))).Names(field);
            return;
        }

        if (field.StartsWith("kit.", StringComparison.Ordinal))
        {
            (await Refused.ForFieldsAsync(_planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = id, Kit = bundle.Kit }, cancellationToken: Stop))).Names(field);
            return;
        }

        await _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = good.Cabin }, cancellationToken: Stop);
        await _planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = id, Kit = good.Kit }, cancellationToken: Stop);
        (bundle.Scene.Cabin, bundle.Scene.Kit) = ($"cabins/{id}", $"kits/{id}");
        (await Refused.ForFieldsAsync(_planner.Scenes.CreateSceneAsync(new CreateSceneRequest { SceneId = id, Scene = bundle.Scene }, cancellationToken: Stop))).Names(field);
        await Refused.ByAsync(_planner.Scenes.GetSceneAsync(new GetSceneRequest { Name = $"scenes/{id}" }, cancellationToken: Stop));
    }

    [Fact]
    public async Task Plan_GoodMeasurements_Planned()
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Cabin.Measurements = Measured(_ => { });
        bundle.Scene.Shots.Add(Samples.Shot("A"));
        Assert.NotEmpty((await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop)).Plan.Best.Placements);
    }

    [Fact]
    public async Task Plan_ManyThingsWrong_AllSaidAtOnce()
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.RecorderInputCount = 0;
        bundle.Scene.Talkers[0].SeatId = "roof";
        bundle.Scene.DriveConditions.FanStep = 11;
        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop));
        refused.Names("bundle.kit.recorder_input_count");
        refused.Names("bundle.scene.talkers[0].seat_id");
        refused.Names("bundle.scene.drive_conditions.fan_step");
    }

    [Fact]
    public async Task Plan_HundredsOfThingsWrongWithLongWords_StillFitsTheTrailers()
    {
        SceneBundle bundle = Samples.Bundle();
        for (int i = 0; i < 300; i++)
        {
            Talker talker = Samples.Talker($"t{i}", new string('ж', 3000));
            talker.HeadPoses[0].YawDeg = 999;
            bundle.Scene.Talkers.Add(talker);
        }

        Refused refused = await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop));
        Assert.InRange(refused.Fields.Count, 10, 16);
        Assert.All(refused.Fields, f => Assert.InRange(f.Description.Length, 1, 420));
    }

    [Fact]
    public async Task Plan_MoreTalkersThanInputsAndMicrophones_PartialAnswerNamesWhoIsLeftOut()
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.RecorderInputCount = 1;
        while (bundle.Kit.Microphones.Count > 1)
        {
            bundle.Kit.Microphones.RemoveAt(1);
        }

        bundle.Kit.Microphones[0].Count = 1;
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = bundle }, cancellationToken: Stop)).Plan;
        Assert.Equal(3, plan.Best.Placements.Select(p => p.TalkerId).Concat(plan.UncoveredTalkerIds).Distinct().Count());
        Assert.All(plan.Best.Placements, p => Assert.Equal(1, p.RecorderInput));
    }

    [Fact]
    public async Task Plan_NothingAsked_NamesTheField()
    {
        (await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest(), cancellationToken: Stop))).Names("source");
        (await Refused.ForFieldsAsync(_planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = new SceneBundle() }, cancellationToken: Stop))).Names("bundle");
        (await Refused.ForFieldsAsync(_planner.Placement.ExplainSiteAsync(new ExplainSiteRequest(), cancellationToken: Stop))).Names("source");
        (await Refused.ForFieldsAsync(_planner.Placement.ListMountSitesAsync(new ListMountSitesRequest(), cancellationToken: Stop))).Names("source");
        (await Refused.ForFieldsAsync(_planner.Placement.DrawPlanAsync(new DrawPlanRequest(), cancellationToken: Stop))).Names("source");
        (await Refused.ForFieldsAsync(_planner.Placement.DrawPlanAsync(new DrawPlanRequest { Plan = new Plan() }, cancellationToken: Stop))).Names("plan");
    }
}
