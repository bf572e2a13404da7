using System.Globalization;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>Times, lengths of time and the enumerations of heat and noise in words.</summary>
internal static class ForecastWordings
{
    private const double MinutesPerHour = 60, SecondsPerMinute = 60;

    /// <summary>"11 min", rounded down, as a limit must not be stretched; "under 1 min".</summary>
    public static string Minutes(double minutes, bool roundDown = true) => minutes < 1 ? "under 1 min" : Say($"{(roundDown ? Math.Floor(minutes + 1e-9) : Math.Ceiling(minutes - 1e-9)):0} min");

    /// <summary>"4 h", "1 h 30 min", "40 min".</summary>
    public static string Span(double minutes)
    {
        double whole = Math.Round(minutes);
        double hours = Math.Floor(whole / MinutesPerHour), rest = whole - (hours * MinutesPerHour);
        return hours < 1 ? Say($"{rest:0} min") : rest == 0 ? Say($"{hours:0} h") : Say($"{hours:0} h {rest:0} min");
    }

    /// <summary>"3.2 h", rounded down to a tenth; minutes below an hour.</summary>
    public static string Hours(double hours) => hours < 1 ? Say($"{Math.Floor((hours * MinutesPerHour) + 1e-9):0} min") : Say($"{Math.Floor((hours * 10) + 1e-9) / 10:0.#} h");

    /// <summary>"2 min 40 s", "50 s".</summary>
    public static string Seconds(double seconds)
    {
        double whole = Math.Floor(seconds + 1e-9), minutes = Math.Floor(whole / SecondsPerMinute), rest = whole - (minutes * SecondsPerMinute);
        return minutes < 1 ? Say($"{rest:0} s") : rest == 0 ? Say($"{minutes:0} min") : Say($"{minutes:0} min {rest:0} s");
    }

    /// <summary>When a day starts, in its own local time; null without a day.</summary>
    public static DateTimeOffset? Start(ShootDay? day) => day?.StartTime is null ? null : day.StartTime.ToDateTimeOffset().ToOffset(TimeSpan.FromMinutes(Math.Clamp(day.UtcOffsetMin, -840, 840)));

    /// <summary>Time of day so many minutes after the start, such as "14:05"; "after 2 h" when the start is not known.</summary>
    public static string At(DateTimeOffset? start, double minutes) => start is { } from ? "at " + Clock(from.AddMinutes(Math.Floor(minutes + 1e-9))) : $"after {Span(minutes)}";

    public static string Clock(DateTimeOffset time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    public static string Date(DateTimeOffset time) => time.ToString("d MMM", CultureInfo.InvariantCulture);

    public static string Shade(CarShade shade) => shade switch
    {
        CarShade.Broken => "in broken shade",
        CarShade.PopUp => "under a pop-up or in open shade",
        CarShade.Full => "in deep shade",
        _ => "no shade",
    };

    public static string Cover(SunCover cover) => cover switch
    {
        SunCover.Windscreen => "windscreen covered between takes",
        SunCover.AllGlass => "all glass covered between takes",
        _ => "no cover",
    };

    public static string Limit(HeatLimitKind limit) => limit switch
    {
        HeatLimitKind.Caution => "caution",
        HeatLimitKind.Stop => "stop",
        _ => "comfort",
    };

    /// <summary>"north", "north-east"; degrees where it is none of the eight.</summary>
    public static string Heading(double degrees)
    {
        string[] names = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
        double eighths = degrees / 45;
        return Math.Abs(eighths - Math.Round(eighths)) < 0.01 ? names[(int)Math.Round(eighths) % names.Length] : Say($"{degrees:0}°");
    }

    /// <summary>"52° north".</summary>
    public static string Latitude(double degrees) => degrees < 0 ? Say($"{-degrees:0.#}° south") : Say($"{degrees:0.#}° north");

    public static string Verdict(SceneVerdict verdict) => verdict switch
    {
        SceneVerdict.Works => "works",
        SceneVerdict.WithCare => "works with care",
        SceneVerdict.Unusable => "not usable",
        _ => "nobody talks",
    };

    /// <summary>"2 adults, a child and 2 animals".</summary>
    public static string People(Occupants people)
    {
        var parts = new List<string>();
        Add(people.AdultCount, "adult");
        Add(people.ChildCount, people.ChildCount == 1 ? "child" : "children");
        Add(people.AnimalCount, "animal");
        return parts.Count == 0 ? "nobody" : Join(parts);

        void Add(int count, string one)
        {
            if (count > 0)
            {
                parts.Add(count == 1 ? $"{(one[0] == 'a' ? "an" : "a")} {one}" : Say($"{count} {one}{(one.EndsWith("ren", StringComparison.Ordinal) ? "" : "s")}"));
            }
        }
    }
}
