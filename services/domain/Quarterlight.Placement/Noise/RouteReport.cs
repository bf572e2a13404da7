using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>A stretch of road between two places where something changes.</summary>
/// <param name="Label">What the crew calls it, 1 to 60 characters.</param>
/// <param name="LengthM">Length, metres, 10 to 100000.</param>
/// <param name="SpeedLimitKmPerHour">Speed limit, km/h, 5 to 130.</param>
/// <param name="Road">Road surface; null takes the scene's.</param>
/// <param name="TrafficSpeedKmPerHour">Speed that traffic lets one keep, km/h, 5 to 130; null is the limit.</param>
/// <param name="KeepWithTraffic">True when one may not drive slower than traffic there, as on a motorway.</param>
public sealed record RouteStretch(string Label, double LengthM, double SpeedLimitKmPerHour, RoadSurface? Road = null, double? TrafficSpeedKmPerHour = null, bool KeepWithTraffic = false);

/// <summary>Everything one question about a route is about.</summary>
/// <param name="Noise">Car, conditions and plan.</param>
/// <param name="Stretches">The route in order, 1 to 200.</param>
public sealed record RouteTask(NoiseTask Noise, IReadOnlyList<RouteStretch> Stretches);

/// <summary>What a stretch is good for.</summary>
/// <param name="Stretch">The stretch.</param>
/// <param name="StartM">Metres from the start of the route.</param>
/// <param name="SpeedKmPerHour">Speed to drive, km/h: as fast as the scene works, never above the limit.</param>
/// <param name="Noise">The noise at that speed.</param>
/// <param name="DurationS">Seconds it lasts at that speed.</param>
public sealed record StretchNoise(RouteStretch Stretch, double StartM, double SpeedKmPerHour, SpeedNoise Noise, double DurationS);

/// <summary>Stretches in a row on which the scene works, or works with care; a run to be used with care may hold a shorter one that works.</summary>
/// <param name="FirstLabel">Label of the first.</param>
/// <param name="LastLabel">Label of the last.</param>
/// <param name="StartM">Metres from the start of the route.</param>
/// <param name="LengthM">Length, metres.</param>
/// <param name="DurationS">Seconds at the speeds advised.</param>
/// <param name="Verdict">Verdict of its worst stretch.</param>
public sealed record QuietRun(string FirstLabel, string LastLabel, double StartM, double LengthM, double DurationS, SceneVerdict Verdict);

/// <summary>The answer about a route.</summary>
/// <param name="Stretches">Stretches in order.</param>
/// <param name="QuietRuns">Runs on which the scene works or works with care, longest in time first.</param>
/// <param name="Advisories">What to be careful about, most important first.</param>
public sealed record RouteReport(IReadOnlyList<StretchNoise> Stretches, IReadOnlyList<QuietRun> QuietRuns, IReadOnlyList<Advisory> Advisories);
