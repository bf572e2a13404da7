using System.Globalization;
using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>Says a verdict in one or two plain sentences.</summary>
internal static class VerdictWords
{
    /// <summary>Whom to ask when the country is unknown.</summary>
    public const string UnknownAuthority = "the radio regulator of the country you record in";

    /// <summary>A limit with its unit, such as "250 µV/m at 3 m".</summary>
    public static string Limit(RadioRule rule) => rule.LimitKind switch
    {
        LimitKind.FieldStrength => string.Create(CultureInfo.InvariantCulture, $"{rule.Limit:0.##} µV/m at {rule.LimitDistanceM:0.##} m"),
        LimitKind.Erp => Power(rule.Limit) + " ERP",
        LimitKind.Eirp => Power(rule.Limit) + " EIRP",
        LimitKind.ConductedPower => Power(rule.Limit) + " at the transmitter's output",
        _ => "nothing",
    };

    /// <summary>Where a rule stands, such as "47 CFR Part 15, 15.239(b), revision of September 2021", and whether it is from memory.</summary>
    public static string Cite(RadioRule rule) => $"{rule.Document}, {rule.Clause}, {rule.Date}" + (rule.Provenance.Trust == Trust.FromMemory ? "; from memory" : "");

    /// <summary>The room a rule has for a channel.</summary>
    public static string Room(RadioRule rule) =>
        string.Create(CultureInfo.InvariantCulture, $"{rule.LowMHz:0.####} to {rule.HighMHz:0.####} MHz")
        + (rule.WidestChannelKHz is { } widest ? string.Create(CultureInfo.InvariantCulture, $", at most {widest:0.#} kHz wide") : "");

    /// <summary>The verdict in a known country.</summary>
    public static string InCountry(LawJudge.Findings found, CountryLaw country, Transmission sent)
    {
        string authority = country.Authority;
        switch (found.Status)
        {
            case LawStatus.Forbidden:
                RadioRule ban = found.Forbidding[0];
                return $"Forbidden in {country.Name}, with or without a licence: {ban.Use}, {Room(ban)} ({Cite(ban)}). Choose another band.";
            case LawStatus.NoRuleKnown:
                return $"No rule is known here for {Frequency(sent)} in {country.Name}. Take it as not allowed until {authority} says otherwise.{Nearest(country, sent)}";
            case LawStatus.NeedsLicence:
                RadioRule licence = Best(found.Licensed, sent);
                string beyond = RuleLimits.ExcessDb(licence, sent) is > 0 and { } over ? $", and it is {Db(over)} over even that" : "";
                string exempt = found.Governing is null ? $"No licence-exempt rule is known here for {Frequency(sent)} in {country.Name}" : Capital(Compared(found, country, sent));
                return $"{exempt}. A licence allows up to {Limit(licence)} ({Cite(licence)}){beyond}: ask {authority} before you send.";
            case LawStatus.OverExemptLimit:
                string licensed = found.Licensed.Count > 0
                    ? $"A licence known here allows up to {Limit(Best(found.Licensed, sent))}, too little for it"
                    : "No licensed way is known here";
                string change = found.ChannelFits ? "lower the power" : "move or narrow the channel";
                return $"{Capital(Compared(found, country, sent))}. {licensed}: {change}, or ask {authority}.";
            default:
                string conditions = found.Governing!.Conditions;
                return $"{Capital(Compared(found, country, sent))}." + (conditions.Length > 0 ? $" Conditions: {conditions}." : "");
        }
    }

    /// <summary>The verdict in an unknown country.</summary>
    public static string Anywhere(string asked, LawJudge.Findings found, CountryLaw country, string[] nothing, Transmission sent)
    {
        string gaps = nothing.Length == 0 ? "" : $" Nothing is known here to be allowed without a licence in {string.Join(", ", nothing)}: expect the same until {UnknownAuthority} says otherwise.";
        return $"{Unknown(asked)}; held to the strictest limit of the countries known here: {Compared(found, country, sent)}.{gaps}";
    }

    /// <summary>For a frequency at which no known country allows anything.</summary>
    public static string Nowhere(string asked, Transmission sent) =>
        $"{Unknown(asked)}, and no country known here allows {Frequency(sent)} without a licence. Take it as not allowed until {UnknownAuthority} says otherwise.";

    private static string Compared(LawJudge.Findings found, CountryLaw country, Transmission sent)
    {
        RadioRule rule = found.Governing!;
        string limit = $"the licence-exempt limit of {Limit(rule)} in {country.Name} ({Cite(rule)})";
        if (!found.ChannelFits)
        {
            return $"the channel does not fit {limit}, which has room for {Room(rule)}";
        }

        if (!sent.PowerStated)
        {
            return limit;
        }

        double excess = found.ExcessDb!.Value;
        return excess > 1e-9 ? $"{Db(excess)} above {limit}"
            : excess > -0.05 ? $"right at {limit}"
            : $"within {limit}, with {Db(-excess)} to spare";
    }

    // The nearest band open to anybody, within a tenth of the frequency: what was meant may be next door.
    private static string Nearest(CountryLaw country, Transmission sent)
    {
        RadioRule? near = LawBook.RulesOf(country.Code)
            .Where(r => r.Licensing == Licensing.LicenceExempt && !(r.DigitalOnly && sent.Digital == false))
            .MinBy(r => Math.Max(r.LowMHz - sent.FrequencyMHz, sent.FrequencyMHz - r.HighMHz));
        double away = near is null ? double.PositiveInfinity : Math.Max(near.LowMHz - sent.FrequencyMHz, sent.FrequencyMHz - near.HighMHz);
        return away < sent.FrequencyMHz / 10 ? $" The nearest band known here without a licence is {Room(near!)} ({near!.Use}, {Limit(near)})." : "";
    }

    private static string Unknown(string asked) => asked.Length == 0 ? "No country is given" : $"Nothing is known here about \"{asked}\"";

    private static RadioRule Best(IReadOnlyList<RadioRule> rules, Transmission sent) => rules.MinBy(r => RuleLimits.ExcessDb(r, sent))!;

    private static string Frequency(Transmission sent) => string.Create(CultureInfo.InvariantCulture, $"{sent.FrequencyMHz:0.####} MHz");

    // Never "0.0 dB above": a small excess is still one.
    private static string Db(double db) => db < 0.05 ? "less than 0.1 dB" : string.Create(CultureInfo.InvariantCulture, $"{db:0.0} dB");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Power(double milliwatts) => milliwatts switch
    {
        < 1e-3 => string.Create(CultureInfo.InvariantCulture, $"{milliwatts * 1e6:0.##} nW"),
        < 1 => string.Create(CultureInfo.InvariantCulture, $"{milliwatts * 1e3:0.##} µW"),
        < 1000 => string.Create(CultureInfo.InvariantCulture, $"{milliwatts:0.#} mW"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{milliwatts / 1000:0.##} W"),
    };
}
