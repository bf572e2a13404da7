using Quarterlight.Acoustics;

namespace Quarterlight.Placement.Noise;

/// <summary>Looks at every whole km/h, because noise does not only rise with speed: a gear change makes the car quieter for a moment.</summary>
internal static class SpeedSearch
{
    /// <summary>Highest whole speed at which a steady drive is no worse than a verdict, and the whole speeds below it that are worse; null when there is none.</summary>
    /// <param name="board">The question.</param>
    /// <param name="drive">Conditions; their speed is not looked at.</param>
    /// <param name="verdict">Verdict to reach.</param>
    /// <param name="atMostKmPerHour">Highest speed to look at, km/h, whole.</param>
    public static double? Fastest(NoiseBoard board, DriveConditions drive, SceneVerdict verdict, int atMostKmPerHour)
    {
        for (int speed = atMostKmPerHour; speed >= 0; speed--)
        {
            if (Holds(board, drive with { SpeedKmPerHour = speed }, verdict))
            {
                return speed;
            }
        }

        return null;
    }

    /// <summary>Whole speeds below one that are worse than a verdict, as ranges with both ends, slowest first.</summary>
    public static IReadOnlyList<(int From, int To)> Gaps(NoiseBoard board, DriveConditions drive, SceneVerdict verdict, double belowKmPerHour)
    {
        var gaps = new List<(int From, int To)>();
        for (int speed = 0; speed < belowKmPerHour; speed++)
        {
            if (Holds(board, drive with { SpeedKmPerHour = speed }, verdict))
            {
                continue;
            }

            if (gaps.Count > 0 && gaps[^1].To == speed - 1)
            {
                gaps[^1] = (gaps[^1].From, speed);
            }
            else
            {
                gaps.Add((speed, speed));
            }
        }

        return gaps;
    }

    // What a rule of the trade forbids needs no forecast.
    private static bool Holds(NoiseBoard board, DriveConditions drive, SceneVerdict verdict) =>
        board.BestAt(drive) <= verdict && board.At(drive).Verdict <= verdict;
}
