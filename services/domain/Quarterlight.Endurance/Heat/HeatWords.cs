using System.Globalization;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Puts causes and warnings into words.</summary>
internal static class HeatWords
{
    // Interior at which belts, buckles and dash burn or slacken what is stuck to them (judgement; dashes of 69 C were measured at 47 C air).
    private const double HotTrimAirC = 40;

    /// <summary>What meets a limit, in a few words.</summary>
    public static string Reason(HeatCause cause, HeatLimitKind kind, HeatLimits limits)
    {
        bool stop = kind == HeatLimitKind.Stop;
        return cause switch
        {
            HeatCause.Warm => "PMV over 0.7, too warm",
            HeatCause.PastComfortModel => "hotter than ISO 7730 covers",
            HeatCause.Cold => "cold: PMV under -0.7",
            HeatCause.WetBulbGlobe => Invariant($"wet-bulb globe temperature over {(stop && !limits.Strictest ? limits.StopWbgtC : limits.CautionWbgtC):0.0} C"),
            HeatCause.HeatIndex => stop && !limits.Strictest ? "heat index over 39.4 C (103 F)" : "heat index over 32.2 C (90 F)",
            HeatCause.Co2 => stop && !limits.Strictest ? "carbon dioxide over 5000 ppm" : "carbon dioxide over 2500 ppm",
            HeatCause.Air => limits.Strictest ? "air over 26.7 C (80 F)" : "air over 40 C",
            _ => "",
        };
    }

    /// <summary>Warnings for a report, most important first.</summary>
    public static IReadOnlyList<Advisory> Advisories(HeatTask task, HeatReport report, HeatAnswer answer)
    {
        var said = new List<Advisory>();
        Occupants people = task.Occupants;
        if (people.ChildCount > 0 || people.AnimalCount > 0)
        {
            said.Add(new("never-alone", $"Never leave {(people.ChildCount > 0 ? "a child" : "an animal")} alone in the car, not for a minute and not with a window down. {StrictWords}", AdvisorySeverity.Safety));
        }

        if (people.NobodyCanOpenADoor)
        {
            said.Add(new("shut-in", $"Nobody in the car can open a door: someone outside must watch all the time and be able to open at once. {StrictWords}", AdvisorySeverity.Safety));
        }

        said.Add(new("heat-illness", "Stop and cool when anyone feels unwell, whatever the forecast says. Have water and shade ready. A medic or the safety lead decides, and local law goes first.", AdvisorySeverity.Safety));
        if (task.SpeedKmPerHour > 0)
        {
            said.Add(new("moving-car", "Open no door and lean out of nothing while the car moves: air it at a standstill.", AdvisorySeverity.Safety));
        }

        if (task.Cover != SunCover.None)
        {
            said.Add(new("cover-off", "Take the cover off and stow it before the car moves.", AdvisorySeverity.Safety));
        }

        if (report.SoakedAirC >= HotTrimAirC)
        {
            said.Add(new("hot-surfaces", "Dash, buckles and belts burn skin after standing in the sun: feel them before anyone sits down. Tape and suction cups let go there.", AdvisorySeverity.Caution));
        }

        if (PeakCo2(report) >= CarbonDioxide.StalePpm)
        {
            said.Add(new("stale-air", "Carbon dioxide passes 2500 ppm in this plan: it makes people drowsy, the driver as well. Air the car between takes.", AdvisorySeverity.Caution));
        }

        if (report.Limits[0].Reason.StartsWith("cold", StringComparison.Ordinal))
        {
            said.Add(new("cold", "It gets too cold, not too hot: warm the car and dress for it, or cool to a higher temperature. This forecast knows no heater.", AdvisorySeverity.Caution));
        }
        else if (!report.Rhythm.Possible)
        {
            bool late = answer.Precooling.StartS + RhythmSearch.GridS > answer.Case.DayS;
            said.Add(new("no-rhythm", late
                ? "The day is over before the car is cooled through: start to cool earlier."
                : "No cooling of up to an hour keeps this limit: bring shade, shorter takes, fresh air or another hour.", AdvisorySeverity.Caution));
        }

        if (report.PrecoolMin is null)
        {
            said.Add(new("set-point-not-reached", Invariant($"The cooling does not bring the air to {task.Cooling.SetPointC:0.#} C: it ends at {report.LowestAirC:0.#} C."), AdvisorySeverity.Caution));
        }
        else if (answer.Precooling.AirS is { } air && answer.Precooling.StartS - air >= 120)
        {
            said.Add(new("trim-still-hot", Invariant($"The air is at the set point after {air / 60.0:0.#} min, but the trim is still hot then and warms it again at once."), AdvisorySeverity.Note));
        }

        if (task.Cooling.Recirculated)
        {
            said.Add(new("recirculated", "Recirculated air stays stale while it is cooled: let fresh air in between takes.", AdvisorySeverity.Caution));
        }

        said.Add(new("fan-off", "Fan off in every take; cool to about 18 C (65 F) before rolling and keep the car in shade while rigging (common practice, no source).", AdvisorySeverity.Note));
        said.Add(new("forecast-uncertain", "Cars and skies differ: take the figures as within a third either way and trust a thermometer in the car more.", AdvisorySeverity.Note));
        return said;
    }

    private const string StrictWords = "Only the strictest limit counts here.";

    private static double PeakCo2(HeatReport report)
    {
        double peak = 0;
        foreach (HeatSample sample in report.Samples)
        {
            peak = Math.Max(peak, sample.Co2Ppm);
        }

        return peak;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
