namespace Quarterlight.Crew.Language;

/// <summary>The words of test clips, by what they stand for. "Clip" alone is also a fixing, so it counts only as a thing that is judged.</summary>
public static class ClipWords
{
    /// <summary>Recorded sound as a thing, beside "clip" itself.</summary>
    public static readonly IReadOnlySet<string> Files = Lexicon.Words("file files recording recordings wav wave flac mp3 ogg audiofile soundfile take takes sample rushes");

    /// <summary>Words that make "clip" or a recording a thing one points at.</summary>
    public static readonly IReadOnlySet<string> Pointing = Lexicon.Words("this that the a my our your test demo example invented last first next second another any audio sound wav every these those of one");

    /// <summary>Asking for a verdict, and nothing else.</summary>
    public static readonly IReadOnlySet<string> Judging = Lexicon.Words("judge judges judging judged judgement judgment verdict assess rate grade");

    /// <summary>Asking for a verdict beside something recorded.</summary>
    public static readonly IReadOnlySet<string> Verdicts = Lexicon.Words("usable useable unusable use used using keep keeper good ok okay fine bad wrong check listen hear test analyse analyze examine send upload attach accept acceptable pass clean noise noisy problem problems decide think about");

    /// <summary>Asking for places in time.</summary>
    public static readonly IReadOnlySet<string> Times = Lexicon.Words("where whereabouts when exactly timecode");

    /// <summary>Asking for figures.</summary>
    public static readonly IReadOnlySet<string> Figures = Lexicon.Words("measure measured measures measurement measurements figures numbers details detail stats statistics readings everything full");

    /// <summary>Loudness and peaks.</summary>
    public static readonly IReadOnlySet<string> Loudness = Lexicon.Words("loudness lufs lkfs peak peaks dbtp headroom levels level loud");

    /// <summary>Engine speed.</summary>
    public static readonly IReadOnlySet<string> EngineSpeeds = Lexicon.Words("rpm revs revolutions revving turning");

    /// <summary>Things the tagger and the ear listen for.</summary>
    public static readonly IReadOnlySet<string> Heard = Lexicon.Words("wind windy gust gusts gusty breeze hum buzz buzzing mains rumble rumbling pressure clean clipping clipped distortion distorted distorting dropouts dropout gaps crackle crackling tags tag");

    /// <summary>Noise and speech.</summary>
    public static readonly IReadOnlySet<string> Noises = Lexicon.Words("noise noisy noisefloor hiss hissy background snr speech voice voices dialogue dialog words");

    /// <summary>Holding one thing against another.</summary>
    public static readonly IReadOnlySet<string> Comparing = Lexicon.Words("compare compares compared comparing comparison match matches matching agree agrees forecast forecasted predict predicts predicted prediction expected expect planned versus against worse better right off than");

    /// <summary>Doing it once more.</summary>
    public static readonly IReadOnlySet<string> Again = Lexicon.Words("redo replan recalculate recompute again update rerun rework");

    /// <summary>Limits.</summary>
    public static readonly IReadOnlySet<string> Limits = Lexicon.Words("limit limits threshold thresholds criteria criterion settings setting");

    /// <summary>Setting something.</summary>
    public static readonly IReadOnlySet<string> Setting = Lexicon.Words("set raise lower change make allow put accept need needs want require tighten loosen relax move drop flag mind complain ignore care warn minimum least maximum");

    /// <summary>Back to how it was.</summary>
    public static readonly IReadOnlySet<string> Defaults = Lexicon.Words("default defaults reset restore factory standard");

    private static readonly IReadOnlySet<string> Others = Lexicon.Words("clip clips cylinder cylinders channel channels track tracks input db dbtp dbov lufs lkfs demo example verdict usable useable plot view stereo mono care");

    // Words of everyday questions a slip away from one above.
    private static readonly IReadOnlySet<string> Decoys = Lexicon.Words("budge fudge wing winds just gets gusto hump rates rated grades graded waves waved files filed fill flip slip chip clap clop marks march watch catch coach mainly planner place pressure meter measuring thumb drum sun gum buys hits his kiss miss piss tasks tank");

    /// <summary>Every word above, so that spelling is corrected toward it or kept from it.</summary>
    public static IEnumerable<string> All => new[] { Files, Pointing, Judging, Verdicts, Times, Figures, Loudness, EngineSpeeds, Heard, Noises, Comparing, Again, Limits, Setting, Defaults, Others, Decoys }.SelectMany(s => s);
}
