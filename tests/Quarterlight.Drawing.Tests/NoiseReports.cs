using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing.Tests;

/// <summary>Invented noise reports with round levels.</summary>
internal static class NoiseReports
{
    private static readonly BandLevels Shape = new(2, 0, -2, -4, -7, -12, -18);
    private static readonly double[] Speeds = [0, 20, 30, 50, 60, 80, 100, 120];

    public static NoiseReport City => Of(50, ("tyres", 62), ("wind", 55), ("engine", 53), ("fan", 49)) with
    {
        Talkers = [Talker("driver", "Driver", 64, 50), Talker("back", "Passenger behind", 60, 54)],
        Verdict = SceneVerdict.WithCare,
        FastestWorksKmPerHour = 40,
        FastestWithCareKmPerHour = 75,
        Table = [Row("windows shut, dry", 22, true), Row("windows shut, rain", 18, true), Row("driver's window half down", 9, true), Row("all windows down", 1, true), Row("fan on step 2", 20, true)],
    };

    public static NoiseReport NoTalkers => City with { Talkers = [], Verdict = null, FastestWorksKmPerHour = null, FastestWithCareKmPerHour = null, Table = [Row("windows shut, dry", 22, false), Row("windows shut, rain", 18, false)] };

    /// <summary>Nine kinds, twelve speeds, twelve rows, names of 80 letters; noise drowns speech.</summary>
    public static NoiseReport Crowded => Of(130, [.. Enumerable.Range(0, 9).Select(i => (new string('W', 80), 90.0 - (3 * i)))]) with
    {
        Talkers = [Talker("a", new string('M', 80), 64, 90)],
        Verdict = SceneVerdict.Unusable,
        Table = [.. Enumerable.Range(0, 12).Select(i => Row(new string('N', 80), 3 - (9 * i), true, [.. Enumerable.Range(0, 12).Select(k => 10.0 * k)]))],
    };

    public static NoiseReport Hostile => City with
    {
        Noise = Of(0, (HeatReports.Hostile, 60), (HeatReports.Hostile, 50)).Noise,
        Talkers = [Talker("a", HeatReports.Hostile, 60, 50)],
        Table = [Row(HeatReports.Hostile, 10, true, 0)],
        Advisories = [new("x", HeatReports.Hostile, AdvisorySeverity.Note)],
    };

    public static NoiseReport NotNumbers => City with
    {
        Noise = City.Noise with { LevelsDb = new(double.NaN, 50, double.NegativeInfinity, 40, double.PositiveInfinity, 30, 20), UncertaintyDb = double.NaN, DailyLimitMin = double.NaN, Shares = [.. City.Noise.Shares, City.Noise.Shares[0] with { LevelDba = double.NaN }] },
        Talkers = [City.Talkers[0] with { SnrDba = double.NaN }, City.Talkers[1] with { SpeechLevelsDb = new(double.NaN, 50, 50, 40, double.NegativeInfinity, 30, 20) }],
        FastestWorksKmPerHour = double.NaN,
        FastestWithCareKmPerHour = double.PositiveInfinity,
        Table = [Row("windows shut", double.NaN, true), Row("windows down", double.NaN, false)],
    };

    public static NoiseReport NoTable => City with { Table = [], Noise = City.Noise with { Shares = [] } };

    public static IReadOnlyList<NoiseReport> All => [City, NoTalkers, Crowded, Hostile, NotNumbers, NoTable];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 6)];

    private static NoiseReport Of(double speed, params (string Words, double Dba)[] kinds)
    {
        NoiseShare[] shares = [.. kinds.Select((k, i) => new NoiseShare(new("tyre", null, k.Words, Levels(k.Dba, i), new("invented", Trust.Judgement), 4), k.Dba, 0.1))];
        BandLevels all = shares.Select(s => s.Contribution.LevelAtDriverEar).Aggregate(BandLevels.EnergySum);
        return new()
        {
            Noise = new(new DriveConditions { SpeedKmPerHour = speed }, all, all.AWeightedDb(), 4, shares, ["tyres"], all.AWeightedDb() > 85 ? 150 : null),
            Talkers = [],
            Table = [],
            Advisories = [new("absolute", "Levels in a given car are roughly known only.", AdvisorySeverity.Caution)],
        };
    }

    private static TalkerNoise Talker(string id, string name, double speechDba, double noiseDba) => new(
        id, name, new BandLevels(-10, 0, 2, -3, -9, -16, -24).Shifted(speechDba), Levels(noiseDba, 0), speechDba - noiseDba, speechDba - noiseDba > 12 ? SceneVerdict.Works : SceneVerdict.WithCare);

    // Each kind falls off a little differently, so that lines part.
    private static BandLevels Levels(double dba, int kind)
    {
        var shape = BandLevels.Create(b => Shape[b] + (kind * (b - 3)));
        return shape.Shifted(dba - shape.AWeightedDb());
    }

    private static NoiseRow Row(string words, double snrStanding, bool judged, params double[] speeds) => new(
        words,
        [.. (speeds.Length > 0 ? speeds : Speeds).Select(v => new SpeedNoise(v, 40 + (0.3 * v), judged ? snrStanding - (0.15 * v) : null, judged ? Judged(snrStanding - (0.15 * v)) : null, "tyres"))],
        judged && snrStanding > 12 ? (snrStanding - 12) / 0.15 : null);

    private static SceneVerdict Judged(double snr) => snr > 12 ? SceneVerdict.Works : snr > 6 ? SceneVerdict.WithCare : SceneVerdict.Unusable;
}
