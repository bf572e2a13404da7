using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Finds microphones and cameras that a question names.</summary>
public static class KitReader
{
    private static readonly HashSet<string> Weak = Lexicon.Words("short small miniature mini little long large wide mic microphone mics microphones worn body front rear left right side mount mounted camera cam shot over the through and of on at two");

    private static readonly Dictionary<string, string[]> AlsoCalled = new()
    {
        ["lavalier"] = ["lav", "lavs", "lavaliers", "lapel", "bodyworn"],
        ["interference"] = ["tube", "shotgun", "tubes", "shotguns", "gun"],
        ["tube"] = ["shotgun", "shotguns", "tubes", "gun"],
        ["figure"] = ["figure", "eight", "bidirectional"],
        ["supercardioid"] = ["super", "supers", "supercardioids"],
        ["hypercardioid"] = ["hyper", "hypers", "hypercardioids"],
        ["cardioid"] = ["cardioids", "cards"],
        ["boundary"] = ["boundaries", "plate", "pzm"],
        ["omni"] = ["omnis", "omnidirectional"],
    };

    /// <summary>Ids of the kinds of microphone said; several when the words fit several.</summary>
    public static IReadOnlyList<string> Microphones(IReadOnlyList<Token> tokens, Kit? kit) => kit is null ? [] : BestMatches(tokens, kit.Microphones.Select(m => (m.Id, m.DisplayName)));

    /// <summary>Ids of the shots said, by their id or by "camera A".</summary>
    public static IReadOnlyList<string> Shots(IReadOnlyList<Token> tokens, Scene? scene)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        if (scene is null)
        {
            return [];
        }

        var found = new List<string>();
        foreach (Shot shot in scene.Shots)
        {
            string[] words = NameWords.Of(shot.Id);
            for (int i = 0; i + words.Length <= tokens.Count; i++)
            {
                bool here = words.Select((w, k) => tokens[i + k].Word == w).All(same => same);
                bool enough = words.Length > 1 || words[0].Length > 2 || (i > 0 && tokens[i - 1].IsAny(Lexicon.Cameras));
                if (here && enough)
                {
                    found.Add(shot.Id);
                    break;
                }
            }
        }

        if (found.Count == 0 && tokens.Any(t => t.IsAny(Lexicon.Cameras)))
        {
            found.AddRange(BestMatches(tokens, scene.Shots.Select(s => (s.Id, s.Id))));
        }

        return found;
    }

    /// <summary>True for a word that the kit's microphones are called by.</summary>
    internal static bool Calls(string word, Kit kit) => kit.Microphones.SelectMany(m => NameWords.Of(m.DisplayName))
        .Any(w => w == word || w + "s" == word || (AlsoCalled.TryGetValue(w, out string[]? others) && others.Contains(word)));

    private static IReadOnlyList<string> BestMatches(IReadOnlyList<Token> tokens, IEnumerable<(string Id, string Name)> items)
    {
        var said = new HashSet<string>(tokens.Where(t => t.Number is null).Select(t => t.Word));
        (string Id, double Score)[] scored = [.. items.Select(item => (item.Id, Score(said, item.Name)))];
        double best = scored.Length == 0 ? 0 : scored.Max(s => s.Score);
        return best < 1 ? [] : [.. scored.Where(s => s.Score == best).Select(s => s.Id)];
    }

    private static double Score(HashSet<string> said, string name)
    {
        double score = 0;
        foreach (string word in NameWords.Of(name).Distinct())
        {
            bool matched = said.Contains(word) || said.Contains(word + "s") || (AlsoCalled.TryGetValue(word, out string[]? others) && others.Any(said.Contains));
            score += !matched ? 0 : Weak.Contains(word) ? 0.25 : 1;
        }

        return score;
    }
}
