using System.Globalization;

namespace Quarterlight.Drawing;

/// <summary>Moments of a shooting day: by the clock when its start is known, else hours and minutes from the start.</summary>
/// <param name="Start">Local time of the start; null when not known.</param>
internal readonly record struct DayTime(DateTimeOffset? Start)
{
    private const int MostParts = 7;

    // So that a minute that is whole but for rounding counts as whole.
    private const double Hair = 1e-6;

    private static readonly double[] StepsMin = [1, 2, 5, 10, 15, 30, 60, 120, 180, 240, 360];

    /// <summary>What the figures of an axis are.</summary>
    public string AxisWords => Start is null ? "hours from the start" : "local time";

    /// <summary>A moment, such as at 14:05 by the clock, or after 2 h 5 min.</summary>
    public string When(double minute) => Start is null ? $"after {Length(minute)}" : $"at {Tick(minute)}";

    /// <summary>A moment as the ticks of an axis have it, such as 14:05, or 2:05 from the start.</summary>
    public string Tick(double minute)
    {
        // The minute begun, as a clock shows it: what lasts until 13:08 and a half is not promised to 13:09.
        double whole = Math.Floor(Math.Clamp(minute, -1e6, 1e6) + (Start?.TimeOfDay.TotalMinutes ?? 0) + Hair);
        if (Start is null)
        {
            return ClockTime(Math.Max(0, whole), "0");
        }

        double clock = whole % 1440;
        return ClockTime(clock < 0 ? clock + 1440 : clock, "00");
    }

    /// <summary>Minutes at which an axis has ticks: whole steps of the clock.</summary>
    public IEnumerable<double> Ticks(double endMin)
    {
        double step = StepsMin.FirstOrDefault(s => endMin / s <= MostParts + 1e-9, 720);
        double offset = (Start?.TimeOfDay.TotalMinutes ?? 0) % step;
        return AxisScale.EvenTicks(offset, endMin + offset, step).Select(m => m - offset);
    }

    /// <summary>A length of time, such as 40 s, 9.5 min, 84 min, or 2 h 5 min.</summary>
    public static string Length(double minutes)
    {
        double whole = Math.Floor(minutes + Hair);
        return minutes switch
        {
            <= 0 => "0 min",
            < 1 - Hair => $"{FigureWords.Number(Math.Max(1, Math.Floor((60 * minutes) + Hair)))} s",
            < 10 => $"{FigureWords.Number(Math.Floor((10 * minutes) + Hair) / 10, "0.#")} min",
            _ when whole < 120 => $"{FigureWords.Number(whole)} min",
            _ => $"{FigureWords.Number(Math.Floor(whole / 60))} h" + (whole % 60 > 0 ? $" {FigureWords.Number(whole % 60)} min" : ""),
        };
    }

    private static string ClockTime(double minutes, string hours) =>
        string.Create(CultureInfo.InvariantCulture, $"{FigureWords.Number(Math.Floor(minutes / 60), hours)}:{FigureWords.Number(minutes % 60, "00")}");
}
