using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Europe: the recommendation of the conference of post and telecommunications administrations (CEPT).</summary>
internal static class Europe
{
    private const string Recommendation = "ERC/REC 70-03";
    private const string Microphone = "wireless microphone";

    private static readonly Entry s_fm = new("EU", Recommendation, "annex 10 (once 13), band II low-power FM", "annex 10 as drafted; figure as quoted", "Scope: draft text of annex 10. Figure: second hand, two public notes that quote annex 13 and Spain's national table, UN-17, alike", Trust.Published);
    private static readonly Entry s_srd = new("EU", Recommendation, "annex 10; EN 300 422-1 V1.5.1, scope", "2015", "EN 300 422-1 V1.5.1, scope (10 mW); availability by country: CEPT frequency information system, row A6", Trust.Published);
    private static readonly Entry s_television = new("EU", "ERC/REC 25-10", "annex 4, rows A2 and A3", "as published by the CEPT frequency information system", "Bands and availability read; 50 mW read for Austria (A2) and Switzerland only, from memory for the rest", Trust.FromMemory);
    private static readonly Entry s_gaps = new("EU", "Decision 2014/641/EU", "annex", "2014", "From memory; rows A5 and A9 of ERC/REC 25-10 annex 4 name the bands", Trust.FromMemory);
    private static readonly Entry s_cordless = new("EU", "ERC Decision (94)03", "digital cordless telephony", "1994", "Band: CEPT T/R 22-02 (1990), read. Power from memory", Trust.FromMemory);
    private static readonly Entry s_wideband = new("EU", Recommendation, "annex 3", "edition not read", "From memory", Trust.FromMemory);

    /// <summary>The region.</summary>
    public static CountryLaw Country { get; } = new(
        "EU", "Europe", "the national radio regulator", 50, 87.6, 107.9, 100,
        new("ITU-R BS.450-3, note 2 (50 µs); band 87.5 to 108 MHz: Geneva agreement of 1984; ends of the raster derived. Some countries use 50 kHz steps", Trust.Published));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_fm.Exempt(87.5, 108, "low-power FM to a radio close by", Erp, 50e-6, "only while there is wanted sound; at most 200 kHz (from memory)", widestKHz: 200),
        s_srd.Exempt(863, 865, Microphone, Erp, 10, "shared with other short-range devices; no protection from interference"),
        s_cordless.Exempt(1880, 1900, "digital cordless audio", Eirp, 250, "equipment to the cordless telephony standard only; peak power") with { DigitalOnly = true },
        s_wideband.Exempt(2400, 2483.5, "wideband digital equipment", Eirp, 100, "spread over a wide band, with a limit on density of its own; narrow channels get 10 mW (from memory)") with { DigitalOnly = true },
        s_television.Licensed(174, 216, Microphone, Erp, 50, "most countries ask for a licence or a registration"),
        s_television.Licensed(470, 694, Microphone, Erp, 50, "between TV stations; most countries ask for a licence"),
        s_gaps.Licensed(823, 832, Microphone, Eirp, 20, "100 mW worn on the body; some countries exempt it"),
        s_gaps.Licensed(1785, 1804.8, Microphone, Eirp, 20, "50 mW worn on the body; some countries exempt it"),
    ];
}
