namespace Quarterlight.Crew.Language;

/// <summary>Decides whether a question is about heat, run time, levels or noise, and what it asks.</summary>
internal static class ForecastIntentReader
{
    private static readonly HashSet<string> Joining = Lexicon.Words("and also plus but whatabout with in at under on for");

    /// <summary>What is asked; null when the question is about something else.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="forecast">What the question says about it.</param>
    public static CrewRequest? Decide(CrewRequest request, SaidThings said, ForecastSaid forecast)
    {
        ForecastMemory? last = said.Memory.LastForecast;
        if (said.Count == 0 || request.Clip.Limits is not null && said.Any(ClipWords.Limits))
        {
            return null;
        }

        if (last is not null && said.Any(Lexicon.More) && said.Count <= 4)
        {
            return request with { Intent = last.Intent, Forecast = last.Said, Detailed = true };
        }

        if (ForSomethingElse(request, said, forecast.Heat))
        {
            return null;
        }

        if (Explicit(request, said, forecast) is { } named)
        {
            return As(request, said, named, forecast);
        }

        return last is not null && FollowUp(request, said, forecast, last.Intent) is { } next ? With(request, said, next, forecast, request.SceneSaid ? new ForecastSaid() : last.Said) : null;
    }

    /// <summary>A question known to be about one of them, with what goes on from the question before.</summary>
    /// <param name="request">Slots read so far.</param>
    /// <param name="said">Words.</param>
    /// <param name="intent">What is asked.</param>
    /// <param name="forecast">What the question says about it.</param>
    public static CrewRequest As(CrewRequest request, SaidThings said, CrewIntent intent, ForecastSaid forecast)
    {
        ForecastMemory? last = said.Memory.LastForecast;
        bool goesOn = last is not null && !request.SceneSaid && (Same(last.Intent, intent) && (Joins(said) || said.Any("too", "then", "instead")));
        ForecastSaid? before = goesOn ? last!.Said : last?.Intent == CrewIntent.HeatForecast && !request.SceneSaid ? new ForecastSaid { Heat = last.Said.Heat.Facts() } : null;
        return With(request, said, intent, forecast, before);
    }

    private static bool Joins(SaidThings said) => said.Tokens[0].IsAny(Joining);

    private static bool Same(CrewIntent last, CrewIntent now) => last == now || (IsNoise(last) && IsNoise(now));

    private static bool IsNoise(CrewIntent intent) => intent is CrewIntent.NoiseForecast or CrewIntent.QuietStretches;

    private static CrewRequest With(CrewRequest request, SaidThings said, CrewIntent intent, ForecastSaid forecast, ForecastSaid? before)
    {
        HeatSaid heat = forecast.Heat;
        ConditionChanges drive = forecast.Noise.Drive;

        // "Parked since 8", "at 9" and "AC off" say how the car stood, not how it is driven while rolling.
        bool stood = intent == CrewIntent.HeatForecast && (heat.SinceMinute is not null || heat.SoakMin is not null || (heat.StartMinute is not null && !said.Any("mph", "kmh", "doing", "driving")) || heat.OutsideC is not null && !said.Any("mph", "kmh"));
        drive = intent == CrewIntent.RunTime ? new ConditionChanges() : stood ? drive with { SpeedKmPerHour = null } : drive;
        var whole = forecast with { KitName = said.KitSaid, CabinName = said.CabinSaid, Noise = forecast.Noise with { Drive = drive } };
        return request with
        {
            Intent = intent,
            Detailed = said.Any("details", "detail", "everything"),
            Units = request.Units ?? (intent == CrewIntent.HeatForecast && heat.InFahrenheit ? UnitPreference.Imperial : null),
            Conditions = drive,
            Forecast = before is null ? whole : whole.Over(before),
        };
    }

    // Mounting microphones, the link and a clip that is talked about.
    private static bool ForSomethingElse(CrewRequest request, SaidThings said, HeatSaid heat)
    {
        bool clip = said.Memory.LastClip is { Current: true } && !said.Any(ForecastWords.Heat) && !said.Any(ForecastWords.Batteries) && !said.Any("gain", "gains", "pad", "preamp", "preamps", "transmitter", "card", "cards", "route", "stretch");
        bool levels = said.Any(ForecastWords.Gains) || said.Any(ForecastWords.Shouting) || said.Any(ForecastWords.Whispering);
        bool placing = said.Any(Lexicon.Reasons) || (said.Any(Lexicon.Plans) && !levels) || (request.Site is not null && !levels && !heat.ShutIn && !said.Any(ForecastWords.Heat) && !said.Any("windscreen", "covers", "cover"))
            || (said.Any(Lexicon.Microphones) && (said.Any(Lexicon.Wheres) || said.Any("go", "put", "hide", "mount", "rig")));
        bool sends = said.Any("followcar", "chasecar", "link") && said.Any("send", "transmitter") && said.Any("set", "setting", "gain", "level", "levels", "hot") && !said.Any("frequency", "channel", "far", "power", "mhz");
        bool link = !sends && said.Any("link", "followcar", "chasecar", "fallback", "dropback", "antenna", "antennas", "aerial", "aerials", "fm", "mhz", "range", "signal") || (said.Any("channel", "channels", "frequency", "frequencies") && !levels);
        return clip || placing || link;
    }

    private static CrewIntent? Explicit(CrewRequest request, SaidThings said, ForecastSaid forecast) =>
        IsLevels(request, said, forecast) ? CrewIntent.Levels
        : IsRunTime(said) ? CrewIntent.RunTime
        : IsRoute(said) ? CrewIntent.QuietStretches
        : IsHeat(said, forecast.Heat) ? CrewIntent.HeatForecast
        : IsNoise(said, forecast.Noise) ? CrewIntent.NoiseForecast
        : null;

    private static bool IsLevels(CrewRequest request, SaidThings said, ForecastSaid forecast)
    {
        if (said.Any("removed") || request.RemovedShotIds.Count > 0)
        {
            return false;
        }

        bool heatGain = (said.Any("gain", "gains") && said.Any("shade", "heat", "cover", "covers", "cool", "cooler", "popup", "canopy", "temperature", "park", "parking", "covered", "blanket", "earlier", "later")) && !said.Any("preamp", "level", "levels", "headroom");
        bool gain = !heatGain && said.Any("gain", "gains", "gainsheet", "preamp", "preamps", "headroom", "trim", "trims", "limiter", "limiters", "pad", "pads") && !said.Any("what's");
        bool voice = said.Any(ForecastWords.Shouting) || said.Any(ForecastWords.Whispering);
        bool asks = said.Any("if", "whatif", "what", "will", "does", "do", "can", "when", "how", "is", "whatabout", "would", "should", "for") || said.Count <= 4;
        bool laughs = said.Any("laugh", "laughs", "laughing", "cries", "cry", "crying", "sing", "sings", "singing", "cheer", "cheers", "argue", "argues", "loses", "loud", "kicks", "peak", "peaks");
        bool sending = said.Any("distort", "distorts", "distorting", "overload", "overloads", "overloading") && said.Any("transmitter", "bodypack", "lav", "mic", "recorder", "input", "send");
        bool clips = sending || said.Any("clip", "clips", "distort", "distorts", "peak", "peaks", "overload", "overloads") && request.TalkerId is not null && laughs && said.Any("will", "does", "would", "going", "gonna", "when", "if", "is");
        clips |= said.Any(ForecastWords.Clipping) && (forecast.Levels.Effort is not null || (said.Any(Lexicon.Microphones) && said.Any("will", "does", "would")));
        gain |= said.Any("hot") && said.Any("transmitter", "bodypack", "recorder", "input") && said.Any("how", "too");
        bool track = said.Any("safety") && said.Any("set", "db", "track", "tracks", "channel", "needed", "level", "gain");
        bool send = said.Any("send", "transmitter", "bodypack", "bodypacks", "recorder", "mixer", "input", "inputs") && said.Any("set", "setting", "hot") && said.Any("what", "how", "whats") && !said.Any("frequency", "frequencies", "channel", "channels", "mhz", "power", "far", "tune");
        bool levels = send || said.Any("level", "levels") && said.Any("set", "setting", "settings", "input", "inputs", "recorder", "transmitter") && !said.Any(Lexicon.Fans);
        return gain || (voice && asks) || clips || track || levels;
    }

    private static bool IsRunTime(SaidThings said)
    {
        bool card = said.Any("card", "cards") && (said.Any(ForecastWords.Ending) || said.Any("many", "need", "record", "hours", "hour", "hold", "fit", "gb", "gig", "big", "long", "much", "time", "tracks", "fill", "fills"));
        bool media = said.Any("gigs", "gigabytes", "gb") && said.Any("hour", "day", "per") || said.Any("media", "ssd", "ssds", "storage", "gigabytes", "disk") || card;
        bool recorder = said.Any("recorder") && (said.Any("last", "lasts", "long", "run", "runs", "die", "dies", "hours", "power", "till", "until", "lunch", "survive") && !said.Any("gain", "input", "inputs"));
        bool packs = said.Any("pack", "packs", "bodypack", "bodypacks", "beltpack", "beltpacks", "bag", "mixer", "transmitters", "receivers") && (said.Any("runout", "die", "dies", "dead", "charge", "charged", "flat", "power") || (said.Any("last", "lasts") && said.Any("until", "till", "day", "lunch", "wrap", "hours", "how", "do", "does", "will"))) && !said.Any("gain", "level", "mhz");
        bool makesLunch = said.Any("make", "makes", "made", "survive", "survives", "power") && (said.Any("lunch", "wrap") || said.Any("until", "till") && !said.Any("heat")) && !said.Any(Lexicon.Microphones) && said.Count <= 9;
        packs |= makesLunch || said.Any("pack", "packs") && said.Any("change", "swap") && said.Any("when", "how", "often");
        bool bag = said.Any("bag", "recorder") && said.Any("long", "leave", "alone") && said.Any("how", "can") && said.Any("leave", "alone", "unattended", "run", "runs", "last");
        packs |= bag;
        bool first = said.Any("first") && (said.Any("runout", "dies", "die", "empty", "flat", "fails") || (said.Any("run", "runs") && said.Any("out")));
        bool record = said.Any("record", "recording") && said.Any("long", "much", "hours", "left") && said.Any("time", "left", "can") && said.Any("how");
        return said.Any(ForecastWords.Batteries) || packs || media || recorder || first || record || (said.Any("takes") && said.Any("only") && said.Any("record", "recording", "rolling", "roll") && said.Memory.LastForecast?.Intent == CrewIntent.RunTime);
    }

    private static bool IsRoute(SaidThings said)
    {
        bool works = said.Any(ForecastWords.Quiet) || said.Any(ForecastWords.Rolling) || said.Any("longest", "where", "which", "best", "usable", "works", "work", "dialogue", "good", "enough");
        if (said.Any(ForecastWords.Routes) && (works || said.Count <= 4))
        {
            return true;
        }

        bool anywhere = said.Any("where") && said.Any("roll", "rolling") && said.Count <= 6;
        bool along = anywhere || said.Any("along") && said.Any("way", "road", "drive") && said.Any("where", "which") && said.Any(ForecastWords.Rolling);
        bool bits = said.Any("bit", "bits", "part", "parts", "piece", "pieces", "section", "where") && said.Any("road", "street", "streets", "roads", "way", "drive", "lane") && said.Any("which", "what", "where", "good", "best") && said.Any("good", "best", "works", "work", "usable", "dialogue", "dialog", "clean", "record", "talk");
        bool quiet = bits || said.Any(ForecastWords.Quiet) && (said.Any("where", "wheres") || said.Any("longest") || (said.Any("which", "what") && said.Any("road", "street", "part", "bit", "piece", "way")));
        quiet |= said.Any(ForecastWords.Quiet) && said.Any("enough") && said.Any("road", "street", "lane");
        return along || (quiet && !said.Any("channel", "frequency", "dial", "spot", "car"));
    }

    private static bool IsHeat(SaidThings said, HeatSaid heat)
    {
        bool hot = said.Any("hot", "warm") && said.Any("how", "too", "get", "gets", "will", "it", "car", "inside", "when") && !said.Any(Lexicon.Microphones) && !said.Any("level", "levels", "signal", "take", "recording", "clip", "transmitter", "bodypack", "input", "recorder");
        bool cool = said.Any(ForecastWords.Cooling) && said.Any("how", "long", "first", "between", "before", "need", "must", "minutes", "down", "much", "to", "car") && !said.Any("thats", "cool.");
        bool rolls = (said.Any("roll", "rolling", "film", "filming", "shoot", "shooting", "take", "takes") || (said.Any("keep") && said.Any("going"))) && ((said.Any("long", "minutes", "mins", "minute") && said.Any("how", "can", "is", "could", "are", "we")) || heat.RollMin is not null || heat.DayMin is not null);
        bool shutWindows = heat.RollMin is not null && said.Any("ok", "okay", "safe", "fine", "alright", "bad", "too") && said.Any(Lexicon.Windows) && said.Any(Lexicon.Closed);
        bool shooting = said.Any("shoot", "shooting", "film", "filming") && heat.StartMinute is not null && said.Any("if", "whatif", "instead", "earlier", "later");
        bool take = heat.Aspect == HeatAspect.Roll && said.Any("take", "takes", "roll") && said.Any("longest", "max", "maximum") || said.Any("sun", "sunny") && said.Any("take", "takes", "long", "longest");
        bool freezing = said.Any("freezing") && said.Any("cast", "actors", "talent", "them", "out");
        bool dog = shutWindows || shooting || take || freezing || (heat.Animals > 0 || said.Any("dog", "dogs", "cat", "cats", "puppy", "pet", "pets")) && said.Any("whatif", "if", "with", "got", "has", "comes", "along");
        bool gains = said.Any("shade", "cover", "covers", "popup") && said.Any("gain", "gains");
        bool faints = said.Any("faints", "fainting", "fainted");
        bool fan = dog || gains || faints || said.Any(Lexicon.Fans) && (heat.RollMin is not null || said.Any("before", "between", "first") || (said.Any("how") && said.Any("long", "minutes"))) && !said.Any("hear", "loud", "noisy");
        bool shutIn = heat.RollMin is not null && (said.Any("shut", "in") && said.Any("shut", "locked", "car")) && (heat.Adults ?? heat.Children ?? heat.Animals) is not null;
        bool batteries = said.Memory.LastForecast?.Intent == CrewIntent.RunTime && heat.HumidityPercent is null && heat.CloudFraction is null && heat.RollMin is null;
        bool weather = !batteries && heat.SaysWeather;
        bool beings = (heat.Children > 0 || heat.Animals > 0) && said.Any("car", "cabin", "back", "backseat", "inside", "in", "seat") && !said.Any(Lexicon.Microphones) && !said.MicrophoneSaid && !said.Any(Lexicon.Wheres) && !said.Any("who", "record", "hear", "mic", "put");
        bool sun = said.Any("sun") && (heat.SinceMinute is not null || heat.SoakMin is not null || said.Any("parked", "standing", "stood"));
        bool danger = said.Any("dangerous", "danger", "safe") && said.Any("in", "inside", "long", "when") && said.Any("there", "car", "long", "cabin", "them", "people") && !said.Any(Lexicon.Allowing.Except(["safe"]).ToHashSet());
        return said.Any(ForecastWords.Heat) || hot || cool || rolls || fan || shutIn || weather || beings || sun || danger || heat.Cover is not null and not V1.SunCover.None || said.Any("rhythm") || heat.ShutIn || heat.HeadingDeg is not null && said.Count <= 5;
    }

    private static bool IsNoise(SaidThings said, NoiseSaid noise)
    {
        bool loud = said.Any("loud", "noisy") && said.Any("how") || said.Any("loudest", "noisiest", "dominates", "dominate", "dominant");
        bool inside = said.Any("noise", "noisefloor") && (said.Any("cabin", "interior", "inside", "level", "levels", "floor") || said.Tokens.Any(t => t.Is("noisefloor"))) && !said.Any("that", "this", "clip", "recording", "speech", "channel", "channels") && said.Memory.LastClip is not { Current: true };
        bool decibels = (said.Any("loudness", "db", "level") && said.Any("interior", "cabin", "inside", "mph", "kmh") || said.Any("still") && said.Any("hear") && said.Any("do", "doing", "at") && noise.Drive.SpeedKmPerHour is not null && !said.Any("they", "back", "behind")) && said.Memory.LastClip is not { Current: true } && !said.Any("speech", "clip", "set", "gain", "use", "care");
        bool rainNoise = said.Any("noise", "noisy") && (noise.Drive.Rain is not null || said.Any("speed", "speeds"));
        bool noises = inside || decibels || rainNoise || said.Any("noise", "noises") && (said.Any("what", "whats", "how", "which", "most", "much", "table", "forecast", "tyre", "tire", "tyres", "tires", "engine", "wind") && !said.Any("that", "this"));
        noises |= said.Any("noisy", "loud") && said.Any("speed", "too");
        bool fast = noise.Aspect == NoiseAspect.Fastest && (said.Any("how", "top", "max", "maximum", "fastest", "highest")) && !said.Any("power", "distance", "gap", "take", "takes") && (said.Any("we", "can", "they", "go", "drive", "car", "works", "work", "still", "you", "speed", "i") || said.Any("fastest"));
        fast |= said.Any("speed") && said.Any("what", "which") && said.Any("should", "keep", "drive", "hold", "ok");
        bool table = noise.Aspect == NoiseAspect.Table && said.Any("speed", "speeds", "ad", "assistant", "noise", "director", "mph", "kmh", "table");
        bool sources = noise.BandHz is not null && said.Any("what", "whats", "which", "who") && !said.Any("set", "transmitter", "legal") || noise.Aspect == NoiseAspect.Loudest && (said.Any("or", "problem", "worst") || noise.BandHz is not null) && (said.Any(ForecastWords.Sources) || said.Any(ForecastWords.Dominating));
        return loud || noises || fast || table || sources;
    }

    private static CrewIntent? FollowUp(CrewRequest request, SaidThings said, ForecastSaid forecast, CrewIntent last)
    {
        bool gear = said.KitSaid is not null || said.CabinSaid is not null || (request.SceneSaid && Joins(said));
        bool drive = !forecast.Noise.Drive.IsEmpty, plans = said.Any(Lexicon.Microphones) || said.MicrophoneSaid || request.RemovedShotIds.Count > 0 || said.Any(Lexicon.Removing) && (request.SiteRemoved || request.RemovedMicrophoneIds.Count > 0) && forecast.Heat.IsEmpty;
        if (plans)
        {
            return null;
        }

        return last switch
        {
            CrewIntent.HeatForecast when !forecast.Heat.IsEmpty || forecast.Heat.Aspect == HeatAspect.Between || (forecast.Heat.Aspect != HeatAspect.Any && said.Count <= 6 && forecast.Heat.Aspect != HeatAspect.Roll) || (drive && Joins(said)) || gear => last,
            CrewIntent.RunTime when !forecast.RunTime.IsEmpty || gear => last,
            CrewIntent.Levels when !(forecast.Levels with { TalkerId = null }).IsEmpty || (request.TalkerId is not null && said.Count <= 5) || gear => last,
            CrewIntent.NoiseForecast or CrewIntent.QuietStretches when drive || forecast.Noise.BandHz is not null || gear => last,
            _ => null,
        };
    }
}
