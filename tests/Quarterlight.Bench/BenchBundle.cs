using Quarterlight.V1;

namespace Quarterlight.Bench;

/// <summary>A three-talker scene as a client sends it. Invented.</summary>
public static class BenchBundle
{
    public static SceneBundle Make() => new()
    {
        Cabin = new V1.Cabin { DisplayName = "Saloon", BodyStyle = BodyStyle.Saloon, DriveSide = DriveSide.Left, EngineLayout = EngineLayout.Front },
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

    private static Microphone Microphone(string id, PolarPattern pattern, params Fixing[] fixings) => new()
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

    private static Talker Talker(string id, string seat) => new()
    {
        Id = id,
        DisplayName = id,
        SeatId = seat,
        VocalEffort = VocalEffort.Normal,
        HeadPoses = { new HeadPose { ShareFraction = 1 } },
    };
}
