using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads which microphones, shots and places are left out, kept alone or used instead.</summary>
internal static class LeftOutReader
{
    private static readonly HashSet<string> Denying = Lexicon.Words("can may must could do does did should will would is are we they i");
    private static readonly HashSet<string> Deeds = Lexicon.Words("use using have touch go put want allow allowed let stick tape fix mount clip attach drill screw hang clamp suction glue hide rig place bodyworn happening doing shoot film shooting available");
    private static readonly HashSet<string> Broken = Lexicon.Words("died dead broke broken gone stolen failed lost");
    private static readonly HashSet<string> Telling = Lexicon.Words("said told says tell heard decided got announced");
    private static readonly HashSet<string> Taking = Lexicon.Words("took takes taking taken take ripped ripping");
    private static readonly HashSet<string> Keeping = Lexicon.Words("keep stay hands steer leave");
    private static readonly HashSet<string> Coming = Lexicon.Words("come comes coming came are is");
    private static readonly HashSet<string> Away = Lexicon.Words("out off away");
    private static readonly HashSet<string> Pointing = Lexicon.Words("it them there that those");
    private static readonly HashSet<string> Removed = Lexicon.Words("removed stripped banned missing pulled binned stolen broken nicked cut");
    private static readonly HashSet<string> Asking = Lexicon.Words("is was were are did does has how what which who do can should");

    /// <summary>The request with what the question leaves out.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="tokens">Words.</param>
    /// <param name="kit">Kit of the scene, or null.</param>
    /// <param name="scene">Scene it is about, or null.</param>
    public static CrewRequest Read(CrewRequest request, IReadOnlyList<Token> tokens, Kit? kit, Scene? scene)
    {
        if (tokens.Any(t => t.IsAny(Lexicon.Reasons)))
        {
            return request;
        }

        IReadOnlyList<string> microphones = KitReader.Microphones(tokens, kit), shots = KitReader.Shots(tokens, scene);
        bool removing = tokens.Any(t => t.IsAny(Lexicon.Removing) || t.Word is "only" or "out" or "off" or "gone" or "away" or "taken") || Denied(tokens) || LeftBehind(tokens);
        bool only = Only(tokens);
        int leaving = Leaving(tokens);
        if (microphones.Count > 0 && removing && !only)
        {
            IReadOnlyList<string> after = leaving >= 0 ? KitReader.Microphones([.. tokens.Skip(leaving)], kit) : [];
            return request with { RemovedMicrophoneIds = after.Count > 0 ? after : microphones, RemovedShotIds = [] };
        }

        if (microphones.Count > 0 && only)
        {
            return request with { OnlyMicrophoneIds = microphones };
        }

        // "They took the visors out for the hood shot" leaves out the place.
        bool placeFirst = leaving >= 0 && request.Site is { } site && site.Start - leaving is >= 1 and <= 3 && !Next(tokens, site.Start).Any(t => t.IsAny(Lexicon.Cameras));
        if (shots.Count > 0 && removing && !placeFirst)
        {
            return request with { RemovedShotIds = shots };
        }

        bool supposing = tokens.Any(t => (t.IsAny(Lexicon.Supposing) && t.Word is not ("when" or "while")) || t.Word is "with" or "use" or "using" or "swap" or "try");
        if (microphones.Count > 0 && supposing && request.Conditions.IsEmpty && request.Site is null)
        {
            return request with { InsteadMicrophoneIds = microphones };
        }

        return request.Site is not null && LeavesPlace(tokens, request.Site, leaving, request.Conditions.Windows.Count > 0) ? request with { SiteRemoved = true } : request;
    }

    private static bool LeavesPlace(IReadOnlyList<Token> tokens, SiteMention site, int leaving, bool windowsAreConditions)
    {
        // "Nothing on the headliner".
        IEnumerable<Token> before = tokens.Take(site.Start);
        if (before.TakeLast(3).Any(t => t.Word is "nothing" or "none") && before.Any(t => t.Word is "on" or "at" or "near" or "in"))
        {
            return true;
        }

        if (leaving < 0 || leaving < site.Start)
        {
            return leaving >= 0;
        }

        // "The visors are in shot, plan without visors".
        bool again = SiteReader.Read([.. tokens.Skip(leaving).Take(5)], windowsAreConditions) is { } later && later.Families.Any(site.Families.Contains);

        // "The console is full of props, we can't use it", "they took the visors, replan without them".
        bool pointed = tokens.Skip(leaving + 1).Take(Denied(tokens) ? tokens.Count : 1).Any(t => t.IsAny(Pointing));

        // "Visors have been removed" tells; "was the visor removed" asks.
        bool told = leaving - site.Start <= 5 && !tokens[0].IsAny(Asking)
            && (tokens[leaving].IsAny(Removed) || (tokens[leaving].Is("not") && Next(tokens, leaving).Any(t => t.Word is "available" or "possible" or "allowed" or "usable")));
        return again || pointed || told || tokens.Any(t => t.IsAny(Away) || t.Word is "gone" or "list" or "clear");
    }

    // "Only lavs", "just the plates", "if all I have is lavs"; "they just said no lavs" is no "only".
    private static bool Only(IReadOnlyList<Token> tokens)
    {
        bool broken = tokens.Any(t => t.IsAny(Broken));
        for (int i = 0; i < tokens.Count; i++)
        {
            bool all = tokens[i].Is("all") && Next(tokens, i).Any(t => t.Word is "i" or "we" or "they" or "you") && tokens.Skip(i + 2).Take(2).Any(t => t.Word is "have" or "got" or "brought");
            bool just = tokens[i].Is("just") && !broken && !Next(tokens, i).Any(t => t.IsAny(Lexicon.Removing) || t.IsAny(Telling));
            if (all || just || tokens[i].Word is "only" or "nothing")
            {
                return true;
            }
        }

        return false;
    }

    // "I left the lavs at the hotel."
    private static bool LeftBehind(IReadOnlyList<Token> tokens) => tokens.Where((t, i) => t.Is("left") && Next(tokens, i).Any(n => n.Word is "the" or "my" or "our" or "all" or "behind" or "at" or "in")).Any()
        && tokens.Any(t => t.Word is "at" or "behind" or "home" or "in" or "on");

    // "We can't use", "the owner doesn't want"; "visor's not" has lost its verb.
    private static bool Denied(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if ((tokens[i].IsAny(Denying) || tokens[i].Possessive) && tokens[i + 1].Is("not") && tokens.Skip(i).Any(t => t.IsAny(Deeds)))
            {
                return true;
            }
        }

        return false;
    }

    // The word that begins to leave out; -1 when none does.
    private static int Leaving(IReadOnlyList<Token> tokens)
    {
        bool denied = Denied(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].IsAny(Lexicon.Removing) || (denied && i > 0 && tokens[i].Is("not")) || PutsAway(tokens, i))
            {
                return i;
            }
        }

        return -1;
    }

    // "With the console ruled out", "keep off the dash", "headrests come off", "took the mirror out", "not there", "off limits".
    private static bool PutsAway(IReadOnlyList<Token> tokens, int i)
    {
        Token token = tokens[i];
        Token? before = i > 0 ? tokens[i - 1] : null;
        bool ruledOut = token.Word is "ruled" or "taken" or "crossed" or "struck" && Next(tokens, i).Any(t => t.IsAny(Away)) && tokens.Take(i).Any(t => t.Word is "with" or "if" or "suppose" or "say" or "whatif" or "whatabout");
        bool keptOff = token.Is("keepout") || ((token.IsAny(Away) || token.Is("clear")) && before is not null && before.IsAny(Keeping));
        bool comesOff = token.Word is "off" or "out" && before is not null && before.IsAny(Coming) && tokens[0].Word is not ("is" or "are" or "why") && !Next(tokens, i).Any(t => t.Is("of"));
        bool takenOut = token.IsAny(Taking) && tokens.Skip(i + 1).Take(6).Any(t => t.IsAny(Away));
        bool notThere = token.Is("not") && (i > 0 ? Next(tokens, i).Any(t => t.Is("there")) && tokens[0].Word is not ("why" or "is" or "are") : Next(tokens, i).Any(t => t.Word is "on" or "in" or "at" or "near"));
        bool offLimits = token.Is("off") && tokens.Skip(i + 1).Take(2).Any(t => t.Word is "limits" or "list" or "table");
        return ruledOut || keptOff || comesOff || takenOut || notThere || offLimits;
    }

    private static IEnumerable<Token> Next(IReadOnlyList<Token> tokens, int i) => tokens.Skip(i + 1).Take(1);
}
