namespace Quarterlight.Crew.Language;

/// <summary>
/// Decides whether a question is about a test clip, and what it asks. A clip that is there or is being talked about is asked about in few words; without one,
/// only words that can mean nothing else count, and what other rules left over.
/// </summary>
internal static class ClipIntentReader
{
    private static readonly HashSet<string> Asking = Lexicon.Words("is was are were any did does do has have how hows what whats which much can could");
    private static readonly HashSet<string> Hearing = Lexicon.Words("hear heard audible detect detected notice there running it on");
    private static readonly HashSet<string> Keeping = Lexicon.Words("usable useable unusable use keep keeper good ok okay verdict acceptable accept pass");

    /// <summary>A question that came with a clip.</summary>
    public static CrewRequest Attached(CrewRequest request) => request with { Intent = CrewIntent.JudgeClip, UnknownScene = null, Clip = request.Clip with { Demo = false } };

    /// <summary>What is asked about clips; null when the question is about something else.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="radio">What the question says about the radio.</param>
    public static CrewRequest? Decide(CrewRequest request, SaidThings said, RadioSaid radio)
    {
        if (said.Count == 0)
        {
            return null;
        }

        bool last = said.Memory.LastClip is not null, current = said.Memory.LastClip is { Current: true };
        if (current && said.Any("track", "tracks"))
        {
            // A track of the clip, not one to drive on.
            request = request with { Conditions = request.Conditions with { Road = null } };
        }

        bool named = ReallyNamed(request, said);
        if (request.Clip.Demo)
        {
            return request with { Intent = CrewIntent.JudgeClip };
        }

        // Before names count: "four cylinders" is no four-door car.
        if (current && request.Clip.Cylinders is not null && request.Site is null && !said.Any(Lexicon.Plans) && said.Count <= 8)
        {
            return request with { Intent = CrewIntent.JudgeClip, Clip = request.Clip with { Again = true } };
        }

        if (SetsLimits(request, said, radio, named, current) is { } limits)
        {
            return limits;
        }

        if (Replans(said, named, current, last))
        {
            return request with { Intent = CrewIntent.ClipReplan };
        }

        if (last && (current || named) && Aspect(request, said, named) is { } about)
        {
            return about;
        }

        bool judges = said.Any(ClipWords.Judging) && request.Site is null && !Microphones(said) && !request.HasChanges;
        bool points = said.Any("this", "that", "it", "take") && said.Any("usable", "useable", "unusable") && request.Site is null && !Microphones(said) && !request.HasChanges && said.Count <= 6;
        bool verdict = named && (said.Any(ClipWords.Verdicts) || said.Any(ClipWords.Judging) || said.Count <= 3 || said.Any("how", "what", "whats"));
        if (judges || points || verdict)
        {
            return last && !verdict && !said.Any("new", "another") && Keeps(said) ? About(request, ClipAspect.Verdict) : request with { Intent = CrewIntent.JudgeClip, Clip = request.Clip with { Again = said.Any("again") && last } };
        }

        return null;
    }

    /// <summary>What a question that no other rule understood asks about clips; null when nothing.</summary>
    public static CrewRequest? Fallback(CrewRequest request, SaidThings said)
    {
        if (said.Count == 0)
        {
            return null;
        }

        if (said.Any(ClipWords.Limits) && (said.Any(Asking) || said.Any(Lexicon.Listing) || said.Count <= 2))
        {
            return request with { Intent = CrewIntent.ClipLimits };
        }

        if (said.Memory.LastClip is not null)
        {
            return Aspect(request, said, named: true);
        }

        bool clipOnly = said.Any("loudness", "lufs", "clipping", "dbtp", "gust", "gusts", "hum", "rumble", "noisefloor", "hiss") && said.Count <= 6;
        bool points = said.Any("this", "that", "it") && said.Any(Keeping) && said.Count <= 5 && said.Tokens.All(t => t.IsAny(ClipWords.Verdicts) || t.IsAny(Lexicon.Plain) || t.IsAny(Lexicon.Allowing));
        return clipOnly || points ? request with { Intent = CrewIntent.JudgeClip } : null;
    }

    // "the clip on the visor" is a fixing, and so is one in shot or for a microphone.
    private static bool ReallyNamed(CrewRequest request, SaidThings said) => ClipReader.NamesClip(said.Tokens)
        && request.Site is null && !Microphones(said) && !said.Any(Lexicon.Cameras) && !said.Any("spring", "fixing", "fixings", "tape", "many") && request.RemovedMicrophoneIds.Count == 0
        && !(request.HasChanges && said.Any(Lexicon.Supposing));

    // Of the clip's own channel the talker's microphone may well be named.
    private static bool Microphones(SaidThings said) => (said.Any(Lexicon.Microphones) || said.MicrophoneSaid) && !said.Any("clip", "clips", "recording", "wav", "judge");

    private static CrewRequest? SetsLimits(CrewRequest request, SaidThings said, RadioSaid radio, bool named, bool current)
    {
        bool radioTalk = said.Memory.LastRadio is not null || radio.FrequencyMHz is not null || radio.Power is not null || radio.Country is not null || said.Any(RadioWords.Laws);
        if (radioTalk || request.Site is not null || said.Any(Lexicon.Supposing))
        {
            return null;
        }

        bool limits = said.Any(ClipWords.Limits);
        if (request.Clip.ResetsLimits && (limits || named || said.Any("back", "to", "defaults") || said.Count <= 2))
        {
            return request with { Intent = CrewIntent.SetClipLimits };
        }

        if (request.Clip.Limits is not null && (limits || said.Any(ClipWords.Setting)) && (limits || !said.Tokens[0].IsAny(Asking) || said.Any("not")))
        {
            return request with { Intent = CrewIntent.SetClipLimits };
        }

        bool asks = said.Any(Asking) || said.Any(Lexicon.Listing);
        return limits && (named || current || said.Any("threshold", "thresholds", "criteria")) && asks ? request with { Intent = CrewIntent.ClipLimits } : null;
    }

    private static bool Replans(SaidThings said, bool named, bool current, bool last)
    {
        bool plan = said.Any(Lexicon.Plans) || said.Any("replan", "rework");
        bool measured = said.Any("noise", "measured", "real", "recording", "clip") && (said.Any("that", "this", "measured", "real") || named);
        bool redoes = said.Any(ClipWords.Again) || said.Any("use", "with", "put", "take", "feed", "apply");
        return (plan || said.Any("redo")) && measured && redoes && (last || said.Any("measured") || named || said.Any("redo")) && !Compares(said) && (current || last || said.Any("noise"));
    }

    private static bool Compares(SaidThings said) => said.Any(ClipWords.Comparing);

    private static bool Keeps(SaidThings said) => said.Any(Keeping) || said.Any(ClipWords.Judging);

    private static CrewRequest About(CrewRequest request, ClipAspect aspect) => request with { Intent = CrewIntent.ClipQuestion, Clip = request.Clip with { Aspect = aspect } };

    private static CrewRequest? Aspect(CrewRequest request, SaidThings said, bool named)
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

        if (Compares(said) && (plans || said.Any("forecast", "predicted", "prediction", "expected", "expect", "planned", "compare", "comparison") || said.Any("we", "you")) && !said.Any(Lexicon.Wheres))
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
        if (said.Any("channel", "channels", "track", "tracks") && !said.Any("fm", "frequency", "quiet", "quietest", "free", "transmitters", "transmitter", "put") && (said.Any("which", "each", "both", "all", "every", "how", "bad", "worst", "best") || said.Count <= 2))
        {
            return ClipAspect.Channels;
        }

        if (said.Any(Lexicon.Reasons) || (said.Any("fix", "mend", "remedy", "improve", "cure", "do") && said.Any("we", "how", "i", "should") && !said.Any("hear") && said.Count <= 8))
        {
            return ClipAspect.Why;
        }

        bool wrong = said.Any("wrong", "problem", "problems", "matter", "issue", "issues");
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

        if (said.Any("file", "format", "metadata", "slate", "timecode", "long", "length", "duration", "rate"))
        {
            return ClipAspect.File;
        }

        return Keeps(said) && said.Count <= 8 ? ClipAspect.Verdict : null;
    }
}
