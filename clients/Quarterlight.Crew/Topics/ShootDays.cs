using Google.Protobuf.WellKnownTypes;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>The day a question is about: the scene's, with what the question says on top; made up from the question where the scene has none.</summary>
internal static class ShootDays
{
    // What stands in where nobody said: judgement, and every one of them is said in the answer.
    private const double UsualLatitudeDeg = 40, UsualHumidityPercent = 50;
    private const int Noon = 12 * 60, MinutesPerDay = 24 * 60;

    // The sun moves 15 degrees an hour, so that local noon is noon.
    private const double DegreesPerHour = 15, MinutesPerHour = 60;

    private const double LongestSoakMin = 600, UsualSoakMin = 60, UsualDayMin = 240;

    /// <summary>The day; null when neither scene nor question says how warm it is.</summary>
    /// <param name="asked">The question.</param>
    /// <param name="assumed">Gets what was taken for granted, in words.</param>
    public static ShootDay? Of(Asked asked, List<string> assumed)
    {
        HeatSaid said = asked.Request.Forecast.Heat;
        ShootDay? day = asked.Scene?.ShootDay?.Clone() ?? MadeUp(asked, said, assumed);
        if (day is null)
        {
            return null;
        }

        day.Air ??= new OutsideAir();
        day.Air.TemperatureC = said.OutsideC ?? day.Air.TemperatureC;
        day.Air.RelativeHumidityPercent = said.HumidityPercent ?? day.Air.RelativeHumidityPercent;
        day.Air.CloudFraction = said.CloudFraction ?? day.Air.CloudFraction;
        day.LatitudeDeg = said.LatitudeDeg ?? day.LatitudeDeg;
        day.Shade = said.Shade ?? day.Shade;
        day.Cover = said.Cover ?? day.Cover;
        if (said.HeadingDeg is { } heading)
        {
            day.HeadingDeg = heading;
        }

        if (said.DayMin is { } length)
        {
            day.DurationMin = length;
        }

        if (said.SetPointC is { } setPoint)
        {
            day.Cooling ??= new CoolingSystem();
            day.Cooling.SetPointC = setPoint;
        }

        Time(day, said);
        day.Occupants = People(asked, said, day.Occupants);
        return day;
    }

    /// <summary>The day in one phrase.</summary>
    public static string Say(ShootDay day, UnitPreference units)
    {
        DateTimeOffset start = ForecastWordings.Start(day)!.Value;
        var parts = new List<string>
        {
            Wordings.Say($"{UnitText.Temperature(day.Air.TemperatureC, units)} and {day.Air.RelativeHumidityPercent:0} % outside{Clouds(day.Air.CloudFraction)}"),
            $"{ForecastWordings.Date(start)} from {ForecastWordings.Clock(start)} for {ForecastWordings.Span(day.HasDurationMin ? day.DurationMin : UsualDayMin)}",
            ForecastWordings.Latitude(day.LatitudeDeg),
            ForecastWordings.Shade(day.Shade),
            ForecastWordings.Cover(day.Cover),
            day.HasHeadingDeg ? $"facing {ForecastWordings.Heading(day.HeadingDeg)}" : "facing all ways",
            $"shut for {ForecastWordings.Span(day.HasSoakMin ? day.SoakMin : UsualSoakMin)} before",
            ForecastWordings.People(day.Occupants),
        };
        if (day.Occupants.NobodyCanOpenADoor)
        {
            parts.Add("who cannot open a door");
        }

        return string.Join(", ", parts);
    }

    private static string Clouds(double fraction) => fraction switch
    {
        < 0.15 => ", clear sky",
        < 0.85 => Wordings.Say($", {fraction * 100:0} % cloud"),
        _ => ", overcast",
    };

    private static ShootDay? MadeUp(Asked asked, HeatSaid said, List<string> assumed)
    {
        if (said.OutsideC is null)
        {
            return null;
        }

        DateTimeOffset today = asked.Planner.Desk.Clock.GetLocalNow();
        var day = new ShootDay
        {
            UtcOffsetMin = (int)today.Offset.TotalMinutes,
            LatitudeDeg = UsualLatitudeDeg,
            LongitudeDeg = today.Offset.TotalMinutes / MinutesPerHour * DegreesPerHour,
            Air = new OutsideAir { RelativeHumidityPercent = UsualHumidityPercent },
            StartTime = Timestamp.FromDateTimeOffset(new DateTimeOffset(today.Date, today.Offset).AddMinutes(Noon)),
        };
        List<string> taken = ["today"];
        taken.AddRange(said.StartMinute is null ? ["noon"] : []);
        taken.AddRange(said.LatitudeDeg is null ? [Wordings.Say($"{UsualLatitudeDeg:0}° north")] : []);
        taken.AddRange(said.HumidityPercent is null ? [Wordings.Say($"{UsualHumidityPercent:0} % humidity")] : []);
        assumed.Add($"{Join(taken)} taken for granted, as the scene has no shoot day");
        return day;
    }

    private static void Time(ShootDay day, HeatSaid said)
    {
        DateTimeOffset start = ForecastWordings.Start(day) ?? DateTimeOffset.UnixEpoch;
        if (said.StartMinute is { } minute)
        {
            start = new DateTimeOffset(start.Date, start.Offset).AddMinutes(minute);
            day.StartTime = Timestamp.FromDateTimeOffset(start);
        }

        if (said.SinceMinute is { } since)
        {
            double stood = (start.TimeOfDay.TotalMinutes - since + MinutesPerDay) % MinutesPerDay;
            day.SoakMin = Math.Min(stood, LongestSoakMin);
        }
        else if (said.SoakMin is { } soak)
        {
            day.SoakMin = soak;
        }
    }

    // The wire fills in the adults of a kept scene; a day sent whole must say them.
    private static Occupants People(Asked asked, HeatSaid said, Occupants? kept)
    {
        Occupants people = kept?.Clone() ?? new Occupants();
        int inScene = asked.Scene is { } scene ? scene.Talkers.Count + scene.SilentSeatIds.Count : 2;
        people.AdultCount = said.Adults ?? (people.HasAdultCount ? people.AdultCount : Math.Max(0, inScene - people.ChildCount));
        people.ChildCount = said.Children ?? people.ChildCount;
        people.AnimalCount = said.Animals ?? people.AnimalCount;
        people.NobodyCanOpenADoor |= said.ShutIn;
        return people;
    }
}
