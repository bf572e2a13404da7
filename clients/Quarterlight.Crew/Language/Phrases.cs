namespace Quarterlight.Crew.Language;

/// <summary>Joins words that mean something only together, such as "head liner" or "what if".</summary>
public static class Phrases
{
    private static readonly (string[] Written, string[] Meant)[] Known = Table(
        ("what if", "whatif"), ("how about", "whatabout"), ("what about", "whatabout"), ("how come", "why"), ("what for", "why"), ("what happens if", "whatif"), ("what happens with", "whatif with"),
        ("air con", "aircon"), ("air conditioning", "aircon"), ("air conditioner", "aircon"), ("climate control", "climate"), ("air vents", "fan"), ("conditioning", "aircon"),
        ("sun visor", "visor"), ("sun visors", "visor"), ("sun shade", "visor"), ("sunvisor", "visor"), ("sunshade", "visor"), ("visors", "visor"), ("vizor", "visor"),
        ("rear view mirror", "mirror"), ("rearview mirror", "mirror"), ("back mirror", "mirror"), ("mirror foot", "mirror"), ("mirror stem", "mirror"),
        ("dash board", "dash"), ("dashboard", "dash"), ("dash top", "dashtop"), ("top of the dash", "dashtop"), ("on top of dash", "dashtop"), ("dash face", "dashface"), ("face of the dash", "dashface"), ("front of the dash", "dashface"), ("front of dash", "dashface"), ("halp", "help"), ("glove box", "glovebox"), ("glove compartment", "glovebox"),
        ("centre console", "console"), ("center console", "console"), ("cup holder", "cupholder"), ("cup holders", "cupholder"), ("cupholders", "cupholder"), ("middle console", "console"),
        ("a pillar", "apillar"), ("a pillars", "apillar"), ("a post", "apillar"), ("windscreen pillar", "apillar"), ("windshield pillar", "apillar"), ("front pillar", "apillar"),
        ("b pillar", "bpillar"), ("b pillars", "bpillar"), ("b post", "bpillar"), ("belt pillar", "bpillar"), ("door pillar", "bpillar"), ("c pillar", "cpillar"), ("c pillars", "cpillar"), ("rear pillar", "cpillar"), ("c post", "cpillar"),
        ("door card", "door"), ("door panel", "door"), ("doors", "door"), ("wind screen", "windscreen"), ("wind shield", "windscreen"), ("windshield", "windscreen"), ("front glass", "windscreen"), ("front window", "windscreen"),
        ("rear window", "rearglass"), ("rear windscreen", "rearglass"), ("back window", "rearglass"), ("rear glass", "rearglass"), ("back glass", "rearglass"), ("side glass", "window"), ("side window", "window"),
        ("head liner", "headliner"), ("head lining", "headliner"), ("roof lining", "headliner"), ("roof liner", "headliner"), ("headlining", "headliner"), ("headliners", "headliner"), ("ceiling", "headliner"), ("roof", "headliner"),
        ("head rest", "headrest"), ("headrests", "headrest"), ("head restraint", "headrest"), ("head rests", "headrest"), ("headrest post", "headrest"), ("headrest posts", "headrest"),
        ("seat back", "seatback"), ("seat backs", "seatback"), ("seatbacks", "seatback"), ("back of the driver seat", "driver seatback"), ("back of the passenger seat", "passenger seatback"), ("back of the front seat", "seatback"), ("back of the seat", "seatback"), ("map pocket", "seatback pocket"),
        ("parcel shelf", "shelf"), ("rear shelf", "shelf"), ("back shelf", "shelf"), ("foot well", "floor"), ("footwell", "floor"), ("footwells", "floor"), ("carpet", "floor"),
        ("grab handle", "grabhandle"), ("grab handles", "grabhandle"), ("roof handle", "grabhandle"), ("handle above the door", "grabhandle"), ("handle", "grabhandle"), ("oh handle", "grabhandle"), ("bulk head", "bulkhead"),
        ("body worn", "bodyworn"), ("body mic", "bodyworn mic"), ("on the body", "on bodyworn"), ("worn", "bodyworn"), ("wear", "bodyworn"), ("wearing", "bodyworn"), ("clothing", "bodyworn"), ("clothes", "bodyworn"), ("chest", "bodyworn"), ("lapel", "bodyworn"), ("costume", "bodyworn"),
        ("runner up", "runnerup"), ("runners up", "runnerup"), ("next best", "nextbest"), ("second best", "secondbest"), ("plan b", "planb"), ("other option", "otheroption"), ("other options", "otheroption"), ("second choice", "secondbest"), ("next one", "nextbest"), ("plan two", "planb"), ("what else", "alternative"), ("anything else", "alternative"),
        ("low loader", "trailer"), ("process trailer", "trailer"), ("standing still", "stationary"), ("stood still", "stationary"), ("stand still", "stationary"), ("ticking over", "idling"), ("tick over", "idling"), ("not moving", "stationary"), ("at a standstill", "stationary"), ("switched off", "off"), ("turned off", "off"), ("shut off", "off"), ("switched on", "on"), ("turned on", "on"),
        ("rolled down", "down"), ("wound down", "down"), ("rolled up", "up"), ("wound up", "up"), ("roll down", "down"), ("wind down", "down"), ("roll up", "up"), ("all the way down", "down"),
        ("front seat passenger", "passenger"), ("front passenger", "passenger"), ("co driver", "passenger"), ("shotgun seat", "passenger"), ("riding shotgun", "passenger"), ("person in the passenger seat", "passenger"), ("passenger seat", "passenger"), ("passenger side", "passenger side"), ("behind the wheel", "driver"), ("at the wheel", "driver"), ("whoever is driving", "driver"), ("person next to the driver", "passenger"), ("one next to the driver", "passenger"), ("sitting next to the driver", "passenger"), ("sat next to the driver", "passenger"), ("front next to the driver", "passenger"), ("whoever is next to the driver", "passenger"), ("sits next to the driver", "passenger"), ("whoever driving", "driver"), ("whoever drives", "driver"), ("the one driving", "the driver"), ("one who is driving", "driver"), ("one who drives", "driver"), ("person driving", "driver"), ("man driving", "driver"), ("woman driving", "driver"), ("guy driving", "driver"), ("actor driving", "driver"), ("near side", "left"), ("nearside", "left"), ("offside", "right"), ("off side", "right"),
        ("follow car", "followcar"), ("follow vehicle", "followcar"), ("follow van", "followcar"), ("following car", "followcar"), ("chase car", "chasecar"), ("chase vehicle", "chasecar"), ("car lengths", "carlengths"), ("car length", "carlength"), ("fall back", "fallback"), ("falls back", "fallback"), ("falling back", "fallback"), ("drop back", "dropback"), ("drops back", "dropback"), ("dropping back", "dropback"), ("hang back", "fallback"), ("fall behind", "fallback"), ("drop behind", "dropback"), ("drop outs", "dropouts"), ("body packs", "bodypacks"), ("body pack", "bodypack"), ("belt packs", "beltpacks"), ("belt pack", "beltpack"), ("keep out", "keepout"), ("keep clear", "keepout"), ("stay out", "keepout"), ("radio link", "radiolink"),
        ("pop up", "popup"), ("pop ups", "popup"), ("cool down", "cooldown"), ("runs out", "runout"), ("run out", "runout"), ("running out", "runout"), ("o clock", "oclock"), ("grown ups", "grownups"), ("power bank", "powerbank"), ("gain sheet", "gainsheet"), ("child locks", "childlock"), ("child lock", "childlock"), ("non stop", "nonstop"), ("north west", "northwest"), ("north east", "northeast"), ("south west", "southwest"), ("south east", "southeast"),
        ("noise floor", "noisefloor"), ("audio file", "audiofile"), ("sound file", "soundfile"),
        ("rig sheet", "rigsheet"), ("long version", "details"), ("full version", "details"), ("at length", "details"), ("in depth", "details"), ("full breakdown", "details"), ("whole story", "details"), ("break it down", "details"), ("blow by blow", "details"), ("long answer", "details"), ("the working", "details"), ("all the numbers", "details"), ("all the figures", "details"), ("figures behind", "details"), ("numbers behind", "details"), ("another option", "alternative"), ("different plan", "alternative"), ("another plan", "alternative"), ("other plan", "alternative"), ("backup plan", "alternative"), ("back up plan", "alternative"), ("next option", "nextbest"), ("something else instead", "alternative"), ("what else have you got", "alternative"), ("pass out", "passout"), ("passes out", "passout"), ("passing out", "passout"), ("carbon dioxide", "co2"), ("regs", "regulations"), ("reg", "regulation"), ("over here", "here"), ("mic pack", "bodypack"), ("mic packs", "bodypacks"), ("tx", "transmitter"), ("rx", "receiver"), ("dba", "loudness"),
        ("u", "you"), ("ur", "your"), ("r", "are"), ("pls", "please"), ("plz", "please"), ("coz", "because"), ("cos", "because"), ("til", "until"), ("wanna", "want to"), ("gotta", "have to"), ("lemme", "let me"), ("gimme", "give me"), ("dunno", "do not know"), ("isnt", "is not"), ("arent", "are not"), ("wasnt", "was not"), ("doesnt", "does not"), ("didnt", "did not"), ("wouldnt", "would not"), ("couldnt", "could not"), ("shouldnt", "should not"), ("havent", "have not"), ("hasnt", "has not"), ("wont", "will not"), ("aint", "is not"), ("whys", "why is"), ("hows", "how is"), ("heres", "here is"), ("theres", "there is"), ("im", "i am"), ("ive", "i have"), ("weve", "we have"), ("theyre", "they are"), ("thats", "that is"), ("lets", "let us"), ("kinda", "kind of"), ("bout", "about"), ("tho", "though"), ("vs", "versus"),
        ("run time", "runtime"), ("running time", "runtime"), ("battery life", "battery last"), ("make it to", "last until"), ("make it till", "last until"), ("make it until", "last until"), ("make it through", "last until"), ("get us to", "last until"), ("get us through", "last until"), ("good until", "last until"), ("hold out", "last"), ("run dry", "runout"), ("conk out", "die"), ("conks out", "dies"), ("give out", "die"), ("gives out", "dies"), ("juice", "battery"), ("aas", "batteries"), ("aa", "battery"), ("batts", "batteries"), ("batt", "battery"), ("batterys", "batteries"),
        ("speed limit", "maximum speed"), ("breaks up", "dropouts"), ("break up", "dropouts"), ("breaking up", "dropouts"), ("cuts out", "dropouts"), ("cutting out", "dropouts"), ("drops out", "dropouts"), ("drop out", "dropouts"), ("dropping out", "dropouts"), ("crackles up", "dropouts"),
        ("chucking it down", "heavy rain"), ("chucking down", "heavy rain"), ("tipping it down", "heavy rain"), ("tipping down", "heavy rain"), ("bucketing it down", "heavy rain"), ("bucketing down", "heavy rain"), ("hammering down", "heavy rain"), ("hammering it down", "heavy rain"), ("lashing down", "heavy rain"), ("lashing it down", "heavy rain"), ("lashing", "heavy rain"), ("pissing down", "heavy rain"), ("pissing it down", "heavy rain"), ("pelting down", "heavy rain"), ("belting down", "heavy rain"), ("cats and dogs", "heavy rain"), ("heavens open", "heavy rain"), ("coming down hard", "heavy rain"), ("spitting", "light rain"), ("spits", "light rain"), ("mizzle", "light rain"),
        ("paperwork", "licence"), ("permission", "permit"), ("red tape", "licence"), ("against the law", "illegal"), ("allowed by law", "legal"), ("above board", "legal"), ("legit", "legal"),
        ("time lapse", "timelapse"), ("lav mic", "lav mic"), ("battery pack", "battery"), ("battery packs", "batteries"), ("mic plan", "mic plan"), ("set up", "setup"), ("mount points", "mountpoints"), ("mounting points", "mountpoints"), ("fixing points", "mountpoints"), ("mount point", "mountpoints"), ("mounting places", "mountpoints"), ("mounting spots", "mountpoints"), ("mount sites", "sites"));

    // Each word begins few phrases; the longest comes first.
    private static readonly Dictionary<string, (string[] Written, string[] Meant)[]> ByFirst = Known.GroupBy(p => p.Written[0], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);

    /// <summary>Words with each known phrase replaced by what it means, longest phrase first.</summary>
    public static IReadOnlyList<Token> Join(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var joined = new List<Token>();
        for (int i = 0; i < tokens.Count;)
        {
            if (At(tokens, i) is not { } phrase)
            {
                joined.Add(tokens[i++]);
                continue;
            }

            bool possessive = tokens[i + phrase.Written.Length - 1].Possessive;
            joined.AddRange(phrase.Meant.Select((word, n) => new Token(word, Possessive: possessive && n == phrase.Meant.Length - 1)));
            i += phrase.Written.Length;
        }

        return joined;
    }

    private static (string[] Written, string[] Meant)? At(IReadOnlyList<Token> tokens, int i)
    {
        foreach ((string[] Written, string[] Meant) phrase in ByFirst.GetValueOrDefault(tokens[i].Word, []))
        {
            if (Matches(tokens, i, phrase.Written))
            {
                return phrase;
            }
        }

        return null;
    }

    /// <summary>True where the words stand one behind the other.</summary>
    internal static bool Matches(IReadOnlyList<Token> tokens, int at, string[] words)
    {
        if (at + words.Length > tokens.Count)
        {
            return false;
        }

        for (int k = 0; k < words.Length; k++)
        {
            if (tokens[at + k].Word != words[k])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Every single word that occurs in a phrase, so that spelling can be corrected to it.</summary>
    public static IEnumerable<string> Words => Known.SelectMany(p => p.Written).Distinct();

    private static (string[] Written, string[] Meant)[] Table(params (string Written, string Meant)[] rows) =>
        [.. rows.Select(r => (r.Written.Split(' '), r.Meant.Split(' '))).OrderByDescending(r => r.Item1.Length)];
}
