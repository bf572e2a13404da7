using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>The radio's enumerations and figures in words.</summary>
internal static class RadioWordings
{
    private const double MHzPerGHz = 1000;

    // What the law says is told in several sentences, documents named.
    private const int LongestSentences = 1000;

    public static string Surroundings(Surroundings surroundings) => surroundings switch
    {
        V1.Surroundings.SuburbanStreet => "street between houses",
        V1.Surroundings.CityCanyon => "city street",
        V1.Surroundings.Tunnel => "tunnel",
        _ => "open road",
    };

    public static string Sight(LinkSight sight) => sight switch
    {
        LinkSight.CarBetween => "a car between",
        LinkSight.VanBetween => "a van between",
        LinkSight.TruckBetween => "a truck or bus between",
        LinkSight.RoundACorner => "round a corner",
        _ => "in sight",
    };

    public static string Place(AntennaPlace place) => place switch
    {
        AntennaPlace.OnGlass => "on the glass",
        AntennaPlace.OnRoof => "on the roof",
        AntennaPlace.OnMast => "on a mast",
        _ => "in the car",
    };

    public static string Kind(AntennaKind kind) => kind switch
    {
        AntennaKind.QuarterWaveWhip => "quarter-wave whip",
        AntennaKind.HalfWaveDipole => "half-wave dipole",
        AntennaKind.ShortWhip => "short whip",
        AntennaKind.HiddenWire => "hidden wire",
        AntennaKind.GlassFilm => "film on glass",
        AntennaKind.Directional => "directional antenna",
        _ => "antenna of the stated gain",
    };

    public static string Model(PropagationModel model) => model switch
    {
        PropagationModel.FreeSpace => "free space",
        PropagationModel.TwoRay => "direct and ground wave",
        PropagationModel.NearGround => "antennas near the ground",
        PropagationModel.StreetUhf => "street in sight, UHF",
        PropagationModel.StreetCanyon => "street between tall blocks",
        PropagationModel.StreetCorner => "out of sight at street level",
        PropagationModel.Tunnel => "tunnel",
        _ => "not stated",
    };

    /// <summary>"98.1 MHz", "2.45 GHz".</summary>
    public static string Frequency(double mhz) => mhz >= MHzPerGHz ? Say($"{mhz / MHzPerGHz:0.####} GHz") : Say($"{mhz:0.0###} MHz");

    /// <summary>A channel as it is dialled in: three decimals of a megahertz.</summary>
    public static string Dial(double mhz) => Say($"{mhz:0.000}");

    /// <summary>"200 mW at the output", "250 µV/m at 3 m".</summary>
    public static string Power(LinkGear gear) => gear.PowerBasis == TransmitPowerBasis.Field
        ? Say($"{gear.Power:0.###} µV/m at {gear.FieldDistanceM:0.#} m")
        : $"{Milliwatts(gear.Power)} {gear.PowerBasis switch { TransmitPowerBasis.Erp => "ERP", TransmitPowerBasis.Eirp => "EIRP", _ => "at the output" }}";

    public static string Milliwatts(double mw) => mw switch
    {
        >= 1000 => Say($"{mw / 1000:0.###} W"),
        >= 1 => Say($"{mw:0.##} mW"),
        >= 1e-3 => Say($"{mw * 1e3:0.#} µW"),
        _ => Say($"{mw * 1e6:0.#} nW"),
    };

    /// <summary>A share of time as "95 %", without a false last digit.</summary>
    public static string Percent(double fraction) => fraction switch
    {
        > 0.999 => "over 99.9 %",
        >= 0.99 => Say($"{Math.Floor(fraction * 1000) / 10:0.#} %"),
        < 0.01 => "under 1 %",
        _ => Say($"{fraction * 100:0} %"),
    };

    /// <summary>A sentence of the planner's, safe and in the crew's units, without its final stop.</summary>
    public static string Sentence(string text, UnitPreference units) => UnitText.Rewrite(CrewText.Clean(text, LongestSentences), units).TrimEnd('.', ' ');

    /// <summary>A sentence as it follows a colon: it starts small, unless its first word is all capitals or a lone letter.</summary>
    public static string Lower(string sentence) =>
        sentence.Length > 1 && char.IsUpper(sentence[0]) && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;

    /// <summary>A quotation from a rule, safe, in the units it is written in.</summary>
    public static string Quote(string text) => CrewText.Clean(text, CrewText.LongestSentence).TrimEnd('.', ' ');

    /// <summary>Cautions, safety first, each once; those on safety are never cut.</summary>
    public static List<CrewLine> Cautions(IEnumerable<Advisory> advisories, UnitPreference units, int most)
    {
        Advisory[] all = [.. advisories.DistinctBy(a => a.Message).OrderByDescending(a => (int)a.Severity)];
        int safety = all.Count(a => a.Severity == AdvisorySeverity.Safety), cautions = all.Count(a => a.Severity == AdvisorySeverity.Caution);
        int shown = Math.Max(most, safety + Math.Min(cautions, 1));
        List<CrewLine> lines = [.. all.Take(shown).Select(a => new CrewLine(CrewLineKind.Caution, $"{PlanText.Lead(a.Severity)}{Sentence(a.Message, units)}."))];
        if (all.Length > shown)
        {
            lines.Add(new(CrewLineKind.Caution, Say($"And {all.Length - shown} more: ask for details.")));
        }

        return lines;
    }
}
