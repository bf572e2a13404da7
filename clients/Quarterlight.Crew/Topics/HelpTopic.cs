using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Topics;

/// <summary>What can be asked, and the nearest of it when a question was not understood.</summary>
internal static class HelpTopic
{
    // A word of the question that names the very thing says more than one it shares by chance.
    private const double SlotWeight = 2;

    /// <summary>What more can be known about: name and word.</summary>
    public static IEnumerable<(string Name, string Value)> Topics => HelpTable.Subjects.Select(s => (s.Name, s.Value));

    /// <summary>One screen of a phone; of a subject, all of it.</summary>
    public static CrewAnswer Help(Asked asked)
    {
        if (HelpTable.Find([asked.Request.HelpTopic]) is { } subject)
        {
            return asked.Answer($"Help with {subject.Name}. Ask in plain words:", [.. subject.Examples.Select(Line), new(CrewLineKind.Plain, $"Commands: {subject.Commands}.")]) with
            {
                Understood = $"help with {subject.Name}",
                FollowUps = [.. subject.Examples.Where(e => e.Whole).Take(2).Select(e => e.Example)],
                Memory = asked.Memory,
            };
        }

        return asked.Answer("Ask in plain words, typing slips and any units are fine. These all work:",
            [.. HelpTable.First.Select(Line), new(CrewLineKind.Plain, $"More: \"help\" with {string.Join(", ", HelpTable.Subjects.Select(s => s.Value))}.")]) with
        {
            Understood = "help",
            FollowUps = ["where do the mics go?", "list scenes"],
            Memory = asked.Memory,
        };
    }

    /// <summary>Says what was understood of a question that was not, and offers the nearest that would be.</summary>
    public static CrewAnswer NotUnderstood(Asked asked, string text)
    {
        IReadOnlyList<string> nearest = Nearest(asked, text);
        List<string> parts = Parts(asked);
        string said = text.Length == 0 ? "nothing" : $"\"{CrewText.Clean(text, 60)}\"";
        List<CrewLine> lines = parts.Count == 0 ? [] : [new(CrewLineKind.Plain, $"Understood of it: {Wordings.Join(parts)}. Not what you want to know.")];
        lines.Add(new(CrewLineKind.Plain, $"Nearest that I do: \"{nearest[0]}\" or \"{nearest[1]}\". Say \"help\" for the rest."));
        return asked.Answer(text.Length == 0 ? "Ask something, such as \"where do the mics go?\"." : $"I did not understand {said}.", lines) with
        {
            Outcome = CrewOutcome.NotUnderstood,
            Understood = string.Join(", ", parts),
            Private = true,
            FollowUps = [.. nearest, "help"],
            Memory = asked.Memory,
        };
    }

    private static CrewLine Line(HelpExample example) => new(CrewLineKind.Plain, $"\"{example.Example}\": {example.What}");

    // What the question names, though not what it asks.
    private static List<string> Parts(Asked asked)
    {
        CrewRequest request = asked.Request;
        var parts = new List<string>();
        if (request.SceneSaid && asked.Scene is { } scene)
        {
            parts.Add($"the scene {Wordings.Name(scene.DisplayName, scene.Name)}");
        }

        if (request.Site is { } site)
        {
            parts.Add("the " + SiteWords.Say(site.Families[0]));
        }

        if (request.TalkerId is { } talker && asked.Scene is { } theirs)
        {
            parts.Add("the " + Wordings.Talker(theirs, talker));
        }

        if (!request.Conditions.IsEmpty)
        {
            string driven = DriveText.Change(null, request.Conditions.ApplyTo(new V1.DriveConditions(), asked.DriverOnLeft, []), asked.Units);
            parts.AddRange(driven == "nothing changed" ? [] : [driven]);
        }

        return parts;
    }

    // The examples that share most words with what was asked, slips forgiven, and those about what it names.
    private static IReadOnlyList<string> Nearest(Asked asked, string text)
    {
        string[] words = [.. Tokenizer.Split(text).Select(t => t.Word).Where(w => w.Length > 2)];
        HelpSubject? subject = HelpTable.Find(words);
        CrewRequest request = asked.Request;
        return [.. HelpTable.All.Where(e => e.Whole).Select((e, i) => (e.Example, Order: i, Score: Shared(words, e.Example) + Slot(e.Example) + (subject is not null && subject.Examples.Contains(e) ? 1 : 0)))
            .OrderByDescending(e => e.Score).ThenBy(e => e.Order).Take(2).Select(e => e.Example)];

        double Slot(string example) => request.Site is not null && example.StartsWith("why not", StringComparison.Ordinal) ? SlotWeight
            : !request.Conditions.IsEmpty && example.StartsWith("what if the", StringComparison.Ordinal) ? SlotWeight : 0;
    }

    private static double Shared(string[] words, string example) =>
        Tokenizer.Split(example).Where(t => t.Word.Length > 2).Sum(t => words.Any(w => EditDistance.Between(w, t.Word) <= EditDistance.Forgiven(w.Length)) ? 1.0 : 0);
}
