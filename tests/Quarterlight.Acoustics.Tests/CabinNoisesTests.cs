using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class CabinNoisesTests
{
    private static readonly NoiseCar s_car = new(false);
    private static readonly WindowOpening[] s_allDown = [.. DriveConditionsRules.PaneIds.Select(p => new WindowOpening(p, 1))];
    private static readonly List<Dictionary<string, string>> s_published = Vectors.Read("car_noise");

    // Published with the top open; four windows down lie 3 dB below by judgement, and tyres add a little.
    [Fact]
    public void Of_AllWindowsDown_LiesWithinThreeDecibelsOfAnOpenTop() => Assert.All(Published("top_open"), row =>
        Assert.InRange(Level(Drive(row.Speed) with { OpenWindows = s_allDown }), row.Low - 3, row.Low));

    [Fact]
    public void Of_OpeningAllWindows_AddsAboutWhatOpeningATopDoes()
    {
        (double speed, double low, double high) = Published("opening_the_top").Single();
        double added = Level(Drive(speed) with { OpenWindows = s_allDown }) - Level(Drive(speed));
        Assert.InRange(added, low - 3, high + 3);
    }

    [Fact]
    public void Of_Concrete_IsLouderThanNewAsphaltAsPublished()
    {
        (double speed, double about, _) = Published("concrete_over_new_asphalt").Single();
        double concrete = Level(Drive(speed) with { Road = RoadSurface.Concrete });
        Assert.Equal(about, concrete - Level(Drive(speed)), 1.0);
        Assert.True(concrete > Published("concrete_at_night").Single().Low);
    }

    // About 1 dB, blower step and speed not given: steps 2 and 3 lie around it.
    [Theory]
    [InlineData(2, 0.1, 1)]
    [InlineData(3, 1, 3)]
    public void Of_FanWhileDriving_AddsAboutWhatIsPublished(int step, double low, double high)
    {
        (double speed, double about, _) = Published("air_conditioning_while_driving").Single();
        double added = Level(Drive(speed) with { FanStep = step }) - Level(Drive(speed));
        Assert.InRange(added, about * low, about * high);
    }

    [Fact]
    public void Of_AnyConditions_AddsUp()
    {
        var random = new Random(5);
        for (int i = 0; i < 200; i++)
        {
            DriveConditions drive = Drive(random.Next(131)) with
            {
                FanStep = random.Next(5),
                Rain = (Rain)random.Next(3),
                Road = (RoadSurface)random.Next(5),
                OpenWindows = s_allDown[..random.Next(5)],
            };
            CabinNoise noise = CabinNoises.Of(drive, s_car);
            Assert.Equal(noise.LevelsDb.AWeightedDb(), noise.LevelDba, 1e-9);
            Assert.Equal(1, noise.Shares.Sum(s => s.ShareFraction), 1e-12);
            Assert.Equal(noise.Shares.OrderByDescending(s => s.LevelDba), noise.Shares);
            Assert.Equal(NoiseForecast.Forecast(drive, s_car).Count, noise.Shares.Count);
            Assert.InRange(noise.UncertaintyDb, noise.Shares.Min(s => s.Contribution.UncertaintyDb), noise.Shares.Max(s => s.Contribution.UncertaintyDb));
            Assert.Equal(OctaveBands.Count, noise.DominantWords.Count);
            Assert.Equal(ListeningDose.DailyLimitMin(noise.LevelDba), noise.DailyLimitMin);
        }
    }

    [Fact]
    public void Of_DominantWords_NameTheLoudestOfEachBand()
    {
        CabinNoise slow = CabinNoises.Of(Drive(20), s_car), fast = CabinNoises.Of(Drive(120), s_car);
        Assert.Equal("engine", slow.DominantWords[0]);
        Assert.Equal("tyres", fast.DominantWords[1]);
        Assert.Equal("wind", fast.DominantWords[^1]);
        Assert.All(CabinNoises.Of(Drive(0) with { Rain = Rain.Heavy, Engine = EngineState.Off }, s_car).DominantWords, w => Assert.Equal("rain", w));
    }

    // Two panes that are each quieter than the tyres, together louder: open windows are one kind.
    [Fact]
    public void Loudest_PanesTogetherAboveTheRest_NamesOpenWindows()
    {
        IReadOnlyList<NoiseContribution> forecast = NoiseForecast.Forecast(Drive(50) with { OpenWindows = s_allDown[..2] }, s_car);
        double[] energies = [.. forecast.Select(c => c.PaneId is not null ? 0.6 : c.PortKind == "tyre" ? 1.0 : 0.1)];
        Assert.Equal("open windows", CabinNoises.Loudest(forecast, energies));
        double[] less = [.. energies.Select(e => e == 0.6 ? 0.4 : e)];
        Assert.Equal("tyres", CabinNoises.Loudest(forecast, less));
        Assert.Equal("open front-left window", CabinNoises.Loudest([.. forecast.Where(c => c.PaneId is not "front-right")], [.. forecast.Where(c => c.PaneId is not "front-right").Select(c => c.PaneId is null ? 0.1 : 1)]));
    }

    [Fact]
    public void Of_NothingToAdd_IsAProgrammersMistake()
    {
        Assert.Throws<ArgumentException>(() => CabinNoises.Of(Drive(0), []));
        Assert.Throws<ArgumentException>(() => CabinNoises.Loudest(NoiseForecast.Forecast(Drive(0), s_car), [1.0]));
    }

    private static DriveConditions Drive(double speed) => new() { SpeedKmPerHour = speed };

    private static double Level(DriveConditions drive) => CabinNoises.Of(drive, s_car).LevelDba;

    private static List<(double Speed, double Low, double High)> Published(string condition)
    {
        List<(double, double, double)> rows =
            [.. s_published.Where(r => r["condition"] == condition).Select(r => (Vectors.Number(r["speed_km_per_hour"]), Vectors.Number(r["low"]), Vectors.Number(r["high"])))];
        Assert.NotEmpty(rows);
        return rows;
    }
}
