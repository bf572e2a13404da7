using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Drawing;

/// <summary>Words for times, outcomes and tags of a clip.</summary>
internal static class ClipWords
{
    /// <summary>All tags in the order they are drawn.</summary>
    public static IReadOnlyList<ClipTag> Tags { get; } = [ClipTag.Engine, ClipTag.Wind, ClipTag.AirConditioning, ClipTag.Clean];

    public static string Of(ClipOutcome outcome) => outcome switch
    {
        ClipOutcome.Use => "Use",
        ClipOutcome.UseWithCare => "Use with care",
        _ => "Redo",
    };

    public static string Of(ClipTag tag) => tag switch
    {
        ClipTag.Engine => "engine",
        ClipTag.Wind => "wind",
        ClipTag.AirConditioning => "fan",
        _ => "clean",
    };

    /// <summary>Minutes and seconds, such as 1:05 or 0:00.25.</summary>
    /// <param name="seconds">Seconds from the start.</param>
    /// <param name="decimals">0 to 2.</param>
    public static string Time(double seconds, int decimals = 0)
    {
        // Rounded first, so that 59.96 is 1:00.0 and not 0:60.0.
        double rounded = Math.Round(Math.Max(0, seconds), decimals), minutes = Math.Floor(rounded / 60);
        return $"{FigureWords.Number(minutes)}:{FigureWords.Number(rounded - (60 * minutes), decimals switch { 0 => "00", 1 => "00.0", _ => "00.00" })}";
    }

    /// <summary>A length: below ten seconds with one decimal, below one with two.</summary>
    public static string Length(double seconds) => Time(seconds, seconds < 1 ? 2 : seconds < 10 ? 1 : 0);

    /// <summary>Where a stretch is, such as 0:12 to 0:14.</summary>
    public static string Stretch(TimeStretch stretch, int decimals)
    {
        string start = Time(stretch.StartSeconds, decimals), end = Time(stretch.EndSeconds, decimals);
        return start == end ? start : $"{start} to {end}";
    }
}
