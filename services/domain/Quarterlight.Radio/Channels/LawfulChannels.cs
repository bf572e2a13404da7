using System.Globalization;
using Quarterlight.Quantities;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Channels;

/// <summary>What a country's rules mean for channels: bands to keep out of, and what to say of the channels found.</summary>
public static class LawfulChannels
{
    /// <summary>Half of the widest usual microphone channel in Hz: as much as a carrier keeps off the edge of a forbidden band.</summary>
    /// <remarks>47 CFR 74.802(c): at most 200 kHz.</remarks>
    public const long HalfChannelHz = 100_000;

    private const double ChannelWidthKHz = 2 * HalfChannelHz / 1e3;

    /// <summary>Forbidden bands of a country, half a channel wider at each edge.</summary>
    public static IReadOnlyList<ExcludedBlock> ForbiddenBlocks(CountryLaw country)
    {
        ArgumentNullException.ThrowIfNull(country);
        return
        [
            .. LawBook.RulesOf(country.Code).Where(r => r.Licensing == Licensing.Forbidden)
                .Select(r => new ExcludedBlock((long)(r.LowMHz * 1e6) - HalfChannelHz, (long)(r.HighMHz * 1e6) + HalfChannelHz, $"forbidden in {country.Name}")),
        ];
    }

    /// <summary>What the law says to a set of channels, most serious first.</summary>
    /// <param name="countryCode">Two letters or a common name; empty says nothing.</param>
    /// <param name="carriersHz">Carriers in Hz.</param>
    /// <param name="powerDbm">Power at each output in dBm; null when not known.</param>
    public static IReadOnlyList<Advisory> Advisories(string countryCode, IReadOnlyList<long> carriersHz, double? powerDbm)
    {
        ArgumentNullException.ThrowIfNull(countryCode);
        ArgumentNullException.ThrowIfNull(carriersHz);
        if (countryCode.Length == 0)
        {
            return [];
        }

        if (LawBook.Find(countryCode) is not { } country)
        {
            return [new("unknown-country", $"No rules are known here for \"{countryCode}\": no band was kept out of on its account.", AdvisorySeverity.Safety)];
        }

        (long Hz, LawVerdict Verdict)[] judged =
        [
            .. carriersHz.Where(hz => LawRules.Frequency.Contains(hz / 1e6))
                .Select(hz => (hz, LawBook.Judge(country.Code, hz / 1e6, powerDbm, powerDbm, ChannelWidthKHz))),
        ];
        return
        [
            .. judged.GroupBy(j => (j.Verdict.Status, j.Verdict.Words)).OrderBy(g => g.Key.Status == LawStatus.Forbidden ? 0 : g.Key.Status == LawStatus.WithinExemptLimit ? 2 : 1)
                .Select(g => Say(g.Key.Status, [.. g], judged.Length)),
        ];
    }

    private static Advisory Say(LawStatus status, (long Hz, LawVerdict Verdict)[] channels, int all)
    {
        string which = channels.Length == all ? "All channels" : channels.Length == 1
            ? string.Create(CultureInfo.InvariantCulture, $"{channels[0].Hz / 1e6:0.000###} MHz")
            : string.Create(CultureInfo.InvariantCulture, $"{channels.Length} channels from {channels.Min(c => c.Hz) / 1e6:0.000###} MHz");
        string words = channels[0].Verdict.Words;
        return status switch
        {
            LawStatus.Forbidden => new("forbidden-channel", $"{which}: {words}", AdvisorySeverity.Safety),
            LawStatus.WithinExemptLimit => new("within-exempt-limit", $"{which}: {words}", AdvisorySeverity.Note),
            _ => new("licence-needed", $"{which}: {words}", AdvisorySeverity.Safety),
        };
    }
}
