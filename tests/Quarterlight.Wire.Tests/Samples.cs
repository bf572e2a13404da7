using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Requests as a client sends them. Invented.</summary>
public static class Samples
{
    public static SceneBundle Bundle() => new()
    {
        Cabin = Cabin(),
        Kit = new Kit
        {
            DisplayName = "Bag",
            RecorderInputCount = 4,
            Microphones =
            {
                Microphone("lav", PolarPattern.Omni, Fixing.PaperTape, Fixing.BodyMount),
                Microphone("cardioid", PolarPattern.Cardioid, Fixing.SpringClip, Fixing.ElasticTie),
                Microphone("supercardioid", PolarPattern.Supercardioid, Fixing.SpringClip, Fixing.ElasticTie),
            },
            Fixings =
            {
                new FixingStock { Fixing = Fixing.SpringClip, Count = 4 },
                new FixingStock { Fixing = Fixing.PaperTape, Count = 4 },
                new FixingStock { Fixing = Fixing.ElasticTie, Count = 4 },
                new FixingStock { Fixing = Fixing.BodyMount, Count = 4 },
            },
        },
        Scene = new Scene
        {
            DisplayName = "Three in a saloon",
            Talkers = { Talker("driver", "driver"), Talker("front", "front-passenger"), Talker("back", "rear-right") },
            DriveConditions = new DriveConditions { SpeedKmPerHour = 50 },
        },
    };

    public static V1.Cabin Cabin(string displayName = "Saloon") =>
        new() { DisplayName = displayName, BodyStyle = BodyStyle.Saloon, DriveSide = DriveSide.Left, EngineLayout = EngineLayout.Front };

    public static Shot Shot(string id) => new()
    {
        Id = id,
        Position = new Position { XM = 1.9, YM = 0.1, ZM = 1.25 },
        AimPoint = new Position { XM = -0.2, YM = 0.3, ZM = 1.15 },
        FocalLengthMm = 50,
        SensorWidthMm = 36,
        SensorHeightMm = 20.25,
    };

    public static Microphone Microphone(string id, PolarPattern pattern, params Fixing[] fixings) => new()
    {
        Id = id,
        DisplayName = id,
        Pattern = pattern,
        BodyLengthM = 0.014,
        BodyDiameterM = 0.008,
        SensitivityMvPerPa = 12,
        SelfNoiseDba = 24,
        MaxLevelDb = 130,
        Count = 3,
        Fixings = { fixings },
    };

    public static Talker Talker(string id, string seat) => new()
    {
        Id = id,
        DisplayName = id,
        SeatId = seat,
        VocalEffort = VocalEffort.Normal,
        HeadPoses = { new HeadPose { ShareFraction = 1 } },
    };
}
