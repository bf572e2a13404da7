using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing.Tests;

/// <summary>A scene, a kit, a cabin and the plan made for them.</summary>
internal sealed record PlannedScene(string Name, CabinGeometry Cabin, Kit Kit, Scene Scene, MountPlan Plan)
{
    private readonly Lazy<(DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels)> drawn = new(() => PlanDrawing.DrawWithLabels(Cabin, Kit, Scene, Plan.Best));

    public DrawnPicture Draw(PlanOption? option = null) => PlanDrawing.Draw(Cabin, Kit, Scene, Plan, option ?? Plan.Best);

    /// <summary>The best choice, drawn once for all tests that only look at it.</summary>
    public (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) Drawn => drawn.Value;
}

/// <summary>Invented scenes the tests draw, planned by the real planner.</summary>
internal static class DrawingScenes
{
    private static readonly Lazy<PlannedScene> SaloonScene = new(() => Saloon());
    private static readonly Lazy<PlannedScene> CarrierScene = new(MakeCarrier);
    private static readonly Lazy<PlannedScene> VanScene = new(MakeVan);
    private static readonly Lazy<PlannedScene> CrowdScene = new(MakeCrowd);
    private static readonly Lazy<PlannedScene> FarScene = new(MakeFar);

    public static PlannedScene SaloonOfThree => SaloonScene.Value;

    public static PlannedScene CarrierOfFive => CarrierScene.Value;

    public static PlannedScene VanOfOne => VanScene.Value;

    public static PlannedScene CrowdOfSeven => CrowdScene.Value;

    /// <summary>An electric classic with one microphone for two talkers far apart and a camera on the road ahead.</summary>
    public static PlannedScene FarCamera => FarScene.Value;

    public static IReadOnlyList<PlannedScene> All => [SaloonOfThree, CarrierOfFive, VanOfOne, CrowdOfSeven, FarCamera];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 5)];

    public static Kit Kit => new()
    {
        Microphones =
        [
            Microphone("small-super", "small supercardioid", PolarPattern.Supercardioid, 0.04, 4),
            Microphone("lavalier", "omni lavalier", PolarPattern.Omni, 0.012, 3),
            Microphone("short-tube", "short tube", PolarPattern.InterferenceTube(0.12), 0.16, 1),
            Microphone("cardioid", "mini cardioid", PolarPattern.Cardioid, 0.05, 3),
        ],
        FixingCounts = new Dictionary<Fixings, int>
        {
            [Fixings.SpringClip] = 6,
            [Fixings.SuctionCup] = 2,
            [Fixings.ArticulatedArm] = 3,
            [Fixings.PaperTape] = 20,
            [Fixings.ElasticTie] = 4,
            [Fixings.BodyMount] = 4,
        },
        RecorderInputCount = 8,
    };

    /// <summary>The saloon scene with one site taken out of the choice.</summary>
    public static PlannedScene Saloon(params string[] removedSiteIds)
    {
        Scene scene = new()
        {
            Talkers =
            [
                Talker("brother", "Brother", "driver", (10, 0.7), (-45, 0.3)),
                Talker("sister", "Sister", "front-passenger", (0, 0.5), (50, 0.3), (150, 0.2)),
                Talker("hitchhiker", "Hitchhiker", "rear-right", (0, 0.6), (40, 0.4)),
            ],
            Shots =
            [
                Shot("A", new(1.55, -0.1, 1.15), new(-0.2, 0.1, 1.0), 35),
                Shot("B", new(0.35, -0.95, 1.1), new(-0.15, 0.35, 1.05), 28),
            ],
            Drive = new() { SpeedKmPerHour = 50 },
            RemovedSiteIds = removedSiteIds,
        };
        return Planned("saloon", BodyStyle.Saloon, DriveSide.Left, scene);
    }

    private static PlannedScene MakeCarrier() => Planned("carrier", BodyStyle.PeopleCarrier, DriveSide.Right, new()
    {
        Talkers =
        [
            Talker("mother", "Mother", "driver", (0, 0.8), (60, 0.2)),
            Talker("neighbour", "Neighbour", "front-passenger", (-30, 0.5), (-150, 0.5)),
            Talker("twin-one", "First twin", "rear-left", (-20, 1)),
            Talker("twin-two", "Second twin", "rear-right", (20, 0.6), (170, 0.4)),
            Talker("grandfather", "Grandfather", "third-left", (-10, 1)),
        ],
        Shots =
        [
            Shot("A", new(1.5, 0.2, 1.2), new(-0.2, -0.3, 1.1), 40),
            Shot("B", new(1.45, -0.45, 1.2), new(-0.2, 0.35, 1.1), 40),
            Shot("C", new(0.25, 0.95, 1.2), new(-1.1, -0.2, 1.1), 24),
            Shot("D", new(0.15, 0, 1.12), new(-1.4, 0.1, 1.0), 18),
        ],
        SilentSeatIds = ["third-right"],
        Drive = new() { SpeedKmPerHour = 40, OpenWindows = [new("front-right", 1)] },
    });

    private static PlannedScene MakeVan() => Planned("van", BodyStyle.PanelVan, DriveSide.Right, new()
    {
        Talkers = [Talker("courier", "Courier", "driver", (0, 0.7), (35, 0.3))],
        Shots = [Shot("A", new(0.6, 0.6, 1.2), new(-0.2, -0.4, 1.15), 32)],
        Drive = new() { SpeedKmPerHour = 0, Engine = EngineState.Off },
    });

    private static PlannedScene MakeCrowd() => Planned("crowd", BodyStyle.PeopleCarrier, DriveSide.Left, new()
    {
        Talkers =
        [
            .. new[] { "driver", "front-passenger", "rear-left", "rear-centre", "rear-right", "third-left", "third-right" }
                .Select((seat, i) => Talker($"member-{i + 1}", $"Member of the choir on the way home, number {i + 1}", seat, (0, 0.5), (45, 0.5))),
        ],
        Shots = [.. Enumerable.Range(0, 6).Select(i => Shot($"{(char)('A' + i)}", new(1.4 - (0.1 * i), -0.5 + (0.2 * i), 1.2), new(-0.5, 0, 1.0), 24 + (4 * i)))],
        Drive = new() { SpeedKmPerHour = 60, OpenWindows = [new("front-left", 0.3), new("rear-right", 0.5)] },
    });

    private static PlannedScene MakeFar() => Planned(
        "far",
        BodyStyle.BenchSeatClassic,
        DriveSide.Left,
        new()
        {
            Talkers = [Talker("aunt", "Aunt", "driver", (0, 1)), Talker("nephew", "Nephew", "rear-right", (30, 1))],
            Shots = [Shot("A", new(5, 0.3, 1.3), new(0, 0, 1), 85)],
            Drive = new() { SpeedKmPerHour = 30 },
        },
        EngineLayout.Electric,
        Kit with { RecorderInputCount = 1, Microphones = [Kit.Microphones[1] with { Fixings = Fixings.BodyMount, Count = 1 }] });

    private static PlannedScene Planned(string name, BodyStyle body, DriveSide side, Scene scene, EngineLayout engine = EngineLayout.Front, Kit? kit = null)
    {
        CabinGeometry cabin = CabinBuilder.Build(new() { Body = body, DriveSide = side, Engine = engine });
        MountPlan plan = PlacementPlanner.Plan(new PlacementTask(cabin, new NoiseCar(engine == EngineLayout.Electric), kit ?? Kit, scene));
        return new(name, cabin, kit ?? Kit, scene, plan);
    }

    private static Talker Talker(string id, string name, string seat, params (double YawDeg, double Share)[] poses) => new()
    {
        Id = id,
        DisplayName = name,
        SeatId = seat,
        Effort = VocalEffort.Normal,
        HeadPoses = [.. poses.Select(p => new HeadPose { YawRad = Angles.DegToRad(p.YawDeg), ShareFraction = p.Share })],
    };

    private static Shot Shot(string id, Vector3D position, Vector3D aim, double focalMm) => new()
    {
        Id = id,
        Position = position,
        AimPoint = aim,
        FocalLengthMm = focalMm,
        SensorWidthMm = 36,
        SensorHeightMm = 20.25,
    };

    private static Microphone Microphone(string id, string name, PolarPattern pattern, double lengthM, int count) => new()
    {
        Id = id,
        DisplayName = name,
        Pattern = pattern,
        BodyLengthM = lengthM,
        BodyDiameterM = Math.Min(0.02, lengthM),
        SensitivityMvPerPa = 10,
        SelfNoiseDba = 20,
        MaxLevelDb = 130,
        Fixings = Fixings.SpringClip | Fixings.ArticulatedArm | Fixings.PaperTape | Fixings.SuctionCup | Fixings.ElasticTie | (lengthM < 0.02 ? Fixings.BodyMount : 0),
        Count = count,
    };
}
