using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Germany: general assignments of the Bundesnetzagentur.</summary>
internal static class Germany
{
    private const string Microphone = "wireless microphone";
    private const string Renewed = "ran to the end of 2016; the renewal was not read";

    private static readonly Entry s_audio = new("DE", "General assignment for wireless audio", "table of bands", "to 31 December 2016", "A German amateur radio society's notice of the assignment", Trust.Published);
    private static readonly Entry s_individual = new("DE", "Frequency assignment rules for wireless microphones", "470 to 694 MHz, individual assignment", "after the change of 2018", "Need of an assignment: a German trade association's page. Power from memory", Trust.FromMemory);
    private static readonly Entry s_astronomy = new("DE", "Frequency assignment rules for wireless microphones", "608 to 614 MHz kept free", "after the change of 2018", "A German trade association's page", Trust.Published);
    private static readonly Entry s_gap = new("DE", "General assignment, order 2/2015", "823 to 832 MHz", "2015, to 31 December 2025", "Band and term: a public summary of the orders. Power from memory", Trust.FromMemory);
    private static readonly Entry s_high = new("DE", "General assignment, order 3/2015", "1785 to 1805 MHz", "2015, to 31 December 2025", "Band and term: a public summary of the orders. Power from memory", Trust.FromMemory);
    private static readonly Entry s_vhf = new("DE", "General assignment, order 59/2015", "174 to 230 MHz", "2015, to 31 December 2025", "Band and term: a public summary of the orders; another source asks for an individual assignment. Power from memory", Trust.FromMemory);
    private static readonly Entry s_wideband = new("DE", "General assignment, order 30/2014", "2400 to 2483.5 MHz", "2014, to 31 December 2024", "Band and term: a public summary of the orders. Power from memory", Trust.FromMemory);
    private static readonly Entry s_cordless = new("DE", "ERC Decision (94)03", "digital cordless telephony", "1994", "Band: CEPT T/R 22-02 (1990), read. Power from memory", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "DE", "Germany", "the Bundesnetzagentur", 50, 87.6, 107.9, 100,
        new("ITU-R BS.450-3, note 2 (50 µs); band 87.5 to 108 MHz: Geneva agreement of 1984; ends of the raster derived", Trust.Published));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_audio.Exempt(87.5, 108, "low-power FM to a radio close by", Erp, 50e-6, "only together with a wanted signal; " + Renewed),
        s_audio.Exempt(863, 865, "wireless audio", Erp, 10, "power drops by 30 dB after 5 minutes without sound; " + Renewed),
        s_audio.Exempt(1795, 1800, "wireless audio", Eirp, 20, "power drops by 30 dB after 5 minutes without sound; " + Renewed),
        s_gap.Exempt(823, 832, Microphone, Eirp, 20, "close to the mobile uplink"),
        s_high.Exempt(1785, 1805, Microphone, Eirp, 20, "50 mW worn on the body (from memory)"),
        s_cordless.Exempt(1880, 1900, "digital cordless audio", Eirp, 250, "equipment to the cordless telephony standard only; peak power") with { DigitalOnly = true },
        s_wideband.Exempt(2400, 2483.5, "wideband digital equipment", Eirp, 100, "spread over a wide band; narrow channels get 10 mW (from memory)") with { DigitalOnly = true },
        s_vhf.Licensed(174, 230, Microphone, Erp, 50, "for professional users"),
        s_individual.Licensed(470, 608, Microphone, Erp, 50, "for professional users"),
        s_individual.Licensed(614, 694, Microphone, Erp, 50, "for professional users"),
        s_astronomy.Forbidden(608, 614, "kept free for radio astronomy"),
    ];
}
