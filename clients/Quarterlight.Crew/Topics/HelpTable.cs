using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Topics;

/// <summary>A question that works as it stands.</summary>
/// <param name="Example">The question; what is in round brackets is to be filled in.</param>
/// <param name="What">What it answers.</param>
internal sealed record HelpExample(string Example, string What)
{
    /// <summary>True when it can be asked as it stands.</summary>
    public bool Whole => !Example.Contains('(', StringComparison.Ordinal);
}

/// <summary>Something to know more about.</summary>
/// <param name="Name">What is shown.</param>
/// <param name="Value">The word for it.</param>
/// <param name="Words">Other words for it.</param>
/// <param name="Commands">Commands for it.</param>
/// <param name="Examples">What can be asked of it.</param>
internal sealed record HelpSubject(string Name, string Value, IReadOnlySet<string> Words, string Commands, params HelpExample[] Examples);

/// <summary>What can be asked, by subject.</summary>
internal static class HelpTable
{
    /// <summary>What fits on one screen of a phone.</summary>
    public static IReadOnlyList<HelpExample> First { get; } =
    [
        new("where do the mics go?", "the plan, with a picture"),
        new("why not the visor for the passenger?", "a place, in numbers"),
        new("what if the windows are down?", "the plan under other conditions"),
        new("how far can we fall back?", "the link to the follow car"),
        new("how long can we roll before they melt?", "heat with the fan off"),
        new("what gain for a shouted line?", "gain, pad, safety track"),
        new("when do I swap batteries?", "batteries and cards"),
        new("judge the demo clip", "a test clip; send your own with it"),
    ];

    public static IReadOnlyList<HelpSubject> Subjects { get; } =
    [
        new("mount plans", "plan", Lexicon.Words("plan plans mics mic microphones sites places"), "plan, why, what-if, sites",
            new("where do the mics go?", "the mount plan of the scene, with a picture"),
            new("mount plan for (scene)", "the plan of another scene"),
            new("why not the visor for the passenger?", "what speaks for or against a place, in numbers"),
            new("what if the windows are down?", "the plan again under other conditions: speed, windows, fan, rain, engine"),
            new("what if we lose the lavs?", "the plan with less: a microphone, a camera, a place"),
            new("with the small kit", "the plan with another kit or car"),
            new("next best", "a runner-up plan"),
            new("details", "the plan in full"),
            new("what sites are there?", "the places in the car")),
        new("test clips", "clips", Lexicon.Words("clips clip recording recordings verdict"), "clip, settings clip-limits",
            new("judge the demo clip", "whether a test clip can be used, and why; of your own: give its path in the terminal, attach it in the chat"),
            new("redo the plan with that noise", "the plan with the noise a clip measured in the real car"),
            new("what are the limits for clips?", "from where a clip is used with care or recorded again; \"set the least speech over noise to 18 dB\" changes them")),
        new("radio", "radio", Lexicon.Words("radio link channels channel law wireless transmitters"), "link, law, channels, quiet-channel",
            new("how far can we fall back?", "the radio link: range, level, drop-outs, what to change, the law; add a gap, place or power"),
            new("what can I legally radiate?", "the limit where you are, how far over, who to ask; add a country, power or frequency"),
            new("which FM channel is quietest?", "channels ranked; say which stations you hear"),
            new("which channels do I put eight transmitters on?", "channels that do not disturb each other; add a band"),
            new("check 600.0 600.6 601.0", "whether channels already chosen go together")),
        new("heat", "heat", Lexicon.Words("heat hot cooling shade rolling"), "heat",
            new("how long can we roll before they melt?", "minutes with the fan off to discomfort, caution and stop, how long to cool, what shade would buy; add a time, weather, shade, people"),
            new("what rhythm of rolling and cooling?", "roll so long, cool so long, how many takes")),
        new("batteries, cards and levels", "gear", Lexicon.Words("gear batteries battery cards levels level gain"), "run-time, levels",
            new("when do I swap batteries?", "what runs out first, swaps between takes; also: how many cards do I need, does the recorder last till lunch"),
            new("what gain for a shouted line?", "gain, pad, safety track and limiter; add a talker, an effort, the headroom, the transmitter")),
        new("noise and route", "noise", Lexicon.Words("noise loud speed route quiet"), "noise, route",
            new("how fast can we go?", "speed at which the scene still works, how loud it is, what is loudest; \"give the AD a table\""),
            new("where on the route is it quiet?", "the stretches to roll on")),
        new("scenes, cars, kits and settings", "team", Lexicon.Words("team scenes scene cars car kits kit settings units"), "scene, car, kit, settings, demo",
            new("list scenes", "scenes; also: list cars, list kits, show (name), use (scene)"),
            new("use imperial units", "inches, feet and mph; or metric"),
            new("load demo", "invented scenes, cars and kits to try")),
    ];

    /// <summary>Every example, in the order of the subjects.</summary>
    public static IEnumerable<HelpExample> All => Subjects.SelectMany(s => s.Examples);

    /// <summary>Subject that words name; null when they name none.</summary>
    public static HelpSubject? Find(IEnumerable<string> words) => words.Select(w => Subjects.FirstOrDefault(s => s.Value == w || s.Words.Contains(w))).FirstOrDefault(s => s is not null);
}
