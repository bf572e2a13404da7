using Quarterlight.Radio.Law.Tables;

namespace Quarterlight.Radio.Law;

/// <summary>
/// The radio rules known here, country by country, for cueing a car's radio and for wireless microphones from 76 to 2500 MHz. They are a
/// help for planning: local law and the regulator decide.
/// </summary>
public static class LawBook
{
    private static readonly (CountryLaw Country, RadioRule[] Rules)[] s_tables =
    [
        Sorted(UnitedStates.Country, UnitedStates.Rules),
        Sorted(UnitedKingdom.Country, UnitedKingdom.Rules),
        Sorted(Europe.Country, Europe.Rules),
        Sorted(Germany.Country, Germany.Rules),
        Sorted(Canada.Country, Canada.Rules),
        Sorted(Australia.Country, Australia.Rules),
        Sorted(Japan.Country, Japan.Rules),
        Sorted(NewZealand.Country, NewZealand.Rules),
    ];

    /// <summary>Every country and region with a table of its own.</summary>
    public static IReadOnlyList<CountryLaw> Countries { get; } = [.. s_tables.Select(t => t.Country)];

    /// <summary>Every rule known here, country by country, lowest band first within each.</summary>
    public static IReadOnlyList<RadioRule> Rules { get; } = [.. s_tables.SelectMany(t => t.Rules)];

    /// <summary>
    /// The table for a country: by its two letters or its common English name, in any case. European countries without a table of their
    /// own lead to the European recommendation. Null when the country is not known here.
    /// </summary>
    public static CountryLaw? Find(string? codeOrName) =>
        CountryNames.Resolve(codeOrName) is { } found ? Countries.First(c => c.Code == found.Table) : null;

    /// <summary>The rules of one table, lowest band first.</summary>
    /// <exception cref="ArgumentException">The code is none of <see cref="Countries"/>.</exception>
    public static IReadOnlyList<RadioRule> RulesOf(string code)
    {
        foreach ((CountryLaw country, RadioRule[] rules) in s_tables)
        {
            if (country.Code == code)
            {
                return rules;
            }
        }

        throw new ArgumentException($"There is no table {code}.", nameof(code));
    }

    /// <summary>Judges one transmission in one country; check the input with <see cref="LawRules.Validate"/> first.</summary>
    /// <param name="countryCode">Two letters or a common English name; an unknown or empty one gets the strictest limit of all countries known
    /// here.</param>
    /// <param name="frequencyMHz">Centre frequency in MHz, 76 to 2500.</param>
    /// <param name="eirpDbm">Radiated power over an isotropic antenna in dBm; null asks for the limit alone.</param>
    /// <param name="conductedPowerDbm">Power at the transmitter's output in dBm; null when not known.</param>
    /// <param name="channelWidthKHz">Channel width in kHz; null when not known.</param>
    /// <param name="digital">Whether it is digital; null when not known.</param>
    /// <exception cref="Quantities.InvalidInputException">The input is outside the ranges of <see cref="LawRules"/>.</exception>
    public static LawVerdict Judge(
        string countryCode, double frequencyMHz, double? eirpDbm, double? conductedPowerDbm = null, double? channelWidthKHz = null, bool? digital = null)
    {
        IReadOnlyList<Quantities.Violation> wrong = LawRules.Validate(countryCode, frequencyMHz, eirpDbm ?? LawRules.Power.Min, conductedPowerDbm, channelWidthKHz);
        if (wrong.Count > 0)
        {
            throw new Quantities.InvalidInputException(wrong);
        }

        var sent = new Transmission(frequencyMHz, eirpDbm ?? conductedPowerDbm ?? LawRules.Power.Min, conductedPowerDbm, channelWidthKHz, digital, (eirpDbm ?? conductedPowerDbm) is not null);
        return CountryNames.Resolve(countryCode) is { } found
            ? LawJudge.InCountry(Countries.First(c => c.Code == found.Table), RulesOf(found.Table), found.StandsFor, sent)
            : LawJudge.Anywhere(countryCode, s_tables, sent);
    }

    /// <summary>A rule's limit with its unit, such as "250 µV/m at 3 m".</summary>
    public static string LimitWords(RadioRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return VerdictWords.Limit(rule);
    }

    private static (CountryLaw Country, RadioRule[] Rules) Sorted(CountryLaw country, RadioRule[] rules) =>
        (country, [.. rules.OrderBy(r => r.LowMHz).ThenBy(r => r.HighMHz).ThenBy(r => r.Licensing)]);
}
