namespace Quarterlight.Crew.Language;

/// <summary>What a question names, for deciding what it asks.</summary>
/// <param name="Tokens">Words.</param>
/// <param name="Request">Slots read so far.</param>
/// <param name="MicrophoneSaid">True when a microphone of the kit is named.</param>
/// <param name="CabinSaid">Car named, by resource name, or null.</param>
/// <param name="KitSaid">Kit named, by resource name, or null.</param>
/// <param name="Memory">What the conversation remembers.</param>
internal sealed record SaidThings(IReadOnlyList<Token> Tokens, CrewRequest Request, bool MicrophoneSaid, string? CabinSaid, string? KitSaid, CrewMemory Memory)
{
    public bool Any(IReadOnlySet<string> words)
    {
        // Asked hundreds of times a question: no enumerator.
        for (int i = 0; i < Tokens.Count; i++)
        {
            if (Tokens[i].IsAny(words))
            {
                return true;
            }
        }

        return false;
    }

    public bool Any(params ReadOnlySpan<string> words)
    {
        for (int i = 0; i < Tokens.Count; i++)
        {
            if (Tokens[i].Number is null && words.Contains(Tokens[i].Word))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Words that say something, names and little words aside.</summary>
    public int Count => Tokens.Count;
}

/// <summary>Decides what is asked for. The order of the rules is the order of how telling the words are.</summary>
internal static class IntentReader
{
    private static readonly HashSet<string> Best = Lexicon.Words("best recommend recommended suggest suggestion good should ideal");

    public static CrewRequest Decide(CrewRequest request, SaidThings said)
    {
        CrewIntent intent = Of(request, said);
        return intent switch
        {
            CrewIntent.Show => request with { Intent = intent, ShownName = said.KitSaid ?? said.CabinSaid ?? request.SceneName },
            CrewIntent.WhySite => request with { Intent = intent, SiteRemoved = false },
            _ => request with { Intent = intent },
        };
    }

    private static CrewIntent Of(CrewRequest request, SaidThings said)
    {
        // Whether it will rain is nobody's here to say; what rain does to the sound is.
        bool forecast = said.Any("tomorrow", "tonight", "later", "today", "weekend") && said.Any(Lexicon.Rains) && !said.Any("if", "whatif", "what", "when", "plan", "mics") && said.Any("is", "will", "gonna", "going");
        if (said.Count == 0 || forecast)
        {
            return CrewIntent.Unknown;
        }

        return Command(request, said) ?? Question(request, said) ?? List(request, said) ?? Plan(request, said) ?? CrewIntent.Unknown;
    }

    private static CrewIntent? Command(CrewRequest request, SaidThings said)
    {
        bool little = said.Count <= 6;
        bool stuff = said.Any("have", "kept", "got") && (said.Any(Lexicon.Cabins) || said.Any(Lexicon.Kits) || said.Any(Lexicon.Scenes));
        bool able = said.Any("you") && said.Any("what", "how", "anything") && said.Any("good", "able", "capable", "know", "offer", "handle") && little;
        bool askable = said.Any("ask") && said.Any("i", "we", "you") && said.Any("can", "could", "things", "stuff", "list", "examples") && !said.Any(Lexicon.Microphones);
        bool manual = (said.Any("instructions", "manual", "tutorial", "guide") || (said.Any("what") && said.Any("type", "say") && said.Any("i", "we", "do")) || (said.Any("how") && said.Any("does") && said.Any("this", "it") && said.Any("work"))) && said.Count <= 8 && request.Site is null && !said.Any(Lexicon.Microphones);
        bool newHere = said.Any("new") && said.Any("i", "here") && said.Any("am", "here", "bot") && said.Any("what", "how", "help", "where") && request.Site is null && !said.Any("plan", "car", "scene");
        if (able || askable || manual || newHere || (said.Any("help", "commands") && little) || (said.Any("what", "how") && said.Any("you") && said.Any("do", "ask", "work") && !said.Any(Lexicon.Microphones) && !stuff) || (said.Any("what") && said.Any("ask") && said.Any("i")))
        {
            return CrewIntent.Help;
        }

        bool samples = said.Any("demo", "example", "examples", "sample", "samples", "invented", "dummy", "pretend") && (said.Any(Lexicon.Scenes) || said.Any(Lexicon.Cabins) || said.Any(Lexicon.Kits) || said.Any("data", "stuff", "content"));
        if (samples && said.Any("load", "seed", "fill", "install", "get", "give", "need", "add", "make", "want", "try", "put", "play", "show") && !said.Any("clip", "clips", "recording"))
        {
            return CrewIntent.LoadDemo;
        }

        if (said.Any("demo") && (said.Count <= 3 || said.Any("load", "seed", "fill", "install", "get", "give")))
        {
            return CrewIntent.LoadDemo;
        }

        bool planish = said.Any(Lexicon.Plans) || said.Any(Lexicon.Wheres) || said.Any(Lexicon.Microphones) || said.Any(Lexicon.Sites) || request.SceneSaid || said.Any("how") || request.Site is not null;
        if (request.Units is not null && !planish && !request.HasChanges && said.Count <= 8)
        {
            return CrewIntent.SetUnits;
        }

        bool turnsTo = said.Any("use", "switch", "open", "pick", "select", "choose", "change") || Follows(said, "back", "to") || Follows(said, "go", "to") || Follows(said, "move", "to") || Follows(said, "on", "to") || Follows(said, "work", "on") || Follows(said, "working", "on") || Follows(said, "set", "scene") || Follows(said, "set", "the") || Follows(said, "now", "on") || Follows(said, "on", "the") && said.Any("now", "moving", "here") || said.Any("next") && said.Count <= 6 || Follows(said, "talk", "about") || Follows(said, "let", "us");
        if (request.SceneSaid && turnsTo && !request.HasChanges && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Plans) && request.Site is null && !said.Any(Lexicon.Reasons))
        {
            return CrewIntent.UseScene;
        }

        if (said.Any(Lexicon.Alternatives) && !request.HasChanges && !said.Any(Lexicon.Reasons))
        {
            return CrewIntent.RunnerUp;
        }

        return said.Any(Lexicon.More) && !(said.Any(Lexicon.Wheres) && said.Any(Lexicon.Placing)) && !request.HasChanges && !said.Any(Lexicon.Reasons) && request.Site is null && !said.Any("one") ? CrewIntent.Details : null;
    }

    private static CrewIntent? Question(CrewRequest request, SaidThings said)
    {
        bool why = said.Any(Lexicon.Reasons);
        if (why && (request.Site is not null || said.Any(Lexicon.Microphones) || said.Any(Lexicon.Plans) || said.MicrophoneSaid || request.TalkerId is not null || said.Count <= 4 || said.Any("there", "here", "that", "those", "these", "them") || said.Any(Lexicon.Sites) || said.Any("spot", "place", "pick", "picked", "choose", "chose", "chosen")))
        {
            return CrewIntent.WhySite;
        }

        // "What's the case against the visor?"
        if (request.Site is not null && said.Any("beef", "against", "problem", "problems", "issue", "matter", "wrong", "objection", "downside", "catch") && said.Any("what", "whats", "any", "is") && !request.HasChanges)
        {
            return CrewIntent.WhySite;
        }

        if (request.HasChanges)
        {
            bool shows = said.Any("show", "list", "see", "describe", "which") && request.Conditions.IsEmpty && !said.Any(Lexicon.Supposing) && !said.Any("with", "without") && (request.KitName is not null || request.CabinName is not null);
            bool sites = request.CabinName is not null && said.Any(Lexicon.Sites) && !said.Any(Lexicon.Supposing);
            bool what = said.Any("what", "whats") && !said.Any("only", "just", "then", "if") && said.Any("in", "have", "has", "got") && (request.KitName is not null || request.CabinName is not null) && request.Conditions.IsEmpty && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Supposing);
            bool bareName = (request.KitName is not null || request.CabinName is not null) && said.Count <= 3 && request.Conditions.IsEmpty && !said.Any(Lexicon.Supposing) && !said.Any("with", "in", "without", "and") && !said.Any(Lexicon.Plans);
            return sites ? CrewIntent.ListSites : shows || what || bareName ? CrewIntent.Show : CrewIntent.WhatIf;
        }

        bool asksAboutPlace = request.Site is not null && !said.Any(Lexicon.Sites) && (said.Any("thoughts", "score", "consider", "considered", "close", "rules", "ruled", "opinion", "verdict", "justify", "defend") || said.Any(Lexicon.Allowing) || said.Any(Lexicon.Placing) || said.Any("whatabout", "whatif", "what", "how", "is", "would", "does", "do")) && !said.Any(Lexicon.Wheres) && !(said.Any("which") && said.Any(Lexicon.Microphones));
        return asksAboutPlace ? CrewIntent.WhySite : null;
    }

    private static bool Follows(SaidThings said, string first, string second)
    {
        for (int i = 0; i + 1 < said.Tokens.Count; i++)
        {
            if (said.Tokens[i].Is(first) && said.Tokens[i + 1].Is(second))
            {
                return true;
            }
        }

        return false;
    }

    private static CrewIntent? List(CrewRequest request, SaidThings said)
    {
        bool microphonesGo = (said.Any(Lexicon.Microphones) || said.Any("end", "ended", "choose", "chosen", "settle", "settled")) && said.Any("positions", "spots", "places", "position", "placement") && !said.Any("possible", "available", "every", "possibilities", "options", "sites", "can", "could");
        if (microphonesGo)
        {
            return null;
        }

        bool listing = said.Any(Lexicon.Listing) || said.Count <= 2;
        if (said.Any("show", "describe", "whats", "what", "see") && !said.Any("sites") && (said.KitSaid is not null || said.CabinSaid is not null) && !said.Any(Lexicon.Wheres) && !said.Any(Lexicon.Plans))
        {
            return CrewIntent.Show;
        }

        if (request.SceneSaid && said.Any("show", "describe", "whats", "what", "who", "see", "view", "display") && (said.Any("scene", "in", "who", "describe") || said.Any("show", "see", "view", "display")) && !said.Any(Lexicon.Plans) && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Sites))
        {
            return CrewIntent.Show;
        }

        bool everySpot = said.Any("spot", "place", "site", "position", "mountpoint") && said.Any("every", "possible", "available", "any", "each", "potential") && (listing || said.Any("possible"));
        if ((said.Any(Lexicon.Sites) || everySpot) && (listing || said.Any("can", "could", "possible", "available", "there")) && !said.Any(Best))
        {
            return CrewIntent.ListSites;
        }

        if (!listing || said.Any(Lexicon.Plans) || said.Any(Lexicon.Wheres))
        {
            return null;
        }

        if (said.Any("scenes", "scene") && !request.SceneSaid)
        {
            return CrewIntent.ListScenes;
        }

        return said.Any(Lexicon.Kits) || (said.Any(Lexicon.Microphones) && said.Any("have", "got", "kit", "bag")) ? CrewIntent.ListKits
            : said.Any(Lexicon.Cabins) && !said.Any(Lexicon.Microphones) && !said.Any("rig", "mike", "mic", "mount", "how") ? CrewIntent.ListCabins : null;
    }

    private static CrewIntent? Plan(CrewRequest request, SaidThings said)
    {
        bool microphones = said.Any(Lexicon.Microphones) || said.MicrophoneSaid;
        bool plan = said.Any(Lexicon.Plans) || (microphones && said.Count <= 2) || (microphones && (said.Any(Lexicon.Wheres) || said.Any(Lexicon.Placing) || said.Any(Lexicon.Listing) || said.Any(Best) || said.Any("how", "need", "use", "up")))
            || (said.Any(Lexicon.Pictures) && said.Count <= 8)
            || (said.Any(Lexicon.Wheres) && (request.TalkerId is not null || request.SceneSaid || said.Any(Lexicon.Placing)) && !said.Any("am", "toilet"))
            || (said.Any(Best) && (said.Any("place", "spot", "position", "placement", "setup") || said.Any(Lexicon.Sites)))
            || (said.Any("mount", "rig", "mike", "mic") && (said.Count <= 7 || request.SceneSaid || said.Any("how")))
            || (microphones && said.Any("positions", "spots", "places")) || (said.Any("positions", "spots") && said.Any("end", "ended", "settle", "settled", "choose", "chosen", "which"))
            || (said.Any("how") && (request.TalkerId is not null || request.SceneSaid) && said.Any("mic", "mike", "record", "cover", "hear", "rig"))
            || (request.SceneSaid && said.Count <= 6);
        return plan ? CrewIntent.Plan : null;
    }
}
