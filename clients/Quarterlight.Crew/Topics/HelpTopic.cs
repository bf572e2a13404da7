using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Topics;

/// <summary>What can be asked, and the nearest of it when a question was not understood.</summary>
internal static class HelpTopic
{
    private static readonly (string Example, string What)[] Examples =
    [
        ("where do the mics go?", "the mount plan of the scene, with a picture"),
        ("mount plan for <scene>", "the plan of another scene"),
        ("why not the visor for the passenger?", "what speaks for or against a place, in numbers"),
        ("what if the windows are down?", "the plan again under other conditions: speed, windows, fan, rain, engine"),
        ("what if we lose the lavs?", "the plan with less: a microphone, a camera, a place"),
        ("with the small kit", "the plan with another kit or car"),
        ("next best", "a runner-up plan"),
        ("details", "the plan in full"),
        ("what sites are there?", "the places in the car"),
        ("judge the demo clip", "whether a test clip can be used, and why; of your own: give its path in the terminal, attach it in the chat"),
        ("redo the plan with that noise", "the plan with the noise a clip measured in the real car"),
        ("what are the limits for clips?", "from where a clip is used with care or recorded again; \"set the least speech over noise to 18 dB\" changes them"),
        ("how far can we fall back?", "the radio link: range, level, drop-outs, what to change, the law; add a gap, place or power"),
        ("what can I legally radiate?", "the limit where you are, how far over, who to ask; add a country, power or frequency"),
        ("which FM channel is quietest?", "channels ranked; say which stations you hear"),
        ("which channels do I put eight transmitters on?", "channels that do not disturb each other; add a band"),
        ("check 600.0 600.6 601.0", "whether channels already chosen go together"),
        ("how long can we roll before they melt?", "minutes with the fan off to discomfort, caution and stop, how long to cool, what shade would buy; add a time, weather, shade, people"),
        ("what rhythm of rolling and cooling?", "roll so long, cool so long, how many takes"),
        ("when do I swap batteries?", "what runs out first, swaps between takes; also: how many cards do I need, does the recorder last till lunch"),
        ("what gain for a shouted line?", "gain, pad, safety track and limiter; add a talker, an effort, the headroom, the transmitter"),
        ("how fast can we go?", "speed at which the scene still works, how loud it is, what is loudest; \"give the AD a table\""),
        ("where on the route is it quiet?", "the stretches to roll on"),
        ("list scenes", "scenes; also: list cars, list kits, show <name>, use <scene>"),
        ("use imperial units", "inches, feet and mph; or metric"),
        ("load demo", "invented scenes, cars and kits to try"),
    ];

    public static CrewAnswer Help(Asked asked) => asked.Answer("Ask in plain words. These all work:", [.. Examples.Select(e => new CrewLine(CrewLineKind.Plain, $"\"{e.Example.Replace('<', '(').Replace('>', ')')}\": {e.What}"))]) with
    {
        Understood = "help",
        FollowUps = ["where do the mics go?", "list scenes"],
    };

    public static CrewAnswer NotUnderstood(Asked asked, string text)
    {
        IReadOnlyList<string> nearest = Nearest(text);
        string said = text.Length == 0 ? "nothing" : $"\"{CrewText.Clean(text, 60)}\"";
        return asked.Answer(text.Length == 0 ? "Ask something, such as \"where do the mics go?\"." : $"I did not understand {said}.",
            [new(CrewLineKind.Plain, $"Nearest that I do: \"{nearest[0]}\" or \"{nearest[1]}\". Say \"help\" for the rest.")]) with
        {
            Outcome = CrewOutcome.NotUnderstood,
            Private = true,
            FollowUps = [.. nearest, "help"],
            Memory = asked.Memory,
        };
    }

    // The examples that share most words with what was asked, slips forgiven.
    private static IReadOnlyList<string> Nearest(string text)
    {
        string[] words = [.. Tokenizer.Split(text).Select(t => t.Word).Where(w => w.Length > 2)];
        return [.. Examples.Where(e => !e.Example.Contains('<', StringComparison.Ordinal)).Select((e, i) => (e.Example, Order: i, Score: Tokenizer.Split(e.Example).Where(t => t.Word.Length > 2).Sum(t => words.Any(w => EditDistance.Between(w, t.Word) <= EditDistance.Forgiven(w.Length)) ? 1.0 : 0)))
            .OrderByDescending(e => e.Score).ThenBy(e => e.Order).Take(2).Select(e => e.Example)];
    }
}
