namespace Quarterlight.Endurance.RunTime;

/// <summary>Works out from a question what runs empty, and how long a set of each lasts.</summary>
internal static class Supplies
{
    public static List<Supply> Of(RunTimeTask task)
    {
        List<Supply> all = [.. task.Devices.Select(d => OfDevice(task, d))];
        if (task.Media is { } media)
        {
            // Without a call sheet nobody knows how long the takes are: then it is counted as recording all day.
            bool inTakesOnly = task.TakesOnly && task.Takes.Count > 0;
            double card = StorageArithmetic.CardMinutes(media), file = StorageArithmetic.FileLimitMinutes(media);
            all.Add(new Supply
            {
                Kind = RunTimeKind.Card,
                Id = RunTimeForecast.CardsId,
                DisplayName = media.CopyCount == 1 ? "Card" : $"Cards, {media.CopyCount} copies",
                SwapWords = media.CopyCount == 1 ? "new card" : $"{media.CopyCount} new cards",
                LifeMin = card * (1 - task.MarginFraction),
                LifeWithoutMarginMin = card,
                UnitsPerSet = media.CopyCount,
                InTakesOnly = inTakesOnly,
            });
            if (!media.LargeFiles)
            {
                // The limit of a file is exact: no margin.
                all.Add(new Supply
                {
                    Kind = RunTimeKind.File,
                    Id = RunTimeForecast.FileId,
                    DisplayName = "One file (4 GiB)",
                    SwapWords = "start a new file",
                    LifeMin = file,
                    LifeWithoutMarginMin = file,
                    InTakesOnly = inTakesOnly,
                });
            }
        }

        return all;
    }

    private static Supply OfDevice(RunTimeTask task, PoweredDevice device)
    {
        Battery battery = task.Batteries.First(b => b.Id == device.BatteryId);
        double share = BatteryDerating.Share(battery.Chemistry, task.BatteryC, battery.AgeYears), energyWh = battery.EnergyWh * device.BatteryCount;
        string each = device.Count > 1 ? $"{device.Count} x {device.DisplayName}" : device.DisplayName;
        int units = device.BatteryCount * device.Count;
        return new Supply
        {
            Kind = RunTimeKind.Battery,
            Id = device.Id,
            DisplayName = each,
            SwapWords = units == 1 ? $"new battery in {each}" : $"new batteries in {each} ({units})",
            LifeMin = StorageArithmetic.BatteryMinutes(energyWh, share, device.PowerW, task.MarginFraction),
            LifeWithoutMarginMin = StorageArithmetic.BatteryMinutes(energyWh, share, device.PowerW, 0),
            Share = share,
            UnitsPerSet = units,
            BatteryId = battery.Id,
        };
    }
}
