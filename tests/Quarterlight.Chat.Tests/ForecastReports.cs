using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Reports with figures made up for the tests of the wording.</summary>
internal static class ForecastReports
{
    public static HeatReport Heat() => new()
    {
        Limits =
        {
            new HeatLimitTime { Kind = HeatLimitKind.Comfort, Minutes = 11.6, MinutesAtWorst = 8.2, Reason = "too warm: PMV over 0.7" },
            new HeatLimitTime { Kind = HeatLimitKind.Caution, Minutes = 24.2, MinutesAtWorst = 18, Reason = "heat index over 32 °C" },
            new HeatLimitTime { Kind = HeatLimitKind.Stop, Minutes = 41.9, MinutesAtWorst = 31 },
        },
        SoakedAirC = 52,
        PrecoolMin = 13.2,
        Rhythm = new ShootingRhythm
        {
            Possible = true,
            Limit = HeatLimitKind.Comfort,
            RollMin = 9,
            CoolMin = 5.4,
            TakeCount = 16,
            RollingFraction = 0.6,
            Blocks =
            {
                new HeatBlock { Kind = HeatBlockKind.Precool, StartMin = 0, EndMin = 13.2, EndAirC = 18.3 },
                new HeatBlock { Kind = HeatBlockKind.Roll, StartMin = 13.2, EndMin = 22.2, EndAirC = 27 },
            },
        },
        Samples = { new HeatSample { Minute = 22, AirC = 27, InteriorC = 31, OperativeC = 29, RelativeHumidityPercent = 48, Pmv = 0.68, PpdPercent = 15, WbgtC = 23, Co2Ppm = 1900 } },
        Options =
        {
            new HeatOption { Code = "full-shade", Words = "in full shade", Minutes = 34, PrecoolMin = 4, RollingFraction = 0.84 },
            new HeatOption { Code = "cover", Words = "with all glass covered between takes", Minutes = 14, PrecoolMin = 6, RollingFraction = 0.7 },
        },
        SunAtStart = new SunPosition { ElevationDeg = 60, AzimuthDeg = 150, GainW = 820 },
        SunAtEnd = new SunPosition { ElevationDeg = 55, AzimuthDeg = 220, GainW = 700 },
        Advisories = { new Advisory { Code = "fan-off", Message = "The fan stays off in every take.", Severity = AdvisorySeverity.Note } },
    };

    public static RunTimeReport RunTime() => new()
    {
        Items =
        {
            new RunTimeItem { Kind = RunTimeKind.Battery, Id = "recorder", DisplayName = "recorder", Hours = 3.25, HoursWithoutMargin = 4.06, SetCount = 3, SetsNeeded = 2, DeratingFraction = 0.81, Enough = true },
            new RunTimeItem { Kind = RunTimeKind.Card, Id = "cards", DisplayName = "cards", Hours = 5.2, HoursWithoutMargin = 6.5, SetCount = 2, SetsNeeded = 1, DeratingFraction = 1, Enough = true },
            new RunTimeItem { Kind = RunTimeKind.File, Id = "file", DisplayName = "file", Hours = 0.83, HoursWithoutMargin = 0.83, SetCount = 1, SetsNeeded = 1, DeratingFraction = 1, Enough = true },
        },
        FirstId = "recorder",
        FirstOutMin = 195,
        Swaps = { new Swap { AtMin = 172, Words = "Change the batteries of the recorder.", ItemIds = { "recorder" }, AfterTake = "22 take 1" } },
        DataMbPerS = 1.44,
        FileLimitMin = 49.7,
        BatteryC = 29,
        DurationMin = 240,
        Advisories = { new Advisory { Code = "swap-parked", Message = "Swap only with the car parked.", Severity = AdvisorySeverity.Safety } },
    };

    public static LevelReport Levels() => new()
    {
        Inputs =
        {
            Input(1, "lavalier", "parent", 38, ChainVerdict.Fits, "Set 38 dB."),
            Input(2, "short-supercardioid", "child", 30, ChainVerdict.Fits, "Set 30 dB."),
        },
        Sends = { new TransmitterLevel { TransmitterId = "follow-car-send", GainDb = -8, HeadroomDb = 6, Verdict = ChainVerdict.Fits, Words = "Set the follow-car transmitter to -8 dB: the loudest peak stays 6 dB under full modulation." } },
        Advisories = { new Advisory { Code = "rehearse", Message = "Have the loudest line played before the first take.", Severity = AdvisorySeverity.Note } },
    };

    public static NoiseReport Noise() => new()
    {
        Noise = new CabinNoise
        {
            LevelDba = new Estimate { Value = 64, PlusMinus = 4 },
            Levels = new OctaveLevels { LevelsDb = { 70, 66, 61, 58, 52, 45, 38 } },
            Shares =
            {
                new NoiseShare { Kind = "tyre", Words = "tyres", LevelDba = new Estimate { Value = 62, PlusMinus = 4 }, ShareFraction = 0.7 },
                new NoiseShare { Kind = "engine", Words = "engine", LevelDba = new Estimate { Value = 57, PlusMinus = 4 }, ShareFraction = 0.3 },
            },
            DominantWords = { "engine", "engine", "tyres", "tyres", "tyres", "wind", "wind" },
        },
        Talkers =
        {
            new TalkerNoise { TalkerId = "parent", DisplayName = "Parent", SnrDba = 16, Verdict = SceneVerdict.Works },
            new TalkerNoise { TalkerId = "child", DisplayName = "Child", SnrDba = 12, Verdict = SceneVerdict.WithCare },
        },
        Verdict = SceneVerdict.WithCare,
        FastestWorksKmPerHour = 40,
        FastestWithCareKmPerHour = 72,
        Table =
        {
            new NoiseRow
            {
                Words = "windows shut, coarse asphalt, dry",
                Cells = { Cell(0, SceneVerdict.Works), Cell(30, SceneVerdict.Works), Cell(50, SceneVerdict.WithCare), Cell(80, SceneVerdict.Unusable), Cell(100, SceneVerdict.Unusable) },
                FastestWorksKmPerHour = 40,
            },
        },
        Advisories = { new Advisory { Code = "drive-first", Message = "The driver drives first.", Severity = AdvisorySeverity.Safety } },
    };

    public static RouteReport Route() => new()
    {
        Stretches =
        {
            Stretch("Orchard Street", 0, 700, 40, SceneVerdict.Works, 63),
            Stretch("Market cobbles", 700, 150, 20, SceneVerdict.Unusable, 27),
            Stretch("River Road", 850, 2200, 55, SceneVerdict.WithCare, 144),
        },
        QuietRuns =
        {
            new QuietRun { FirstLabel = "River Road", LastLabel = "River Road", StartM = 850, LengthM = 2200, DurationS = 144, Verdict = SceneVerdict.WithCare },
            new QuietRun { FirstLabel = "Orchard Street", LastLabel = "Orchard Street", StartM = 0, LengthM = 700, DurationS = 63, Verdict = SceneVerdict.Works },
        },
    };

    private static SpeedNoise Cell(double speed, SceneVerdict verdict) => new() { SpeedKmPerHour = speed, NoiseDba = 50, Verdict = verdict, DominantWords = "tyres" };

    private static StretchNoise Stretch(string label, double start, double length, double speed, SceneVerdict verdict, double seconds) =>
        new() { Label = label, StartM = start, LengthM = length, SpeedKmPerHour = speed, NoiseDba = 61, WorstSnrDba = 12, Verdict = verdict, DurationS = seconds, DominantWords = "tyres" };

    private static InputLevels Input(int number, string microphone, string talker, double gain, ChainVerdict verdict, string words) => new()
    {
        RecorderInput = number,
        MicrophoneId = microphone,
        TalkerIds = { talker },
        PeakLevelDb = new Estimate { Value = 110, PlusMinus = 6 },
        CapsuleMarginDb = 20,
        GainDb = gain,
        PeakDbfs = -6,
        SpeechDbfs = -30,
        HeadroomDb = 6,
        CabinNoiseDbfs = -48,
        SelfNoiseDbfs = -70,
        ChainNoiseDbfs = -80,
        SafetyGainDb = gain - 12,
        SafetyPeakDbfs = -18,
        LimiterWords = "Switch the limiter on.",
        Verdict = verdict,
        Words = words,
        Efforts = { new EffortLevel { Effort = VocalEffort.Whisper, PeakDbfs = -42, SpeechDbfs = -58 }, new EffortLevel { Effort = VocalEffort.Shout, PeakDbfs = 2, SpeechDbfs = -14, Clips = true } },
    };
}
