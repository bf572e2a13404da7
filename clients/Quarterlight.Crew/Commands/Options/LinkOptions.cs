using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>The link to the follow car and what may be radiated. Bounds are those of radio.proto.</summary>
internal static class LinkOptions
{
    private const double NearestM = 1, FarthestM = 3000;
    private const double LowestMHz = 76, HighestMHz = 2500;
    private const double WeakestMw = 0.000001, StrongestMw = 10000, WeakestField = 1, StrongestField = 1000000;

    private static readonly HashSet<string> BesideDistance = Lexicon.Words("about around at to of the a gap back behind away up off say");
    private static readonly string[] FrequencyWords = ["mhz", "ghz", "megahertz", "gigahertz", "on", "at"];
    private static readonly HashSet<string> PowerWords = Lexicon.Words("mw milliwatt milliwatts w watt watts nw nanowatt nanowatts uw µw μw microwatt microwatts dbm uv µv μv microvolt microvolts m metre metres meter meters at of power eirp erp conducted output minus per");
    private static readonly HashSet<string> StationWords = Lexicon.Words("mhz and i we hear on at is very quite dbuv dbµv dbμv m strong loud strongly clear clearly faint weak noisy crackly faintly scratchy barely");

    public static readonly ReadableOption Distance = Text("distance", "Gap to the follow car: \"300 m\", \"1/4 mile\", \"5 car lengths\"", "say it like \"300 m\", \"1/4 mile\" or \"5 car lengths\", 1 m to 3 km", (text, said) =>
    {
        DistanceSaid? found = text.IsPlain && !text.Minus && DistanceReader.Find(text.Tokens) is [var one] && text.HasOnlyBeside(one.Start, one.Count, BesideDistance) ? one : null;
        double? bare = text.OnlyNumber(BesideDistance) * (said.Units == UnitPreference.Imperial ? DistanceReader.MetresPerFoot : 1);
        return (found?.Metres ?? bare) is { } metres
            ? OptionRange.Held(metres, NearestM, FarthestM, "1 m (4 ft) to 3 km (1.8 miles)", said with { Radio = said.Radio with { GapM = metres, CarLengths = found?.CarLengths } })
            : OptionReading.NotUnderstood;
    });

    public static readonly ReadableOption Surroundings = Choice("surroundings", "What stands round the road",
        [("open road", "open road", "open road"), ("suburban street", "suburb", "suburban street"), ("city street between tall houses", "city", "city"), ("tunnel", "tunnel", "tunnel")],
        (text, said) => said with { Radio = said.Radio with { Surroundings = RoadReader.Surroundings(text.Tokens) } });

    public static readonly ReadableOption Between = Choice("between", "What stands between the two cars",
        [("nothing", "nothing", "nothing between"), ("a car", "car", "a car between"), ("a van", "van", "a van between"), ("a truck or bus", "truck", "a truck between"), ("round a corner", "corner", "round a corner")],
        (text, said) => said with { Radio = said.Radio with { Sight = RoadReader.Sight(text.Tokens) } });

    public static readonly ReadableOption Country = Text("country", "Country you are in: \"Germany\" or \"DE\"; the scene's or team's when left out", "say a country or its two-letter code, such as \"Germany\" or \"DE\"", (text, said) =>
        text.IsPlain && CountryReader.Whole(text.Text) is { } code ? said with { Radio = said.Radio with { Country = code } }
        : CountryReader.Nearest(text.Text) is { } near ? OptionReading.Refused($"is no country known here; did you mean {near}?") : OptionReading.NotUnderstood);

    public static readonly ReadableOption Frequency = Text("frequency", "Carrier in MHz: \"98.1 MHz\"", "say it like \"98.1 MHz\", 76 to 2500 MHz", (text, said) =>
    {
        if (text.OnlyNumber(FrequencyWords) is not { } number)
        {
            return OptionReading.NotUnderstood;
        }

        double mhz = FrequencyReader.Find(text.Behind("on")) is [var one] ? one.MHz : number;
        return OptionRange.Held(mhz, LowestMHz, HighestMHz, "76 to 2500 MHz", said with { Radio = said.Radio with { FrequencyMHz = mhz } });
    });

    public static readonly ReadableOption Power = Text("power", "Strength of the transmitter: \"50 mW\", \"17 dBm EIRP\", \"250 uV/m at 3 m\"", "say it like \"50 mW\", \"17 dBm EIRP\" or \"250 uV/m at 3 m\"", (text, said) =>
    {
        if (!text.HasOnly(PowerWords) || PowerReader.Read(text.Text, text.Tokens) is not { } power || text.Numbers.Count > (power.Basis == TransmitPowerBasis.Field ? 2 : 1) || (text.Minus && !text.Tokens.Any(t => t.Is("dbm"))))
        {
            return OptionReading.NotUnderstood;
        }

        CommandSaid with = said with { Radio = said.Radio with { Power = power } };
        return power.Basis == TransmitPowerBasis.Field ? OptionRange.Held(power.Value, WeakestField, StrongestField, "1 to 1000000 µV/m", with)
            : OptionRange.Held(power.Value, WeakestMw, StrongestMw, "0.000001 mW (-60 dBm) to 10 W (40 dBm)", with);
    });

    public static readonly ReadableOption Stereo = Flag("stereo", "Yes for a stereo FM link, no for mono", (said, on) => said with { Radio = said.Radio with { Stereo = on } });

    public static readonly ReadableOption Antenna = Choice("antenna", "Where the picture car's antenna is", Places("antenna"),
        (text, said) => said with { Radio = said.Radio with { TransmitAntenna = AntennaReader.Read(text.Tokens, []).Transmit } });

    public static readonly ReadableOption FollowAntenna = Choice("follow-antenna", "Where the follow car's antenna is", Places("their antenna"),
        (text, said) => said with { Radio = said.Radio with { ReceiveAntenna = AntennaReader.Read(text.Tokens, []).Receive } });

    public static readonly ReadableOption Reliability = Number("reliability", "Share of time it must hold, in percent: 95 when left out", 50, 99.9, whole: false, ["percent", "%"],
        (said, percent) => said with { Radio = said.Radio with { AvailabilityFraction = Math.Round(percent / 100, 6) } });

    public static readonly ReadableOption OfMicrophones = Flag("radio-mics", "Yes asks for the radio microphones instead of the link", (said, on) => said with { Radio = said.Radio with { OfMicrophones = on } });

    public static readonly ReadableOption Heard = Text("heard", "FM stations you hear: \"97.7 strong, 98.5 faint\"", "list them like \"97.7 strong, 98.5 faint\", 76 to 2500 MHz", (text, said) =>
    {
        if (!text.HasOnly(StationWords) || text.Minus)
        {
            return OptionReading.NotUnderstood;
        }

        IReadOnlyList<Token> tokens = text.Behind("hear", "on");
        (IReadOnlyList<HeardStation> stations, _) = StationReader.Read(tokens, FrequencyReader.Find(tokens));
        int numbers = stations.Count + stations.Count(s => s.HasFieldDbuvPerM);
        return stations.Count == 0 || numbers != text.Numbers.Count ? OptionReading.NotUnderstood
            : stations.Any(s => s.FrequencyMhz is < LowestMHz or > HighestMHz) ? OptionReading.Refused("has a station out of range, 76 to 2500 MHz")
            : said with { Radio = said.Radio with { Stations = stations } };
    });

    private static (string Name, string Value, string Words)[] Places(string whose) =>
        [("on the roof", "roof", $"{whose} on the roof"), ("on the glass", "glass", $"{whose} on the glass"), ("inside the car", "inside", $"{whose} inside the car"), ("on a mast", "mast", $"{whose} on a mast")];
}
