using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;

namespace Quarterlight.Planner.Services;

/// <summary>
/// Plans a throw-away scene while the host starts, so that the first caller does not wait for the code to be compiled.
/// </summary>
internal static class WarmUp
{
    public static void Run()
    {
        const Fixings Clip = Fixings.SpringClip;
        var microphone = new Microphone
        {
            Id = "any",
            DisplayName = "any",
            Pattern = PolarPattern.Cardioid,
            BodyLengthM = 0.01,
            BodyDiameterM = 0.01,
            SensitivityMvPerPa = 10,
            SelfNoiseDba = 20,
            MaxLevelDb = 130,
            Fixings = Clip,
            Count = 1,
        };
        var kit = new Kit { Microphones = [microphone], FixingCounts = new Dictionary<Fixings, int> { [Clip] = 1 }, RecorderInputCount = 1 };
        var talker = new Talker { Id = "any", DisplayName = "any", SeatId = "driver", Effort = VocalEffort.Normal, HeadPoses = [new HeadPose()] };
        CabinGeometry cabin = CabinBuilder.Build(new CabinSpec { Body = BodyStyle.Coupe, DriveSide = DriveSide.Left, Engine = EngineLayout.Front });
        PlacementPlanner.Plan(new PlacementTask(cabin, new NoiseCar(false), kit, new Scene { Talkers = [talker], Drive = new DriveConditions() }));
    }
}
