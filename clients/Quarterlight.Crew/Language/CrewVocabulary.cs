using System.Collections.Frozen;
using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>The team's own words: names of its scenes, cars and kits, with what is in them.</summary>
public sealed class CrewVocabulary
{
    // The same for every team and question: gathered once.
    private static readonly FrozenSet<string> HouseWords = Lexicon.All.Concat(RadioWords.All).Concat(ClipWords.All).Concat(ForecastWords.All).Concat(Phrases.Words)
        .Concat(["lav", "lavs", "omni", "cardioid", "supercardioid", "hypercardioid", "subcardioid", "shotgun", "tube", "boundary"]).ToFrozenSet(StringComparer.Ordinal);

    private readonly Speller speller;
    private readonly Lazy<ExampleNames> classes;

    /// <summary>A vocabulary of what the team keeps.</summary>
    public CrewVocabulary(IReadOnlyList<Scene> scenes, IReadOnlyList<Cabin> cabins, IReadOnlyList<Kit> kits)
    {
        ArgumentNullException.ThrowIfNull(scenes);
        ArgumentNullException.ThrowIfNull(cabins);
        ArgumentNullException.ThrowIfNull(kits);
        (Scenes, Cabins, Kits) = (scenes, cabins, kits);
        classes = new Lazy<ExampleNames>(() => new ExampleNames(this));
        SceneNames = new NameMatcher(scenes.Select(s => new Named(s.Name, s.DisplayName)));
        CabinNames = new NameMatcher(cabins.Select(c => new Named(c.Name, c.DisplayName)));
        KitNames = new NameMatcher(kits.Select(k => new Named(k.Name, k.DisplayName)));
        IEnumerable<string> inScenes = scenes.SelectMany(s => s.Talkers.SelectMany(t => Split(t.Id).Concat(Split(t.DisplayName))).Concat(s.Shots.SelectMany(c => Split(c.Id))));
        IEnumerable<string> inKits = kits.SelectMany(k => k.Microphones.SelectMany(m => Split(m.DisplayName).Concat(Split(m.Id))));
        speller = new Speller(HouseWords, SceneNames.Words.Concat(CabinNames.Words).Concat(KitNames.Words).Concat(inScenes).Concat(inKits));
    }

    /// <summary>Scenes.</summary>
    public IReadOnlyList<Scene> Scenes { get; }

    /// <summary>Cars.</summary>
    public IReadOnlyList<Cabin> Cabins { get; }

    /// <summary>Kits.</summary>
    public IReadOnlyList<Kit> Kits { get; }

    /// <summary>Finds scenes by name.</summary>
    public NameMatcher SceneNames { get; }

    /// <summary>Finds cars by name.</summary>
    public NameMatcher CabinNames { get; }

    /// <summary>Finds kits by name.</summary>
    public NameMatcher KitNames { get; }

    /// <summary>What kinds of thing the team's own words name.</summary>
    internal ExampleNames Classes => classes.Value;

    /// <summary>Kit named, "bag" and "package" taken for "kit" where no kit is called so; null when none is.</summary>
    internal Named? KitSaid(IReadOnlyList<Token> tokens) =>
        KitNames.FindOne(tokens) ?? (tokens.Any(IsBag) ? KitNames.FindOne([.. tokens.Select(t => IsBag(t) ? t with { Word = "kit" } : t)]) : null);

    private static bool IsBag(Token token) => token.Number is null && token.Word is "bag" or "package" or "set";

    /// <summary>Words of a question: cut, spelling corrected, phrases joined.</summary>
    public IReadOnlyList<Token> Read(string text) =>
        Phrases.Join([.. Phrases.Join(Tokenizer.Split(text)).Select(t => t.Number is null ? t with { Word = speller.Correct(t.Word) } : t)]);

    /// <summary>True for a word with a meaning here, or of the team's.</summary>
    public bool Knows(string word) => speller.Knows(word);

    /// <summary>Kit of that resource name, or null.</summary>
    public Kit? KitOf(Scene? scene) => scene is null ? null : Kits.FirstOrDefault(k => k.Name == scene.Kit);

    /// <summary>Car of the scene, or null.</summary>
    public Cabin? CabinOf(Scene? scene) => scene is null ? null : Cabins.FirstOrDefault(c => c.Name == scene.Cabin);

    private static IEnumerable<string> Split(string text) => Tokenizer.Split(text).Select(t => t.Word);
}
