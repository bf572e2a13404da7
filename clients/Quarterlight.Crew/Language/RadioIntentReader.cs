namespace Quarterlight.Crew.Language;

/// <summary>Decides whether a question is about the radio, and what it asks. Runs before the other rules, as its words are its own.</summary>
internal static class RadioIntentReader
{
    // Words that may stand round "legal" in a question about nothing else.
    private static readonly HashSet<string> LawFiller = Lexicon.Words("are we is it this that the a an our need needs for do does have to here link in order get ok legal there any what about whatabout with us on if so and now still what whats does say who i ask how must can me my know");

    private static readonly HashSet<string> FallingBack = Lexicon.Words("back behind follow following followcar chasecar they them trail trailing fall drop reach reaches lag range between lose feed monitor followers listen listens listening director script supervisor village cart");

    /// <summary>What is asked about the radio; null when the question is about something else.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="radio">What the question says about the radio.</param>
    /// <param name="last">What was last asked about it, while it is being talked about; else null.</param>
    public static CrewRequest? Decide(CrewRequest request, SaidThings said, RadioSaid radio, RadioMemory? last)
    {
        bool wireless = said.Any("radio", "wireless", "radios");
        if (last is not null && said.Any(Lexicon.More) && said.Count <= 4)
        {
            return request with { Intent = last.Intent, Radio = last.Said, Detailed = true };
        }

        if (ForSomethingElse(request, said, radio, wireless))
        {
            return null;
        }

        if (Explicit(request, said, radio, wireless, last is not null) is { } named)
        {
            bool goesOn = last is not null && ((last.Intent == named && said.Tokens[0].Word is "and" or "also" or "plus" or "but" or "whatabout" or "whatif" or "with" or "in" or "on") || (radio.IsEmpty && named == CrewIntent.LinkLaw));
            return With(request, said, named, radio, goesOn ? last : null);
        }

        // "make it twelve"
        if (last?.Intent == CrewIntent.Channels && radio.IsEmpty && said.Count <= 4 && said.Tokens[^1].Number is { } count and >= 1 and <= 100 && count == Math.Floor(count))
        {
            radio = radio with { TransmitterCount = (int)count };
        }

        bool slots = !radio.IsEmpty;
        if (last is not null && (slots || radio.SpeedKmPerHour is not null || said.KitSaid is not null || AnotherScene(request, said)))
        {
            return With(request, said, FollowUp(last.Intent, radio), radio, last);
        }

        return slots && SlotsAlone(said, radio) is { } alone ? With(request, said, alone, radio, null) : null;
    }

    /// <summary>A question known to be about the radio that does not go on from another.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="intent">What is asked.</param>
    /// <param name="radio">What the question says about it.</param>
    public static CrewRequest As(CrewRequest request, SaidThings said, CrewIntent intent, RadioSaid radio) => With(request, said, intent, radio, null);

    private static CrewRequest With(CrewRequest request, SaidThings said, CrewIntent intent, RadioSaid radio, RadioMemory? last)
    {
        RadioSaid whole = radio with { KitName = said.KitSaid };
        RadioSaid? before = last is null ? null : said.KitSaid is null ? last.Said : last.Said.WithoutGear();
        bool sameScene = last is not null && !request.SceneSaid;
        if (sameScene && said.Tokens[0].Word is "and" or "also" or "plus")
        {
            whole = whole with
            {
                Stations = whole.Stations.Count > 0 ? [.. before!.Stations, .. whole.Stations] : [],
                CarriersMHz = intent == CrewIntent.CheckChannels && whole.CarriersMHz.Count == 0 && whole.FrequencyMHz is { } another ? [.. before!.CarriersMHz, another] : whole.CarriersMHz,
            };
        }

        return request with { Intent = intent, Detailed = said.Any("details", "detail", "everything"), Radio = sameScene ? whole.Over(before!) : whole };
    }

    // "and for the driving lesson?"
    private static bool AnotherScene(CrewRequest request, SaidThings said) => request.SceneSaid && said.Count <= 6 && said.Tokens[0].Word is "and" or "whatabout" or "for" && !said.Any(Lexicon.Microphones);

    // Mounting microphones, windows, weather, shots: the plan's business even while the link is talked about.
    private static bool ForSomethingElse(CrewRequest request, SaidThings said, RadioSaid radio, bool wireless)
    {
        if (said.Count == 0 || said.Any("battery", "batteries") || (said.Any(Lexicon.Plans) && !said.Any(RadioWords.Channels)))
        {
            return true;
        }

        ConditionChanges c = request.Conditions;
        bool radioNumber = radio.FrequencyMHz is not null || radio.Power is not null || radio.TuningRanges.Count > 0 || radio.CarriersMHz.Count > 0;
        bool strong = said.Any(RadioWords.Links) || radioNumber || said.Any(RadioWords.Coordinating) || said.Any("interfere", "interferes", "interfering") || (said.Any("between", "apart") && said.Any("cars", "vehicles"));
        bool driving = c.Windows.Count > 0 || c.FanStep is not null || c.Rain is not null || c.EngineSpeedRpm is not null || c.Road is not null;
        bool microphones = (said.Any(Lexicon.Microphones) && !wireless && radio.TransmitterCount is null && !said.Any(RadioWords.Channels)) || (said.MicrophoneSaid && radio.TransmitterCount is null && !said.Any(RadioWords.Channels));
        bool place = request.Site is not null && !said.Any(RadioWords.Antennas) && !said.Any("antenna", "mast") && radio.TransmitAntenna.IsEmpty;
        bool rigging = request.TalkerId is not null && !radioNumber && radio.GapM is null && (said.Any(Lexicon.Wheres) || said.Any(Lexicon.Placing) || said.Any("which"));
        return rigging || (!strong && (driving || microphones || place || request.RemovedShotIds.Count > 0 || request.RemovedMicrophoneIds.Count > 0 || said.Any(Lexicon.Sites) || (said.Any(Lexicon.Wheres) && request.TalkerId is not null)));
    }

    private static CrewIntent? Explicit(CrewRequest request, SaidThings said, RadioSaid radio, bool wireless, bool talking)
    {
        bool channel = said.Any(RadioWords.Channels), link = said.Any(RadioWords.Links);
        bool thing = radio.FrequencyMHz is not null || radio.Power is not null || link || channel || said.Any("power", "radio", "signal", "eirp", "erp", "wireless", "transmitter", "transmitters");
        if (IsLaw(said, radio, thing, talking))
        {
            return CrewIntent.LinkLaw;
        }

        if (radio.CarriersMHz.Count > 1 && !link && radio.Stations.Count == 0 && !said.Any("range", "hear"))
        {
            return CrewIntent.CheckChannels;
        }

        bool tunes = said.Any("tune", "tuned", "tuning") && radio.TransmitterCount is not null || radio.TransmitterCount is not null && radio.SpacingKHz is not null;
        bool setOf = said.Any("frequencies", "channels", "freqs") && said.Any("set", "clash", "apart", "spread", "packs", "list") && radio.CarriersMHz.Count == 0 && !said.Any("settings");
        bool spread = said.Any("spread", "tune") && said.Any(RadioWords.Transmitters);
        bool several = tunes || setOf || spread || (said.Any("channels", "frequencies", "freqs", "carriers") || said.Any(Lexicon.Plans)) && (said.Any(RadioWords.Transmitters) || (wireless && said.Any(Lexicon.Microphones)));
        bool dial = said.Any("dial") && said.Any("where", "empty", "gap", "free", "quiet") || said.Any("gap", "gaps") && said.Any("stations", "station");
        bool quiet = dial || said.Any(RadioWords.Quiet) && said.Any("channel", "frequency", "freq", "channels", "frequencies", "fm", "spot");
        bool mutual = said.Any("interfere", "interferes", "interfering", "clash", "clashes", "clashing") && (said.Any(RadioWords.Transmitters) || said.Any(Lexicon.Microphones));
        if (said.Any(RadioWords.Coordinating) || several || mutual || (radio.TuningRanges.Count > 0 && (said.Any(RadioWords.Transmitters) || channel || radio.TransmitterCount is not null)) || (radio.TransmitterCount is not null && channel && !quiet))
        {
            return CrewIntent.Channels;
        }

        bool whichChannel = said.Any("channel", "frequency", "freq", "fm") && said.Any("which", "what", "best", "find", "recommend", "suggest") && radio.GapM is null && radio.Power is null && !said.Any("if", "whatif", "whatabout", "range");
        if (quiet || radio.Stations.Count > 0 || (whichChannel && radio.FrequencyMHz is null))
        {
            return CrewIntent.QuietChannel;
        }

        bool road = radio.Sight is not null || radio.Surroundings is not null || radio.Power is not null || radio.FrequencyMHz is not null;
        bool may = said.Any("can", "could", "may", "should") && said.Any("we", "they", "be", "go");
        bool metresUntil = said.Any("metres", "meters", "yards", "feet", "miles") && said.Any("how") && said.Any("many") && said.Any("dropouts", "dropout", "lose", "losing", "lost", "dies", "before", "until");
        bool howFar = metresUntil || said.Any("far", "distance") && said.Any("how", "what", "max", "maximum", "longest") && (said.Any(FallingBack) || road || may || talking) && !said.Any(Lexicon.Microphones) && !said.Any("seat", "seats", "lean") && !said.Any(Lexicon.Cameras);
        bool howNear = said.Any("how") && said.Any("close", "near") && said.Any("stay", "keep", "they", "follow") && request.TalkerId is null && !said.Any(Lexicon.Microphones);
        bool heard = said.Any("hear", "headphones", "cans") && said.Any("us", "we", "back", "cutting", "cut", "cuts", "lose", "losing") && said.Any("they", "director", "script", "supervisor") && !said.Any(Lexicon.Microphones);
        bool parting = said.Any("between", "separation", "apart", "distance", "room") && (said.Any("cars", "vehicles") || (said.Any("picture") && said.Any("car"))) && (said.Any("lose", "losing", "lost", "signal", "max", "maximum", "audio") || may) && !said.Any(Lexicon.Microphones);
        bool loses = said.Any("lose", "lost", "losing") && said.Any("them", "they", "followers", "director") && said.Any("where", "when", "how") && !said.Any(Lexicon.Microphones) && request.RemovedShotIds.Count == 0;
        bool reliable = radio.AvailabilityFraction is not null && said.Any("distance", "reliable", "reliably", "far");
        bool range = loses || reliable || said.Any("range") && said.Count <= 12 && !said.Any("tuning", "dynamic");
        return link || parting || howFar || howNear || heard || range || (said.Any("signal") && said.Count <= 8 && !said.Any(Lexicon.Microphones)) ? CrewIntent.LinkCheck : null;
    }

    private static bool IsLaw(SaidThings said, RadioSaid radio, bool thing, bool talking)
    {
        if (said.Any(RadioWords.Laws))
        {
            return thing || radio.Country is not null || talking || said.Tokens.All(t => t.IsAny(LawFiller) || t.IsAny(RadioWords.Laws));
        }

        bool asks = said.Any("what", "whats", "how", "is", "are", "am", "which", "max", "maximum");
        bool fine = (said.Any("ok", "okay", "fine", "alright") || (said.Any("can", "may", "could") && said.Any("use", "run", "send"))) && radio.Country is not null
            && (radio.Power is not null || radio.FrequencyMHz is not null || (radio.TuningRanges.Count > 0 && radio.TransmitterCount is null && !said.Any(RadioWords.Transmitters))) && radio.GapM is null;
        bool here = said.Any("here", "trouble", "allowed") && said.Any("can", "allowed", "trouble", "may", "am") && (radio.FrequencyMHz is not null || radio.Power is not null || said.Any("broadcasting", "transmitting", "broadcast", "transmit")) && radio.GapM is null && !said.Any("hear", "range");
        bool where = radio.Country is not null && radio.GapM is null && (said.Any("allowed", "rules", "rule") || (said.Any("power", "mw", "watts") && asks) || (said.Any("ok", "okay", "fine") && said.Any("transmitters", "transmitter", "radios", "radio", "wireless", "packs", "gear")));
        bool much = radio.Power is not null && said.Any("too") && said.Any("much") && radio.GapM is null;
        bool most = here || where || much || said.Any("power", "eirp", "erp") && said.Any("much", "max", "maximum") && (asks || radio.Country is not null) && radio.GapM is null && !said.Any("range");
        bool over = said.Any("limit", "limits") && ((said.Any("over", "above", "below", "under") && asks) || (radio.Country is not null && said.Count <= 4));
        return fine || most || over || (said.Any(RadioWords.Limits) && asks && (thing || (radio.Country is not null && talking)));
    }

    private static CrewIntent FollowUp(CrewIntent last, RadioSaid radio)
    {
        bool ofLink = radio.GapM is not null || radio.Surroundings is not null || radio.Sight is not null || radio.Stereo is not null || radio.AvailabilityFraction is not null || !radio.TransmitAntenna.IsEmpty || !radio.ReceiveAntenna.IsEmpty;
        bool channels = last is CrewIntent.Channels or CrewIntent.CheckChannels;
        return channels && radio.SaysChannels ? CrewIntent.Channels
            : last != CrewIntent.LinkCheck && ofLink ? CrewIntent.LinkCheck
            : channels && radio.Country is not null ? CrewIntent.LinkLaw
            : last;
    }

    // Without a word of the radio and nothing talked about: only what can mean nothing else.
    private static CrewIntent? SlotsAlone(SaidThings said, RadioSaid radio)
    {
        if (radio.SaysChannels && radio.TuningRanges.Count > 0)
        {
            return CrewIntent.Channels;
        }

        bool gap = radio.GapM is >= 10 && !said.Any(Lexicon.Microphones) && said.KitSaid is null && said.CabinSaid is null;
        bool mono = radio.Stereo is not null && said.Count <= 5 && !said.Any("record", "recording", "pair");
        bool antenna = !radio.TransmitAntenna.IsEmpty && said.Any(RadioWords.Antennas);
        return radio.FrequencyMHz is not null || radio.Power is not null || gap || mono || antenna || radio.Sight is not null and not V1.LinkSight.Clear ? CrewIntent.LinkCheck : null;
    }
}
