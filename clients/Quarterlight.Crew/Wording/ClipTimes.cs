using System.Globalization;
using Quarterlight.V1;

namespace Quarterlight.Crew.Wording;

/// <summary>Places in a clip as m:ss.</summary>
internal static class ClipTimes
{
    /// <summary>Seconds as m:ss, or h:mm:ss from an hour on.</summary>
    public static string Say(double seconds)
    {
        long whole = (long)Math.Floor(Math.Clamp(double.IsFinite(seconds) ? seconds : 0, 0, 1e7) + 1e-6);
        return whole < 3600
            ? string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}");
    }

    /// <summary>"0:12 to 0:31"; one time where both fall in the same second.</summary>
    public static string Say(ClipStretch stretch)
    {
        string from = Say(stretch.StartS), to = Say(stretch.EndS);
        return from == to ? from : $"{from} to {to}";
    }

    /// <summary>The first of several places, with how many more there are; empty for none.</summary>
    /// <param name="stretches">Places in order.</param>
    /// <param name="most">Most that are named, 1 or more.</param>
    public static string Say(IReadOnlyList<ClipStretch> stretches, int most)
    {
        string[] said = [.. stretches.Select(Say).Distinct()];
        return said.Length <= most ? string.Join(", ", said)
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", said.Take(most))} and {said.Length - most} more places");
    }
}
