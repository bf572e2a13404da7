using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>What the law says, in words.</summary>
internal static class LawText
{
    private const int MostOtherRules = 3;

    /// <summary>The decision, without its final stop.</summary>
    public static string Verdict(LawVerdict law)
    {
        string where = Where(law), limit = law.Rule is { } rule && rule.Limit.Length > 0 ? $" of {RadioWordings.Quote(rule.Limit)}" : "";
        return law.Status switch
        {
            LawStatus.WithinExemptLimit when law.HasExcessDb => Say($"Lawful without a licence{where}: {-law.ExcessDb:0} dB below the limit{limit}"),
            LawStatus.WithinExemptLimit => $"Lawful without a licence{where}, within the limit{limit}",
            LawStatus.OverExemptLimit when law.HasExcessDb => Say($"Not lawful without a licence{where}: {law.ExcessDb:0} dB over the limit{limit}"),
            LawStatus.OverExemptLimit => $"Not lawful without a licence{where}: over the limit{limit}",
            LawStatus.NeedsLicence => $"Only with a licence{where}",
            LawStatus.Forbidden => $"Forbidden{where}",
            _ => $"No rule is known here{where}",
        };
    }

    /// <summary>The decision in one line.</summary>
    /// <param name="law">The verdict.</param>
    /// <param name="frequencyMHz">Carrier in MHz.</param>
    /// <param name="powerKnown">True when a strength was compared; else only the limit is told.</param>
    public static string Headline(LawVerdict law, double frequencyMHz, bool powerKnown)
    {
        string on = RadioWordings.Frequency(frequencyMHz);
        if (!powerKnown && law.Rule is { Limit.Length: > 0 } rule)
        {
            return $"The limit without a licence on {on}{Where(law)} is {RadioWordings.Quote(rule.Limit)}.";
        }

        string answer = law.Status switch
        {
            LawStatus.WithinExemptLimit => "Yes, on ",
            LawStatus.NoRuleKnown or LawStatus.Unspecified => "Not known, on ",
            _ => "No, on ",
        };
        return $"{answer}{on}: {char.ToLowerInvariant(Verdict(law)[0])}{Verdict(law)[1..]}.";
    }

    /// <summary>The rest: the planner's words, the rule with its document, what else there is, who to ask, cautions.</summary>
    public static List<CrewLine> Lines(LawVerdict law, LinkRange? lawful, UnitPreference units, bool detailed)
    {
        var lines = new List<CrewLine>();
        string words = RadioWordings.Sentence(law.Words, units);
        if (words.Length > 0)
        {
            lines.Add(new(CrewLineKind.Plain, words + "."));
        }

        if (law.HasLawfulEirpDbm)
        {
            string range = lawful is null ? "" : lawful.RangeM < 1 ? "; with that there is no range to speak of" : $"; with that the link reaches {UnitText.Distance(lawful.RangeM, units, roundDown: true)}";
            lines.Add(new(CrewLineKind.Figures, Say($"Most that may be radiated: {law.LawfulEirpDbm:0.0} dBm EIRP, that is {RadioWordings.Milliwatts(Math.Pow(10, law.LawfulEirpDbm / 10))}{range}.")));
        }

        if (law.Rule is { } rule)
        {
            lines.Add(new(CrewLineKind.Plain, "Rule: " + Rule(rule)));
        }

        int most = detailed ? int.MaxValue : MostOtherRules;
        lines.AddRange(law.OtherRules.Take(most).Select(r => new CrewLine(CrewLineKind.Plain, (r.Forbids ? "Forbidden: " : r.NeedsLicence ? "With a licence: " : "Also: ") + Rule(r))));
        if (law.Authority.Length > 0)
        {
            lines.Add(new(CrewLineKind.Plain, $"Ask: {RadioWordings.Quote(law.Authority)}."));
        }

        lines.AddRange(RadioWordings.Cautions(law.Advisories, units, int.MaxValue));
        return lines;
    }

    private static string Rule(RadioRule rule)
    {
        string band = Say($"{RadioWordings.Frequency(rule.LowMhz)} to {RadioWordings.Frequency(rule.HighMhz)}");
        string[] told = [.. new[] { rule.Use, band, rule.Limit, rule.Conditions }.Select(RadioWordings.Quote).Where(t => t.Length > 0)];
        string[] source = [.. new[] { rule.Document, rule.Clause, rule.Date }.Select(RadioWordings.Quote).Where(t => t.Length > 0)];
        return $"{string.Join(", ", told)}{(source.Length > 0 ? $" ({string.Join(", ", source)})" : "")}{(rule.FromMemory ? "; from memory, look it up before you rely on it" : "")}.";
    }

    private static string Where(LawVerdict law) => law.CountryCode.Length > 0 ? $" in {CountryReader.Say(law.CountryCode)}" : " by the strictest limit known, as the country is not known";
}
