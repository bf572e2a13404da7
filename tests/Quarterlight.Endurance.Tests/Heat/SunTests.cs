using CsCheck;
using Quarterlight.Endurance.Heat;

namespace Quarterlight.Endurance.Tests.Heat;

public class SolarPositionTests
{
    [Fact]
    public void Of_WorkedExampleOfTheSpaReport_AgreesWithinAHundredthOfADegree()
    {
        // Reda and Andreas, NREL/TP-560-34302, worked example: zenith 50.11162, azimuth 194.34024 degrees (at 1830 m and 820 hPa; here sea level).
        (double elevation, double azimuth) = SolarPosition.Of(new DateTimeOffset(2003, 10, 17, 12, 30, 30, TimeSpan.FromHours(-7)), 39.742476, -105.1786);

        Assert.Equal(90 - 50.11162, elevation, 0.01);
        Assert.Equal(194.34024, azimuth, 0.01);
    }

    [Fact]
    public void Direction_WorkedExampleOfMeeus_IsIts()
    {
        // Meeus, examples 25.a and 28.a, 1992 October 13, 0h dynamical time: declination -7 deg 47' 06", equation of time 13 min 42.6 s.
        DateTimeOffset time = new DateTimeOffset(1992, 10, 13, 0, 0, 0, TimeSpan.Zero).AddSeconds(-67);
        (_, _, double up) = SolarPosition.Direction(time, 90, 0);
        Assert.Equal(-(7 + (47 / 60.0) + (6 / 3600.0)), Math.Asin(up) * 180 / Math.PI, 0.001);

        (double east, _, double high) = SolarPosition.Direction(time, 0, 0);
        Assert.Equal(-180 + ((13 + (42.6 / 60) - (67 / 60.0)) / 4), Math.Atan2(-east, high) * 180 / Math.PI, 0.005);
    }

    [Fact]
    public void Of_Equinox_RisesNearSixAndDueEastOnBothHemispheres()
    {
        foreach (double latitude in new[] { 45.0, 10, 0, -10, -45 })
        {
            (_, double azimuth) = SolarPosition.Of(new DateTimeOffset(2026, 3, 20, 6, 7, 0, TimeSpan.Zero), latitude, 0);
            Assert.Equal(90, azimuth, 1.0);
        }
    }

    [Fact]
    public void Of_AnyTimeAndPlace_TurnsOnceADayAndStaysOnTheSphere() => Gen.Select(Gen.Int[0, 70_000], Gen.Double[-89, 89], Gen.Double[-180, 180]).Sample((days, latitude, longitude) =>
    {
        DateTimeOffset time = new DateTimeOffset(1905, 1, 1, 0, 0, 0, TimeSpan.Zero).AddDays(days);
        double highest = -90, lowest = 90;
        for (int hour = 0; hour < 24; hour++)
        {
            (double east, double north, double up) = SolarPosition.Direction(time.AddHours(hour), latitude, longitude);
            Assert.Equal(1, (east * east) + (north * north) + (up * up), 1e-9);
            (double elevation, double azimuth) = SolarPosition.Of(time.AddHours(hour), latitude, longitude);
            Assert.InRange(azimuth, 0, 360);
            (highest, lowest) = (Math.Max(highest, elevation), Math.Min(lowest, elevation));
        }

        // Noon and midnight heights mirror about the declination, which stays within the tropics.
        Assert.InRange(highest, 90 - Math.Abs(latitude) - 23.45 - 2, 90);
        Assert.True(highest <= 90 - Math.Abs(latitude) + 23.45 + 0.7 || Math.Abs(latitude) < 24.2);
        Assert.True(lowest < highest);
    });

    [Fact]
    public void Of_MirroredHemisphereHalfAYearLater_StandsAsHigh()
    {
        // Solstice to solstice: the declination changes its sign, noon moves by the equation of time only.
        double Noon(double latitude, DateTimeOffset day) => Enumerable.Range(-60, 120).Max(m => SolarPosition.Of(day.AddHours(12).AddMinutes(m), latitude, 0).ElevationDeg);

        Assert.Equal(Noon(35, new(2026, 6, 21, 0, 0, 0, TimeSpan.Zero)), Noon(-35, new(2026, 12, 21, 0, 0, 0, TimeSpan.Zero)), 0.05);
    }
}

public class ClearSkyTests
{
    [Fact]
    public void AirMass_LowSun_IsThatOfKastenAndYoung()
    {
        Assert.Equal(1, ClearSky.AirMass(90), 0.001);
        Assert.Equal(37.92, ClearSky.AirMass(0), 0.3); // Kasten and Young's own table at the horizon: about 38.
    }

    [Fact]
    public void At_Zenith_IsThatOfTheFormulas()
    {
        Irradiance light = ClearSky.At(90, 0);

        Assert.Equal(1098 * Math.Exp(-0.059), light.GlobalW, 0.1); // Haurwitz.
        Assert.Equal(1353 * 0.7, light.DirectNormalW, 0.5); // Meinel at air mass 1.
    }

    [Fact]
    public void At_AnySky_KeepsItsParts() => Gen.Select(Gen.Double[-10, 90], Gen.Double[0, 1]).Sample((elevation, cloud) =>
    {
        Irradiance light = ClearSky.At(elevation, cloud), clear = ClearSky.At(elevation, 0);
        Assert.True(light.DirectNormalW >= 0 && light.DiffuseW >= 0);
        Assert.True(light.DirectNormalW <= clear.DirectNormalW + 1e-9 && light.GlobalW <= clear.GlobalW + 1e-9);
        Assert.Equal(light.GlobalW, light.DiffuseW + (light.DirectNormalW * Math.Max(0, Math.Sin(elevation * Math.PI / 180))), 1e-6);
        Assert.True(ClearSky.At(elevation, Math.Min(1, cloud + 0.1)).DirectNormalW <= light.DirectNormalW + 1e-9);
    });

    [Fact]
    public void At_Overcast_LeavesAQuarter() // Kasten and Czeplak 1980: 1 - 0.75.
    {
        Assert.Equal(0.25, ClearSky.At(50, 1).GlobalW / ClearSky.At(50, 0).GlobalW, 1e-9);
        Assert.Equal(0, ClearSky.At(50, 1).DirectNormalW, 1e-9);
    }
}

public class SunThroughGlassTests
{
    [Fact]
    public void Reflectance_NormalIncidence_IsFresnels()
    {
        (double s, double p) = GlassTransmission.Reflectance(1);

        Assert.Equal(Math.Pow(0.526 / 2.526, 2), s, 1e-12);
        Assert.Equal(s, p, 1e-12);
        (s, p) = GlassTransmission.Reflectance(0.5);
        Assert.Equal(0.093, (s + p) / 2, 0.0006); // Duffie and Beckman's example at 60 degrees, index 1.526 (from memory; follows from Fresnel).
        Assert.Equal(0, GlassTransmission.Reflectance(Math.Cos(Math.Atan(1.526))).Parallel, 1e-12); // Brewster's angle.
    }

    [Fact]
    public void Through_LevelPane_IsTheBeamTimesTheSine()
    {
        var light = new Irradiance(800, 0, 0.0001);
        PaneLight through = SunThroughGlass.Through([new GlassPane("roof", 2, 0, 0)], light, 40, 123, 77);

        double sine = Math.Sin(40 * Math.PI / 180);
        Assert.Equal(800 * 2 * sine * GlassTransmission.AngleRatio(sine), through.OtherDirectW, 0.1);
        Assert.Equal(0, through.WindscreenDirectW);
    }

    [Fact]
    public void Through_HeadingUnknown_IsTheMeanOfAllHeadings()
    {
        Irradiance light = ClearSky.At(35, 0.2);
        double mean = Enumerable.Range(0, 360).Average(h => Total(SunThroughGlass.Through(HeatTasks.Saloon.Panes, light, 35, 200, h)));

        Assert.Equal(mean, Total(SunThroughGlass.Through(HeatTasks.Saloon.Panes, light, 35, 200, null)), mean * 0.005);
    }

    [Fact]
    public void Through_SunOnTheNose_ComesInByTheWindscreen()
    {
        Irradiance light = ClearSky.At(20, 0);
        PaneLight toward = SunThroughGlass.Through(HeatTasks.Saloon.Panes, light, 20, 90, 90), away = SunThroughGlass.Through(HeatTasks.Saloon.Panes, light, 20, 90, 270);

        Assert.True(toward.WindscreenDirectW > 2 * away.WindscreenDirectW);
    }

    private static double Total(PaneLight l) => l.WindscreenDirectW + l.WindscreenDiffuseW + l.OtherDirectW + l.OtherDiffuseW;
}
