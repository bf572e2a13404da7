using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A link check in words: the distance to keep first, then what to expect there, then what to change.</summary>
internal static class LinkText
{
    private const int MostChanges = 3;
    private const int MostCautions = 2;

    // What gains less than both is not worth the rigging: judgement.
    private const double LeastGainDb = 0.1, LeastGainM = 0.5;

    // A drop-out is not worth a word below this many a minute: judgement.
    private const double FewDropOuts = 0.05;

    /// <summary>How far to drop back, in one line.</summary>
    /// <param name="report">The report.</param>
    /// <param name="setup">The link as checked.</param>
    /// <param name="gapAsked">True when the question itself named the gap.</param>
    /// <param name="units">Units to say it in.</param>
    public static string Headline(LinkReport report, LinkSetup setup, bool gapAsked, UnitPreference units)
    {
        LinkRange asked = report.AskedRange ?? new LinkRange { AvailabilityFraction = Wanted(setup) };
        string share = RadioWordings.Percent(asked.AvailabilityFraction > 0 ? asked.AvailabilityFraction : Wanted(setup));
        if (asked.RangeM < 1)
        {
            return $"Do not count on this link: at no distance does it hold {share} of the time.";
        }

        string keep = $"{UnitText.Distance(asked.RangeM, units, roundDown: true)}{Lengths(asked.RangeM)}";
        string end = asked.BeyondModel ? ", the farthest that can be worked out" : "";
        if (!gapAsked)
        {
            return $"Keep within {keep} for a link that holds {share} of the time{end}.";
        }

        double gap = setup.FollowCar.GapM;
        string there = $"at {UnitText.Distance(gap, units)} the link holds {RadioWordings.Percent(report.AvailabilityFraction)} of the time";
        return gap <= asked.RangeM ? $"Yes: {there}; {share} is kept up to {keep}{end}." : $"No: {there}; keep within {keep} for {share}{end}.";
    }

    /// <summary>The standard answer, about ten lines.</summary>
    public static List<CrewLine> Lines(LinkReport report, LinkSetup setup, UnitPreference units, bool detailed)
    {
        List<CrewLine> lines = [new(CrewLineKind.Figures, AtTheGap(report, setup, units)), new(CrewLineKind.Figures, Ranges(report, units))];
        LinkChange[] changes = [.. report.Changes.Where(c => c.GainDb >= LeastGainDb || c.RangeGainM >= LeastGainM).Take(detailed ? int.MaxValue : MostChanges)];
        if (changes.Length > 0)
        {
            lines.Add(new(CrewLineKind.Plain, $"To get more: {string.Join("; ", changes.Select(c => Change(c, units)))}."));
        }

        if (report.Law is { } law)
        {
            lines.Add(new(CrewLineKind.Plain, Law(law, report.LawfulRange, units)));
        }

        if (report.Blocking.Length > 0)
        {
            lines.Add(new(CrewLineKind.Plain, $"For blocking: {RadioWordings.Lower(RadioWordings.Sentence(report.Blocking, units))}."));
        }

        string why = RadioWordings.Sentence(report.ModelReason, units);
        lines.Add(new(CrewLineKind.Certainty, Say($"How sure: level ±{report.LevelDbm?.PlusMinus ?? 0:0} dB; path taken as {RadioWordings.Model(report.Model)}{(why.Length > 0 ? $": {RadioWordings.Lower(why)}" : "")}.")));
        if (detailed)
        {
            lines.AddRange(report.RefusedModels.Select(m => new CrewLine(CrewLineKind.Refused, $"Path not taken as {RadioWordings.Model(m.Model)}: {RadioWordings.Lower(RadioWordings.Sentence(m.Reason, units))}.")));
            lines.Add(new(CrewLineKind.Figures, Say($"Radiated {report.EirpDbm:0.0} dBm (EIRP), path loss {report.PathLossDb:0.0} dB, field {report.FieldDbuvPerM:0} dBµV/m where {report.NeededFieldDbuvPerM:0} is needed, noise and stations {report.NoiseDbm:0} dBm, {report.FadeMarginDb:0} dB kept for fading.")));
        }

        lines.AddRange(RadioWordings.Cautions(report.Advisories.Concat(report.Law?.Advisories ?? []), units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    /// <summary>The law in one line beside a link check.</summary>
    public static string Law(LawVerdict law, LinkRange? lawful, UnitPreference units)
    {
        string range = lawful is null ? "" : lawful.RangeM < 1 ? "; at the lawful level there is no range to speak of" : $"; at the lawful level it reaches {UnitText.Distance(lawful.RangeM, units, roundDown: true)}";
        string ask = law.Status != LawStatus.WithinExemptLimit && law.Authority.Length > 0 ? $"; ask {RadioWordings.Quote(law.Authority)}" : "";
        return $"Law: {RadioWordings.Lower(LawText.Verdict(law))}{range}{ask}.";
    }

    // Speech drowns in the hiss below about this: judgement.
    private const double LeastAudibleSnrDb = 5;

    private static string AtTheGap(LinkReport report, LinkSetup setup, UnitPreference units)
    {
        string speed = setup.SpeedKmPerHour > 0 ? $" and {UnitText.Speed(setup.SpeedKmPerHour, units)}" : ", standing";
        string outs = setup.SpeedKmPerHour <= 0 ? ""
            : report.AvailabilityFraction < 0.5 ? ", silent more often than not"
            : report.DropOutsPerMinute < FewDropOuts ? ", hardly a drop-out"
            : Say($", about {report.DropOutsPerMinute:0} drop-outs a minute of {report.MeanDropOutMs:0} ms");
        string snr = !report.HasSnrDb ? "" : report.SnrDb < LeastAudibleSnrDb ? "nothing to hear, " : Say($"SNR {report.SnrDb:0} dB{Target(setup)}, ");
        string margin = report.MarginDb < 0 ? Say($"{-report.MarginDb:0} dB short") : Say($"{report.MarginDb:0} dB to spare");
        string delay = !report.HasDelayMs ? ", delay not known" : report.DelayMs < 1 ? ", delay under 1 ms" : Say($", delay {report.DelayMs:0.#} ms");
        return Say($"At {UnitText.Distance(setup.FollowCar.GapM, units)}{speed}: holds {RadioWordings.Percent(report.AvailabilityFraction)} of the time{outs}; {snr}level {report.LevelDbm?.Value ?? 0:0} dBm, {margin}{delay}.");
    }

    private static string Target(LinkSetup setup) => setup.Gear.AnalogueFm is { HasTargetSnrDb: true } fm ? Say($" (wanted {fm.TargetSnrDb:0})") : "";

    private static string Ranges(LinkReport report, UnitPreference units) => report.Ranges.Count == 0 ? "No ranges came with this answer."
        : $"Holds {string.Join(", ", report.Ranges.Select((r, i) => $"{RadioWordings.Percent(r.AvailabilityFraction)} {(i == 0 ? "of the time " : "")}{(r.RangeM < 1 ? "nowhere" : $"to {UnitText.Distance(r.RangeM, units, roundDown: true)}{(r.BeyondModel ? " or more" : "")}")}"))}.";

    private static string Change(LinkChange change, UnitPreference units) =>
        Say($"{RadioWordings.Lower(RadioWordings.Sentence(change.Words, units))} ({Signed(change.GainDb)} dB, {(change.RangeGainM < 0 ? "-" : "+")}{UnitText.Distance(Math.Abs(change.RangeGainM), units)})");

    private static string Lengths(double metres)
    {
        double lengths = Math.Floor(metres / DistanceReader.MetresPerCarLength);
        return lengths switch
        {
            < 1 => " (less than a car length)",
            1 => " (one car length)",
            <= 60 => Say($" (about {lengths:0} car lengths)"),
            _ => "",
        };
    }

    private static double Wanted(LinkSetup setup) => setup.FollowCar.HasAvailabilityFraction ? setup.FollowCar.AvailabilityFraction : 0.95;

    private static string Signed(double db) => db.ToString("+0.#;-0.#;0", System.Globalization.CultureInfo.InvariantCulture);
}
