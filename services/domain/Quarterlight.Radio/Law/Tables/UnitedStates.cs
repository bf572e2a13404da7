using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>United States: title 47 of the Code of Federal Regulations.</summary>
internal static class UnitedStates
{
    private const string Part15 = "47 CFR Part 15";
    private const string Part74 = "47 CFR Part 74 subpart H";
    private const string Microphone = "wireless microphone";
    private const string Unused = "only on TV channels unused at the place; certified equipment; no protection from interference";
    private const string Who = "open to broadcasters, film and programme makers and large venues that hold a licence";

    private static readonly Entry s_fm = new("US", Part15, "15.239(b)", "revision of September 2021", "15.239, text of the 2021 revision in a public mirror", Trust.Published);
    private static readonly Entry s_general = new("US", Part15, "15.209(a)", "revision of October 2015", "15.209, text of the 2013 and 2015 revisions in a public mirror", Trust.Published);
    private static readonly Entry s_microphones = new("US", Part15, "15.236(c), (d)", "revision of September 2021", "Bands: 15.236, text of the 2021 revision in a public mirror. Powers: second hand, a public frequency survey and a regulator's question page", Trust.Published);
    private static readonly Entry s_serviceBand = new("US", Part15, "15.236(a)(4), (c)(2)", "revision of September 2021", "15.236, text of the 2021 revision in a public mirror: use had to cease with the end of the transition", Trust.Published);
    private static readonly Entry s_spread = new("US", Part15, "15.247(b)", "revision of October 2005", "Scope: 15.247, text of the 2005 revision. Power: second hand, a public frequency survey", Trust.Published);
    private static readonly Entry s_personal = new("US", Part15, "15.319(c)", "revision of October 2011", "15.319, text of the 2008 and 2011 revisions in public mirrors; the product for a channel of 1.4 MHz is derived", Trust.Published);
    private static readonly Entry s_astronomy = new("US", "47 CFR Part 73", "73.603(c) and 15.205(a)", "as amended November 2021", "73.603 and 15.205, text of the Code in a public copy", Trust.Published);
    private static readonly Entry s_mobile = new("US", "Regulator's notice on the 700 MHz band", "use prohibited", "in force since 12 June 2010", "The regulator's page on the 700 MHz band", Trust.Published);
    private static readonly Entry s_otherBands = new("US", Part74, "74.861(d)(1), 74.802(a)", "current Code; band list of 2008 and 2024", "74.861(d)(1), text of the Code in a public copy; bands: 74.802 of 2008 and the title of the final rule of 2024", Trust.Published);
    private static readonly Entry s_televisionUhf = new("US", Part74, "74.861(e)(1)", "read in notices of 2008 and after", "Second hand: regulator's documents that quote 250 mW, and a public frequency survey", Trust.Published);
    private static readonly Entry s_televisionVhf = new("US", Part74, "74.861(e)(1)", "edition not read", "From memory; the band stands in 74.802(a) of 2008", Trust.FromMemory);
    private static readonly Entry s_duplexGap = new("US", Part74, "74.861(e)(1)", "edition not read", "From memory; that 652 to 663 MHz is the duplex gap stands in 15.236(a)(2)", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "US", "the United States", "the Federal Communications Commission", 75, 88.1, 107.9, 200,
        new("47 CFR 73.501: channel 201 is 88.1 MHz, 200 kHz steps; channel 300 derived. De-emphasis: ITU-R BS.450-3, note 2", Trust.Published));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_fm.Exempt(88, 108, "low-power FM to a radio close by", FieldStrength, 250, "average detector; the whole 200 kHz channel inside 88 to 108 MHz; certified equipment", 3, 200),
        s_general.Exempt(88, 108, "any use, general limit", FieldStrength, 150, "quasi-peak detector; certified equipment", 3),
        s_microphones.Exempt(76, 88, Microphone, Eirp, 50, Unused, widestKHz: 200),
        s_microphones.Exempt(174, 216, Microphone, Eirp, 50, Unused, widestKHz: 200),
        s_microphones.Exempt(470, 608, Microphone, Eirp, 50, Unused, widestKHz: 200),
        s_microphones.Exempt(614, 616, Microphone, Eirp, 20, "600 MHz guard band; certified equipment; no protection from interference", widestKHz: 200),
        s_microphones.Exempt(657, 663, Microphone, Eirp, 20, "600 MHz duplex gap; certified equipment; no protection from interference", widestKHz: 200),
        s_spread.Exempt(902, 928, "frequency-hopping or digital equipment", ConductedPower, 1000, "only frequency-hopping or digitally modulated equipment, on terms of its own; analogue FM does not qualify") with { DigitalOnly = true },
        s_spread.Exempt(2400, 2483.5, "frequency-hopping or digital equipment", ConductedPower, 1000, "only frequency-hopping or digitally modulated equipment, on terms of its own; analogue FM does not qualify") with { DigitalOnly = true },
        s_personal.Exempt(1920, 1930, "digital cordless audio", ConductedPower, 0.1 * Math.Sqrt(1.4e6), "digital modulation only; 100 µW times the root of the bandwidth in Hz; less by what the antenna gains above 3 dBi")
            with { RootBandwidthReferenceKHz = 1400, DigitalOnly = true },
        s_televisionVhf.Licensed(76, 88, Microphone, ConductedPower, 50, Who, widestKHz: 200),
        s_otherBands.Licensed(161.625, 161.775, Microphone, ConductedPower, 1000, Who),
        s_televisionVhf.Licensed(174, 216, Microphone, ConductedPower, 50, Who, widestKHz: 200),
        s_otherBands.Licensed(450, 451, Microphone, ConductedPower, 1000, Who),
        s_otherBands.Licensed(455, 456, Microphone, ConductedPower, 1000, Who),
        s_televisionUhf.Licensed(470, 608, Microphone, ConductedPower, 250, Who, widestKHz: 200),
        s_duplexGap.Licensed(653, 657, Microphone, Eirp, 20, Who, widestKHz: 200),
        s_otherBands.Licensed(941.5, 952, Microphone, ConductedPower, 1000, Who),
        s_otherBands.Licensed(952.85, 956.25, Microphone, ConductedPower, 1000, Who),
        s_otherBands.Licensed(956.45, 959.85, Microphone, ConductedPower, 1000, Who),
        s_otherBands.Licensed(1435, 1525, Microphone, ConductedPower, 250, "coordinated with flight-test telemetry; " + Who),
        s_astronomy.Forbidden(608, 614, "kept for radio astronomy"),
        s_serviceBand.Forbidden(617, 652, "600 MHz mobile service"),
        s_serviceBand.Forbidden(663, 698, "600 MHz mobile service"),
        s_mobile.Forbidden(698, 806, "700 MHz public safety and mobile service"),
    ];
}
