using Quarterlight.Endurance.Heat;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Tests.Heat;

public class HeatRulesTests
{
    private static readonly HeatTask s_good = HeatTasks.HotDay;

    /// <summary>Every limited field: its path, its range, and a task that has a value there.</summary>
    private static readonly (string Field, ValidRange Range, Func<double, HeatTask> With)[] s_fields =
    [
        ("d.duration_min", new(10, 720, "min"), v => s_good with { DurationMin = v }),
        ("d.latitude_deg", new(-90, 90, ""), v => s_good with { LatitudeDeg = v }),
        ("d.longitude_deg", new(-180, 180, ""), v => s_good with { LongitudeDeg = v }),
        ("d.air.temperature_c", new(-30, 55, ""), v => s_good with { Air = s_good.Air with { TemperatureC = v } }),
        ("d.air.relative_humidity_percent", new(1, 100, ""), v => s_good with { Air = s_good.Air with { RelativeHumidityPercent = v } }),
        ("d.air.wind_speed_m_per_s", new(0, 30, ""), v => s_good with { Air = s_good.Air with { WindSpeedMPerS = v } }),
        ("d.air.cloud_fraction", new(0, 1, ""), v => s_good with { Air = s_good.Air with { CloudFraction = v } }),
        ("d.heading_deg", new(0, 360, ""), v => s_good with { HeadingDeg = v }),
        ("d.soak_min", new(0, 600, ""), v => s_good with { SoakMin = v }),
        ("d.equipment_w", new(0, 3000, ""), v => s_good with { EquipmentW = v }),
        ("d.occupants.clothing_clo", new(0, 2, ""), v => s_good with { Occupants = s_good.Occupants with { ClothingClo = v } }),
        ("d.occupants.activity_met", new(0.8, 4, ""), v => s_good with { Occupants = s_good.Occupants with { ActivityMet = v } }),
        ("d.cooling.power_w", new(0, 15000, ""), v => s_good with { Cooling = s_good.Cooling with { PowerW = v } }),
        ("d.cooling.set_point_c", new(5, 30, ""), v => s_good with { Cooling = s_good.Cooling with { SetPointC = v } }),
        ("d.cooling.airflow_l_per_s", new(5, 300, ""), v => s_good with { Cooling = s_good.Cooling with { AirflowLPerS = v } }),
        ("s.speed_km_per_hour", new(0, 130, ""), v => s_good with { SpeedKmPerHour = v }),
        ("s.open_windows", new(0, 4, ""), v => s_good with { OpenWindows = v }),
        ("roll_min", new(0.5, 240, ""), v => s_good with { RollMin = v }),
    ];

    [Fact]
    public void Validate_EachFieldAtAndBeyondItsEnds_KeepsTheContractsRanges()
    {
        foreach ((string field, ValidRange range, Func<double, HeatTask> with) in s_fields)
        {
            Assert.Empty(HeatRules.Validate(with(range.Min), "d", "s"));
            Assert.Empty(HeatRules.Validate(with(range.Max), "d", "s"));
            foreach (double wrong in new[] { range.Min - 0.01, range.Max + 0.01, double.NaN, double.PositiveInfinity })
            {
                Assert.Equal(field, Assert.Single(HeatRules.Validate(with(wrong), "d", "s")).Field);
            }
        }
    }

    [Theory]
    [InlineData(-1, 0, 0, "d.occupants.adult_count")]
    [InlineData(10, 0, 0, "d.occupants.adult_count")]
    [InlineData(2, -1, 0, "d.occupants.child_count")]
    [InlineData(2, 10, 0, "d.occupants.child_count")]
    [InlineData(2, 0, 10, "d.occupants.animal_count")]
    [InlineData(0, 0, 0, "d.occupants.adult_count")]
    public void Validate_WrongHeads_NamesThem(int adults, int children, int animals, string field) =>
        Assert.Equal(field, Assert.Single(HeatRules.Validate(s_good with { Occupants = new Occupants { AdultCount = adults, ChildCount = children, AnimalCount = animals } }, "d", "s")).Field);

    [Fact]
    public void Validate_StopAsALimitOffsetYearAndUnknownGlass_AreRefusedTogether()
    {
        HeatTask task = s_good with { RhythmLimit = HeatLimitKind.Stop, Glass = (GlassKind)9, Start = new DateTimeOffset(1850, 1, 1, 0, 0, 0, TimeSpan.FromHours(-13)), Car = s_good.Car with { AirVolumeM3 = 0 } };

        Assert.Equal(["d.glass", "d.start_time", "d.utc_offset_min", "rhythm_limit", "s.cabin"], HeatRules.Validate(task, "d", "s").Select(v => v.Field).Order(StringComparer.Ordinal));
        Assert.Equal(5, Assert.Throws<InvalidInputException>(() => HeatForecast.Run(task)).Violations.Count);
    }
}
