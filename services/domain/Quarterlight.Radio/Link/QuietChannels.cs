using System.Globalization;
using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>A channel for an FM transmitter and what disturbs it.</summary>
/// <param name="FrequencyMHz">Centre in MHz.</param>
/// <param name="NeededFieldDbuvPerM">Median field the link needs there, noise and stations together.</param>
/// <param name="InterferenceDb">How much of that the stations cost over noise alone, in dB.</param>
/// <param name="WorstStationMHz">Station that disturbs most; null when none does.</param>
/// <param name="RangeM">Range there at the availability asked for, in metres.</param>
/// <param name="Words">What to expect, in one sentence.</param>
public sealed record QuietChannel(double FrequencyMHz, double NeededFieldDbuvPerM, double InterferenceDb, double? WorstStationMHz, double RangeM, string Words);

/// <summary>Ranks the FM broadcast channels of a country by what the link would need there.</summary>
public static class QuietChannels
{
    /// <summary>How many channels may be asked for.</summary>
    public static ValidRange ChannelCount { get; } = new(1, 20, "");

    /// <summary>The quietest channels, best first; of equals the one farthest from every station.</summary>
    /// <param name="task">A valid link sent as a broadcast; its own frequency is ignored.</param>
    /// <param name="country">Whose channel raster.</param>
    /// <param name="count">How many, 1 to 20.</param>
    public static IReadOnlyList<QuietChannel> Rank(LinkTask task, CountryLaw country, int count)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(country);
        var budgets = new List<LinkBudget>();
        foreach (double channel in Raster(country))
        {
            LinkTask there = task with { Gear = task.Gear with { FrequencyMHz = channel } };
            if (PathModels.Choose(there, "", []) is { } choice)
            {
                budgets.Add(new LinkBudget(there, choice));
            }
        }

        return
        [
            .. budgets.OrderBy(b => Math.Round(b.InterferenceDb, 1)).ThenByDescending(b => NearestStationMHz(b.Task)).ThenBy(b => b.Task.Gear.FrequencyMHz)
                .Take(count).Select(Channel),
        ];
    }

    /// <summary>True for a link that an FM broadcast receiver takes.</summary>
    public static bool Serves(LinkTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        return Interference.IsBroadcastLike(task.Gear);
    }

    /// <summary>A country's raster in words.</summary>
    public static string RasterWords(CountryLaw country)
    {
        ArgumentNullException.ThrowIfNull(country);
        return string.Create(CultureInfo.InvariantCulture, $"{country.FmLowMHz:0.0#} to {country.FmHighMHz:0.0#} MHz in steps of {country.FmRasterKHz:0.#} kHz, {country.Name}");
    }

    /// <summary>What goes with quiet channels, the law's cautions among it.</summary>
    public static IReadOnlyList<Advisory> Advisories(LinkTask task, CountryLaw country)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(country);
        LawVerdict law = LawBook.Judge(country.Code, task.Gear.FrequencyMHz, LinkBudget.EirpDbmOf(task.Gear), null, task.Gear.Emission.FilterBandwidthKHz, false);
        return
        [
            .. law.Advisories,
            new("quiet-is-not-lawful", "A channel that sounds empty is not one you may use: the limit on power holds on every channel, and stations too weak for your receiver may serve others.", AdvisorySeverity.Safety),
            new("protection-from-memory", "The protection ratios behind the ranking are from memory (ITU-R BS.412): listen on the channel before relying on it.", AdvisorySeverity.Caution),
        ];
    }

    /// <summary>Channel centres of a country in MHz.</summary>
    public static IEnumerable<double> Raster(CountryLaw country)
    {
        ArgumentNullException.ThrowIfNull(country);
        int count = (int)Math.Round((country.FmHighMHz - country.FmLowMHz) * 1e3 / country.FmRasterKHz);
        for (int i = 0; i <= count; i++)
        {
            yield return Math.Round(country.FmLowMHz + (i * country.FmRasterKHz / 1e3), 4);
        }
    }

    /// <summary>Where the stations cost least, for a link whose noise hardly changes over the band.</summary>
    internal static double? Quietest(LinkBudget now, CountryLaw country)
    {
        double? best = null;
        double least = now.InterferenceDb, farthest = 0;
        foreach (double channel in Raster(country))
        {
            LinkGear gear = now.Task.Gear with { FrequencyMHz = channel };
            double overNoise = now.NeededLevelDbm - now.InterferenceDb;
            double cost = Interference.NeededLevelDbm(gear, now.Task.Stations, overNoise, now.NeededCnDb, now.ReceiveGainDbi, out _) - overNoise;
            double distance = NearestStationMHz(now.Task.Stations, channel);
            if (cost < least - 0.05 || (cost < least + 0.05 && best is not null && distance > farthest))
            {
                (best, least, farthest) = (channel, Math.Min(cost, least), distance);
            }
        }

        return best;
    }

    private static QuietChannel Channel(LinkBudget budget)
    {
        double frequency = budget.Task.Gear.FrequencyMHz;
        double needed = FreeSpace.FieldFromLevelDbuvPerM(budget.NeededLevelDbm, frequency, budget.ReceiveGainDbi);
        string words = budget.WorstStationMHz is { } station && budget.InterferenceDb >= 0.5
            ? string.Create(CultureInfo.InvariantCulture, $"{station:0.0#} MHz disturbs it: {budget.InterferenceDb:0} dB more is needed than over noise alone.")
            : "None of the stations listed disturbs it.";
        return new QuietChannel(frequency, needed, budget.InterferenceDb, budget.WorstStationMHz, budget.Range(budget.Task.AvailabilityFraction).RangeM, words);
    }

    private static double NearestStationMHz(LinkTask task) => NearestStationMHz(task.Stations, task.Gear.FrequencyMHz);

    private static double NearestStationMHz(IReadOnlyList<HeardStation> stations, double frequencyMHz)
    {
        // Beyond some channels it makes no difference any more.
        double nearest = 2;
        for (int i = 0; i < stations.Count; i++)
        {
            nearest = Math.Min(nearest, Math.Abs(stations[i].FrequencyMHz - frequencyMHz));
        }

        return nearest;
    }
}
