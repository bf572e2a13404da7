using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Commands;

/// <summary>Turns what the options say into the request that the equal question would be.</summary>
internal static class CommandRequests
{
    public static CrewRequest Plan(CommandSaid said) => said.Request(said.Show switch
    {
        "full" => CrewIntent.Details,
        "next-best" or "third-best" => CrewIntent.RunnerUp,
        _ => CrewIntent.Plan,
    }) with
    { RunnerUp = said.Show == "third-best" ? 2 : 1 };

    public static CrewRequest Why(CommandSaid said) => said.Request(CrewIntent.WhySite);

    public static CrewRequest WhatIf(CommandSaid said) => said.Request(CrewIntent.WhatIf) with
    {
        Conditions = said.Drive,
        Site = said.SiteLeftOut,
        SiteRemoved = said.SiteLeftOut is not null,
        RemovedMicrophoneIds = said.MicrophonesLeftOut,
        OnlyMicrophoneIds = said.OnlyMicrophones,
        RemovedShotIds = said.ShotsLeftOut,
        CabinName = Other(said.CabinNamed?.Name, said.Scene?.Cabin),
        KitName = Other(said.KitNamed?.Name, said.Scene?.Kit),
    };

    public static CrewRequest Sites(CommandSaid said) => said.Request(CrewIntent.ListSites) with { CabinName = Other(said.CabinNamed?.Name, said.Scene?.Cabin) };

    public static CrewRequest Link(CommandSaid said) => Radio(said, CrewIntent.LinkCheck);

    public static CrewRequest QuietChannel(CommandSaid said) => Radio(said, CrewIntent.QuietChannel);

    /// <summary>With nothing said, the law on what the link was last asked about, as with the question.</summary>
    public static CrewRequest Law(CommandSaid said)
    {
        CrewRequest request = Radio(said, CrewIntent.LinkLaw);
        bool goesOn = said.Radio.IsEmpty && said.SceneNamed is null && said.Memory.LastRadio is not null;
        RadioSaid? before = !goesOn ? null : said.KitNamed is null ? said.Memory.LastRadio!.Said : said.Memory.LastRadio!.Said.WithoutGear();
        return before is null ? request : request with { Radio = request.Radio.Over(before) };
    }

    public static CrewRequest Channels(CommandSaid said) => Radio(said, said.Radio.CarriersMHz.Count > 0 ? CrewIntent.CheckChannels : CrewIntent.Channels);

    /// <summary>Weather and place stay true from the question before, as with the question.</summary>
    public static CrewRequest Heat(CommandSaid said)
    {
        HeatSaid heat = said.Forecast.Heat;
        HeatAspect aspect = said.Show switch
        {
            "cool-first" => HeatAspect.CoolFirst,
            "between" => HeatAspect.Between,
            "how-hot" => HeatAspect.HowHot,
            "rhythm" => HeatAspect.Rhythm,
            "shade" => HeatAspect.Gains,
            "take" => HeatAspect.Roll,
            _ => heat.RollMin is null ? HeatAspect.Roll : HeatAspect.Enough,
        };
        ForecastSaid whole = said.Forecast with { Heat = heat with { Aspect = aspect } };
        ForecastMemory? last = said.SceneNamed is null && said.Memory.LastForecast is { Intent: CrewIntent.HeatForecast } before ? before : null;
        CrewRequest request = Forecast(said with { Forecast = whole }, CrewIntent.HeatForecast);
        return request with
        {
            Units = request.Units ?? (heat.InFahrenheit ? UnitPreference.Imperial : null),
            Forecast = last is null ? request.Forecast : request.Forecast.Over(new ForecastSaid { Heat = last.Said.Heat.Facts() }),
        };
    }

    public static CrewRequest Levels(CommandSaid said)
    {
        LevelAspect aspect = said.Show switch
        {
            "pad" => LevelAspect.Pad,
            "clips" => LevelAspect.Clips,
            "safety" => LevelAspect.Safety,
            _ => said.Forecast.Levels.Wireless == true ? LevelAspect.Transmitter : LevelAspect.Any,
        };
        return Forecast(said with { Forecast = said.Forecast with { Levels = said.Forecast.Levels with { Aspect = aspect } } }, CrewIntent.Levels);
    }

    public static CrewRequest RunTime(CommandSaid said)
    {
        RunTimeSaid run = said.Forecast.RunTime;
        bool length = run.NeedMin is not null || run.UntilMinute is not null || run.UntilLunch, media = run.TrackCount is not null || run.SampleRateHz is not null || run.CardSizeGb is not null;
        RunTimeAspect aspect = said.Show switch
        {
            "swaps" => RunTimeAspect.Swaps,
            "batteries" => RunTimeAspect.Batteries,
            "cards" => RunTimeAspect.Cards,
            "first" => RunTimeAspect.Any,
            _ => length ? RunTimeAspect.Lasts : media ? RunTimeAspect.Cards : RunTimeAspect.Any,
        };
        return Forecast(said with { Drive = new ConditionChanges(), Forecast = said.Forecast with { RunTime = run with { Aspect = aspect } } }, CrewIntent.RunTime);
    }

    public static CrewRequest Noise(CommandSaid said)
    {
        NoiseAspect aspect = said.Show switch
        {
            "fastest" => NoiseAspect.Fastest,
            "loudest" => NoiseAspect.Loudest,
            "table" => NoiseAspect.Table,
            _ => NoiseAspect.Any,
        };
        return Forecast(said with { Forecast = said.Forecast with { Noise = new NoiseSaid { Aspect = aspect } } }, CrewIntent.NoiseForecast);
    }

    public static CrewRequest Route(CommandSaid said) => Forecast(said, CrewIntent.QuietStretches);

    public static CrewRequest Clip(CommandSaid said) => said.Request(CrewIntent.JudgeClip);

    public static CrewRequest ShowScene(CommandSaid said) => said.Request(CrewIntent.Show) with { ShownName = said.Scene?.Name };

    public static CrewRequest ShowCar(CommandSaid said) => said.Request(CrewIntent.Show) with { ShownName = (said.CabinNamed ?? said.Vocabulary.CabinOf(said.Scene))?.Name };

    public static CrewRequest ShowKit(CommandSaid said) => said.Request(CrewIntent.Show) with { ShownName = said.Kit?.Name };

    private static CrewRequest Radio(CommandSaid said, CrewIntent intent) => said.Request(intent) with { Radio = said.Radio with { KitName = said.KitNamed?.Name, SpeedKmPerHour = said.Drive.SpeedKmPerHour } };

    private static CrewRequest Forecast(CommandSaid said, CrewIntent intent) => said.Request(intent) with
    {
        Conditions = said.Drive,
        Forecast = said.Forecast with { KitName = said.KitNamed?.Name, CabinName = Other(said.CabinNamed?.Name, said.Scene?.Cabin), Noise = said.Forecast.Noise with { Drive = said.Drive } },
    };

    private static string? Other(string? said, string? kept) => said == kept ? null : said;
}
