using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Bench;

/// <summary>The scene the speed goal names: five talkers, four shots, a hundred sites and more, eight microphones. Invented.</summary>
public static class BenchScene
{
    private const Fixings Small = Fixings.SpringClip | Fixings.PaperTape | Fixings.ElasticTie | Fixings.ArticulatedArm | Fixings.SuctionCup;

    public static PlacementTask FiveTalkers()
    {
        CabinGeometry cabin = CabinBuilder.Build(new CabinSpec { Body = BodyStyle.PeopleCarrier, DriveSide = DriveSide.Left, Engine = EngineLayout.Front });
        Talker[] talkers =
        [
            Talker("driver", "driver", 0, -40), Talker("front", "front-passenger", 0, 60), Talker("left", "rear-left", -5, 30), Talker("right", "rear-right", 5, -30), Talker("back", "third-left", 0, 20),
        ];
        Shot[] shots =
        [
            Shot("A", new(1.9, 0.1, 1.25), new(-0.2, 0.3, 1.15), 50), Shot("B", new(0.1, 1.9, 1.25), new(-0.2, 0.3, 1.15), 35), Shot("C", new(0.1, -1.9, 1.25), new(-1.1, 0, 1.1), 35), Shot("D", new(0.35, -0.1, 1.2), new(-1.1, 0.2, 1.1), 24),
        ];
        var scene = new Scene { Talkers = talkers, Shots = shots, Drive = new DriveConditions { SpeedKmPerHour = 50 } };
        return new PlacementTask(cabin, new NoiseCar(false), Kit(), scene);
    }

    public static Kit Kit() => new()
    {
        Microphones =
        [
            Mic("lav-omni", PolarPattern.Omni, 0.012, 26, Small | Fixings.BodyMount, 4),
            Mic("mini-cardioid", PolarPattern.Cardioid, 0.015, 24, Small, 2),
            Mic("mini-supercardioid", PolarPattern.Supercardioid, 0.015, 24, Small, 2),
            Mic("short-supercardioid", PolarPattern.Supercardioid, 0.08, 14, Fixings.ArticulatedArm | Fixings.SpringClip | Fixings.SuctionCup, 2),
            Mic("short-hypercardioid", PolarPattern.Hypercardioid, 0.08, 15, Fixings.ArticulatedArm | Fixings.SpringClip, 2),
            Mic("subcardioid", PolarPattern.Subcardioid, 0.05, 16, Small, 2),
            Mic("figure-eight", PolarPattern.FigureEight, 0.06, 18, Fixings.ArticulatedArm | Fixings.SpringClip, 1),
            Mic("boundary-omni", PolarPattern.Omni, 0.04, 20, Fixings.PaperTape | Fixings.WeightedBase, 2),
        ],
        FixingCounts = new Dictionary<Fixings, int>
        {
            [Fixings.SpringClip] = 6,
            [Fixings.PaperTape] = 20,
            [Fixings.ElasticTie] = 6,
            [Fixings.ArticulatedArm] = 3,
            [Fixings.SuctionCup] = 3,
            [Fixings.WeightedBase] = 2,
            [Fixings.BodyMount] = 4,
        },
        RecorderInputCount = 6,
    };

    private static Microphone Mic(string id, PolarPattern pattern, double lengthM, double selfNoise, Fixings fixings, int count) => new()
    {
        Id = id,
        DisplayName = id,
        Pattern = pattern,
        BodyLengthM = lengthM,
        BodyDiameterM = 0.012,
        SensitivityMvPerPa = 15,
        SelfNoiseDba = selfNoise,
        MaxLevelDb = 132,
        Fixings = fixings,
        Count = count,
    };

    private static Talker Talker(string id, string seat, double pitchDeg, double turnDeg) => new()
    {
        Id = id,
        DisplayName = id,
        SeatId = seat,
        Effort = VocalEffort.Normal,
        HeadPoses =
        [
            new HeadPose { PitchRad = Angles.DegToRad(pitchDeg), ShareFraction = 0.5 },
            new HeadPose { YawRad = Angles.DegToRad(turnDeg), ShareFraction = 0.3 },
            new HeadPose { YawRad = Angles.DegToRad(turnDeg * 2), LeanM = new Vector3D(0.05, 0, 0), ShareFraction = 0.2 },
        ],
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
}
