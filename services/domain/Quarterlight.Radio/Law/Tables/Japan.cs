using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Japan: Radio Act and its enforcement regulation.</summary>
internal static class Japan
{
    private const string Regulation = "Regulation for Enforcement of the Radio Act";
    private const string Microphone = "wireless microphone";

    private static readonly Entry s_weak = new("JP", Regulation, "article 6 paragraph 1 item 1 (Radio Act article 4 item 1)", "measured at 3 m since 27 May 1989", "Three public summaries of article 6 that agree on 500 and 35 µV/m and the boundary at 322 MHz; the ministry's page says any use", Trust.Published);
    private static readonly Entry s_specified = new("JP", Regulation, "article 6 paragraph 4 item 2 (6), specified low-power radio microphones", "as amended 5 December 2012", "Bands: a public quotation of article 6. Powers from memory", Trust.FromMemory);
    private static readonly Entry s_cordless = new("JP", Regulation, "digital cordless telephony", "edition not read", "From memory", Trust.FromMemory);
    private static readonly Entry s_wideband = new("JP", Regulation, "low-power data communication", "edition not read", "From memory: 10 mW in each MHz", Trust.FromMemory);
    private static readonly Entry s_licensed = new("JP", "Specified radio microphones", "frequency assignment plan", "edition not read", "From memory", Trust.FromMemory);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "JP", "Japan", "the Ministry of Internal Affairs and Communications", 50, 76.1, 94.9, 100,
        new("Band 76 to 95 MHz and 100 kHz steps: encyclopaedia pages, read; ends of the raster derived. De-emphasis from memory", Trust.FromMemory));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_weak.Exempt(76, 322, "any use, extremely low power", FieldStrength, 500, "", 3),
        s_weak.Exempt(322, 2500, "any use, extremely low power", FieldStrength, 35, "", 3),
        s_specified.Exempt(322, 323, Microphone, ConductedPower, 1, "certified equipment"),
        s_specified.Exempt(806, 810, Microphone, ConductedPower, 10, "certified equipment"),
        s_cordless.Exempt(1893.5, 1906.1, "digital cordless audio", ConductedPower, 10, "certified equipment; mean power") with { DigitalOnly = true },
        s_wideband.Exempt(2400, 2483.5, "digital equipment", ConductedPower, 10, "certified equipment; wider channels may use more") with { DigitalOnly = true },
        s_licensed.Licensed(470, 710, Microphone, ConductedPower, 50, "coordinated place by place"),
        s_licensed.Licensed(1240, 1260, Microphone, ConductedPower, 50, "coordinated place by place"),
    ];
}
