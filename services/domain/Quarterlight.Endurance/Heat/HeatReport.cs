using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>When one limit is met after the fan goes off.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Minutes">Minutes of rolling from the cooled cabin; null when it is not met within the day, 0 when cooling does not get under it.</param>
/// <param name="MinutesAtWorst">The same with the heat load at the upper end of what is likely; null likewise.</param>
/// <param name="Reason">What meets it first, in a few words; empty when it is not met.</param>
public sealed record HeatLimitTime(HeatLimitKind Kind, double? Minutes, double? MinutesAtWorst, string Reason);

/// <summary>What the cabin does during a block.</summary>
public enum HeatBlockKind
{
    /// <summary>Cooling before the first take.</summary>
    Precool,

    /// <summary>Rolling, fan off.</summary>
    Roll,

    /// <summary>Cooling between takes.</summary>
    Cool,
}

/// <summary>A stretch of the day.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="StartMin">Start, minutes after the start of the day.</param>
/// <param name="EndMin">End, minutes after the start of the day.</param>
/// <param name="EndAirC">Air temperature at its end, degrees Celsius.</param>
public sealed record HeatBlock(HeatBlockKind Kind, double StartMin, double EndMin, double EndAirC);

/// <summary>Roll so long, cool so long, all day.</summary>
/// <param name="Possible">False when even short takes do not stay under the limit; the rest is then zero.</param>
/// <param name="Limit">The limit it keeps.</param>
/// <param name="RollMin">Minutes to roll.</param>
/// <param name="CoolMin">Minutes to cool.</param>
/// <param name="TakeCount">Takes of that length in the day.</param>
/// <param name="RollingFraction">Share of the day spent rolling, 0 to 1.</param>
/// <param name="Blocks">The day in blocks, first to last.</param>
public sealed record ShootingRhythm(bool Possible, HeatLimitKind Limit, double RollMin, double CoolMin, int TakeCount, double RollingFraction, IReadOnlyList<HeatBlock> Blocks);

/// <summary>The cabin at one moment of the rhythm.</summary>
public sealed record HeatSample
{
    /// <summary>Minutes after the start of the day.</summary>
    public required double Minute { get; init; }

    /// <summary>Air, degrees Celsius.</summary>
    public required double AirC { get; init; }

    /// <summary>Trim and seats, degrees Celsius.</summary>
    public required double InteriorC { get; init; }

    /// <summary>Operative temperature, degrees Celsius.</summary>
    public required double OperativeC { get; init; }

    /// <summary>Relative humidity, percent.</summary>
    public required double RelativeHumidityPercent { get; init; }

    /// <summary>Predicted mean vote; null outside the range of ISO 7730.</summary>
    public double? Pmv { get; init; }

    /// <summary>Predicted percentage dissatisfied; null likewise.</summary>
    public double? PpdPercent { get; init; }

    /// <summary>Wet-bulb globe temperature, degrees Celsius.</summary>
    public required double WbgtC { get; init; }

    /// <summary>Heat index, degrees Celsius; null where its formula does not hold.</summary>
    public double? HeatIndexC { get; init; }

    /// <summary>Carbon dioxide, ppm by volume.</summary>
    public required double Co2Ppm { get; init; }
}

/// <summary>What one change would buy.</summary>
/// <param name="Code">Stable word, such as full-shade.</param>
/// <param name="Words">In words.</param>
/// <param name="Minutes">Minutes of rolling until the rhythm's limit; null when it is not met within the day.</param>
/// <param name="PrecoolMin">Cooling before the first take, minutes; null when the set point is not reached.</param>
/// <param name="RollingFraction">Share of the day spent rolling, 0 to 1.</param>
public sealed record HeatOption(string Code, string Words, double? Minutes, double? PrecoolMin, double RollingFraction);

/// <summary>Where the sun stands, and what it brings in.</summary>
/// <param name="ElevationDeg">Height above the horizon, degrees; negative at night.</param>
/// <param name="AzimuthDeg">Compass bearing, degrees, north 0, east 90.</param>
/// <param name="GainW">Sun through all glass into the cabin, watts, shade counted, cover not.</param>
public sealed record SunState(double ElevationDeg, double AzimuthDeg, double GainW);

/// <summary>The answer about heat.</summary>
public sealed record HeatReport
{
    /// <summary>Comfort, caution and stop, in that order.</summary>
    public required IReadOnlyList<HeatLimitTime> Limits { get; init; }

    /// <summary>Air in the standing car before cooling, degrees Celsius.</summary>
    public required double SoakedAirC { get; init; }

    /// <summary>Minutes of cooling before the first take; null when the set point is not reached.</summary>
    public double? PrecoolMin { get; init; }

    /// <summary>Lowest air temperature that cooling reaches, degrees Celsius, when the set point is not reached; null when it is.</summary>
    public double? LowestAirC { get; init; }

    /// <summary>Roll and cool.</summary>
    public required ShootingRhythm Rhythm { get; init; }

    /// <summary>The rhythm, one sample a minute from minute 0 to the end of the day; without a rhythm, the cooling and then one roll to the end.</summary>
    public required IReadOnlyList<HeatSample> Samples { get; init; }

    /// <summary>What a change would buy, best first.</summary>
    public required IReadOnlyList<HeatOption> Options { get; init; }

    /// <summary>The sun at the start.</summary>
    public required SunState SunAtStart { get; init; }

    /// <summary>The sun at the end.</summary>
    public required SunState SunAtEnd { get; init; }

    /// <summary>True when children, animals or shut-in people make the strictest limit the only one.</summary>
    public required bool Strictest { get; init; }

    /// <summary>What to be careful about, most important first.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
