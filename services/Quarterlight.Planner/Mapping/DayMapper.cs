using Google.Protobuf.WellKnownTypes;
using Quarterlight.Endurance;
using Quarterlight.Endurance.Heat;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Shoot days: what the contract leaves open is filled in, then read.</summary>
internal static class DayMapper
{
    private static readonly HeatTask s_usual = new()
    {
        Start = DateTimeOffset.UnixEpoch,
        LatitudeDeg = 0,
        LongitudeDeg = 0,
        Air = new OutsideAir(20, 50),
        Car = new HeatCar(1, []),
    };

    // A day inside the calendar at either end, so that no offset leads out of it; which years the sun is known for is the room's business.
    private static readonly Timestamp s_first = Timestamp.FromDateTimeOffset(new DateTimeOffset(1, 1, 2, 0, 0, 0, TimeSpan.Zero));
    private static readonly Timestamp s_last = Timestamp.FromDateTimeOffset(new DateTimeOffset(9999, 12, 30, 0, 0, 0, TimeSpan.Zero));

    /// <summary>A copy with everything that has a usual value filled in.</summary>
    /// <param name="day">As sent.</param>
    /// <param name="adults">Who sits in the car when the day does not say.</param>
    public static V1.ShootDay Filled(V1.ShootDay day, int adults)
    {
        V1.ShootDay filled = day.Clone();
        filled.DurationMin = day.HasDurationMin ? day.DurationMin : s_usual.DurationMin;
        filled.Glass = day.Glass == V1.GlassKind.Unspecified ? s_usual.Glass.ToContract<V1.GlassKind>() : day.Glass;
        filled.Shade = day.Shade == V1.CarShade.Unspecified ? s_usual.Shade.ToContract<V1.CarShade>() : day.Shade;
        filled.Cover = day.Cover == V1.SunCover.Unspecified ? s_usual.Cover.ToContract<V1.SunCover>() : day.Cover;
        filled.SoakMin = day.HasSoakMin ? day.SoakMin : s_usual.SoakMin;
        V1.Occupants people = filled.Occupants ??= new V1.Occupants();
        people.AdultCount = people.HasAdultCount ? people.AdultCount : adults;
        people.ClothingClo = people.HasClothingClo ? people.ClothingClo : s_usual.Occupants.ClothingClo;
        people.ActivityMet = people.HasActivityMet ? people.ActivityMet : s_usual.Occupants.ActivityMet;
        V1.CoolingSystem cooling = filled.Cooling ??= new V1.CoolingSystem();
        cooling.PowerW = cooling.HasPowerW ? cooling.PowerW : s_usual.Cooling.PowerW;
        cooling.SetPointC = cooling.HasSetPointC ? cooling.SetPointC : s_usual.Cooling.SetPointC;
        cooling.AirflowLPerS = cooling.HasAirflowLPerS ? cooling.AirflowLPerS : s_usual.Cooling.AirflowLPerS;
        return filled;
    }

    /// <summary>The day as the heat room takes it; the car and how it is driven are the caller's to put in.</summary>
    /// <param name="day">Filled in.</param>
    /// <param name="at">Its path.</param>
    /// <param name="reader">Takes what cannot be read; ranges are the room's business.</param>
    public static HeatTask ToDomain(V1.ShootDay day, string at, FieldReader reader)
    {
        if (day.Air is null)
        {
            reader.Add($"{at}.air", "the air outside is missing", "Give at least its temperature and relative humidity");
        }

        return s_usual with
        {
            Start = Start(day, at, reader),
            DurationMin = day.DurationMin,
            LatitudeDeg = day.LatitudeDeg,
            LongitudeDeg = day.LongitudeDeg,
            Air = day.Air is { } air ? new OutsideAir(air.TemperatureC, air.RelativeHumidityPercent, air.WindSpeedMPerS, air.CloudFraction) : s_usual.Air,
            HeadingDeg = day.HasHeadingDeg ? day.HeadingDeg : null,
            Glass = reader.Enum<GlassKind>($"{at}.glass", day.Glass),
            Shade = reader.Enum<CarShade>($"{at}.shade", day.Shade),
            Cover = reader.Enum<SunCover>($"{at}.cover", day.Cover),
            SoakMin = day.SoakMin,
            EquipmentW = day.EquipmentW,
            Occupants = new Occupants
            {
                AdultCount = day.Occupants.AdultCount,
                ChildCount = day.Occupants.ChildCount,
                AnimalCount = day.Occupants.AnimalCount,
                ClothingClo = day.Occupants.ClothingClo,
                ActivityMet = day.Occupants.ActivityMet,
                Acclimatised = day.Occupants.Acclimatised,
                NobodyCanOpenADoor = day.Occupants.NobodyCanOpenADoor,
            },
            Cooling = new CoolingSystem
            {
                PowerW = day.Cooling.PowerW,
                SetPointC = day.Cooling.SetPointC,
                AirflowLPerS = day.Cooling.AirflowLPerS,
                Recirculated = day.Cooling.Recirculated,
            },
        };
    }

    /// <summary>The call sheet.</summary>
    public static IReadOnlyList<PlannedTake> Takes(V1.ShootDay day) => [.. day.Takes.Select(t => new PlannedTake(t.Label, t.StartMin, t.DurationMin))];

    /// <summary>Checks a day that is kept with a scene.</summary>
    public static void Check(V1.ShootDay day, string at, FieldReader reader)
    {
        CheckWeather(day, at, reader);
        CheckCallSheet(day, at, reader);
    }

    /// <summary>Checks everything but the call sheet, where only the day is asked about.</summary>
    /// <returns>When shooting starts; of no meaning when something is wrong.</returns>
    public static DateTimeOffset CheckWeather(V1.ShootDay day, string at, FieldReader reader)
    {
        HeatTask task = ToDomain(Filled(day, s_usual.Occupants.AdultCount), at, reader);
        reader.AddUnsaid(HeatRules.Validate(task, at, "").Where(v => v.Field.StartsWith(at, StringComparison.Ordinal)));
        return task.Start;
    }

    /// <summary>Checks the call sheet against the day's own length.</summary>
    public static void CheckCallSheet(V1.ShootDay day, string at, FieldReader reader)
    {
        for (int i = 0; i < day.Takes.Count; i++)
        {
            reader.NoControls($"{at}.takes[{i}].label", day.Takes[i].Label);
        }

        var found = new List<Violation>();
        CallSheetRules.Check(Takes(day), day.HasDurationMin ? day.DurationMin : s_usual.DurationMin, at, found);
        reader.AddUnsaid(found);
    }

    // When shooting starts; notes a violation when that is no moment.
    private static DateTimeOffset Start(V1.ShootDay day, string at, FieldReader reader)
    {
        bool good = HeatRules.UtcOffsetMin.Check($"{at}.utc_offset_min", day.UtcOffsetMin, reader.Violations);
        if (day.StartTime is not { } start)
        {
            reader.Add($"{at}.start_time", "it is not said when shooting starts", "Give the date and time, such as 2026-07-15T17:00:00Z");
            return s_usual.Start;
        }

        if (start.Nanos is < 0 or > 999_999_999 || start.Seconds < s_first.Seconds || start.Seconds > s_last.Seconds)
        {
            reader.Add($"{at}.start_time", "this is no moment", "Give a date between the years 1900 and 2100");
            return s_usual.Start;
        }

        return start.ToDateTimeOffset().ToOffset(TimeSpan.FromMinutes(good ? day.UtcOffsetMin : 0));
    }
}
