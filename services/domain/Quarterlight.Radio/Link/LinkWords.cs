using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;
using static System.FormattableString;

namespace Quarterlight.Radio.Link;

/// <summary>What a link check says in sentences.</summary>
internal static class LinkWords
{
    /// <summary>Length of a car with the space to the next, in metres. Judgement.</summary>
    public const double CarLengthM = 5;

    // Common practice, no source: two seconds to the car in front.
    private const double SafeGapSeconds = 2;
    private const double WeakPatchRatio = 1.15;

    public static string Headline(LinkTask task, LinkRange asked, double atGap)
    {
        string share = Percent(task.AvailabilityFraction);
        if (asked.RangeM == 0)
        {
            return Invariant($"It does not hold {share} of the time at any distance; at {Metres(task.GapM)} it holds {Percent(atGap)}.");
        }

        string to = asked.BeyondModel ? Invariant($"at least up to {Metres(asked.RangeM)}") : Invariant($"up to {Metres(asked.RangeM)}");
        return task.GapM <= asked.RangeM
            ? Invariant($"It holds {share} of the time {to}; at {Metres(task.GapM)} it holds {Percent(atGap)}.")
            : Invariant($"Too far: at {Metres(task.GapM)} it holds {Percent(atGap)}; keep within {Metres(asked.RangeM)} for {share}.");
    }

    public static string Blocking(LinkTask task, LinkRange asked, LinkRange surest)
    {
        if (asked.RangeM < CarLengthM)
        {
            return "The link does not reach the next car: change it before planning the drive.";
        }

        string moving = Invariant($"Keep the follow car within {Metres(asked.RangeM)} ({Lengths(asked.RangeM)})");
        double atLights = Math.Min(surest.RangeM, asked.RangeM);
        string standing = atLights < CarLengthM ? "stop right behind at lights" : Invariant($"close up to {Lengths(atLights)} at lights");
        double quarterWave = FreeSpace.WavelengthM(task.Gear.FrequencyMHz) / 4;
        return Invariant($"{moving}, {standing}; standing in a dead spot, roll on by {Math.Max(quarterWave, 0.1):0.0} m.");
    }

    /// <summary>How far the level may be from the real one in dB: the path's spread of models (4 dB, judgement) and the shielding of both
    /// cars.</summary>
    public static double UncertaintyDb(LinkTask task)
    {
        double transmit = AntennaValues.ShieldingUncertaintyDb(task.Gear.TransmitAntenna), receive = AntennaValues.ShieldingUncertaintyDb(task.Gear.ReceiveAntenna);
        return Math.Sqrt(16 + (transmit * transmit) + (receive * receive));
    }

    public static IReadOnlyList<Advisory> Advisories(LinkBudget budget, LawVerdict law, LinkRange asked)
    {
        LinkTask task = budget.Task;
        var advisories = new List<Advisory>(law.Advisories.Count + 6);
        double safeGap = SafeGapSeconds * task.SpeedKmPerHour / 3.6;
        if (asked.RangeM < safeGap)
        {
            advisories.Add(new("shorter-than-safe-gap",
                Invariant($"Two seconds at {task.SpeedKmPerHour:0} km/h are {Metres(safeGap)}, more than the link reaches: never close up for the sake of the link, change the link instead."), AdvisorySeverity.Safety));
        }

        advisories.Add(new("drivers-drive", "The follow car's driver drives and nobody in it leaves a seat or belt for the receiver; road law decides the gap.", AdvisorySeverity.Safety));
        advisories.AddRange(law.Advisories.Where(a => a.Severity == AdvisorySeverity.Safety));
        Advisory?[] glass = [WindscreenRule.Remark(task.Gear.TransmitAntenna, "picture car's"), WindscreenRule.Remark(task.Gear.ReceiveAntenna, "follow car's")];
        advisories.AddRange(glass.OfType<Advisory>().OrderByDescending(a => a.Code));
        AddStations(budget, advisories);
        advisories.Add(new("absolute-level-uncertain",
            Invariant($"The level may be off by {UncertaintyDb(task):0} dB: drive it once and listen before relying on it."), AdvisorySeverity.Caution));
        double most = budget.MostLossDb(task.AvailabilityFraction), last = budget.Curve.LastHeldM(most);
        if (asked.RangeM > 0 && !asked.BeyondModel && last > asked.RangeM * WeakPatchRatio)
        {
            advisories.Add(new("weak-patch",
                Invariant($"Between {Metres(asked.RangeM)} and {Metres(last)} there are weak patches where direct and ground wave cancel; outside them it would hold."), AdvisorySeverity.Note));
        }

        advisories.AddRange(law.Advisories.Where(a => a.Severity != AdvisorySeverity.Safety));
        if (budget.StreetBoundsDbm(task.GapM) is { } bounds)
        {
            advisories.Add(new("street-bounds", Invariant($"ITU-R P.1411 bounds the level at the gap between {bounds.Lower:0} and {bounds.Upper:0} dBm."), AdvisorySeverity.Note));
        }

        if (!ReceiverNoise.PublishedMHz.Contains(task.Gear.FrequencyMHz))
        {
            advisories.Add(new("noise-carried-on", "Man-made noise is published up to 250 MHz; above, the same line is carried on down.", AdvisorySeverity.Note));
        }

        return advisories;
    }

    private static void AddStations(LinkBudget budget, List<Advisory> advisories)
    {
        LinkTask task = budget.Task;
        if (!Interference.IsBroadcastLike(task.Gear))
        {
            return;
        }

        if (task.Stations.Any(s => s.FieldDbuvPerM >= BroadcastProtection.LeastPlannedFieldDbuvPerM(false) && Math.Abs(s.FrequencyMHz - task.Gear.FrequencyMHz) < 0.05))
        {
            advisories.Add(new("on-a-local-station", "A station serves this place on this channel: sending there would take it from its listeners, whatever the power.", AdvisorySeverity.Safety));
        }

        if (budget.InterferenceDb >= 3 && budget.WorstStationMHz is { } station)
        {
            advisories.Add(new("station-in-the-way", Invariant($"{station:0.0#} MHz costs {budget.InterferenceDb:0} dB on this channel."), AdvisorySeverity.Caution));
        }

        AddListeners(budget, advisories);
    }

    // How near to the picture car others lose their station to it.
    private static void AddListeners(LinkBudget budget, List<Advisory> advisories)
    {
        const double LeastWorthSayingM = 5;
        (double Radius, double Station) worst = (0, 0);
        foreach (HeardStation station in budget.Task.Stations)
        {
            if (BroadcastProtection.ListenerRatioDb((station.FrequencyMHz - budget.Task.Gear.FrequencyMHz) * 1e3) is { } ratio)
            {
                double harmless = FreeSpace.LevelDbm(station.FieldDbuvPerM - ratio, budget.Task.Gear.FrequencyMHz);
                double radius = budget.Curve.HoldsToM(budget.LeavingDbm - harmless, out _);
                worst = radius > worst.Radius ? (radius, station.FrequencyMHz) : worst;
            }
        }

        if (worst.Radius >= LeastWorthSayingM)
        {
            advisories.Add(new("disturbs-listeners",
                Invariant($"Others listening to {worst.Station:0.0#} MHz within about {Metres(worst.Radius)} of the picture car would hear you instead (ratios of 47 CFR 74.1204)."), AdvisorySeverity.Caution));
        }
    }

    private static string Lengths(double metres)
    {
        int lengths = (int)(metres / CarLengthM);
        return lengths == 1 ? "one car length" : Invariant($"{lengths} car lengths");
    }

    private static string Metres(double metres) => Invariant($"{(metres < 10 ? Math.Round(metres, 1) : metres < 100 ? Math.Round(metres) : Math.Round(metres / 5) * 5):0.#} m");

    private static string Percent(double fraction) => fraction >= 0.9995 ? "practically always" : fraction < 0.01 ? "under 1 %" : Invariant($"{100 * fraction:0.#} %");
}
