using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Turns a question into a request: first what it names, then what it asks for.</summary>
public static class RequestReader
{
    // "help with the radio": more words ask for something else.
    private const int MostWordsOfHelp = 4;

    /// <summary>Reads a question. Never fails; a question not understood has the intent <see cref="CrewIntent.Unknown"/>.</summary>
    /// <param name="text">The question, cleaned.</param>
    /// <param name="vocabulary">The team's own words.</param>
    /// <param name="memory">What the conversation remembers.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="attached">True when a clip came with the question, which then is about the clip.</param>
    public static CrewRequest Read(string text, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(memory);
        IReadOnlyList<Token> tokens = vocabulary.Read(text);
        return !attached && tokens.Count is > 1 and <= MostWordsOfHelp && tokens[0].Is("help") && Topics.HelpTable.Find(tokens.Skip(1).Select(t => t.Word)) is { } subject
            ? new CrewRequest { Intent = CrewIntent.Help, HelpTopic = subject.Value, SceneName = memory.SceneName }
            : SecondOpinion.Of(ByRules(text, tokens, vocabulary, memory, units, attached));
    }

    /// <summary>The question as the rules alone understand it, with all that was read on the way.</summary>
    internal static QuestionRead ByRules(string text, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(memory);
        return ByRules(text, vocabulary.Read(text), vocabulary, memory, units, attached);
    }

    private static QuestionRead ByRules(string text, IReadOnlyList<Token> tokens, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached)
    {
        // "What's wrong with it" must not name the scene that goes wrong while a clip is talked about.
        bool clip = attached || memory.LastClip is { Current: true };
        Named? sceneSaid = vocabulary.SceneNames.FindOne(clip ? [.. tokens.Where(t => !t.IsAny(ClipWords.Verdicts))] : tokens);
        Scene? scene = vocabulary.Scenes.FirstOrDefault(s => s.Name == (sceneSaid?.Id ?? memory.SceneName)) ?? Latest(vocabulary.Scenes);
        scene = sceneSaid is null && scene is not null && TalkerReader.SceneOfRole(tokens, scene, vocabulary.Scenes) is { } other ? other : scene;
        Cabin? cabin = vocabulary.CabinOf(scene);
        bool driverOnLeft = cabin?.DriveSide != DriveSide.Right;
        UnitPreference? unitsSaid = UnitsOf(tokens);
        ConditionChanges conditions = ConditionReader.Read(tokens, unitsSaid ?? units);
        SiteMention? site = SiteReader.Read(tokens, conditions.Windows.Count > 0);
        IReadOnlyList<TalkerMention> talkers = scene is null ? [] : TalkerReader.Find(tokens, scene, driverOnLeft);
        var request = new CrewRequest
        {
            SceneName = scene?.Name,
            SceneSaid = sceneSaid is not null,
            UnknownScene = sceneSaid is null ? UnknownSceneOf(tokens) : null,
            Units = unitsSaid,
            TalkerId = TalkerReader.For(tokens, talkers, site),
            Site = site,
            Conditions = conditions,
            CabinName = vocabulary.CabinNames.Find(Wanted(tokens)).Select(c => c.Id).FirstOrDefault(id => id != scene?.Cabin),
            KitName = Other(vocabulary.KitSaid(Wanted(tokens))?.Id, scene?.Kit),
            Clip = ClipReader.Read(tokens),
            RunnerUp = tokens.Any(t => t.Number == 2 || t.Word is "second" or "third" or "other") && !tokens.Any(t => t.Word is "secondbest") ? 2 : 1,
            AddsToLast = memory.LastChanges is not null && tokens.Count > 0 && (tokens[0].Word is "and" or "also" or "plus" || tokens.Any(t => t.Word is "too") || tokens[^1].Word is "also"),
        };
        // "Why is there no lav on the child?" asks about the clothing.
        if (site is null && (tokens.Any(t => t.IsAny(Lexicon.Reasons)) || (request.TalkerId is not null && tokens.Any(t => t.Is("better")))) && tokens.FirstOrDefault(t => t.Word is "lav" or "lavs" or "lavalier" or "lavaliers") is { } lav)
        {
            request = request with { Site = new SiteMention { Families = [MountFamily.BodyWorn], Word = lav.Word, Qualifiers = [], Side = SeatPlace.Any, Start = 0 } };
        }

        request = WithLeftOut(request, tokens, vocabulary, scene);
        var said = new SaidThings(tokens, request, KitReader.Microphones(tokens, vocabulary.KitOf(scene)).Count > 0, vocabulary.CabinNames.FindOne(tokens)?.Id, vocabulary.KitSaid(tokens)?.Id, memory);
        RadioSaid radio = RadioReader.Read(text, tokens, unitsSaid ?? units, vocabulary.Knows, memory.LastRadio is not null);
        ForecastSaid forecast = ForecastReader.Read(text, tokens, request, unitsSaid ?? units, memory.LastForecast?.Intent);
        // "Four people" is neither a four-door car nor a people carrier.
        string? cabinSaid = Other(vocabulary.CabinNames.FindOne([.. tokens.Where(t => t.Number is null && !(forecast.Heat.Adults is not null && t.Is("people")))])?.Id, scene?.Cabin);
        SaidThings forecastSaid = said with { CabinSaid = cabinSaid };
        CrewRequest?[] readings =
        [
            ForecastIntentReader.Decide(request, forecastSaid, forecast),
            ClipIntentReader.Decide(request, said, radio),
            RadioIntentReader.Decide(request, said, radio, memory.LastRadio),
            IntentReader.Decide(request, said),
        ];
        CrewRequest rules = attached ? ClipIntentReader.Attached(request) : First(readings, said);
        var seen = new IntentSeen(text, tokens, vocabulary.Classes, SlotEvidence.Of(forecastSaid, forecast, radio), Topic(memory, attached), [.. readings.Select(r => r?.Intent ?? CrewIntent.Unknown)]);
        return new QuestionRead(rules, request, forecastSaid, said.CabinSaid, forecast, radio, seen, attached);
    }

    // The first reader that knows better; the last one always says something.
    private static CrewRequest First(CrewRequest?[] readings, SaidThings said)
    {
        CrewRequest first = readings.First(r => r is not null)!;
        return ReferenceEquals(first, readings[^1]) && first.Intent == CrewIntent.Unknown ? ClipIntentReader.Fallback(first, said) ?? first : first;
    }

    private static string Topic(CrewMemory memory, bool attached) => memory switch
    {
        _ when attached => "attached",
        { LastClip.Current: true } => "remembered",
        { LastForecast.Intent: CrewIntent.HeatForecast } => "heat",
        { LastForecast.Intent: CrewIntent.RunTime } => "runtime",
        { LastForecast.Intent: CrewIntent.Levels } => "levels",
        { LastForecast: not null } => "noise",
        { LastRadio: not null } => "radio",
        _ => "none",
    };

    private static CrewRequest WithLeftOut(CrewRequest request, IReadOnlyList<Token> tokens, CrewVocabulary vocabulary, Scene? scene)
    {
        Kit? kit = vocabulary.KitOf(scene);
        IReadOnlyList<string> shots = KitReader.Shots(tokens, scene);
        bool removing = tokens.Any(t => t.IsAny(Lexicon.Removing)) || Denied(tokens) || LeftBehind(tokens) || tokens.Any(t => t.Word is "only" or "out" or "off" or "gone" or "away" or "taken");
        bool broken = tokens.Any(t => t.Word is "died" or "dead" or "broke" or "broken" or "gone" or "stolen" or "failed" or "lost");
        bool only = tokens.Any(t => t.Word is "only" or "nothing" || (t.Is("all") && tokens.SkipWhile(s => s != t).Skip(1).Take(1).Any(s => s.Word is "i" or "we" or "they" or "you") && tokens.SkipWhile(s => s != t).Skip(2).Take(2).Any(s => s.Word is "have" or "got" or "brought")) || (t.Is("just") && !broken && !tokens.SkipWhile(s => s != t).Skip(1).Take(1).Any(s => s.IsAny(Lexicon.Removing) || s.Word is "said" or "told" or "says" or "tell" or "heard" or "decided" or "got" or "announced")));
        bool why = tokens.Any(t => t.IsAny(Lexicon.Reasons));
        bool supposing = tokens.Any(t => t.IsAny(Lexicon.Supposing) && t.Word is not ("when" or "while")) || tokens.Any(t => t.Word is "with" or "use" or "using" or "swap" or "try");

        // With a kit or car named, its words are not also a microphone's.
        IReadOnlyList<string> microphones = KitReader.Microphones(tokens, kit);
        if (why)
        {
            return request;
        }

        int leaving = IndexOfLeavingOut(tokens);
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
        bool placeFirst = leaving >= 0 && request.Site is { } near && near.Start - leaving is >= 1 and <= 3 && !tokens.Skip(near.Start + 1).Take(1).Any(t => t.IsAny(Lexicon.Cameras));
        if (shots.Count > 0 && placeFirst)
        {
            return request with { SiteRemoved = true };
        }

        if (shots.Count > 0 && removing)
        {
            return request with { RemovedShotIds = shots };
        }

        if (microphones.Count > 0 && supposing && request.Conditions.IsEmpty && request.Site is null)
        {
            return request with { InsteadMicrophoneIds = microphones };
        }

        // "The visors are in shot, plan without visors": the place behind the leaving out is meant.
        if (leaving >= 0 && request.Site is { } first && leaving > first.Start && SiteReader.Read([.. tokens.Skip(leaving).Take(5)], request.Conditions.Windows.Count > 0) is { } later && later.Families.Any(first.Families.Contains))
        {
            return request with { SiteRemoved = true };
        }

        // "The console is full of props, we can't use it", "they took the visors, replan without them".
        bool pointed = leaving >= 0 && tokens.Skip(leaving + 1).Take(Denied(tokens) ? tokens.Count : 1).Any(t => t.Word is "it" or "them" or "there" or "that" or "those");
        if (pointed && request.Site is not null && leaving > request.Site.Start)
        {
            return request with { SiteRemoved = true };
        }

        // "Visors have been removed" tells; "was the visor removed" asks.
        if (leaving >= 0 && request.Site is not null && leaving > request.Site.Start && leaving - request.Site.Start <= 5 && tokens[leaving].Word is "removed" or "stripped" or "banned" or "missing" or "pulled" or "binned" or "stolen" or "broken" or "nicked" or "cut" && tokens[0].Word is not ("is" or "was" or "were" or "are" or "did" or "does" or "has" or "how" or "what" or "which" or "who" or "do" or "can" or "should"))
        {
            return request with { SiteRemoved = true };
        }

        bool nothing = request.Site is not null && tokens.Take(request.Site.Start).TakeLast(3).Any(t => t.Word is "nothing" or "none") && tokens.Take(request.Site.Start).Any(t => t.Word is "on" or "at" or "near" or "in");
        bool leavesSite = nothing || request.Site is not null && leaving >= 0 && (leaving < request.Site.Start || tokens.Any(t => t.Word is "out" or "off" or "away" or "gone" or "list" or "clear"));
        return leavesSite ? request with { SiteRemoved = true } : request;
    }

    // "The hatchback instead of the saloon": what is given up is not asked about.
    private static IReadOnlyList<Token> Wanted(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 2 < tokens.Count; i++)
        {
            if ((tokens[i].Is("instead") && tokens[i + 1].Is("of")) || (tokens[i].Is("rather") && tokens[i + 1].Is("than")))
            {
                return [.. tokens.Take(i), .. tokens.Skip(i + 5)];
            }
        }

        return tokens;
    }

    // "the moon scene": a word of nobody's before "scene".
    private static string? UnknownSceneOf(IReadOnlyList<Token> tokens)
    {
        for (int i = 1; i < tokens.Count; i++)
        {
            bool known = Lexicon.All.Contains(tokens[i - 1].Word) && (!Lexicon.Common.Contains(tokens[i - 1].Word) || tokens[i - 1].Word is "whole" or "first" or "second" or "last" or "same" or "own");
            if (tokens[i].Is("scene") && tokens[i - 1].Number is null && !known)
            {
                return tokens[i - 1].Word;
            }
        }

        return null;
    }

    // "I left the lavs at the hotel."
    private static bool LeftBehind(IReadOnlyList<Token> tokens) => tokens.Where((t, i) => t.Is("left") && i + 1 < tokens.Count && tokens[i + 1].Word is "the" or "my" or "our" or "all" or "behind" or "at" or "in").Any() && tokens.Any(t => t.Word is "at" or "behind" or "home" or "in" or "on");

    private static bool Denied(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if ((tokens[i].Word is "can" or "may" or "must" or "could" or "do" or "does" or "did" or "should" or "will" or "would" or "is" or "are" or "we" or "they" or "i" || tokens[i].Possessive) && tokens[i + 1].Is("not") && tokens.Skip(i).Any(t => t.Word is "use" or "have" or "touch" or "go" or "put" or "want" or "allow" or "allowed" or "let" or "stick" or "tape" or "fix" or "mount" or "clip" or "attach" or "drill" or "screw" or "hang" or "clamp" or "suction" or "glue" or "hide" or "rig" or "place" or "bodyworn" or "happening" or "doing" or "shoot" or "film" or "shooting" or "using" or "available"))
            {
                return true;
            }
        }

        return false;
    }

    private static int IndexOfLeavingOut(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            bool ruledOut = tokens[i].Word is "ruled" or "taken" or "crossed" or "struck" && tokens.Skip(i + 1).Take(1).Any(t => t.Word is "out" or "away" or "off") && tokens.Take(i).Any(t => t.Word is "with" or "if" or "suppose" or "say" or "whatif" or "whatabout");
            bool keptOff = tokens[i].Word is "off" or "away" or "clear" or "out" && i > 0 && tokens[i - 1].Word is "keep" or "stay" or "hands" or "steer" or "leave" || tokens[i].Word is "off" or "out" && i > 0 && tokens[i - 1].Word is "come" or "comes" or "coming" or "came" or "are" or "is" && tokens[0].Word is not ("is" or "are" or "why") && !tokens.Skip(i + 1).Take(1).Any(t => t.Is("of")) || tokens[i].Is("keepout");
            bool takenOut = tokens[i].Word is "took" or "takes" or "taking" or "taken" or "take" or "ripped" or "ripping" && tokens.Skip(i + 1).Take(6).Any(t => t.Word is "out" or "off" or "away");
            bool notOn = tokens[i].Is("not") && i > 0 && tokens.Skip(i + 1).Take(1).Any(t => t.Is("there")) && tokens[0].Word is not ("why" or "is" or "are") || tokens[i].Is("not") && i == 0 && tokens.Skip(1).Take(1).Any(t => t.Word is "on" or "in" or "at" or "near");
            if (ruledOut || keptOff || notOn || takenOut || tokens[i].IsAny(Lexicon.Removing) || (tokens[i].Is("not") && i > 0 && Denied(tokens)) || (tokens[i].Is("off") && tokens.Skip(i + 1).Take(2).Any(t => t.Word is "limits" or "list" or "table")))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Units that words ask for, or null.</summary>
    internal static UnitPreference? UnitsOf(IReadOnlyList<Token> tokens)
    {
        // "A hundred yards back" only measures; "answer in yards" asks.
        bool asked = tokens.All(t => t.Number is null) && (tokens.Any(t => t.Word is "units" or "unit" or "measurements" or "measures" or "system")
            || tokens.Any(t => t.Word is "answer" or "answers" or "speak" or "talk" or "works" or "use" or "think" or "prefer" or "want" or "not" or "numbers" or "figures" or "everything") && tokens.Count <= 8);
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        if (asked)
        {
            int not = IndexOf(tokens, "not");
            IReadOnlyList<Token> wanted = not > 0 ? [.. tokens.Take(not)] : tokens;
            bool old = wanted.Any(t => t.Word is "mph" or "miles" or "mile" or "yards" or "foot" or "inch" or "american" or "us" or "english" or "freedom" or "customary");
            bool si = wanted.Any(t => t.Word is "kmh" or "kilometres" or "kilometers" or "km" or "european" or "si" or "continental");
            if (old != si && (old ? !wanted.Any(t => t.Is("us")) || Any("units", "measurements", "measures") : true))
            {
                return old ? UnitPreference.Imperial : UnitPreference.Metric;
            }
        }

        // "No more inches, go metric": what is turned away does not count while the other is there too.
        bool Wanted(params string[] words) => tokens.Where((t, i) => t.Number is null && words.Contains(t.Word) && !tokens.Take(i).TakeLast(3).Any(b => b.Word is "no" or "not" or "stop" or "forget" or "instead" or "than" or "from" or "drop" or "hate" or "without" or "enough")).Any();
        string[] imperial = ["imperial", "feet", "inches", "fahrenheit"], metric = ["metric", "centimetres", "centimeters", "metres", "meters", "celsius", "cm"];
        bool both = Any(imperial) && Any(metric);
        if (both && Wanted(imperial) != Wanted(metric))
        {
            return Wanted(imperial) ? UnitPreference.Imperial : UnitPreference.Metric;
        }

        return Any(imperial) ? UnitPreference.Imperial : Any(metric) ? UnitPreference.Metric : null;
    }

    private static int IndexOf(IReadOnlyList<Token> tokens, string word)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Is(word))
            {
                return i;
            }
        }

        return -1;
    }

    private static string? Other(string? said, string? kept) => said == kept ? null : said;

    /// <summary>The scene last written, or null.</summary>
    internal static Scene? Latest(IReadOnlyList<Scene> scenes) =>
        scenes.OrderByDescending(s => s.UpdateTime?.ToDateTimeOffset() ?? DateTimeOffset.MinValue).ThenBy(s => s.Name, StringComparer.Ordinal).FirstOrDefault();
}
