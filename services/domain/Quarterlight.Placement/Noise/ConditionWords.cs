using Quarterlight.Acoustics;

namespace Quarterlight.Placement.Noise;

/// <summary>Drive conditions in a few plain words, speed aside.</summary>
internal static class ConditionWords
{
    /// <summary>Such as "windows shut, smooth asphalt, dry".</summary>
    /// <param name="drive">Conditions.</param>
    /// <param name="movablePaneIds">Windows of the car that wind down.</param>
    public static string Of(DriveConditions drive, IReadOnlyList<string> movablePaneIds)
    {
        string words = $"{Windows(drive, movablePaneIds)}, {Road(drive.Road)}, {RainWords(drive.Rain)}";
        words += drive.FanStep > 0 ? FormattableString.Invariant($", fan step {drive.FanStep}") : "";
        return drive.Engine == EngineState.Off ? words + ", engine off" : words;
    }

    /// <summary>The road in words.</summary>
    public static string Road(RoadSurface road) => road switch
    {
        RoadSurface.CoarseAsphalt => "coarse asphalt",
        RoadSurface.Concrete => "concrete",
        RoadSurface.Cobbles => "cobbles",
        RoadSurface.Gravel => "gravel",
        _ => "smooth asphalt",
    };

    private static string RainWords(Rain rain) => rain switch
    {
        Rain.Light => "light rain",
        Rain.Heavy => "heavy rain",
        _ => "dry",
    };

    private static string Windows(DriveConditions drive, IReadOnlyList<string> movablePaneIds)
    {
        WindowOpening[] open = [.. drive.OpenWindows.Where(w => w.OpenFraction > 0)];
        if (open.Length == 0)
        {
            return "windows shut";
        }

        bool alike = open.All(w => Math.Abs(w.OpenFraction - open[0].OpenFraction) < 0.005);
        if (!alike)
        {
            return string.Join(" and ", open.Select(w => $"{w.PaneId} window {Down(w.OpenFraction)}"));
        }

        string which = open.Length > 1 && movablePaneIds.All(id => open.Any(w => w.PaneId == id)) ? "all windows"
            : open.Length == 1 ? $"{open[0].PaneId} window"
            : $"{string.Join(" and ", open.Select(w => w.PaneId))} windows";
        return $"{which} {Down(open[0].OpenFraction)}";
    }

    private static string Down(double fraction) => fraction switch
    {
        > 0.995 => "down",
        > 0.495 and < 0.505 => "half down",
        _ => FormattableString.Invariant($"{100 * fraction:0} % down"),
    };
}
