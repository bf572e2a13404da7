namespace Quarterlight.Crew.Language;

/// <summary>The words the desk knows, by what they stand for.</summary>
public static class Lexicon
{
    /// <summary>Microphones in general.</summary>
    public static readonly IReadOnlySet<string> Microphones = Words("mic mics microphone microphones mike mikes capsule capsules");

    /// <summary>Fixing something somewhere.</summary>
    public static readonly IReadOnlySet<string> Placing = Words("put place go goes mount rig hide fit fix position stick clip hang set install placed mounted put rigging mounting placing hiding sit sits tape tuck run");

    /// <summary>A mount plan as a thing.</summary>
    public static readonly IReadOnlySet<string> Plans = Words("plan plans planning layout placement placements positions rigsheet miking micing replan replans replanning");

    /// <summary>Asking for a place.</summary>
    public static readonly IReadOnlySet<string> Wheres = Words("where wheres whereabouts");

    /// <summary>Asking for a reason.</summary>
    public static readonly IReadOnlySet<string> Reasons = Words("why reason reasons justify explain explanation how's whys");

    /// <summary>Asking to see a list.</summary>
    public static readonly IReadOnlySet<string> Listing = Words("list show what which display see whats give tell any have got print all");

    /// <summary>Places in general.</summary>
    public static readonly IReadOnlySet<string> Sites = Words("site sites places spots positions locations mountpoints surfaces");

    /// <summary>Scenes.</summary>
    public static readonly IReadOnlySet<string> Scenes = Words("scene scenes setups");

    /// <summary>Cars.</summary>
    public static readonly IReadOnlySet<string> Cabins = Words("car cars cabin cabins vehicle vehicles");

    /// <summary>Kits.</summary>
    public static readonly IReadOnlySet<string> Kits = Words("kit kits bag bags gear equipment");

    /// <summary>Pictures.</summary>
    public static readonly IReadOnlySet<string> Pictures = Words("picture pictures draw drawing image sketch diagram drawn pic pics photo drawing");

    /// <summary>Something else than what is.</summary>
    public static readonly IReadOnlySet<string> Supposing = Words("if suppose supposing imagine assuming assume whatif whatabout instead when while should once");

    /// <summary>Leaving something out.</summary>
    public static readonly IReadOnlySet<string> Removing = Words("without drop dropping lose lost losing remove removed removing minus no skip broken breaks broke dead died dies gone pulled stolen forgot forgotten binned ditch ditched lose fails failed missing forget cut ban banned avoid kill wrap exclude ignoring ignore loses dropped drops scrapped stripped nicked pinched veto vetoed");

    /// <summary>Allowing something, or asking whether it is allowed or any good.</summary>
    public static readonly IReadOnlySet<string> Allowing = Words("can could may ok okay allowed good bad better worse wrong about not instead work works use using possible alright fine than refused rejected chosen picked chose pick reject");

    /// <summary>Everything at length.</summary>
    public static readonly IReadOnlySet<string> More = Words("more details detail everything longer expand elaborate");

    /// <summary>Other choices than the best.</summary>
    public static readonly IReadOnlySet<string> Alternatives = Words("runnerup runnersup runner runners alternative alternatives nextbest planb alternate secondbest otheroption");

    /// <summary>Panes of glass.</summary>
    public static readonly IReadOnlySet<string> Windows = Words("window windows glass");

    /// <summary>Windows that let air in.</summary>
    public static readonly IReadOnlySet<string> Opened = Words("down open opened opens cracked cracks lowered lowers lower lowering crack cracking opening ajar");

    /// <summary>Windows that do not.</summary>
    public static readonly IReadOnlySet<string> Closed = Words("up shut closed raised close closing");

    /// <summary>The fan.</summary>
    public static readonly IReadOnlySet<string> Fans = Words("fan fans blower ac aircon heater heating ventilation climate");

    /// <summary>Falling water.</summary>
    public static readonly IReadOnlySet<string> Rains = Words("rain rains raining rainy raining wet wets storm stormy thunderstorm drizzle drizzling downpour pouring pours pour hail cloudburst deluge torrential shower showers sprinkle sprinkles sprinkling");

    /// <summary>The engine.</summary>
    public static readonly IReadOnlySet<string> Engines = Words("engine motor");

    /// <summary>Cameras.</summary>
    public static readonly IReadOnlySet<string> Cameras = Words("camera cameras cam cams shot shots lens angle");

    /// <summary>Words without weight of their own.</summary>
    public static readonly IReadOnlySet<string> Plain = Words(
        "a an the of for in on at to is are was be been it its this that these those there here we i you they he she him her our my your their us me them and or but so then now please just do does did doing done will would with from by as too also not no yes than into onto over under near next side above behind beside between below front rear back left right middle centre center inner outer upper lower top bottom low high edge corner toward towards hi hello hey thanks thank need want like get how who when much many best one some only every each other another same different take takes taking today going gonna really quite very make made keep say says said talk talks talking speak speaks has had having try tried again still out off lights new old little big help use using used hear heard sound sounds record recording quiet loud noise noisy speed mph kmh fast slow faster slower drive driving driven drives half full quarter fully bit wide way metric imperial inches feet units switch change swap load demo centimetres centimeters metres meters level max lowest highest idle idling parked stationary standing towed trailer tow still stopped running motorway highway town gravel cobbles concrete rough smooth coarse asphalt road heavy heavily light lightly hard dry belt pillar step rpm revs body chest lapel clothes clothing plug stay stays sitting person people man woman guy girl boy kids kid talker talkers actor actors everyone everybody anyone commands happens happen clamp clamped suction glue hot cold stereo radio weather car's what's");

    /// <summary>Common English words that mean nothing here; known so that spelling never turns them into something that does.</summary>
    public static readonly IReadOnlySet<string> Common = Words(
        "shall would might must upon again always never often sometimes because though through during before after against among across along around inside outside within until since ever even still yet already quite rather such same own few less least most enough both either neither whose whom whole thing things something anything nothing everything someone somewhere anywhere nowhere today tomorrow tonight yesterday morning evening night day days week time times hour hours minute minutes second seconds first last early late soon lunch dinner breakfast coffee tea food love great nice cool awesome brilliant sorry hope think thought know knows known guess believe seem seems looks look looking find found come comes came coming leave leaves start starts started end ends ended finish begin wait call calls called name names word words number numbers money price cost costs weather sunny cloudy warm sky sun moon star music song joke jokes story film movie director producer editor writer boss friend house home office street city country world water fire green blue black white red yellow brown pink grey gray shirt shoes hat bike train plane boat ship truck bus taxi walk walking running talk write read play send meet buy sell pay eat drink sleep dream happy sad angry tired true false medic maybe perhaps actually probably definitely certainly");

    private static readonly Lazy<IReadOnlySet<string>> LazyAll = new(() => new HashSet<string>(
        new[] { Microphones, Placing, Plans, Wheres, Reasons, Listing, Sites, Scenes, Cabins, Kits, Pictures, Supposing, Removing, Allowing, More, Alternatives, Windows, Opened, Closed, Fans, Rains, Engines, Cameras, Plain, Common, SiteWords.All, SeatWords.All }.SelectMany(s => s)));

    /// <summary>Every word above and every word for a place in the car.</summary>
    public static IReadOnlySet<string> All => LazyAll.Value;

    /// <summary>A set from words parted by spaces.</summary>
    internal static HashSet<string> Words(string words) => [.. words.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
