using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Turns a question into a request: first what it names, then what it asks for.</summary>
public static class RequestReader
{
    // "help with the radio": more words ask for something else.
    private const int MostWordsOfHelp = 4;

    /// <summary>Reads a question. Never fails; a question not understood has the intent <see cref="CrewIntent.Unknown"/>.</summary>
    /// <param name="text">The question, cleaned.</param>
    /// <param name="vocabulary">The team's own words.</param>
    /// <param name="memory">What the conversation remembers.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="attached">True when a clip came with the question, which then is about the clip.</param>
    public static CrewRequest Read(string text, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(memory);
        IReadOnlyList<Token> tokens = vocabulary.Read(text);
        return !attached && tokens.Count is > 1 and <= MostWordsOfHelp && tokens[0].Is("help") && Topics.HelpTable.Find(tokens.Skip(1).Select(t => t.Word)) is { } subject
            ? new CrewRequest { Intent = CrewIntent.Help, HelpTopic = subject.Value, SceneName = memory.SceneName }
            : SecondOpinion.Of(ByRules(text, tokens, vocabulary, memory, units, attached));
    }

    /// <summary>The question as the rules alone understand it, with all that was read on the way.</summary>
    internal static QuestionRead ByRules(string text, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(vocabulary);
        ArgumentNullException.ThrowIfNull(memory);
        return ByRules(text, vocabulary.Read(text), vocabulary, memory, units, attached);
    }

    private static QuestionRead ByRules(string text, IReadOnlyList<Token> tokens, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, bool attached)
    {
        // "What's wrong with it" must not name the scene that goes wrong while a clip is talked about.
        bool clip = attached || memory.LastClip is { Current: true };
        Named? sceneSaid = vocabulary.SceneNames.FindOne(clip ? [.. tokens.Where(t => !t.IsAny(ClipWords.Verdicts))] : tokens);
        Scene? scene = vocabulary.Scenes.FirstOrDefault(s => s.Name == (sceneSaid?.Id ?? memory.SceneName)) ?? Latest(vocabulary.Scenes);
        scene = sceneSaid is null && scene is not null && TalkerReader.SceneOfRole(tokens, scene, vocabulary.Scenes) is { } other ? other : scene;
        Cabin? cabin = vocabulary.CabinOf(scene);
        bool driverOnLeft = cabin?.DriveSide != DriveSide.Right;
        UnitPreference? unitsSaid = UnitReader.Of(tokens);
        ConditionChanges conditions = ConditionReader.Read(tokens, unitsSaid ?? units);
        SiteMention? site = SiteReader.Read(tokens, conditions.Windows.Count > 0);
        IReadOnlyList<TalkerMention> talkers = scene is null ? [] : TalkerReader.Find(tokens, scene, driverOnLeft);
        var request = new CrewRequest
        {
            SceneName = scene?.Name,
            SceneSaid = sceneSaid is not null,
            UnknownScene = sceneSaid is null ? UnknownSceneOf(tokens) : null,
            Units = unitsSaid,
            TalkerId = TalkerReader.For(tokens, talkers, site),
            Site = site,
            Conditions = conditions,
            CabinName = vocabulary.CabinNames.Find(Wanted(tokens)).Select(c => c.Id).FirstOrDefault(id => id != scene?.Cabin),
            KitName = Other(vocabulary.KitSaid(Wanted(tokens))?.Id, scene?.Kit),
            Clip = ClipReader.Read(tokens),
            RunnerUp = tokens.Any(t => t.Number == 2 || t.Word is "second" or "third" or "other") && !tokens.Any(t => t.Word is "secondbest") ? 2 : 1,
            AddsToLast = memory.LastChanges is not null && tokens.Count > 0 && (tokens[0].Word is "and" or "also" or "plus" || tokens.Any(t => t.Word is "too") || tokens[^1].Word is "also"),
        };
        // "Why is there no lav on the child?" asks about the clothing.
        if (site is null && (tokens.Any(t => t.IsAny(Lexicon.Reasons)) || (request.TalkerId is not null && tokens.Any(t => t.Is("better")))) && tokens.FirstOrDefault(t => t.Word is "lav" or "lavs" or "lavalier" or "lavaliers") is { } lav)
        {
            request = request with { Site = new SiteMention { Families = [MountFamily.BodyWorn], Word = lav.Word, Qualifiers = [], Side = SeatPlace.Any, Start = 0 } };
        }

        request = LeftOutReader.Read(request, tokens, vocabulary.KitOf(scene), scene);
        var said = new SaidThings(tokens, request, KitReader.Microphones(tokens, vocabulary.KitOf(scene)).Count > 0, vocabulary.CabinNames.FindOne(tokens)?.Id, vocabulary.KitSaid(tokens)?.Id, memory);
        RadioSaid radio = RadioReader.Read(text, tokens, unitsSaid ?? units, vocabulary.Knows, memory.LastRadio is not null);
        ForecastSaid forecast = ForecastReader.Read(text, tokens, request, unitsSaid ?? units, memory.LastForecast?.Intent);
        // "Four people" is neither a four-door car nor a people carrier.
        string? cabinSaid = Other(vocabulary.CabinNames.FindOne([.. tokens.Where(t => t.Number is null && !(forecast.Heat.Adults is not null && t.Is("people")))])?.Id, scene?.Cabin);
        SaidThings forecastSaid = said with { CabinSaid = cabinSaid };
        CrewRequest?[] readings =
        [
            ForecastIntentReader.Decide(request, forecastSaid, forecast),
            ClipIntentReader.Decide(request, said, radio),
            RadioIntentReader.Decide(request, said, radio, memory.LastRadio),
            IntentReader.Decide(request, said),
        ];
        CrewRequest rules = attached ? ClipIntentReader.Attached(request) : First(readings, said);
        var seen = new IntentSeen(text, tokens, vocabulary.Classes, SlotEvidence.Of(forecastSaid, forecast, radio), Topic(memory, attached), [.. readings.Select(r => r?.Intent ?? CrewIntent.Unknown)]);
        return new QuestionRead(rules, request, forecastSaid, said.CabinSaid, forecast, radio, seen, attached);
    }

    // The first reader that knows better; the last one always says something.
    private static CrewRequest First(CrewRequest?[] readings, SaidThings said)
    {
        CrewRequest first = readings.First(r => r is not null)!;
        return ReferenceEquals(first, readings[^1]) && first.Intent == CrewIntent.Unknown ? ClipIntentReader.Fallback(first, said) ?? first : first;
    }

    private static string Topic(CrewMemory memory, bool attached) => memory switch
    {
        _ when attached => "attached",
        { LastClip.Current: true } => "remembered",
        { LastForecast.Intent: CrewIntent.HeatForecast } => "heat",
        { LastForecast.Intent: CrewIntent.RunTime } => "runtime",
        { LastForecast.Intent: CrewIntent.Levels } => "levels",
        { LastForecast: not null } => "noise",
        { LastRadio: not null } => "radio",
        _ => "none",
    };

    // "The hatchback instead of the saloon": what is given up is not asked about.
    private static IReadOnlyList<Token> Wanted(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 2 < tokens.Count; i++)
        {
            if ((tokens[i].Is("instead") && tokens[i + 1].Is("of")) || (tokens[i].Is("rather") && tokens[i + 1].Is("than")))
            {
                return [.. tokens.Take(i), .. tokens.Skip(i + 5)];
            }
        }

        return tokens;
    }

    // "the moon scene": a word of nobody's before "scene".
    private static string? UnknownSceneOf(IReadOnlyList<Token> tokens)
    {
        for (int i = 1; i < tokens.Count; i++)
        {
            bool known = Lexicon.All.Contains(tokens[i - 1].Word) && (!Lexicon.Common.Contains(tokens[i - 1].Word) || tokens[i - 1].Word is "whole" or "first" or "second" or "last" or "same" or "own");
            if (tokens[i].Is("scene") && tokens[i - 1].Number is null && !known)
            {
                return tokens[i - 1].Word;
            }
        }

        return null;
    }

    private static string? Other(string? said, string? kept) => said == kept ? null : said;

    /// <summary>The scene last written, or null.</summary>
    internal static Scene? Latest(IReadOnlyList<Scene> scenes) =>
        scenes.OrderByDescending(s => s.UpdateTime?.ToDateTimeOffset() ?? DateTimeOffset.MinValue).ThenBy(s => s.Name, StringComparer.Ordinal).FirstOrDefault();
}
