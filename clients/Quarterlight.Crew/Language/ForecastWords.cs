namespace Quarterlight.Crew.Language;

/// <summary>The words of heat, run time, levels and noise, by what they stand for.</summary>
public static class ForecastWords
{
    /// <summary>Words that mean heat in the car and nothing else.</summary>
    public static readonly IReadOnlySet<string> Heat = Lexicon.Words(
        "melt melts melting cook cooks cooking cooked roast roasts roasting bake bakes baking boil boils boiling swelter sweltering sweat sweats sweating overheat overheats overheating heatstroke heat heated hotter "
        + "precool precooling precooled comfortable uncomfortable comfort stuffy stifling suffocate suffocating humid humidity shade shaded popup canopy gazebo breathe cooldown temperature temperatures temp temps sauna oven faints fainting fainted passout airless clammy muggy toasty stale co2 passout heatwave scorching sweltry");

    /// <summary>Cooling the car.</summary>
    public static readonly IReadOnlySet<string> Cooling = Lexicon.Words("cool cools cooling cooled chill chilled chilling precool precooling cooldown");

    /// <summary>Recording.</summary>
    public static readonly IReadOnlySet<string> Rolling = Lexicon.Words("roll rolling rolled rolls film filming shoot shooting take takes shot run");

    /// <summary>Batteries.</summary>
    public static readonly IReadOnlySet<string> Batteries = Lexicon.Words("battery batteries cell cells powerbank runtime charger chargers recharge recharging recharged");

    /// <summary>Media.</summary>
    public static readonly IReadOnlySet<string> Media = Lexicon.Words("card cards media ssd ssds storage gigabytes gigabyte gb gig gigs disk disks");

    /// <summary>Coming to an end.</summary>
    public static readonly IReadOnlySet<string> Ending = Lexicon.Words("last lasts lasting runout dies die dead flat empty swap swaps change changing full enough survive endure charge charged");

    /// <summary>Gain and what it is set by.</summary>
    public static readonly IReadOnlySet<string> Gains = Lexicon.Words("gain gains preamp preamps headroom trim trims limiter limiters gainsheet pad pads overload overloads overloading");

    /// <summary>Going into clipping.</summary>
    public static readonly IReadOnlySet<string> Clipping = Lexicon.Words("clip clips clipping distort distorts distorting distortion peak peaks overload overloads");

    /// <summary>Speaking up or down.</summary>
    public static readonly IReadOnlySet<string> Shouting = Lexicon.Words("shout shouts shouting shouted scream screams screaming screamed yell yells yelling yelled bellow bellows shriek shrieks");

    /// <summary>Whispering.</summary>
    public static readonly IReadOnlySet<string> Whispering = Lexicon.Words("whisper whispers whispering whispered mumble mumbles mumbling murmur murmurs");

    /// <summary>Being loud in the car.</summary>
    public static readonly IReadOnlySet<string> Loud = Lexicon.Words("loud louder loudest noisy noisier noisiest noise noises");

    /// <summary>Being the loudest.</summary>
    public static readonly IReadOnlySet<string> Dominating = Lexicon.Words("loudest noisiest dominate dominates dominant dominating worst mostly mainly biggest");

    /// <summary>Driving as fast as it goes.</summary>
    public static readonly IReadOnlySet<string> Fast = Lexicon.Words("fast faster fastest quick quickest quickly");

    /// <summary>A route and its parts.</summary>
    public static readonly IReadOnlySet<string> Routes = Lexicon.Words("route routes stretch stretches section sections leg legs");

    /// <summary>Quiet, or good to record on.</summary>
    public static readonly IReadOnlySet<string> Quiet = Lexicon.Words("quiet quieter quietest calm calmest silent peaceful");

    /// <summary>Sources of noise.</summary>
    public static readonly IReadOnlySet<string> Sources = Lexicon.Words("tyre tyres tire tires wind engine motor road");

    private static readonly IReadOnlySet<string> Others = Lexicon.Words(
        "blazing padding padded twenties thirties forties fifties sixties seventies eighties nineties ambient thermometer hot cold warm rhythm minute minutes min mins hour hours degrees degree celsius fahrenheit percent humidity outside noon midday midnight oclock am pm morning afternoon evening parked standing stood sun sunny full deep broken trees tree tent awning garage hall "
        + "cover covers covered reflective blanket blankets facing heading north south east west northeast northwest southeast southwest caution comfort danger dangerous warning kid kids child children dog dogs adults adult people actors locked shut trapped "
        + "building garage hangar barn studio indoors total complete awning marquee leaves dappled partial reflector foil sunscreen slow slower slowest interior cabin recorder lunch wrap needed tracks track khz reserve margin spare continuous whisper raised normal relaxed safety dual plugin transmitter bodypack input inputs cable wired table tyre tire dominates assistant director problem "
        + "speed speeds fastest limit carbon dioxide air fan cloud cloudy overcast latitude between before first until unattended alone dialogue longest bit part way along worth buy buys gain help helps helped difference");

    // Words of everyday questions a slip away from one above.
    private static readonly IReadOnlySet<string> Decoys = Lexicon.Words(
        "again pain gains grain train main beat seat meat heal wheat hear heart head cord ward guard hard yard care cared cart bitter matter butter better latter letter shape shame share spade shake felt belt meet malt smelt book look took hook cookie pool fool tool school wool "
        + "call calls sell sells tell tells well yells paid path trip trips trap shirt short shot shout scout stream screen cream loud load lead lad lads pat pots pods past paste roots routine scratch sketch mode modem media medium medical dick dusk desk desks risk "
        + "toll poll pole rolled role bold cable tables stable fable tired tried tries trees three breath breathes comport platform ship ships lip lips flip click peace beak peek pack packs hotel motel host hour our sour pour four");

    /// <summary>Every word above, so that spelling is corrected toward it or kept from it.</summary>
    public static IEnumerable<string> All => new[] { Heat, Cooling, Rolling, Batteries, Media, Ending, Gains, Clipping, Shouting, Whispering, Loud, Dominating, Fast, Routes, Quiet, Sources, Others, Decoys }.SelectMany(s => s);
}
