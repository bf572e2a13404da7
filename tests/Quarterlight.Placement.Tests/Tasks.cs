using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

/// <summary>Invented tasks for the tests.</summary>
internal static class Tasks
{
    private const Fixings Small = Fixings.SpringClip | Fixings.PaperTape | Fixings.ElasticTie | Fixings.ArticulatedArm | Fixings.SuctionCup;

    public static Microphone Lav { get; } = Mic("lav-omni", PolarPattern.Omni, 0.012, 26, Small | Fixings.BodyMount, 4);

    public static Microphone Cardioid { get; } = Mic("mini-cardioid", PolarPattern.Cardioid, 0.015, 24, Small, 4);

    public static Microphone Supercardioid { get; } = Mic("mini-supercardioid", PolarPattern.Supercardioid, 0.015, 24, Small, 4);

    public static Microphone Tube { get; } = Mic("short-tube", PolarPattern.InterferenceTube(0.15), 0.2, 13, Fixings.ArticulatedArm | Fixings.SpringClip, 1);

    public static Kit Kit { get; } = new() { Microphones = [Lav, Cardioid, Supercardioid], FixingCounts = Plenty, RecorderInputCount = 6 };

    public static IReadOnlyDictionary<Fixings, int> Plenty => new Dictionary<Fixings, int>
    {
        [Fixings.SpringClip] = 8,
        [Fixings.PaperTape] = 20,
        [Fixings.ElasticTie] = 8,
        [Fixings.ArticulatedArm] = 4,
        [Fixings.SuctionCup] = 4,
        [Fixings.WeightedBase] = 2,
        [Fixings.BodyMount] = 8,
    };

    public static HeadPose Forward { get; } = new();

    public static PlacementTask Saloon(params Talker[] talkers) => Saloon(DriveSide.Left, [], new DriveConditions { SpeedKmPerHour = 50 }, talkers);

    public static PlacementTask Saloon(DriveSide side, IReadOnlyList<Shot> shots, DriveConditions drive, params Talker[] talkers) => new(
        CabinBuilder.Build(new CabinSpec { Body = BodyStyle.Saloon, DriveSide = side, Engine = EngineLayout.Front }),
        new NoiseCar(false),
        Kit,
        new Scene { Talkers = talkers, Shots = shots, Drive = drive });

    public static Talker Talker(string id, string seat, params HeadPose[] poses) => new()
    {
        Id = id,
        DisplayName = id,
        SeatId = seat,
        Effort = VocalEffort.Normal,
        HeadPoses = poses.Length == 0 ? [Forward] : poses,
        NoBodyWorn = true,
    };

    public static HeadPose Turned(double yawDeg, double share = 1) => new() { YawRad = Angles.DegToRad(yawDeg), ShareFraction = share };

    public static Shot Shot(string id, Vector3D position, Vector3D aim, double focalMm = 35) => new()
    {
        Id = id,
        Position = position,
        AimPoint = aim,
        FocalLengthMm = focalMm,
        SensorWidthMm = 36,
        SensorHeightMm = 20.25,
    };

    public static Microphone Mic(string id, PolarPattern pattern, double lengthM, double selfNoise, Fixings fixings, int count) => new()
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
}
