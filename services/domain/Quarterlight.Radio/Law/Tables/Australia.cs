using Quarterlight.Quantities;
using static Quarterlight.Radio.Law.LimitKind;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Australia: class licences, which everybody holds without asking, and apparatus licences.</summary>
internal static class Australia
{
    private const string LowInterference = "Low Interference Potential Devices Class Licence";
    private const string Microphone = "wireless microphone";

    private static readonly Entry s_class = new("AU", LowInterference, "schedule 1, item not read", "2015, replaced on 1 October 2025", "From memory, low confidence; the schedule was not read", Trust.FromMemory);
    private static readonly Entry s_microphones = new("AU", LowInterference, "schedule 1, wireless audio transmitters", "2015, replaced on 1 October 2025", "Band: the regulator's pages. Power from memory", Trust.FromMemory);
    private static readonly Entry s_cordless = new("AU", "Cordless Communications Devices Class Licence", "digital cordless telephony", "2014", "That the licence exists: the regulator's information paper. Band and power from memory", Trust.FromMemory);
    private static readonly Entry s_apparatus = new("AU", "Apparatus licence for wireless audio", "520 to 694 MHz", "2014", "That the licence exists: the regulator's release. Power from memory", Trust.FromMemory);
    private static readonly Entry s_mobile = new("AU", "Regulator's notice on wireless audio transmitters", "694 to 820 MHz", "in force since 1 January 2015", "The regulator's pages on wireless audio transmitters", Trust.Published);

    /// <summary>The country.</summary>
    public static CountryLaw Country { get; } = new(
        "AU", "Australia", "the Australian Communications and Media Authority", 50, 88.1, 107.9, 200,
        new("A frequency chart of Australian VHF-FM broadcast standards: 88.1, 88.3 to 107.9 MHz, 50 µs; narrowcasters also use 87.6 to 88.0 MHz", Trust.Published));

    /// <summary>Its rules.</summary>
    public static RadioRule[] Rules { get; } =
    [
        s_class.Exempt(88, 108, "low-power FM to a radio close by", Eirp, 0.01, "on a channel that no station uses at the place"),
        s_microphones.Exempt(520, 694, Microphone, Eirp, 100, "between TV stations; no protection from interference"),
        s_cordless.Exempt(1880, 1900, "digital cordless audio", Eirp, 250, "equipment to the cordless telephony standard only; peak power") with { DigitalOnly = true },
        s_class.Exempt(2400, 2483.5, "digital equipment", Eirp, 4000, "digital modulation only; frequency hopping gets less") with { DigitalOnly = true },
        s_apparatus.Licensed(520, 694, Microphone, Eirp, 250, "for large events and venues"),
        s_mobile.Forbidden(694, 820, "mobile broadband; wireless audio must not work here"),
    ];
}
