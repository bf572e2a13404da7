using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>New Zealand: general user licences, which everybody holds without asking.</summary>
internal static class NewZealand
{
    private const string Microphone = "wireless microphone";
    private const string Broadcast = "broadcasting only, with contact details on air every hour; not the same programme from a third station within 25 km";

    // -3 dBW is 501 mW.
    private static readonly double s_minusThreeDbwMw = 1e3 * FreeSpace.WattsFromDbm(27);

    private static readonly Entry s_fm = new("NZ", "General User Radio Licence for Low Power FM Broadcasting", "licence 224695", "notice of 2010", "Power: the regulator's page. Bands: second hand, an encyclopaedia that quotes the notice of 2010", Trust.Published);
    private static readonly Entry s_short = new("NZ", "General User Radio Licence for Short Range Devices", "502 to 510 MHz", "in force 8 April 2019", "A certification body's summary of the notice: -3 dBW, as in spectrum licence 222922", Trust.Published);
    private static readonly Entry s_lower = new("NZ", "General User Spectrum Licence 222922", "510 to 606 MHz", "as amended after 2013", "Band: the regulator's page on the consultation. Power: as named in the notice of 2019 for short range devices", Trust.Published);
    private static readonly Entry s_upper = new("NZ", "General User Spectrum Licence 222921", "622 to 698 MHz", "as amended after 2013", "Band: the regulator's page on the consultation. Power from memory", Trust.FromMemory);
    private static readonly Entry s_mobile = new("NZ", "Radio microphone decision", "698 to 806 MHz", "in force since 11 March 2015", "The regulator's page on the consultation, and a news item on the date", Trust.Published);
    private static readonly Entry s_wideband = new("NZ", "General User Radio Licence for Short Range Devices", "2400 to 2483.5 MHz", "edition not read", "From memory", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "NZ", "New Zealand", "Radio Spectrum Management", 50, 87.6, 107.9, 100,
        new("Band 87.5 to 108 MHz: an encyclopaedia page, read; ends of the raster derived. Step and de-emphasis from memory", Trust.FromMemory));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_fm.Exempt(87.6, 88.3, "low-power FM broadcasting", Eirp, 1000, Broadcast),
        s_fm.Exempt(106.7, 107.7, "low-power FM broadcasting", Eirp, 1000, Broadcast),
        s_short.Exempt(502, 510, Microphone, Eirp, s_minusThreeDbwMw, "no protection from interference"),
        s_lower.Exempt(510, 606, Microphone, Eirp, s_minusThreeDbwMw, "no protection from interference"),
        s_upper.Exempt(622, 698, Microphone, Eirp, s_minusThreeDbwMw, "no protection from interference"),
        s_wideband.Exempt(2400, 2483.5, "short-range equipment", Eirp, 1000, "no protection from interference"),
        s_mobile.Forbidden(698, 806, "mobile broadband; wireless audio must not work here"),
    ];
}
