namespace Quarterlight.Crew.Language;

/// <summary>Makes the team's own names alike, so that an example about one scene serves every other.</summary>
internal sealed class ExampleNames
{
    private static readonly HashSet<string> Microphones = Lexicon.Words("mic mics microphone microphones mike mikes lav lavs lavalier lavaliers omni omnis cardioid cardioids shotgun tube boundary supercardioid hypercardioid");
    private static readonly HashSet<string> Talkers = Lexicon.Words("driver passenger passengers kid kids child children mum mom mother dad father actor actors actress talent cast instructor learner");
    private static readonly HashSet<string> Kept = Lexicon.Words("the a an of and that which goes wrong in first car cars kit scene invented full small long short");

    private readonly Dictionary<string, string> classes = new(StringComparer.Ordinal);

    /// <summary>Names of a team.</summary>
    public ExampleNames(CrewVocabulary vocabulary)
    {
        ArgumentNullException.ThrowIfNull(vocabulary);
        Add(vocabulary.Cabins.Select(c => c.DisplayName), "<car>");
        Add(vocabulary.Scenes.Select(s => s.DisplayName), "<scene>");
        Add(vocabulary.Scenes.SelectMany(s => s.Talkers).Select(t => t.DisplayName), "<talker>");
    }

    /// <summary>The class of a word; null when it stands for itself.</summary>
    public string? Of(string word) => Microphones.Contains(word) ? "<mic>" : Talkers.Contains(word) ? "<talker>" : classes.GetValueOrDefault(word);

    private void Add(IEnumerable<string> names, string kind)
    {
        foreach (string word in names.SelectMany(Tokenizer.Split).Where(t => t.Number is null).Select(t => t.Word))
        {
            if (!Kept.Contains(word) && !Lexicon.All.Contains(word))
            {
                classes[word] = kind;
            }
        }
    }
}
