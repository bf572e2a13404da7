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
    public bool Any(IReadOnlySet<string> words) => Tokens.Any(t => t.IsAny(words));

    public bool Any(params ReadOnlySpan<string> words)
    {
        foreach (Token token in Tokens)
        {
            if (token.Number is null && words.Contains(token.Word))
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
        if (said.Count == 0)
        {
            return CrewIntent.Unknown;
        }

        return Command(request, said) ?? Question(request, said) ?? List(request, said) ?? Plan(request, said) ?? CrewIntent.Unknown;
    }

    private static CrewIntent? Command(CrewRequest request, SaidThings said)
    {
        bool little = said.Count <= 6;
        if ((said.Any("help", "commands") && little) || (said.Any("what", "how") && said.Any("you") && said.Any("do", "ask", "work") && !said.Any(Lexicon.Microphones)) || (said.Any("what") && said.Any("ask") && said.Any("i")))
        {
            return CrewIntent.Help;
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

        if (request.SceneSaid && said.Any("use", "switch", "open", "pick", "select", "choose", "change") && !request.HasChanges && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Plans) && request.Site is null && !said.Any(Lexicon.Reasons))
        {
            return CrewIntent.UseScene;
        }

        if (said.Any(Lexicon.Alternatives) && !request.HasChanges && !said.Any(Lexicon.Reasons))
        {
            return CrewIntent.RunnerUp;
        }

        return said.Any(Lexicon.More) && !request.HasChanges && !said.Any(Lexicon.Reasons) && request.Site is null && !said.Any("one") ? CrewIntent.Details : null;
    }

    private static CrewIntent? Question(CrewRequest request, SaidThings said)
    {
        bool why = said.Any(Lexicon.Reasons);
        if (why && (request.Site is not null || said.Any(Lexicon.Microphones) || said.Any(Lexicon.Plans) || said.MicrophoneSaid || request.TalkerId is not null || said.Count <= 4 || said.Any("there", "here", "that")))
        {
            return CrewIntent.WhySite;
        }

        if (request.HasChanges)
        {
            bool shows = said.Any("show", "list", "see", "describe", "which") && request.Conditions.IsEmpty && !said.Any(Lexicon.Supposing) && !said.Any("with", "without") && (request.KitName is not null || request.CabinName is not null);
            bool sites = request.CabinName is not null && said.Any(Lexicon.Sites) && !said.Any(Lexicon.Supposing);
            bool what = said.Any("what", "whats") && said.Any("in", "have", "has", "got") && (request.KitName is not null || request.CabinName is not null) && request.Conditions.IsEmpty && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Supposing);
            bool bareName = (request.KitName is not null || request.CabinName is not null) && said.Count <= 3 && request.Conditions.IsEmpty && !said.Any(Lexicon.Supposing) && !said.Any("with", "in", "without", "and") && !said.Any(Lexicon.Plans);
            return sites ? CrewIntent.ListSites : shows || what || bareName ? CrewIntent.Show : CrewIntent.WhatIf;
        }

        bool asksAboutPlace = request.Site is not null && !said.Any(Lexicon.Sites) && (said.Any(Lexicon.Allowing) || said.Any(Lexicon.Placing) || said.Any("whatabout", "whatif", "what", "how", "is", "would", "does", "do")) && !said.Any(Lexicon.Wheres) && !(said.Any("which") && said.Any(Lexicon.Microphones));
        return asksAboutPlace ? CrewIntent.WhySite : null;
    }

    private static CrewIntent? List(CrewRequest request, SaidThings said)
    {
        bool listing = said.Any(Lexicon.Listing) || said.Count <= 2;
        if (said.Any("show", "describe", "whats", "what", "see") && !said.Any("sites") && (said.KitSaid is not null || said.CabinSaid is not null) && !said.Any(Lexicon.Wheres) && !said.Any(Lexicon.Plans))
        {
            return CrewIntent.Show;
        }

        if (request.SceneSaid && said.Any("show", "describe", "whats", "what", "who") && said.Any("scene", "in", "who", "describe") && !said.Any(Lexicon.Plans) && !said.Any(Lexicon.Microphones) && !said.Any(Lexicon.Sites))
        {
            return CrewIntent.Show;
        }

        if (said.Any(Lexicon.Sites) && (listing || said.Any("can", "could", "possible", "available", "there")) && !said.Any(Best))
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
            : said.Any(Lexicon.Cabins) && !said.Any(Lexicon.Microphones) ? CrewIntent.ListCabins : null;
    }

    private static CrewIntent? Plan(CrewRequest request, SaidThings said)
    {
        bool microphones = said.Any(Lexicon.Microphones) || said.MicrophoneSaid;
        bool plan = said.Any(Lexicon.Plans) || (microphones && said.Count <= 2) || (microphones && (said.Any(Lexicon.Wheres) || said.Any(Lexicon.Placing) || said.Any(Lexicon.Listing) || said.Any(Best) || said.Any("how", "need", "use", "up")))
            || (said.Any(Lexicon.Pictures) && said.Count <= 8)
            || (said.Any(Lexicon.Wheres) && (request.TalkerId is not null || request.SceneSaid || said.Any(Lexicon.Placing)) && !said.Any("am", "toilet"))
            || (said.Any(Best) && (said.Any("place", "spot", "position", "placement", "setup") || said.Any(Lexicon.Sites)))
            || (said.Any("mount", "rig", "mike", "mic") && (said.Count <= 6 || request.SceneSaid))
            || (said.Any("how") && (request.TalkerId is not null || request.SceneSaid) && said.Any("mic", "mike", "record", "cover", "hear", "rig"))
            || (request.SceneSaid && said.Count <= 6);
        return plan ? CrewIntent.Plan : null;
    }
}
