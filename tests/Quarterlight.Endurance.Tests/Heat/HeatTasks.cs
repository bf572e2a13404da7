using Quarterlight.Endurance.Heat;

namespace Quarterlight.Endurance.Tests.Heat;

/// <summary>Questions the tests ask.</summary>
internal static class HeatTasks
{
    /// <summary>Glass of a middling saloon: raked windscreen and rear glass, upright sides (judgement).</summary>
    public static HeatCar Saloon { get; } = new(3,
    [
        new GlassPane("windscreen", 1.0, 0, 35),
        new GlassPane("rear", 0.7, 180, 40),
        new GlassPane("front-left", 0.35, 270, 75),
        new GlassPane("rear-left", 0.3, 270, 75),
        new GlassPane("front-right", 0.35, 90, 75),
        new GlassPane("rear-right", 0.3, 90, 75),
    ]);

    /// <summary>A hot clear day, late morning on.</summary>
    public static HeatTask HotDay { get; } = new()
    {
        Start = new DateTimeOffset(2026, 7, 15, 11, 0, 0, TimeSpan.FromHours(-7)),
        LatitudeDeg = 34,
        LongitudeDeg = -118,
        Air = new OutsideAir(32, 40, 2),
        Car = Saloon,
    };
}
