using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Law;

/// <summary>What a rule allows for one transmission.</summary>
public static class RuleLimits
{
    // Frequencies are compared to a tenth of a hertz, so that 87.6 + 0.1 stays inside a band that ends at 87.7.
    private const double EdgeMHz = 1e-7;

    /// <summary>True when the rule's band holds the centre frequency in MHz; both edges count.</summary>
    public static bool Covers(RadioRule rule, double frequencyMHz)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return frequencyMHz >= rule.LowMHz - EdgeMHz && frequencyMHz <= rule.HighMHz + EdgeMHz;
    }

    /// <summary>True when the whole channel lies in the band and is no wider than the rule allows. Without a width only the centre counts.</summary>
    public static bool Fits(RadioRule rule, double frequencyMHz, double? channelWidthKHz)
    {
        if (channelWidthKHz is not { } width)
        {
            return Covers(rule, frequencyMHz);
        }

        double halfMHz = width / 2000;
        return Covers(rule, frequencyMHz - halfMHz) && Covers(rule, frequencyMHz + halfMHz) && !(width > rule.WidestChannelKHz);
    }

    /// <summary>True when any part of the channel lies in the band.</summary>
    public static bool Touches(RadioRule rule, double frequencyMHz, double? channelWidthKHz)
    {
        double halfMHz = (channelWidthKHz ?? 0) / 2000;
        return Covers(rule, frequencyMHz)
            || (frequencyMHz + halfMHz > rule.LowMHz + EdgeMHz && frequencyMHz - halfMHz < rule.HighMHz - EdgeMHz);
    }

    /// <summary>
    /// The limit in dBm: e.i.r.p. for radiated limits, power at the transmitter's output for conducted ones; null when the rule allows
    /// nothing.
    /// </summary>
    public static double? LimitDbm(RadioRule rule, double? channelWidthKHz)
    {
        ArgumentNullException.ThrowIfNull(rule);
        double? dbm = rule.LimitKind switch
        {
            // Measured on a test site over ground, which can mean up to 6 dB less power (from memory).
            LimitKind.FieldStrength => FreeSpace.EirpDbmFromField(rule.Limit, rule.LimitDistanceM ?? throw new ArgumentException("A field strength needs its distance.", nameof(rule))),
            LimitKind.Erp => FreeSpace.DbmFromWatts(rule.Limit / 1e3) + FreeSpace.DipoleGainDbi,
            LimitKind.Eirp or LimitKind.ConductedPower when rule.Limit > 0 => FreeSpace.DbmFromWatts(rule.Limit / 1e3),
            _ => null,
        };
        return rule.RootBandwidthReferenceKHz is { } reference && channelWidthKHz < reference
            ? dbm + (5 * Math.Log10(channelWidthKHz.Value / reference))
            : dbm;
    }

    /// <summary>How many dB a transmission is over the rule; 0 or below is within it; null when the rule allows nothing.</summary>
    public static double? ExcessDb(RadioRule rule, Transmission sent)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(sent);
        double power = rule.LimitKind == LimitKind.ConductedPower ? sent.ConductedPowerDbm ?? sent.EirpDbm : sent.EirpDbm;
        return power - LimitDbm(rule, sent.ChannelWidthKHz);
    }

    /// <summary>
    /// Most e.i.r.p. in dBm under the rule. A conducted limit becomes e.i.r.p. with the antenna gain that the two powers show, or with
    /// none when only the e.i.r.p. is known.
    /// </summary>
    public static double? LawfulEirpDbm(RadioRule rule, Transmission sent) => sent is null ? throw new ArgumentNullException(nameof(sent)) : sent.EirpDbm - ExcessDb(rule, sent);
}
