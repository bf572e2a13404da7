using System.Globalization;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>Slots of questions about heat, run time, levels and noise, as the tables of phrasings write them.</summary>
internal static class ForecastSlots
{
    /// <summary>The slot; null when it is none of these.</summary>
    public static string? Of(ForecastSaid said, string name) => name[..Math.Min(2, name.Length)] switch
    {
        "rt" => RunTime(said, name),
        "lv" => Levels(said.Levels, name),
        "ns" => Noise(said.Noise, name),
        _ when name.Length > 1 && name[0] == 'h' && char.IsAsciiLetterUpper(name[1]) => Heat(said, name),
        _ => null,
    };

    private static string? Heat(ForecastSaid said, string name)
    {
        HeatSaid h = said.Heat;
        return name switch
        {
            "hAsk" => h.Aspect.ToString(),
            "hStart" => Clock(h.StartMinute),
            "hSince" => Clock(h.SinceMinute),
            "hSoak" => Number(h.SoakMin),
            "hTemp" => Number(h.OutsideC),
            "hHum" => Number(h.HumidityPercent),
            "hCloud" => Number(h.CloudFraction),
            "hLat" => Number(h.LatitudeDeg),
            "hShade" => h.Shade?.ToString() ?? "",
            "hCover" => h.Cover?.ToString() ?? "",
            "hHeading" => Number(h.HeadingDeg),
            "hAdults" => Number(h.Adults),
            "hKids" => Number(h.Children),
            "hAnimals" => Number(h.Animals),
            "hShutIn" => h.ShutIn ? "true" : "false",
            "hRoll" => Number(h.RollMin),
            "hLimit" => h.Limit?.ToString() ?? "",
            "hDay" => Number(h.DayMin),
            "hSet" => Number(h.SetPointC),
            "hCabin" => Id(said.CabinName),
            _ => null,
        };
    }

    private static string? RunTime(ForecastSaid said, string name)
    {
        RunTimeSaid r = said.RunTime;
        return name switch
        {
            "rtAsk" => r.Aspect.ToString(),
            "rtNeed" => Number(r.NeedMin),
            "rtUntil" => Clock(r.UntilMinute),
            "rtLunch" => r.UntilLunch ? "true" : "false",
            "rtTemp" => Number(r.BatteryC),
            "rtMargin" => r.MarginFraction?.ToString("0.##", CultureInfo.InvariantCulture) ?? "",
            "rtTakes" => r.TakesOnly switch { true => "true", false => "false", _ => "" },
            "rtTracks" => Number(r.TrackCount),
            "rtRate" => Number(r.SampleRateHz),
            "rtCard" => Number(r.CardSizeGb),
            "rtKit" => Id(said.KitName),
            _ => null,
        };
    }

    private static string? Levels(LevelSaid l, string name) => name switch
    {
        "lvAsk" => l.Aspect.ToString(),
        "lvEffort" => l.Effort?.ToString() ?? "",
        "lvHead" => Number(l.HeadroomDb),
        "lvWireless" => l.Wireless switch { true => "true", false => "false", _ => "" },
        _ => null,
    };

    private static string? Noise(NoiseSaid n, string name) => name switch
    {
        "nsAsk" => n.Aspect.ToString(),
        "nsBand" => Number(n.BandHz),
        _ => null,
    };

    private static string Clock(int? minute) => minute is { } m ? string.Create(CultureInfo.InvariantCulture, $"{m / 60:00}:{m % 60:00}") : "";

    private static string Number(double? value) => value?.ToString("0.#", CultureInfo.InvariantCulture) ?? "";

    private static string Id(string? name) => name is null ? "" : name[(name.IndexOf('/', StringComparison.Ordinal) + 1)..];
}
