using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Topics;

/// <summary>A scene that is not there.</summary>
internal static class SceneTopic
{
    private const int MostNames = 8;

    public static CrewAnswer NoSuch(string wanted, CrewVocabulary vocabulary, CrewMemory memory)
    {
        string[] names = [.. vocabulary.Scenes.Take(MostNames).Select(s => Wordings.Name(s.DisplayName, s.Name))];
        return new CrewAnswer
        {
            Outcome = CrewOutcome.Refused,
            Intent = CrewIntent.UseScene,
            Headline = $"There is no scene called \"{CrewText.Clean(wanted, CrewText.LongestName)}\".",
            Lines = [new(CrewLineKind.Plain, names.Length == 0 ? "No scenes are kept yet; say \"load demo\" for invented ones." : $"There is: {Wordings.Join(names)}.")],
            FollowUps = names.Length == 0 ? ["load demo"] : [$"mount plan for {names[0]}", "list scenes"],
            Private = true,
            Memory = memory,
        };
    }
}
