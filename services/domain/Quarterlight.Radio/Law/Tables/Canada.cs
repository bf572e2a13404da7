using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Canada: radio standards specifications and client procedures.</summary>
internal static class Canada
{
    private const string Microphone = "wireless microphone";
    private const string Unused = "only on TV channels unused at the place; certified equipment; the standard may allow more at UHF (from memory)";

    private static readonly Entry s_fm = new("CA", "RSS-210", "FM transmitters 88 to 108 MHz (A2.8, later B.6)", "issue 8 and later, text not read", "From memory; the change list of issue 8, read, says that 100 µV/m at 30 m was dropped", Trust.FromMemory);
    private static readonly Entry s_announce = new("CA", "CRTC Public Notice 1993-46", "paragraph 2", "1993", "Public Notice 1993-46, paragraph 2", Trust.Published);
    private static readonly Entry s_microphones = new("CA", "RSS-210 and CPC-2-1-28", "wireless microphones in the TV bands", "CPC-2-1-28 issue 2, December 2019", "Bands: CPC-2-1-28 issue 2, scope. Powers from memory, set to the safe side", Trust.FromMemory);
    private static readonly Entry s_otherBands = new("CA", "Decision SMSE-003-19", "bands of paragraph 2", "March 2019", "Bands: SMSE-003-19, paragraph 2. Power from memory", Trust.FromMemory);
    private static readonly Entry s_mobile = new("CA", "Spectrum advisory bulletin SAB-001-10", "698 to 806 MHz", "January 2010", "SAB-001-10: no new licences or certificates; use to end by 31 March 2011", Trust.Published);
    private static readonly Entry s_spread = new("CA", "RSS-247", "frequency-hopping and digital equipment", "edition not read", "From memory", Trust.FromMemory);
    private static readonly Entry s_personal = new("CA", "RSS-213", "1920 to 1930 MHz", "edition not read", "From memory, as in the United States", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "CA", "Canada", "Innovation, Science and Economic Development Canada", 75, 88.1, 107.9, 200,
        new("Channels: an encyclopaedia's list for North America, read. De-emphasis from memory", Trust.FromMemory));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_fm.Exempt(88, 108, "low-power FM to a radio close by", FieldStrength, 250, "certified equipment", 3, 200),
        s_microphones.Exempt(76, 88, Microphone, Eirp, 50, Unused),
        s_microphones.Exempt(174, 216, Microphone, Eirp, 50, Unused),
        s_microphones.Exempt(470, 608, Microphone, Eirp, 50, Unused),
        s_microphones.Exempt(657, 663, Microphone, Eirp, 20, "600 MHz duplex gap; certified equipment"),
        s_spread.Exempt(902, 928, "frequency-hopping or digital equipment", ConductedPower, 1000, "only frequency-hopping or digitally modulated equipment, on terms of its own") with { DigitalOnly = true },
        s_personal.Exempt(1920, 1930, "digital cordless audio", ConductedPower, 0.1 * Math.Sqrt(1.4e6), "digital modulation only; 100 µW times the root of the bandwidth in Hz")
            with { RootBandwidthReferenceKHz = 1400, DigitalOnly = true },
        s_spread.Exempt(2400, 2483.5, "frequency-hopping or digital equipment", ConductedPower, 1000, "only frequency-hopping or digitally modulated equipment, on terms of its own") with { DigitalOnly = true },
        s_announce.Licensed(88, 107.5, "low-power announcement service", FieldStrength, 100, "unmodulated carrier; needs a technical certificate, perhaps an authorisation of the station", 30),
        s_otherBands.Licensed(941.5, 952, Microphone, ConductedPower, 1000),
        s_otherBands.Licensed(953, 960, Microphone, ConductedPower, 1000),
        s_mobile.Forbidden(698, 806, "700 MHz public safety and mobile service"),
    ];
}
