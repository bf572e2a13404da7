using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>What listed stations cost.</summary>
internal static class Interference
{
    private const double BroadcastLowMHz = 76, BroadcastHighMHz = 108, BroadcastDeviationKHz = 75;

    /// <summary>True for a link received as a broadcast: then the protection ratios of ITU-R BS.412 hold.</summary>
    public static bool IsBroadcastLike(LinkGear gear) =>
        gear.FrequencyMHz is >= BroadcastLowMHz and <= BroadcastHighMHz && gear.Emission is AnalogueFm { DeviationKHz: BroadcastDeviationKHz };

    /// <summary>
    /// Level in dBm that is needed over noise and stations: their needs added as powers (each station's level and its protection ratio; beside
    /// broadcasting, the level
    /// and the carrier over noise needed for those inside the filter).
    /// </summary>
    public static double NeededLevelDbm(
        LinkGear gear, IReadOnlyList<HeardStation> stations, double overNoiseDbm, double neededCnDb, double receiveGainDbi, out double? worstStationMHz)
    {
        worstStationMHz = null;
        if (stations.Count == 0)
        {
            return overNoiseDbm;
        }

        bool broadcast = IsBroadcastLike(gear), stereo = gear.Emission is AnalogueFm { Stereo: true };
        double sum = Math.Pow(10, overNoiseDbm / 10), most = 0;
        for (int i = 0; i < stations.Count; i++)
        {
            HeardStation station = stations[i];
            double spacing = Math.Abs(station.FrequencyMHz - gear.FrequencyMHz) * 1e3;
            double? ratio = broadcast ? BroadcastProtection.RatioDb(spacing, stereo) : spacing <= gear.Emission.FilterBandwidthKHz / 2 ? neededCnDb : null;
            if (ratio is { } r)
            {
                double need = Math.Pow(10, (FreeSpace.LevelDbm(station.FieldDbuvPerM, gear.FrequencyMHz, receiveGainDbi) + r) / 10);
                sum += need;
                if (need > most)
                {
                    (most, worstStationMHz) = (need, station.FrequencyMHz);
                }
            }
        }

        return 10 * Math.Log10(sum);
    }
}
