using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What is asked about heat.</summary>
public enum HeatAspect
{
    /// <summary>Not said.</summary>
    Any,

    /// <summary>How long a take may run.</summary>
    Roll,

    /// <summary>How long to cool before the first take.</summary>
    CoolFirst,

    /// <summary>How hot it gets.</summary>
    HowHot,

    /// <summary>How long to cool between takes.</summary>
    Between,

    /// <summary>How to alternate.</summary>
    Rhythm,

    /// <summary>What a change would buy.</summary>
    Gains,

    /// <summary>Whether a take of a given length is all right.</summary>
    Enough,
}

/// <summary>What a question says about heat; what it does not say is null.</summary>
public sealed record HeatSaid
{
    /// <summary>What is asked.</summary>
    public HeatAspect Aspect { get; init; }

    /// <summary>Local time of day it is about, minutes after midnight.</summary>
    public int? StartMinute { get; init; }

    /// <summary>Local time of day since when the car stands shut, minutes after midnight.</summary>
    public int? SinceMinute { get; init; }

    /// <summary>How long the car stood shut, minutes.</summary>
    public double? SoakMin { get; init; }

    /// <summary>Air outside, degrees Celsius.</summary>
    public double? OutsideC { get; init; }

    /// <summary>True when that was said in Fahrenheit, or can only be meant so.</summary>
    public bool InFahrenheit { get; init; }

    /// <summary>Relative humidity, percent.</summary>
    public double? HumidityPercent { get; init; }

    /// <summary>Share of the sky under cloud, 0 to 1.</summary>
    public double? CloudFraction { get; init; }

    /// <summary>Latitude, degrees, north positive.</summary>
    public double? LatitudeDeg { get; init; }

    /// <summary>Shade over the car.</summary>
    public CarShade? Shade { get; init; }

    /// <summary>Cover between takes.</summary>
    public SunCover? Cover { get; init; }

    /// <summary>Compass heading of the car, degrees.</summary>
    public double? HeadingDeg { get; init; }

    /// <summary>Adults in the car.</summary>
    public int? Adults { get; init; }

    /// <summary>Children in the car.</summary>
    public int? Children { get; init; }

    /// <summary>Animals in the car.</summary>
    public int? Animals { get; init; }

    /// <summary>True when nobody in it can open a door.</summary>
    public bool ShutIn { get; init; }

    /// <summary>Length of a take, minutes.</summary>
    public double? RollMin { get; init; }

    /// <summary>Limit a rhythm keeps.</summary>
    public HeatLimitKind? Limit { get; init; }

    /// <summary>Length of the day, minutes.</summary>
    public double? DayMin { get; init; }

    /// <summary>Air temperature to cool to, degrees Celsius.</summary>
    public double? SetPointC { get; init; }

    /// <summary>True when an earlier start is asked about.</summary>
    public bool Earlier { get; init; }

    /// <summary>True when nothing but perhaps an aspect was said.</summary>
    public bool IsEmpty => (this with { Aspect = HeatAspect.Any, InFahrenheit = false, Earlier = false }) == new HeatSaid();

    /// <summary>True when the weather was said.</summary>
    public bool SaysWeather => OutsideC is not null || HumidityPercent is not null || CloudFraction is not null;

    /// <summary>Only what stays true whatever is asked next: weather and place.</summary>
    public HeatSaid Facts() => new() { OutsideC = OutsideC, InFahrenheit = InFahrenheit, HumidityPercent = HumidityPercent, CloudFraction = CloudFraction, LatitudeDeg = LatitudeDeg };

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public HeatSaid Over(HeatSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new HeatSaid
        {
            Aspect = Aspect != HeatAspect.Any ? Aspect : RollMin is null && before.Aspect == HeatAspect.Enough && before.RollMin is null ? HeatAspect.Roll : before.Aspect,
            StartMinute = StartMinute ?? before.StartMinute,
            SinceMinute = SinceMinute ?? (SoakMin is null ? before.SinceMinute : null),
            SoakMin = SoakMin ?? (SinceMinute is null ? before.SoakMin : null),
            OutsideC = OutsideC ?? before.OutsideC,
            InFahrenheit = OutsideC is null ? before.InFahrenheit : InFahrenheit,
            HumidityPercent = HumidityPercent ?? before.HumidityPercent,
            CloudFraction = CloudFraction ?? before.CloudFraction,
            LatitudeDeg = LatitudeDeg ?? before.LatitudeDeg,
            Shade = Shade ?? before.Shade,
            Cover = Cover ?? before.Cover,
            HeadingDeg = HeadingDeg ?? before.HeadingDeg,
            Adults = Adults ?? before.Adults,
            Children = Children ?? before.Children,
            Animals = Animals ?? before.Animals,
            ShutIn = ShutIn || before.ShutIn,
            RollMin = RollMin ?? before.RollMin,
            Limit = Limit ?? before.Limit,
            DayMin = DayMin ?? before.DayMin,
            SetPointC = SetPointC ?? before.SetPointC,
            Earlier = Earlier,
        };
    }
}
