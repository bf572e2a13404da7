using Google.Protobuf.WellKnownTypes;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>A hot day, the power of a kit, its levels and a route, as a client sends them. Invented.</summary>
public static class DaySamples
{
    public static ShootDay Day() => new()
    {
        StartTime = Timestamp.FromDateTimeOffset(new DateTimeOffset(2026, 7, 15, 20, 0, 0, TimeSpan.Zero)),
        UtcOffsetMin = -420,
        LatitudeDeg = 34,
        LongitudeDeg = -118,
        Air = new OutsideAir { TemperatureC = 32, RelativeHumidityPercent = 35, WindSpeedMPerS = 2, CloudFraction = 0.1 },
        HeadingDeg = 180,
    };

    public static HeatSetup HeatSetup() => new() { Cabin = Samples.Cabin(), SpeedKmPerHour = 40, Day = Day() };

    public static PlannedTake Take(string label, double startMin, double durationMin) => new() { Label = label, StartMin = startMin, DurationMin = durationMin };

    /// <summary>Adds batteries, devices and media.</summary>
    public static Kit WithPower(this Kit kit)
    {
        kit.Batteries.Add(new Battery { Id = "brick", DisplayName = "Brick", Chemistry = BatteryChemistry.LithiumIon, EnergyWh = 98, AgeYears = 1, Count = 3 });
        kit.Batteries.Add(new Battery { Id = "aa", DisplayName = "AA", Chemistry = BatteryChemistry.NickelMetalHydride, EnergyWh = 2.4, Count = 16 });
        kit.PoweredDevices.Add(new PoweredDevice { Id = "recorder", DisplayName = "Recorder", PowerW = 14, BatteryId = "brick", BatteryCount = 1, Count = 1 });
        kit.PoweredDevices.Add(new PoweredDevice { Id = "pack", DisplayName = "Bodypack", PowerW = 0.9, BatteryId = "aa", BatteryCount = 2, Count = 3 });
        kit.RecordingMedia = new RecordingMedia { TrackCount = 8, CardSizeGb = 64, CardCount = 2, LargeFiles = true };
        return kit;
    }

    /// <summary>Adds what is known of inputs and transmitters.</summary>
    public static Kit WithLevels(this Kit kit)
    {
        kit.RecorderGain = new RecorderGain { FullScaleDbu = 20, GainMinDb = 0, GainMaxDb = 70, InputNoiseDbu = -126, DynamicRangeDb = 120, Limiter = LimiterKind.Analogue };
        kit.TransmitterAudio.Add(new TransmitterAudio
        {
            Id = "pack",
            DisplayName = "Bodypack",
            Feed = TransmitterFeed.Microphone,
            Modulation = TransmitterModulation.Digital,
            FullModulationDbu = -10,
            GainMinDb = 0,
            GainMaxDb = 40,
            DynamicRangeDb = 100,
        });
        kit.TransmitterAudio.Add(new TransmitterAudio
        {
            Id = "hop",
            DisplayName = "Hop to the follow car",
            Feed = TransmitterFeed.Recorder,
            Modulation = TransmitterModulation.AnalogueCompanded,
            FullModulationDbu = 4,
            GainMinDb = -20,
            GainMaxDb = 20,
            DynamicRangeDb = 90,
        });
        return kit;
    }

    public static RouteStretch[] Route() =>
    [
        new() { Label = "Mill Lane", LengthM = 1800, SpeedLimitKmPerHour = 50 },
        new() { Label = "Setts", LengthM = 400, SpeedLimitKmPerHour = 50, RoadSurface = RoadSurface.Cobbles },
        new() { Label = "Bypass", LengthM = 5200, SpeedLimitKmPerHour = 110, KeepWithTraffic = true, TrafficSpeedKmPerHour = 100 },
    ];

    /// <summary>Keeps a scene whose kit has power and levels, and which has a day and a route.</summary>
    public static async Task<Scene> KeepWholeSceneAsync(this RunningPlanner planner, string word, Action<Scene>? change = null)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        Scene scene = await planner.KeepSceneAsync(word);
        Kit kit = (await planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: stop)).Kit;
        await planner.Kits.UpdateKitAsync(new UpdateKitRequest { Kit = kit.WithPower().WithLevels() }, cancellationToken: stop);
        scene.ShootDay = Day();
        scene.Route.Add(Route());
        change?.Invoke(scene);
        return (await planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: stop)).Scene;
    }
}
