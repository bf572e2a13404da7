namespace Quarterlight.Crew.Language;

/// <summary>
/// Decides whether a question is about a test clip, and what it asks. A clip that is there or is being talked about is asked about in few words; without one,
/// only words that can mean nothing else count, and what other rules left over.
/// </summary>
internal static class ClipIntentReader
{
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

        if (last && (current || named) && ClipAspectReader.Read(request, said, named) is { } about)
        {
            return about;
        }

        if (current && said.Any("spectrogram", "spectrum", "waveform", "graph", "plot", "chart"))
        {
            return request with { Intent = CrewIntent.ClipPicture };
        }

        bool judges = said.Any(ClipWords.Judging) && request.Site is null && !Microphones(said) && !request.HasChanges;
        bool points = said.Any("this", "that", "it", "take") && said.Any("usable", "useable", "unusable") && request.Site is null && !Microphones(said) && !request.HasChanges && said.Count <= 6;
        bool verdict = named && (said.Any(ClipWords.Verdicts) || said.Any(ClipWords.Judging) || said.Count <= 3 || said.Any("how", "what", "whats"));
        if (judges || points || verdict)
        {
            return last && !verdict && !said.Any("new", "another") && ClipAspectReader.Keeps(said) ? ClipAspectReader.About(request, ClipAspect.Verdict) : request with { Intent = CrewIntent.JudgeClip, Clip = request.Clip with { Again = said.Any("again") && last } };
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

        if (said.Any(ClipWords.Limits) && (said.Any(ClipAspectReader.Asking) || said.Any(Lexicon.Listing) || said.Count <= 2))
        {
            return request with { Intent = CrewIntent.ClipLimits };
        }

        if (said.Memory.LastClip is { } last)
        {
            // Once something else is talked about, "what time" and "why" alone no longer point at the clip.
            CrewRequest? about = ClipAspectReader.Read(request, said, named: true);
            bool vague = about is { Intent: not CrewIntent.ClipQuestion } or { Clip.Aspect: ClipAspect.Where or ClipAspect.Why or ClipAspect.Verdict or ClipAspect.File };
            return last.Current || !vague ? about : null;
        }

        bool clipOnly = said.Any("loudness", "lufs", "clipping", "dbtp", "gust", "gusts", "hum", "rumble", "noisefloor", "hiss") && said.Count <= 6;
        bool points = said.Any("this", "that", "it") && said.Any(ClipAspectReader.Keeping) && said.Count <= 5 && said.Tokens.All(t => t.IsAny(ClipWords.Verdicts) || t.IsAny(Lexicon.Plain) || t.IsAny(Lexicon.Allowing));
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
        bool supposing = said.Any(Lexicon.Supposing) && !(request.Clip.Limits is not null && said.Any("ignore", "mark", "flag", "mind", "count", "bother") && said.Any("judging", "judge", "clips", "clip"));
        if (radioTalk || request.Site is not null || supposing)
        {
            return null;
        }

        bool limits = said.Any(ClipWords.Limits);
        if (!limits && said.Any("snr", "db") && said.Any("from", "what", "which", "when") && said.Any("usable", "useable", "call", "accept", "good") && (named || said.Any("clip", "clips")) && request.Clip.Limits is null)
        {
            return request with { Intent = CrewIntent.ClipLimits };
        }

        // "Clips are fine from 18 dB", "don't mark clips down for the fan".
        bool says = request.Clip.Limits is not null && said.Any("clip", "clips", "recordings") && (said.Any("fine", "ok", "okay", "good", "usable", "useable") && said.Any("from", "above", "over", "at") || said.Any("mark", "ignore", "flag", "count", "penalise", "penalize"));
        if (says)
        {
            return request with { Intent = CrewIntent.SetClipLimits };
        }

        if (request.Clip.ResetsLimits && (limits || named || said.Any("back", "to", "defaults") || said.Count <= 2))
        {
            return request with { Intent = CrewIntent.SetClipLimits };
        }

        if (request.Clip.Limits is not null && (limits || said.Any(ClipWords.Setting)) && (limits || !said.Tokens[0].IsAny(ClipAspectReader.Asking) || said.Any("not")))
        {
            return request with { Intent = CrewIntent.SetClipLimits };
        }

        bool asks = said.Any(ClipAspectReader.Asking) || said.Any(Lexicon.Listing);
        return limits && (named || current || said.Any("threshold", "thresholds", "criteria")) && asks ? request with { Intent = CrewIntent.ClipLimits } : null;
    }

    private static bool Replans(SaidThings said, bool named, bool current, bool last)
    {
        bool plan = said.Any(Lexicon.Plans) || said.Any("replan", "rework");
        bool measured = said.Any("noise", "measured", "real", "recording", "clip") && (said.Any("that", "this", "measured", "real") || named);
        bool redoes = said.Any(ClipWords.Again) || said.Any("use", "with", "put", "take", "feed", "apply");
        return (plan || said.Any("redo")) && measured && redoes && (last || said.Any("measured") || named || said.Any("redo")) && !said.Any(ClipWords.Comparing) && (current || last || said.Any("noise"));
    }
}
