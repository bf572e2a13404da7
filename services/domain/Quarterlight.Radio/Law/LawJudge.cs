using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>Weighs one transmission against a table of rules.</summary>
internal static class LawJudge
{
    // Rounding must not push a transmission that sits on the limit over it.
    private const double RoundingDb = 1e-9;

    /// <summary>The verdict under one country's table.</summary>
    /// <param name="country">The table's country or region.</param>
    /// <param name="rules">Its rules.</param>
    /// <param name="standsFor">The country asked for when it has no table of its own.</param>
    /// <param name="sent">What is to be sent.</param>
    public static LawVerdict InCountry(CountryLaw country, IReadOnlyList<RadioRule> rules, string? standsFor, Transmission sent)
    {
        Findings found = Weigh(rules, sent);
        string words = VerdictWords.InCountry(found, country, sent);
        List<Advisory> advisories = LawAdvisories.For(found, sent);
        if (standsFor is not null)
        {
            advisories.Add(LawAdvisories.TableDecides(standsFor));
        }

        return Verdict(found, country, country.Authority, words, advisories, sent, known: true);
    }

    /// <summary>The verdict when the country is unknown: the strictest licence-exempt limit among all tables.</summary>
    public static LawVerdict Anywhere(string asked, IReadOnlyList<(CountryLaw Country, RadioRule[] Rules)> tables, Transmission sent)
    {
        (CountryLaw Country, Findings Found)[] all = [.. tables.Select(t => (t.Country, Weigh(t.Rules, sent)))];
        (CountryLaw Country, Findings Found)[] allowing = [.. all.Where(a => a.Found.Governing is not null)];
        string[] nothing = [.. all.Where(a => a.Found.Governing is null).Select(a => a.Country.Name)];
        if (allowing.Length == 0)
        {
            var none = new Findings(null, true, null, LawStatus.NoRuleKnown, [], []);
            return Verdict(none, null, VerdictWords.UnknownAuthority, VerdictWords.Nowhere(asked, sent), [.. LawAdvisories.For(none, sent), LawAdvisories.UnknownCountry(asked)], sent, known: false);
        }

        (CountryLaw country, Findings strict) = allowing.MinBy(a => RuleLimits.LimitDbm(a.Found.Governing!, sent.ChannelWidthKHz));
        LawStatus status = strict.ExcessDb > RoundingDb || !strict.ChannelFits
            ? LawStatus.OverExemptLimit
            : nothing.Length == 0 ? LawStatus.WithinExemptLimit : LawStatus.NoRuleKnown;

        // Another country's licensed and forbidden bands say nothing about this one.
        Findings found = strict with { Status = status, Licensed = [], Forbidding = [] };
        string words = VerdictWords.Anywhere(asked, found, country, nothing, sent);
        return Verdict(found, country, VerdictWords.UnknownAuthority, words, [.. LawAdvisories.For(found, sent), LawAdvisories.UnknownCountry(asked)], sent, known: false);
    }

    private static Findings Weigh(IReadOnlyList<RadioRule> rules, Transmission sent)
    {
        RadioRule[] forbidding = [.. rules.Where(r => r.Licensing == Licensing.Forbidden && RuleLimits.Touches(r, sent.FrequencyMHz, sent.ChannelWidthKHz))];
        RadioRule[] licensed = [.. rules.Where(r => r.Licensing == Licensing.Licensed && RuleLimits.Fits(r, sent.FrequencyMHz, sent.ChannelWidthKHz))];
        if (forbidding.Length > 0)
        {
            return new(null, true, null, LawStatus.Forbidden, licensed, forbidding);
        }

        RadioRule[] covering = [.. rules.Where(r => r.Licensing == Licensing.LicenceExempt && RuleLimits.Covers(r, sent.FrequencyMHz) && !(r.DigitalOnly && sent.Digital == false))];
        RadioRule[] fitting = [.. covering.Where(r => RuleLimits.Fits(r, sent.FrequencyMHz, sent.ChannelWidthKHz))];
        bool fits = fitting.Length > 0 || covering.Length == 0;
        RadioRule? governing = (fitting.Length > 0 ? fitting : covering).MaxBy(r => RuleLimits.LimitDbm(r, sent.ChannelWidthKHz));
        double? excess = governing is null ? null : RuleLimits.ExcessDb(governing, sent);
        bool admitted = licensed.Any(r => RuleLimits.ExcessDb(r, sent) <= RoundingDb);
        LawStatus status = governing switch
        {
            null when licensed.Length > 0 => LawStatus.NeedsLicence,
            null => LawStatus.NoRuleKnown,
            _ when excess <= RoundingDb && fits => LawStatus.WithinExemptLimit,
            _ when admitted => LawStatus.NeedsLicence,
            _ => LawStatus.OverExemptLimit,
        };
        return new(governing, fits, excess, status, licensed, []);
    }

    private static LawVerdict Verdict(
        Findings found, CountryLaw? country, string authority, string words, IReadOnlyList<Advisory> advisories, Transmission sent, bool known) => new()
        {
            CountryKnown = known,
            Country = country,
            GoverningRule = found.Governing,
            // A channel that the rule has no room for is lawful at no power.
            LawfulEirpDbm = found.Governing is null || !found.ChannelFits ? null : RuleLimits.LawfulEirpDbm(found.Governing, sent),
            ExcessDb = !sent.PowerStated ? null : found.ExcessDb is { } excess && Math.Abs(excess) <= RoundingDb ? 0 : found.ExcessDb,
            Status = found.Status,
            LicensedAlternatives = found.Licensed,
            ForbiddenBy = found.Forbidding,
            Authority = authority,
            Words = words,
            Advisories = advisories,
        };

    /// <summary>What a table says of one transmission.</summary>
    /// <param name="Governing">The most generous licence-exempt rule; null when there is none.</param>
    /// <param name="ChannelFits">False when the governing rule has no room for the channel.</param>
    /// <param name="ExcessDb">dB over the governing rule.</param>
    /// <param name="Status">The verdict in one word.</param>
    /// <param name="Licensed">Licensed rules with room for the channel.</param>
    /// <param name="Forbidding">Rules that forbid it.</param>
    internal sealed record Findings(
        RadioRule? Governing, bool ChannelFits, double? ExcessDb, LawStatus Status, IReadOnlyList<RadioRule> Licensed, IReadOnlyList<RadioRule> Forbidding);
}
