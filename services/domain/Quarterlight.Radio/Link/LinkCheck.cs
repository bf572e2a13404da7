using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>Answers how far the follow car may drop back, how sure that is, whether it is lawful, and what would change it.</summary>
public static class LinkCheck
{
    // Grid points left out of the report's curve, so that it stays small: every second of the wavy ones.
    private const int MostCurvePoints = 64;

    private static readonly double[] s_availabilities = [0.5, 0.9, 0.95, 0.99];

    /// <summary>Availabilities a range is always given for.</summary>
    public static IReadOnlyList<double> Availabilities => s_availabilities;

    /// <summary>Checks a link.</summary>
    /// <exception cref="InvalidInputException">The link is not valid; every fault is named.</exception>
    public static LinkReport Run(LinkTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        List<Violation> violations = LinkRules.Validate(task, "setup", out PathChoice? choice);
        if (choice is null)
        {
            throw new InvalidInputException(violations);
        }

        var budget = new LinkBudget(task, choice);
        double loss = budget.PathLossDb(task.GapM), level = budget.LevelFromLossDbm(loss), margin = level - budget.NeededLevelDbm;
        LawVerdict law = Judge(task, budget);
        double? lawfulExtra = law.LawfulEirpDbm - budget.EirpDbm;
        var ranges = new LinkRange[s_availabilities.Length];
        for (int i = 0; i < ranges.Length; i++)
        {
            ranges[i] = budget.Range(s_availabilities[i]);
        }

        LinkRange asked = budget.Range(task.AvailabilityFraction);
        double below = budget.Fading.BelowFraction(margin);
        double doppler = DropOuts.DopplerHz(task.SpeedKmPerHour, task.Gear.FrequencyMHz), rate = budget.Fading.CrossingsPerHertz(margin) * doppler;
        return new LinkReport
        {
            Headline = LinkWords.Headline(task, asked, 1 - below),
            Ranges = ranges,
            AskedRange = asked,
            GapM = task.GapM,
            EirpDbm = budget.EirpDbm,
            PathLossDb = loss,
            FieldDbuvPerM = FreeSpace.FieldFromLevelDbuvPerM(level - budget.ReceiveGainDbi, task.Gear.FrequencyMHz),
            LevelDbm = level,
            LevelUncertaintyDb = LinkWords.UncertaintyDb(task),
            NoiseDbm = budget.NoiseDbm,
            SnrDb = budget.SnrDb(level),
            NeededLevelDbm = budget.NeededLevelDbm,
            NeededFieldDbuvPerM = FreeSpace.FieldFromLevelDbuvPerM(budget.NeededLevelDbm, task.Gear.FrequencyMHz, budget.ReceiveGainDbi),
            MarginDb = margin,
            FadeMarginDb = budget.Fading.MarginDb(task.AvailabilityFraction),
            AvailabilityFraction = 1 - below,
            DropOutsPerMinute = 60 * rate,
            MeanDropOutMs = rate > 0 ? 1e3 * below / rate : 0,
            DelayMs = Delay(task),
            Law = law,
            LawfulRange = lawfulExtra is { } extra ? budget.Range(task.AvailabilityFraction, extra) : null,
            LawfulLevelDbm = level + lawfulExtra,
            Path = choice,
            Changes = LinkChanges.Ranked(budget, law.CountryKnown ? law.Country : null),
            Blocking = LinkWords.Blocking(task, asked, ranges[^1]),
            Curve = CurveOf(budget),
            Advisories = LinkWords.Advisories(budget, law, asked),
        };
    }

    private static LawVerdict Judge(LinkTask task, LinkBudget budget)
    {
        double? conducted = task.Gear.PowerBasis == TransmitPowerBasis.Conducted ? FreeSpace.DbmFromWatts(task.Gear.Power / 1e3) : null;
        return LawBook.Judge(task.CountryCode, task.Gear.FrequencyMHz, budget.EirpDbm, conducted, task.Gear.Emission.FilterBandwidthKHz, task.Gear.Emission is DigitalLink);
    }

    private static double? Delay(LinkTask task)
    {
        double travel = 1e3 * task.GapM / FreeSpace.SpeedOfLightMps;
        return task.Gear.Emission is DigitalLink digital ? digital.LatencyMs + travel : travel;
    }

    private static LinkPoint[] CurveOf(LinkBudget budget)
    {
        ReadOnlySpan<double> distances = budget.Curve.DistanceM, losses = budget.Curve.LossDb;
        int step = (distances.Length + MostCurvePoints - 1) / MostCurvePoints, count = (distances.Length - 1) / step;
        var points = new LinkPoint[count + 1];
        for (int i = 0; i <= count; i++)
        {
            // The last point is always the end of the model.
            int at = i == count ? distances.Length - 1 : i * step;
            double level = budget.LevelFromLossDbm(losses[at]);
            points[i] = new LinkPoint(distances[at], level, budget.SnrDb(level), 1 - budget.Fading.BelowFraction(level - budget.NeededLevelDbm));
        }

        return points;
    }
}
