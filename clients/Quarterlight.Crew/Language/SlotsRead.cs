namespace Quarterlight.Crew.Language;

/// <summary>Which slots the readers found in a question. The order is part of the model: a new one goes last, and the model is trained again.</summary>
[Flags]
internal enum SlotsRead : ulong
{
    None = 0,
    Scene = 1UL << 0,
    UnknownScene = 1UL << 1,
    Car = 1UL << 2,
    Kit = 1UL << 3,
    Microphone = 1UL << 4,
    Talker = 1UL << 5,
    Site = 1UL << 6,
    Units = 1UL << 7,
    Speed = 1UL << 8,
    Windows = 1UL << 9,
    Fan = 1UL << 10,
    Rain = 1UL << 11,
    Engine = 1UL << 12,
    Road = 1UL << 13,
    LeftOut = 1UL << 14,
    Only = 1UL << 15,
    Instead = 1UL << 16,
    Shots = 1UL << 17,
    Distance = 1UL << 18,
    Surroundings = 1UL << 19,
    Sight = 1UL << 20,
    Country = 1UL << 21,
    Frequency = 1UL << 22,
    Power = 1UL << 23,
    Antenna = 1UL << 24,
    Stations = 1UL << 25,
    Transmitters = 1UL << 26,
    TuningRange = 1UL << 27,
    Carriers = 1UL << 28,
    ClipLimits = 1UL << 29,
    ClipChannel = 1UL << 30,
    ClipDemo = 1UL << 31,
    Temperature = 1UL << 32,
    Weather = 1UL << 33,
    Clock = 1UL << 34,
    RollTime = 1UL << 35,
    Beings = 1UL << 36,
    Shade = 1UL << 37,
    NeededTime = 1UL << 38,
    Card = 1UL << 39,
    Effort = 1UL << 40,
    Band = 1UL << 41,
    HeatAspect = 1UL << 42,
    RunTimeAspect = 1UL << 43,
    LevelAspect = 1UL << 44,
    NoiseAspect = 1UL << 45,
    ClipAspect = 1UL << 46,
    Changes = 1UL << 47,
    Short = 1UL << 48,
    Long = 1UL << 49,
}

/// <summary>Tells which slots were read.</summary>
internal static class SlotEvidence
{
    /// <summary>The slots read.</summary>
    /// <param name="said">Words and what they name.</param>
    /// <param name="forecast">What the question says about heat, run time, levels and noise.</param>
    /// <param name="radio">What it says about the radio.</param>
    public static SlotsRead Of(SaidThings said, ForecastSaid forecast, RadioSaid radio)
    {
        CrewRequest r = said.Request;
        return If(r.SceneSaid, SlotsRead.Scene) | If(r.UnknownScene is not null, SlotsRead.UnknownScene) | If(said.CabinSaid is not null, SlotsRead.Car)
            | If(said.KitSaid is not null, SlotsRead.Kit) | If(said.MicrophoneSaid, SlotsRead.Microphone) | If(r.TalkerId is not null, SlotsRead.Talker)
            | If(r.Site is not null, SlotsRead.Site) | If(r.Units is not null, SlotsRead.Units) | OfDrive(r.Conditions)
            | If(r.SiteRemoved || r.RemovedMicrophoneIds.Count > 0, SlotsRead.LeftOut) | If(r.OnlyMicrophoneIds.Count > 0, SlotsRead.Only)
            | If(r.InsteadMicrophoneIds.Count > 0, SlotsRead.Instead) | If(r.RemovedShotIds.Count > 0, SlotsRead.Shots) | If(r.HasChanges, SlotsRead.Changes)
            | OfRadio(radio) | OfClip(r.Clip) | OfHeat(forecast.Heat) | OfGear(forecast)
            | If(said.Count <= 3, SlotsRead.Short) | If(said.Count >= 10, SlotsRead.Long);
    }

    private static SlotsRead OfDrive(ConditionChanges c) => If(c.SpeedKmPerHour is not null, SlotsRead.Speed) | If(c.Windows.Count > 0, SlotsRead.Windows)
        | If(c.FanStep is not null, SlotsRead.Fan) | If(c.Rain is not null, SlotsRead.Rain) | If(c.Engine is not null || c.EngineSpeedRpm is not null, SlotsRead.Engine) | If(c.Road is not null, SlotsRead.Road);

    private static SlotsRead OfRadio(RadioSaid r) => If(r.GapM is not null, SlotsRead.Distance) | If(r.Surroundings is not null, SlotsRead.Surroundings) | If(r.Sight is not null, SlotsRead.Sight)
        | If(r.Country is not null, SlotsRead.Country) | If(r.FrequencyMHz is not null, SlotsRead.Frequency) | If(r.Power is not null, SlotsRead.Power)
        | If(!r.TransmitAntenna.IsEmpty || !r.ReceiveAntenna.IsEmpty, SlotsRead.Antenna) | If(r.Stations.Count > 0, SlotsRead.Stations) | If(r.TransmitterCount is not null, SlotsRead.Transmitters)
        | If(r.TuningRanges.Count > 0, SlotsRead.TuningRange) | If(r.CarriersMHz.Count > 1, SlotsRead.Carriers);

    private static SlotsRead OfClip(ClipSaid c) => If(c.Limits is not null || c.ResetsLimits, SlotsRead.ClipLimits) | If(c.Channel is not null, SlotsRead.ClipChannel)
        | If(c.Demo, SlotsRead.ClipDemo) | If(c.Aspect != Language.ClipAspect.Verdict, SlotsRead.ClipAspect);

    private static SlotsRead OfHeat(HeatSaid h) => If(h.OutsideC is not null, SlotsRead.Temperature) | If(h.SaysWeather, SlotsRead.Weather) | If(h.StartMinute is not null || h.SinceMinute is not null, SlotsRead.Clock)
        | If(h.RollMin is not null || h.SoakMin is not null, SlotsRead.RollTime) | If((h.Adults ?? h.Children ?? h.Animals) is not null, SlotsRead.Beings) | If(h.Shade is not null || h.Cover is not null, SlotsRead.Shade)
        | If(h.Aspect != Language.HeatAspect.Any, SlotsRead.HeatAspect);

    private static SlotsRead OfGear(ForecastSaid f) => If(f.RunTime.NeedMin is not null || f.RunTime.UntilMinute is not null || f.RunTime.UntilLunch, SlotsRead.NeededTime) | If(f.RunTime.CardSizeGb is not null, SlotsRead.Card)
        | If(f.RunTime.Aspect != Language.RunTimeAspect.Any, SlotsRead.RunTimeAspect) | If(f.Levels.Effort is not null, SlotsRead.Effort) | If(f.Levels.Aspect != Language.LevelAspect.Any, SlotsRead.LevelAspect)
        | If(f.Noise.BandHz is not null, SlotsRead.Band) | If(f.Noise.Aspect != Language.NoiseAspect.Any, SlotsRead.NoiseAspect);

    private static SlotsRead If(bool read, SlotsRead slot) => read ? slot : SlotsRead.None;
}
