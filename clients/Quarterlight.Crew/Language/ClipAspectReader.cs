namespace Quarterlight.Crew.Language;

/// <summary>Decides what is asked about a clip that was judged already.</summary>
internal static class ClipAspectReader
{
    /// <summary>Words a question begins with.</summary>
    public static readonly HashSet<string> Asking = Lexicon.Words("is was are were any did does do has have how hows what whats which much can could");

    private static readonly HashSet<string> Noisy = Lexicon.Words("wind hum fan engine rumble buzz noise speech voice");
    private static readonly HashSet<string> Hearing = Lexicon.Words("hear heard audible detect detected notice there running it on");

    /// <summary>Asking whether a clip may stay.</summary>
    public static readonly HashSet<string> Keeping = Lexicon.Words("usable useable unusable use keep keeper good ok okay verdict acceptable accept pass");

    /// <summary>True when it is asked whether a clip may stay.</summary>
    public static bool Keeps(SaidThings said) => said.Any(Keeping) || said.Any(ClipWords.Judging);

    public static CrewRequest About(CrewRequest request, ClipAspect aspect) => request with { Intent = CrewIntent.ClipQuestion, Clip = request.Clip with { Aspect = aspect } };

    /// <summary>The likeliest aspect of a question known to be about a clip.</summary>
    public static ClipAspect Guess(SaidThings said) => Word(said, asks: true) ?? ClipAspect.Verdict;

    /// <summary>The aspect, the picture or the same clip once more; null when the question is about something else.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="named">True when the question itself names the clip.</param>
    public static CrewRequest? Read(CrewRequest request, SaidThings said, bool named)
    {
        bool plans = said.Any(Lexicon.Plans), supposes = said.Any(Lexicon.Supposing) && request.HasChanges;
        bool elsewhere = request.Site is not null || supposes || (said.MicrophoneSaid && !named && !said.Any(ClipWords.Figures)) || said.KitSaid is not null || said.CabinSaid is not null || (request.SceneSaid && !named);
        if (elsewhere || (said.Any(Lexicon.Microphones) && (said.Any(Lexicon.Wheres) || said.Any(Lexicon.Placing))))
        {
            return null;
        }

        if (Judged(request, said, plans) is { } judged)
        {
            return judged;
        }

        if ((request.Clip.Channel is not null || said.Any(Lexicon.Pictures)) && !plans && (said.Any(Lexicon.Pictures) || said.Any("show", "plot", "see", "view", "display", "spectrum", "graph")))
        {
            return request with { Intent = CrewIntent.ClipPicture };
        }

        bool asks = said.Any(Asking) || said.Any(Hearing) || said.Count <= 3;
        if (request.HasChanges && !(said.Tokens[0].IsAny(Asking) && said.Any(Hearing)))
        {
            return null;
        }

        if (said.Any(ClipWords.Comparing) && (plans || said.Any("forecast", "predicted", "prediction", "expected", "expect", "planned", "compare", "comparison") || said.Any("we", "you")) && !said.Any(Lexicon.Wheres))
        {
            return About(request, ClipAspect.Comparison);
        }

        if (plans)
        {
            return null;
        }

        return Word(said, asks) is { } aspect ? About(request, aspect) : null;
    }

    // "it is the driver's": the same clip once more, with what was missing.
    private static CrewRequest? Judged(CrewRequest request, SaidThings said, bool plans)
    {
        bool whose = request.TalkerId is not null && !plans && said.Count <= 8 && said.Any("it", "its", "this", "that", "thats", "was", "from") && !said.Any(Lexicon.Wheres) && !said.Any("why", "how", "which", "not") && !request.HasChanges;
        bool again = said.Any("again", "rejudge") && (said.Any(ClipWords.Judging) || said.Any("check", "listen"));
        return whose || again ? request with { Intent = CrewIntent.JudgeClip, Clip = request.Clip with { Again = true } } : null;
    }

    private static ClipAspect? Word(SaidThings said, bool asks)
    {
        // "Is it 24 bit", "at what time does it go wrong", "what else did you hear".
        if (said.Tokens.Where((t, i) => t.Word is "bit" or "bits" && i > 0 && said.Tokens[i - 1].Number is 16 or 24 or 32).Any())
        {
            return ClipAspect.File;
        }

        if (said.Any("file") && said.Any("many", "what", "which") && said.Any("channels", "tracks", "rate", "depth", "bits"))
        {
            return ClipAspect.File;
        }

        bool place = said.Any("time", "point", "second", "bit", "bits", "part", "parts", "spot", "moment") && (said.Any("bad", "worst", "goes", "go") || said.Any("wrong") && said.Any("time", "where", "when")) && !said.Any(Lexicon.Reasons);
        place |= said.Any("where", "wheres", "when") && said.Any("wrong", "problem", "problems", "issue", "trouble") && !said.Any(Lexicon.Reasons);
        if (place || (said.Any("time") && said.Any("of", "does", "is", "was") && said.Any(ClipWords.Heard)) || said.Any("times", "timestamps", "timecodes") || (said.Any("point") && said.Any("me") && said.Any("to", "out")))
        {
            return ClipAspect.Where;
        }

        if (said.Any("hear", "notice", "detect", "pick") && said.Any("what", "else", "anything", "alternative") && said.Any("you") && !said.Any(Noisy))
        {
            return ClipAspect.Heard;
        }

        if (said.Any("speed") && said.Any(Lexicon.Engines))
        {
            return ClipAspect.EngineSpeed;
        }

        if (said.Any("clip", "clips") && said.Any("did", "does", "it") && (said.Any("anywhere", "at", "ever", "where") || said.Count <= 4) && said.Tokens[0].IsAny(Asking))
        {
            return ClipAspect.Loudness;
        }

        if (said.Any("channel", "channels", "track", "tracks") && !said.Any("fm", "frequency", "quiet", "quietest", "free", "transmitters", "transmitter", "put") && (said.Any("which", "each", "both", "all", "every", "how", "bad", "worst", "best", "by", "compare") || said.Count <= 2))
        {
            return ClipAspect.Channels;
        }

        if (said.Any("clipping", "clipped", "overs") && !said.Any(ClipWords.Times) && !said.Any(Lexicon.Reasons) && !said.Any("second", "seconds", "fix"))
        {
            return ClipAspect.Loudness;
        }

        if (said.Any(Lexicon.Reasons) || (said.Any("fix", "mend", "remedy", "improve", "cure", "do") && said.Any("we", "how", "i", "should") && !said.Any("hear") && said.Count <= 8))
        {
            return ClipAspect.Why;
        }

        if (said.Any("timecode", "slate", "metadata", "format") && (said.Any("file", "there", "any") || said.Tokens[0].Word is "is" or "does" or "any"))
        {
            return ClipAspect.File;
        }

        if (said.Any("second", "seconds", "secs", "minute", "point", "points", "bit", "bits", "part", "parts") && said.Any("which", "what") && !said.Any("long", "depth"))
        {
            return ClipAspect.Where;
        }

        bool wrong = said.Any("up") && said.Any("what", "whats") && said.Any("with") || said.Any("wrong", "problem", "problems", "matter", "issue", "issues");
        if (wrong)
        {
            return ClipAspect.Why;
        }

        if ((said.Any(ClipWords.Times) || said.Any("time", "happen")) && said.Count <= 7)
        {
            return ClipAspect.Where;
        }

        if (said.Any(ClipWords.EngineSpeeds) || (said.Any("fast") && said.Any(Lexicon.Engines)))
        {
            return ClipAspect.EngineSpeed;
        }

        if ((said.Any(ClipWords.Heard) || said.Any(Lexicon.Fans) || said.Any(Lexicon.Engines)) && asks)
        {
            return ClipAspect.Heard;
        }

        if (said.Any(ClipWords.Noises) && (asks || said.Any("bad", "far", "above", "over")))
        {
            return ClipAspect.Noise;
        }

        if (said.Any(ClipWords.Loudness))
        {
            return ClipAspect.Loudness;
        }

        if (said.Any(ClipWords.Figures) || said.Any(Lexicon.More))
        {
            return ClipAspect.Figures;
        }

        if (said.Any("file", "format", "metadata", "slate", "timecode", "long", "length", "duration", "rate", "depth"))
        {
            return ClipAspect.File;
        }

        return Keeps(said) && said.Count <= 8 ? ClipAspect.Verdict : null;
    }
}
