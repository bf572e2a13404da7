using Google.Protobuf.Collections;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>What can be wrong with a route made by <see cref="DaySamples"/>.</summary>
public static class RouteTable
{
    /// <summary>Ranges; paths begin after the route's own.</summary>
    public static IReadOnlyList<Ranged<RepeatedField<RouteStretch>>> Ranged { get; } =
    [
        new("[0].length_m", 10, 100000, (r, v) => r[0].LengthM = v),
        new("[1].speed_limit_km_per_hour", 5, 130, (r, v) => r[1].SpeedLimitKmPerHour = v),
        new("[2].traffic_speed_km_per_hour", 5, 130, (r, v) => r[2].TrafficSpeedKmPerHour = v),
    ];

    public static IReadOnlyDictionary<string, (Action<RepeatedField<RouteStretch>> Spoil, string Field)> Wrong { get; } = new Dictionary<string, (Action<RepeatedField<RouteStretch>>, string)>
    {
        ["stretch without a label"] = (r => r[0].Label = "", "[0].label"),
        ["stretch with a long label"] = (r => r[0].Label = new string('x', 61), "[0].label"),
        ["stretch without a length"] = (r => r[2].LengthM = 0, "[2].length_m"),
        ["stretch without a limit"] = (r => r[2].SpeedLimitKmPerHour = 0, "[2].speed_limit_km_per_hour"),
        ["stretch of an unknown road"] = (r => r[1].RoadSurface = (RoadSurface)44, "[1].road_surface"),
        ["too many stretches"] = (r => r.Add(Enumerable.Repeat(r[0], 198)), ""),
    };
}
