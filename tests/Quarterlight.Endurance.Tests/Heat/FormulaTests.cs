using CsCheck;
using Quarterlight.Endurance.Heat;

namespace Quarterlight.Endurance.Tests.Heat;

public class ThermalComfortTests
{
    [Fact]
    public void Pmv_RowsOfTheStandard_AgreeWithinItsRounding()
    {
        List<Dictionary<string, string>> rows = Vectors.Read("pmv_examples");
        Assert.Equal(12, rows.Count);
        foreach (Dictionary<string, string> row in rows)
        {
            double air = Vectors.Number(row["air_c"]), rh = Vectors.Number(row["rh_percent"]);
            double? pmv = ThermalComfort.Pmv(air, Vectors.Number(row["radiant_c"]), Vectors.Number(row["air_speed_m_s"]), ThermalComfort.StandardVapourPa(air, rh), Vectors.Number(row["met"]), Vectors.Number(row["clo"]));

            Assert.NotNull(pmv);
            Assert.Equal(Vectors.Number(row["pmv_fixture_1dp"]), pmv.Value, 0.1);
            Assert.Equal(Vectors.Number(row["ppd_fixture"]), ThermalComfort.PpdPercent(pmv.Value), 1.0);
            Assert.Equal(Vectors.Number(row["pmv_computed"]), pmv.Value, 0.002); // Another program, solved by halving.
        }
    }

    [Theory]
    [InlineData(10, 22, 0.1, 1000, 1.6, 1.5, true)]
    [InlineData(9.99, 22, 0.1, 1000, 1.6, 1.5, false)]
    [InlineData(30, 25, 0.1, 1000, 1, 0.3, true)]
    [InlineData(30.01, 25, 0.1, 1000, 1, 0.3, false)]
    [InlineData(22, 10, 0.1, 1000, 1.4, 1.2, true)]
    [InlineData(22, 9.99, 0.1, 1000, 1.4, 1.2, false)]
    [InlineData(20, 40, 0.1, 1000, 1, 0.3, true)]
    [InlineData(20, 40.01, 0.1, 1000, 1, 0.3, false)]
    [InlineData(24, 24, 1, 1000, 1.2, 0.8, true)]
    [InlineData(24, 24, 1.01, 1000, 1.2, 0.8, false)]
    [InlineData(24, 24, 0.1, 2700, 1.2, 0.5, true)]
    [InlineData(24, 24, 0.1, 2701, 1.2, 0.5, false)]
    [InlineData(26, 26, 0.1, 1000, 0.79, 0.5, false)]
    [InlineData(24, 24, 0.1, 1000, 1.2, 2.01, false)]
    [InlineData(12, 12, 0.1, 800, 1, 0.3, false)] // Colder than -2.
    public void Pmv_AtTheEndsOfItsRanges_IsThereOrNot(double air, double radiant, double speed, double vapour, double met, double clo, bool there) =>
        Assert.Equal(there, ThermalComfort.Pmv(air, radiant, speed, vapour, met, clo) is not null);

    [Fact]
    public void Ppd_OfNeutral_IsFivePercent() => Assert.Equal(5, ThermalComfort.PpdPercent(0), 1e-12);

    [Fact]
    public void Pmv_WarmerAir_IsNeverColder() => Gen.Select(Gen.Double[11, 29], Gen.Double[12, 39], Gen.Double[0, 1], Gen.Double[0.8, 3]).Sample((air, radiant, speed, met) =>
    {
        double now = ThermalComfort.Raw(air, radiant, speed, 1200, met, 0.6);
        Assert.True(ThermalComfort.Raw(air + 0.5, radiant, speed, 1200, met, 0.6) > now - 1e-3);
        Assert.True(ThermalComfort.Raw(air, radiant + 0.5, speed, 1200, met, 0.6) > now);
        Assert.True(ThermalComfort.Raw(air, radiant, speed, 1300, met, 0.6) > now);
    });
}

public class HeatIndexTests
{
    [Fact]
    public void Regression_TableOfTheWeatherService_EqualsAllCellsButOne()
    {
        List<Dictionary<string, string>> rows = Vectors.Read("heat_index");
        Assert.Equal(135, rows.Count);
        var odd = rows.Where(r => Math.Round(HeatIndex.RegressionF(Vectors.Number(r["temp_f"]), Vectors.Number(r["rh_percent"]))) != Vectors.Number(r["nws_table_hi_f"])).ToList();

        Dictionary<string, string> one = Assert.Single(odd);
        Assert.Equal(("90", "45"), (one["temp_f"], one["rh_percent"]));
    }

    [Fact]
    public void Procedure_SameCells_AgreesWithTheOtherProgram()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("heat_index"))
        {
            Assert.Equal(Vectors.Number(row["with_nws_adjustments_f"]), HeatIndex.ProcedureF(Vectors.Number(row["temp_f"]), Vectors.Number(row["rh_percent"])), 0.011);
        }
    }

    [Theory]
    [InlineData(79.9, HeatIndexClass.None)]
    [InlineData(80, HeatIndexClass.Caution)]
    [InlineData(90, HeatIndexClass.ExtremeCaution)]
    [InlineData(102.9, HeatIndexClass.ExtremeCaution)]
    [InlineData(103, HeatIndexClass.Danger)]
    [InlineData(125, HeatIndexClass.ExtremeDanger)]
    public void Class_AtItsEdges_IsTheChartsOwn(double index, HeatIndexClass wanted) => Assert.Equal(wanted, HeatIndex.Class(index));

    [Theory]
    [InlineData(26.6, 60, false)]
    [InlineData(26.7, 60, true)]
    [InlineData(43.3, 30, true)]
    [InlineData(43.4, 30, false)]
    [InlineData(43, 90, false)] // Beyond the last figure of the table.
    public void OfC_AtTheEndsOfTheTable_IsThereOrNot(double air, double humidity, bool there) => Assert.Equal(there, HeatIndex.OfC(air, humidity) is not null);

    [Fact]
    public void OfC_ThirtyDegreesEightyPercent_IsThatOfPublicFixtures() => Assert.Equal(37.7, HeatIndex.OfC(30, 80)!.Value, 0.1); // Public comfort validation data.
}

public class WetBulbTests
{
    [Fact]
    public void Stull_AgainstThePsychrometer_StaysWithinOneKelvin()
    {
        // Stull 2011 states -1.0 to +0.65 C against his reference; the plain psychrometer differs a little more in very hot, dry air.
        for (double air = 0; air <= 50; air += 2)
        {
            for (double humidity = 10; humidity <= 99; humidity += 5)
            {
                Assert.Equal(WetBulb.PsychrometerC(air, humidity), WetBulb.StullC(air, humidity), 1.0);
            }
        }
    }

    [Theory]
    [InlineData(-20.1, 50)]
    [InlineData(50.1, 50)]
    [InlineData(20, 4.9)]
    [InlineData(20, 99.1)]
    public void Stull_OutsideItsRanges_Refuses(double air, double humidity)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WetBulb.StullC(air, humidity));
        Assert.InRange(WetBulb.OfC(air, humidity), -40, air + 1e-9);
    }

    [Theory]
    [InlineData(25, 30, 26.5)] // Public comfort validation data, as the next.
    [InlineData(17.3, 40, 24.1)]
    [InlineData(21.1, 55, 31.3)]
    public void Shade_PublicRows_AreTheirs(double wet, double globe, double wanted) =>
        Assert.Equal(wanted, WetBulbGlobe.ShadeC(wet, globe), 0.05);

    [Fact]
    public void Sun_PublicRow_IsIts() => Assert.Equal(25.9, WetBulbGlobe.SunC(25, 32, 20), 0.05);

    [Theory]
    [InlineData(349, 27.46)] // NIOSH 2016-106, section 8.1, as public programs quote it.
    [InlineData(234, 29.45)]
    public void ExposureLimit_PublishedRates_AreThoseOfNiosh(double watts, double wanted)
    {
        Assert.Equal(wanted, WetBulbGlobe.ExposureLimitC(watts), 0.05);
        Assert.True(WetBulbGlobe.AlertLimitC(watts) < WetBulbGlobe.ExposureLimitC(watts));
    }
}

public class CarbonDioxideTests
{
    [Fact]
    public void After_TwoPeopleRecirculating_IsNearTheMeasuredCabin() =>
        Assert.Equal(4844, CarbonDioxide.After(420, 2 * 0.0052, 3, 2.3, 45), 150.0); // 2011 study; the 2.3 an hour was fitted to it, inside 1.5 to 7.

    [Fact]
    public void After_FourPeopleSealed_RisesFourHundredSixteenAMinute() => Assert.Equal(416, CarbonDioxide.After(420, 4 * 0.0052, 3, 0, 1) - 420, 1.0);

    [Fact]
    public void After_LongTime_IsTheBalance() => Assert.Equal(420 + (2 * 0.0052 * 3600 / (3 * 5) * 1000), CarbonDioxide.After(420, 2 * 0.0052, 3, 5, 1e6), 1e-6);
}

public class OccupantHeatTests
{
    [Fact]
    public void Sensible_RowOfTheHandbook_AndItsNoteAboutWarmerRooms()
    {
        Dictionary<string, string> row = Vectors.Read("occupant_heat").Single(r => r["activity"] == "seated, very light work");

        Assert.Equal(Vectors.Number(row["sensible_w"]), OccupantHeat.SensibleW(24), 0.5);
        Assert.Equal(Vectors.Number(row["latent_w"]), OccupantHeat.LatentW(24), 0.5);
        Assert.Equal(0.8 * 70, OccupantHeat.SensibleW(27), 0.5);
        Assert.Equal(115, OccupantHeat.SensibleW(60) + OccupantHeat.LatentW(60), 1e-9);
        Assert.Equal(0, OccupantHeat.SensibleW(60));
        Assert.Equal(0, OccupantHeat.LatentW(-10));
    }
}

public class AirChangeTests
{
    [Theory]
    [InlineData(30)]
    [InlineData(90)]
    [InlineData(130)]
    public void Flow_ShutAndDriving_IsInsideWhatCabinsWereMeasuredAt(double speed) => // 1.5 to 7 an hour for 3 m3, implied by the 2011 study.
        Assert.InRange(AirChange.FlowM3PerS(3, 0, speed, 0, false) * 3600 / 3, 1.5, 7);

    [Fact]
    public void Flow_MoreWindSpeedWindowsOrFlap_IsNeverLess() => Gen.Select(Gen.Double[0, 29], Gen.Double[0, 120], Gen.Double[0, 3.5]).Sample((wind, speed, windows) =>
    {
        double now = AirChange.FlowM3PerS(3, wind, speed, windows, false);
        Assert.True(AirChange.FlowM3PerS(3, wind + 1, speed, windows, false) >= now);
        Assert.True(AirChange.FlowM3PerS(3, wind, speed + 10, windows, false) >= now);
        Assert.True(AirChange.FlowM3PerS(3, wind, speed, windows + 0.5, false) > now);
        Assert.True(AirChange.FlowM3PerS(3, wind, speed, windows, true) >= now);
        Assert.True(AirChange.SkinWPerK(3, AirChange.AirSpeedMPerS(wind + 1, speed)) > AirChange.SkinWPerK(3, AirChange.AirSpeedMPerS(wind, speed)));
    });

    [Fact]
    public void Skin_LightWind_IsNearTheFitOfParkedCars() => Assert.Equal(45, AirChange.SkinWPerK(3, 2), 0.5);
}
