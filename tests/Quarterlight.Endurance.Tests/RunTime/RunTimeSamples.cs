using Quarterlight.Endurance.RunTime;

namespace Quarterlight.Endurance.Tests.RunTime;

/// <summary>Invented questions for the tests.</summary>
internal static class RunTimeSamples
{
    public static Battery Brick { get; } = new("brick", "Large pack", BatteryChemistry.LithiumIon, 98, 0, 2);

    public static PoweredDevice Recorder { get; } = new("recorder", "Bag recorder", 12, "brick", 1, 1);

    public static RecordingMedia Media { get; } = new() { TrackCount = 8, CardSizeGB = 64, CardCount = 2, CopyCount = 2, LargeFiles = true };

    public static RunTimeTask Task { get; } = new() { Batteries = [Brick], Devices = [Recorder], Media = Media, BatteryC = 0, MarginFraction = 0.1, DurationMin = 600 };

    public static PlannedTake Take(string label, double start, double minutes) => new(label, start, minutes);

    /// <summary>A day of takes and gaps by seed.</summary>
    public static List<PlannedTake> Day(Random random, double dayMin, double longestTake)
    {
        var takes = new List<PlannedTake>();
        double at = random.NextDouble() * 20;
        while (true)
        {
            double length = 0.1 + (random.NextDouble() * longestTake);
            if (at + length > dayMin)
            {
                return takes;
            }

            takes.Add(new PlannedTake($"take {takes.Count + 1}", at, length));
            at += length + (random.Next(4) == 0 ? random.NextDouble() * 3 : random.NextDouble() * 40);
        }
    }
}
