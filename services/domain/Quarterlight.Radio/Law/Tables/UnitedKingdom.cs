using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>United Kingdom: exemption regulations, interface requirement IR 2030, and microphone licences.</summary>
internal static class UnitedKingdom
{
    private const string Interface = "IR 2030";
    private const string Microphone = "wireless microphone";

    private static readonly Entry s_fm = new("GB", "Wireless Telegraphy (Exemption) (Amendment) Regulations 2006 and IR 2030", "band II low-power FM", "in force 8 December 2006", "Exemption and date: the regulator's release of 23 November 2006. The 50 nW from memory", Trust.FromMemory);
    private static readonly Entry s_srd = new("GB", Interface, "863 to 865 MHz, wireless microphones", "edition not read", "Second hand: a hire firm's page that quotes the regulator (10 mW)", Trust.Published);
    private static readonly Entry s_vhf = new("GB", Interface, "173.8 to 175 MHz, wireless microphones", "edition not read", "That it is licence-free: second hand, an encyclopaedia's revision of 2020. Power from memory", Trust.FromMemory);
    private static readonly Entry s_shared = new("GB", "Shared microphone licence", "channel 38", "edition not read", "Second hand: a hire firm's page that quotes the regulator (606.5 to 613.5 MHz, 10 mW in the hand, 50 mW on the body, 200 kHz); e.r.p. from memory", Trust.Published);
    private static readonly Entry s_coordinated = new("GB", "Coordinated microphone licence", "between TV stations", "edition not read", "Licence for a place and time: an encyclopaedia's revision of 2020. Power from memory", Trust.FromMemory);
    private static readonly Entry s_cordless = new("GB", Interface, "digital cordless telephony", "edition not read", "Band: CEPT T/R 22-02 (1990), read. Power from memory", Trust.FromMemory);
    private static readonly Entry s_wideband = new("GB", Interface, "2400 to 2483.5 MHz, wideband", "edition not read", "From memory", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "GB", "the United Kingdom", "Ofcom", 50, 87.6, 107.9, 100,
        new("ITU-R BS.450-3, note 2 (50 µs); band 87.5 to 108 MHz: Geneva agreement of 1984; ends of the raster derived", Trust.Published));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_fm.Exempt(87.5, 108, "low-power FM to a radio close by", Erp, 50e-6, "equipment made to the European standard only", widestKHz: 200),
        s_vhf.Exempt(173.8, 175, Microphone, Erp, 10, "no protection from interference"),
        s_srd.Exempt(863, 865, Microphone, Erp, 10, "carriers from 863.1 to 864.9 MHz; no protection from interference"),
        s_cordless.Exempt(1880, 1900, "digital cordless audio", Eirp, 250, "equipment to the cordless telephony standard only; peak power") with { DigitalOnly = true },
        s_wideband.Exempt(2400, 2483.5, "wideband digital equipment", Eirp, 100, "spread over a wide band; narrow channels get 10 mW (from memory)") with { DigitalOnly = true },
        s_coordinated.Licensed(470, 606.5, Microphone, Erp, 50, "assigned for one place and time"),
        s_shared.Licensed(606.5, 613.5, Microphone, Erp, 50, "10 mW in the hand; shared with all other holders", widestKHz: 200),
        s_coordinated.Licensed(613.5, 694, Microphone, Erp, 50, "assigned for one place and time"),
    ];
}
