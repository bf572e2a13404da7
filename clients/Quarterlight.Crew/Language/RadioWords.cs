namespace Quarterlight.Crew.Language;

/// <summary>The words of the radio link and the wireless transmitters, by what they stand for.</summary>
public static class RadioWords
{
    /// <summary>Words that mean the link to the follow car and nothing else.</summary>
    public static readonly IReadOnlySet<string> Links = Lexicon.Words("link links trail trailing transmitter transmitters transmitting transmit transmits reception dropout dropouts antenna antennas aerial aerials followcar chasecar fallback dropback radiolink receiver receivers radiate radiating broadcast broadcasting");

    /// <summary>Words that mean it together with a distance or another of them.</summary>
    public static readonly IReadOnlySet<string> LinkHints = Lexicon.Words("follow following behind back range signal hold holds reach reaches far gap distance listen listening follows trailed");

    /// <summary>Asking what the law allows.</summary>
    public static readonly IReadOnlySet<string> Laws = Lexicon.Words("legal legally lawful lawfully law laws licence licences license licensed licensing unlicensed illegal illegally regulation regulations permit permits permitted fined allowance unlawful unlawfully");

    /// <summary>Asking for a limit, which is the law's only beside something of the radio.</summary>
    public static readonly IReadOnlySet<string> Limits = Lexicon.Words("limit limits allowed allow maximum rule rules");

    /// <summary>Channels and frequencies.</summary>
    public static readonly IReadOnlySet<string> Channels = Lexicon.Words("channel channels frequency frequencies freq freqs mhz");

    /// <summary>One that nobody uses.</summary>
    public static readonly IReadOnlySet<string> Quiet = Lexicon.Words("quiet quietest quieter clear clearest clean cleanest free empty emptiest unused open");

    /// <summary>Things that need a channel each.</summary>
    public static readonly IReadOnlySet<string> Transmitters = Lexicon.Words("transmitter transmitters bodypack bodypacks beltpack beltpacks pack packs wireless radiomic radiomics lavs handheld handhelds");

    /// <summary>Asking to find channels for several.</summary>
    public static readonly IReadOnlySet<string> Coordinating = Lexicon.Words("coordinate coordinated coordinating coordination intermod intermodulation");

    /// <summary>Asking whether channels go together.</summary>
    public static readonly IReadOnlySet<string> Checking = Lexicon.Words("check clash clashes clashing collide interfere interferes interfering compatible together conflict conflicts intermod intermodulation okay ok");

    /// <summary>Antennas.</summary>
    public static readonly IReadOnlySet<string> Antennas = Lexicon.Words("antenna antennas aerial aerials whip wire mast transmitter receiver");

    /// <summary>The follow car's end.</summary>
    public static readonly IReadOnlySet<string> Receiving = Lexicon.Words("receiver receivers receive receiving rx their followcar chasecar listening listeners");

    /// <summary>Hearing stations.</summary>
    public static readonly IReadOnlySet<string> Hearing = Lexicon.Words("hear heard hearing station stations occupied taken");

    /// <summary>Keeping out of a band.</summary>
    public static readonly IReadOnlySet<string> Avoiding = Lexicon.Words("keepout avoid avoiding except excluding exclude without skip skipping not");

    /// <summary>Anything else these readers look for, known so that spelling is corrected toward it.</summary>
    public static readonly IReadOnlySet<string> Others = Lexicon.Words(
        "carrier carriers booming scratchy faintly percent mhz ghz khz mw milliwatt milliwatts watt watts dbm eirp erp dbuv microvolt microvolts yard yards yds miles mile feet foot metre metres meter meters kilometre kilometres kilometer kilometers carlength carlengths length lengths "
        + "tunnel tunnels underpass city downtown canyon suburb suburbs suburban residential street streets town village urban rural countryside country motorway freeway highway desert truck trucks lorry lorries bus buses coach van vans traffic between corner corners sight "
        + "mast outside inside indoors roof glass mono stereo faint weak noisy crackly clear strong loud step steps spacing spaced apart spread raster order fifth third drop fall stay chase dropping falling lag power frequency tall raise raised height car cars put "
        + "away distance availability feed monitor lose followers listeners village cart supervisor script fm digital analogue analog crew assistant director truck picture headphones cans separation block blocks audio battery batteries");

    /// <summary>Common words a slip away from one above; known so that spelling never turns them into it.</summary>
    public static readonly IReadOnlySet<string> Decoys = Lexicon.Words(
        "stops stopping line lines lined trial trials tail tails role roles ruler mask mist mass park parks parking pace page string strings chance chances beach orange cloud clouds couch wife wise fell hole holes lawn lint lick serial career "
        + "frequent frequently changes changed changing chain walks whales child children chill class cheek turned turn turns state stage stages stated island grease frame frames trance island indie bust buses busy scan screen site permitting exception "
        + "folder gold told bold sold cold reaches reacher teach teacher wide wine wires wired peak speak straight sign signs single singles station's lead leads loud louder lag lane lanes gas map cap tap rang rage ranger rules freed freezing");

    /// <summary>Every word above and every word of a country.</summary>
    public static IEnumerable<string> All => new[] { Links, LinkHints, Laws, Limits, Channels, Quiet, Transmitters, Coordinating, Checking, Antennas, Receiving, Hearing, Avoiding, Others, Decoys }.SelectMany(s => s).Concat(CountryReader.Words);
}
