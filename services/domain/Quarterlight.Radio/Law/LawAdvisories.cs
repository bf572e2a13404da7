using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>The remarks beside a verdict.</summary>
internal static class LawAdvisories
{
    private static readonly Advisory s_localLaw = new(
        "local-law-decides", "Local law and the regulator decide; this is a help for planning, not legal advice.", AdvisorySeverity.Safety);

    /// <summary>What goes with these findings; always starts with the caution.</summary>
    public static List<Advisory> For(LawJudge.Findings found, Transmission sent)
    {
        List<Advisory> advisories = [s_localLaw];
        RadioRule[] named = [.. new[] { found.Governing }.OfType<RadioRule>(), .. found.Licensed, .. found.Forbidding];
        if (named.Any(r => r.Provenance.Trust == Trust.FromMemory))
        {
            string which = string.Join("; ", named.Where(r => r.Provenance.Trust == Trust.FromMemory).Select(r => $"{r.Document}, {r.Clause}").Distinct());
            advisories.Add(new("figure-from-memory", $"Written down from memory, not read in the document: {which}. Check before you rely on it.", AdvisorySeverity.Caution));
        }

        if (found.Governing is not { } rule)
        {
            return advisories;
        }

        if (rule.Conditions.Length > 0)
        {
            advisories.Add(new("conditions-apply", $"The rule has conditions: {rule.Conditions}.", AdvisorySeverity.Caution));
        }

        if (!found.ChannelFits)
        {
            advisories.Add(new("channel-too-wide", $"The channel does not fit the rule: {VerdictWords.Room(rule)}.", AdvisorySeverity.Safety));
        }

        if (rule.LimitKind == LimitKind.ConductedPower && sent.ConductedPowerDbm is null)
        {
            advisories.Add(new("compared-with-eirp", "The rule limits the power at the transmitter's output; it was compared with the radiated power, as no other is given.", AdvisorySeverity.Note));
        }

        if (rule.RootBandwidthReferenceKHz is { } reference && sent.ChannelWidthKHz is null)
        {
            advisories.Add(new("channel-width-unknown", FormattableString.Invariant($"The limit shrinks with the channel; it is given for a channel of {reference:0} kHz."), AdvisorySeverity.Caution));
        }

        return advisories;
    }

    /// <summary>For a European country without a table of its own.</summary>
    public static Advisory TableDecides(string country) => new(
        "national-table-decides", $"The European recommendation was used: {country}'s own frequency table decides, and may be stricter.", AdvisorySeverity.Caution);

    /// <summary>For a country that is not known here.</summary>
    public static Advisory UnknownCountry(string asked) => new(
        "unknown-country", $"{(asked.Length == 0 ? "No country is given" : $"No rules are known here for \"{asked}\"")}; the strictest licence-exempt limit of the countries known here was used.", AdvisorySeverity.Safety);
}
