using System.Globalization;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>What could be changed about a link, each worked out again and ranked by what it buys.</summary>
internal static class LinkChanges
{
    private const double LeastGainDb = 0.5;
    private const double RoofHeightM = 1.6, MastHeightM = 2.5;
    private const double DirectionalFromMHz = 400; // Below, an antenna with gain is longer than a car is wide.

    public static IReadOnlyList<LinkChange> Ranked(LinkBudget now, CountryLaw? country)
    {
        var changes = new List<LinkChange>(8);
        double marginNow = now.MarginDb(now.Task.GapM), rangeNow = now.Range(now.Task.AvailabilityFraction).RangeM;
        foreach ((string code, string words, LinkTask task) in Candidates(now, country))
        {
            if (PathModels.Choose(task, "", []) is not { } choice)
            {
                continue;
            }

            var then = new LinkBudget(task, choice, now);
            double gain = then.MarginDb(task.GapM) - marginNow;
            if (gain >= LeastGainDb)
            {
                double range = then.Range(task.AvailabilityFraction).RangeM;
                changes.Add(new LinkChange(code, words, gain, range - rangeNow, range));
            }
        }

        changes.Sort((a, b) => b.GainDb != a.GainDb ? b.GainDb.CompareTo(a.GainDb) : string.CompareOrdinal(a.Code, b.Code));
        return changes;
    }

    private static IEnumerable<(string Code, string Words, LinkTask Task)> Candidates(LinkBudget now, CountryLaw? country)
    {
        LinkTask task = now.Task;
        LinkGear gear = task.Gear;
        if (gear.TransmitAntenna.IsInside)
        {
            yield return ("transmit-antenna-outside", "Put the transmitting antenna on the roof", task with { Gear = gear with { TransmitAntenna = OnRoof(gear.TransmitAntenna, gear.FrequencyMHz) } });
        }
        else if (gear.TransmitAntenna.HeightM < MastHeightM)
        {
            yield return ("raise-transmit-antenna", Raise("transmitting"), task with { Gear = gear with { TransmitAntenna = OnMast(gear.TransmitAntenna) } });
        }

        if (gear.ReceiveAntenna.IsInside)
        {
            yield return ("receive-antenna-outside", "Put the follow car's antenna on the roof", task with { Gear = gear with { ReceiveAntenna = OnRoof(gear.ReceiveAntenna, gear.FrequencyMHz) } });
        }
        else if (gear.ReceiveAntenna.HeightM < MastHeightM)
        {
            yield return ("raise-receive-antenna", Raise("follow car's"), task with { Gear = gear with { ReceiveAntenna = OnMast(gear.ReceiveAntenna) } });
        }

        if (!gear.ReceiveAntenna.IsInside && gear.FrequencyMHz >= DirectionalFromMHz && gear.ReceiveAntenna.Kind is not AntennaKind.Directional)
        {
            yield return ("directional-receive-antenna", "Point a directional antenna from the follow car at the picture car",
                task with { Gear = gear with { ReceiveAntenna = gear.ReceiveAntenna with { Kind = AntennaKind.Directional, StatedGainDbi = null, Polarisation = gear.TransmitAntenna.Polarisation } } });
        }

        if (gear.TransmitAntenna.Polarisation == Polarisation.Horizontal || gear.ReceiveAntenna.Polarisation == Polarisation.Horizontal)
        {
            yield return ("both-upright", "Stand both antennas upright",
                task with { Gear = gear with { TransmitAntenna = gear.TransmitAntenna with { Polarisation = Polarisation.Vertical }, ReceiveAntenna = gear.ReceiveAntenna with { Polarisation = Polarisation.Vertical } } });
        }

        if (gear.Emission is AnalogueFm { Stereo: true } fm)
        {
            yield return ("mono", "Send mono", task with { Gear = gear with { Emission = fm with { Stereo = false } } });
        }

        if (task.Sight is not (LinkSight.Clear or LinkSight.RoundACorner))
        {
            yield return ("clear-sight", "Let nothing between the two cars", task with { Sight = LinkSight.Clear });
        }

        if (now.InterferenceDb >= LeastGainDb && country is not null && Interference.IsBroadcastLike(gear) && QuietChannels.Quietest(now, country) is { } quiet)
        {
            yield return ("quieter-channel", string.Create(CultureInfo.InvariantCulture, $"Move to {quiet:0.0#} MHz"), task with { Gear = gear with { FrequencyMHz = quiet } });
        }
    }

    private static Antenna OnRoof(Antenna antenna, double frequencyMHz) => antenna with
    {
        Place = AntennaPlace.OnRoof,
        HeightM = Math.Max(antenna.HeightM, RoofHeightM),
        StatedShieldingDb = null,
        Kind = antenna.Kind is not (AntennaKind.HiddenWire or AntennaKind.GlassFilm) ? antenna.Kind
            : frequencyMHz < 300 ? AntennaKind.ShortWhip : AntennaKind.QuarterWaveWhip,
        Polarisation = antenna.Kind is AntennaKind.HiddenWire or AntennaKind.GlassFilm ? Polarisation.Vertical : antenna.Polarisation,
    };

    private static Antenna OnMast(Antenna antenna) => antenna with { Place = AntennaPlace.OnMast, HeightM = MastHeightM };

    private static string Raise(string whose) => string.Create(CultureInfo.InvariantCulture, $"Raise the {whose} antenna to {MastHeightM:0.#} m");
}
