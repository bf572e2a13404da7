using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>What a valid question about the law is.</summary>
public static class LawRules
{
    /// <summary>Frequencies the tables speak of.</summary>
    public static ValidRange Frequency { get; } = new(76, 2500, "MHz");

    /// <summary>Radiated or conducted power; 60 dBm is 1 kW.</summary>
    public static ValidRange Power { get; } = new(-150, 60, "dBm");

    /// <summary>Channel width.</summary>
    public static ValidRange ChannelWidth { get; } = new(1, 20_000, "kHz");

    /// <summary>Longest country code or name in characters.</summary>
    public const int LongestCountryName = 60;

    /// <summary>Everything wrong with the question; empty when it is valid. A country that is not known here, or not given, is a valid
    /// question.</summary>
    public static IReadOnlyList<Violation> Validate(
        string? countryCode, double frequencyMHz, double eirpDbm, double? conductedPowerDbm = null, double? channelWidthKHz = null, string prefix = "")
    {
        var violations = new List<Violation>();
        string at = string.IsNullOrEmpty(prefix) ? "" : prefix + ".";
        if (countryCode?.Length > LongestCountryName)
        {
            violations.Add(new Violation($"{at}country_code", $"the name has {countryCode.Length} characters", $"Use the two letters or a name of at most {LongestCountryName} characters"));
        }

        Frequency.Check($"{at}frequency_mhz", frequencyMHz, violations);
        Power.Check($"{at}eirp_dbm", eirpDbm, violations);
        if (conductedPowerDbm is { } conducted)
        {
            Power.Check($"{at}conducted_power_dbm", conducted, violations);
        }

        if (channelWidthKHz is { } width)
        {
            ChannelWidth.Check($"{at}channel_width_khz", width, violations);
        }

        return violations;
    }
}
