using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>
/// Kinds of microphone by the word a crew has for them, with figures typical of the kind: the same judgement as in the demo data, no
/// one product. They stand in for what nobody wrote, and the answer says so.
/// </summary>
internal static class MicrophoneKinds
{
    private static readonly Fixing[] Held = [Fixing.SpringClip, Fixing.SuctionCup, Fixing.ArticulatedArm, Fixing.ElasticTie, Fixing.WeightedBase];

    private static readonly (string Phrase, PolarPattern Pattern)[] Patterns =
    [
        ("wide cardioid", PolarPattern.Subcardioid), ("figure of eight", PolarPattern.FigureEight), ("figure eight", PolarPattern.FigureEight), ("interference tube", PolarPattern.InterferenceTube),
        ("subcardioid", PolarPattern.Subcardioid), ("supercardioid", PolarPattern.Supercardioid), ("super cardioid", PolarPattern.Supercardioid), ("hypercardioid", PolarPattern.Hypercardioid), ("hyper cardioid", PolarPattern.Hypercardioid),
        ("shotgun", PolarPattern.InterferenceTube), ("tube", PolarPattern.InterferenceTube), ("cardioid", PolarPattern.Cardioid), ("omnidirectional", PolarPattern.Omni), ("omni", PolarPattern.Omni), ("hyper", PolarPattern.Hypercardioid), ("super", PolarPattern.Supercardioid),
    ];

    private static readonly (string Word, string Kind)[] Words =
    [
        ("lavalier", "lavalier"), ("lavaliers", "lavalier"), ("lav", "lavalier"), ("lavs", "lavalier"), ("bodyworn", "lavalier"), ("miniature", "miniature"), ("mini", "miniature"), ("plate", "plate"), ("boundary", "plate"), ("flat", "plate"),
        ("shotgun", "tube"), ("tube", "tube"), ("short", "short"), ("pencil", "short"), ("small", "short"),
    ];

    /// <summary>How a microphone hears, from its name; null when the name does not say.</summary>
    public static PolarPattern? PatternIn(string text) => new StrictWords(text).TakeAny(Patterns, out PolarPattern pattern) ? pattern : null;

    /// <summary>A microphone with figures typical of the kind its name says.</summary>
    /// <param name="name">What the crew calls it.</param>
    /// <param name="pattern">How it hears; null takes the name's word, an omni for a lavalier or a plate.</param>
    /// <param name="usual">In words, what was taken as usual.</param>
    /// <returns>The microphone without id and count; null when the name does not say how it hears.</returns>
    public static Microphone? Typical(string name, PolarPattern? pattern, out string usual)
    {
        bool saysKind = new StrictWords(name).TakeAny(Words, out string kind);
        PolarPattern? heard = pattern ?? PatternIn(name);
        bool tube = heard == PolarPattern.InterferenceTube;
        kind = tube ? "tube" : saysKind && kind != "tube" ? kind : "short";
        bool omni = heard is null && kind is "lavalier" or "plate";
        heard ??= omni ? PolarPattern.Omni : null;
        usual = $"{(saysKind || tube ? "" : "a short body, ")}{(omni ? "omni, " : "")}sensitivity, noise, highest level, size and fixings typical of its kind for {name}";
        return heard is { } hears ? Of(kind, name, hears) : null;
    }

    private static Microphone Of(string kind, string name, PolarPattern pattern)
    {
        Microphone made = kind switch
        {
            "lavalier" => Make(0.012, 0.005, 9, 26, 132, Fixing.SpringClip, Fixing.PaperTape, Fixing.ElasticTie, Fixing.BodyMount),
            "miniature" => Make(0.016, 0.007, 12, 26, 135, Fixing.SpringClip, Fixing.SuctionCup, Fixing.ArticulatedArm, Fixing.PaperTape, Fixing.ElasticTie, Fixing.WeightedBase),
            "plate" => Make(0.02, 0.045, 18, 24, 130, Fixing.PaperTape, Fixing.WeightedBase),
            "tube" => Make(0.15, 0.019, 30, 14, 128, Held),
            _ => Make(0.09, 0.019, 22, 16, 130, Held),
        };
        (made.DisplayName, made.Pattern) = (name, pattern);
        if (pattern == PolarPattern.InterferenceTube)
        {
            made.TubeLengthM = 0.1;
        }

        return made;
    }

    private static Microphone Make(double lengthM, double diameterM, double sensitivityMvPerPa, double selfNoiseDba, double maxLevelDb, params Fixing[] fixings) => new()
    {
        BodyLengthM = lengthM,
        BodyDiameterM = diameterM,
        SensitivityMvPerPa = sensitivityMvPerPa,
        SelfNoiseDba = selfNoiseDba,
        MaxLevelDb = maxLevelDb,
        Fixings = { fixings },
    };
}
