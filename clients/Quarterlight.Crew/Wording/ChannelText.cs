using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>Channels of several transmitters, and FM channels, in words.</summary>
internal static class ChannelText
{
    private const int MostCautions = 3;
    private const int MostHits = 4;

    // Short enough for one line of a phone held sideways: judgement.
    private const int ChannelsALine = 4;

    /// <summary>The decision on channels found.</summary>
    public static string Found(ChannelReport report)
    {
        int asked = report.Assignments.Count, clean = report.Assignments.Count(a => a.Clean && a.HasFrequencyMhz);
        string proof = report.Proved ? "proved" : "not proved to be the most";
        return report.Complete ? Say($"A clean channel for each of {asked}: nothing they make together falls on any of them, {proof}.")
            : clean == 0 ? $"No clean set was found for {Say($"{asked}")} transmitters."
            : Say($"Only {clean} of {asked} get a clean channel ({proof}); the rest need another band, a smaller spacing or to stay off.");
    }

    /// <summary>The decision on channels given.</summary>
    public static string Checked(ChannelReport report) => report.Hits.Count == 0 && report.SpacingFaults.Count == 0
        ? Say($"They go together: nothing falls on any of the {report.Assignments.Count} channels.")
        : Say($"They do not go together: {Faults(report)}.");

    /// <summary>Channels, then what is wrong, how sure, cautions.</summary>
    public static List<CrewLine> Lines(ChannelReport report, UnitPreference units, bool detailed)
    {
        bool alike = report.Assignments.Select(a => Kind(a.TransmitterId)).Distinct().Count() <= 1;
        // Of several alike it does not matter which goes without: count those that have one.
        IEnumerable<ChannelAssignment> served = alike ? report.Assignments.Where(a => a.HasFrequencyMhz).OrderBy(a => a.FrequencyMhz) : report.Assignments;
        List<CrewLine> lines = [.. served.Select((a, i) => Channel(a, i, alike)).Chunk(ChannelsALine).Select(c => new CrewLine(CrewLineKind.Talker, string.Join(", ", c)))];
        if (report.FewestHitsAssignments.Count > 0)
        {
            lines.Add(new(CrewLineKind.RunnerUp, Say($"With all {report.FewestHitsAssignments.Count} on the air, fewest hits found: {string.Join(", ", report.FewestHitsAssignments.Select((a, i) => Channel(a, i, alike)))}.")));
        }

        int most = detailed ? int.MaxValue : MostHits;
        lines.AddRange(report.Hits.Take(most).Select(h => new CrewLine(CrewLineKind.Refused, Say($"{RadioWordings.Quote(h.Words)} falls on {RadioWordings.Dial(h.FrequencyMhz)} MHz, {Math.Abs(h.OffsetKhz):0} kHz from {RadioWordings.Dial(h.NearestCarrierMhz)}."))));
        if (report.Hits.Count > most)
        {
            lines.Add(new(CrewLineKind.Refused, Say($"And {report.Hits.Count - most} more hits.")));
        }

        lines.AddRange(report.SpacingFaults.Take(most).Select(f => new CrewLine(CrewLineKind.Refused, $"Too close: {RadioWordings.Quote(f)}.")));
        if (report.HasLeastThirdOrderOffsetKhz)
        {
            lines.Add(new(CrewLineKind.Figures, Say($"Nearest product (third order): {report.LeastThirdOrderOffsetKhz:0} kHz from a channel, of {report.ThirdOrderCount} looked at{(report.FifthOrderCount > 0 ? Say($", and {report.FifthOrderCount} of the fifth order") : "")}.")));
        }

        if (detailed)
        {
            lines.AddRange(report.Products.Take(10).Where(p => p.HasLevelDbm).Select(p => new CrewLine(CrewLineKind.Figures, Say($"{RadioWordings.Quote(p.Words)}: {RadioWordings.Dial(p.FrequencyMhz)} MHz at {p.LevelDbm:0} dBm."))));
        }

        if (report.Proof.Length > 0)
        {
            lines.Add(new(CrewLineKind.Proof, RadioWordings.Sentence(report.Proof, units) + "."));
        }

        lines.AddRange(RadioWordings.Cautions(report.Advisories, units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    /// <summary>The quietest FM channels, the best first, in one line.</summary>
    public static string Quietest(IReadOnlyList<FmChannel> channels) => channels.Count == 0 ? "No FM channel could be ranked."
        : $"Quietest: {RadioWordings.Frequency(channels[0].FrequencyMhz)}{(channels.Count > 1 ? $", then {Join([.. channels.Skip(1).Take(2).Select(c => RadioWordings.Frequency(c.FrequencyMhz))])}" : "")}.";

    /// <summary>FM channels, those of which the same is to be said in one line.</summary>
    public static IEnumerable<string> Quiet(IEnumerable<FmChannel> channels, UnitPreference units) => channels.GroupBy(c => Prospect(c, units))
        .Select(g => $"{Join([.. g.Select(c => Say($"{c.FrequencyMhz:0.0##}"))])} MHz: {g.Key}");

    private static string Prospect(FmChannel channel, UnitPreference units)
    {
        string words = RadioWordings.Sentence(channel.Words, units);
        string cost = channel.InterferenceDb < 0.5 ? "stations cost nothing" : Say($"stations cost {channel.InterferenceDb:0} dB{(channel.HasWorstStationMhz ? $", {RadioWordings.Frequency(channel.WorstStationMhz)} most" : "")}");
        return $"reaches {UnitText.Distance(channel.RangeM, units, roundDown: true)}, {cost}{(words.Length > 0 ? $"; {RadioWordings.Lower(words)}" : "")}.";
    }

    // "3: 470.975 MHz"; of several kinds with the kind's own id.
    private static string Channel(ChannelAssignment a, int index, bool alike)
    {
        string whose = alike || a.TransmitterId.Length == 0 ? Say($"{index + 1}") : Name(a.TransmitterId).Replace('-', ' ');
        return !a.HasFrequencyMhz ? $"{whose}: no clean one" : $"{whose}: {RadioWordings.Dial(a.FrequencyMhz)} MHz{(a.Clean ? "" : " (hit)")}";
    }

    // "bodypack-2" is the second of its kind.
    private static string Kind(string id) => id.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').TrimEnd('-');

    private static string Faults(ChannelReport report)
    {
        var parts = new List<string>();
        if (report.Hits.Count > 0)
        {
            parts.Add(Say($"{report.Hits.Count} {(report.Hits.Count == 1 ? "product falls" : "products fall")} on or near a channel"));
        }

        if (report.SpacingFaults.Count > 0)
        {
            parts.Add(Say($"{report.SpacingFaults.Count} {(report.SpacingFaults.Count == 1 ? "pair is" : "pairs are")} too close"));
        }

        return Join(parts);
    }
}
