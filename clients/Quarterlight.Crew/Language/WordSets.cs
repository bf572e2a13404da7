namespace Quarterlight.Crew.Language;

/// <summary>Which of the readers' word tables a word stands in: what the model knows of likeness in meaning.</summary>
internal static class WordSets
{
    // The order is part of the model: a new table goes last, and the model is trained again.
    private static readonly IReadOnlySet<string>[] Tables =
    [
        Lexicon.Microphones, Lexicon.Placing, Lexicon.Plans, Lexicon.Wheres, Lexicon.Reasons, Lexicon.Listing, Lexicon.Sites, Lexicon.Scenes, Lexicon.Cabins, Lexicon.Kits,
        Lexicon.Pictures, Lexicon.Supposing, Lexicon.Removing, Lexicon.Allowing, Lexicon.More, Lexicon.Alternatives, Lexicon.Windows, Lexicon.Opened, Lexicon.Closed, Lexicon.Fans,
        Lexicon.Rains, Lexicon.Engines, Lexicon.Cameras,
        RadioWords.Links, RadioWords.LinkHints, RadioWords.Laws, RadioWords.Limits, RadioWords.Channels, RadioWords.Quiet, RadioWords.Transmitters, RadioWords.Coordinating,
        RadioWords.Checking, RadioWords.Antennas, RadioWords.Receiving, RadioWords.Hearing, RadioWords.Avoiding,
        ClipWords.Files, ClipWords.Judging, ClipWords.Verdicts, ClipWords.Times, ClipWords.Figures, ClipWords.Loudness, ClipWords.EngineSpeeds, ClipWords.Heard, ClipWords.Noises,
        ClipWords.Comparing, ClipWords.Again, ClipWords.Limits, ClipWords.Setting, ClipWords.Defaults,
        ForecastWords.Heat, ForecastWords.Cooling, ForecastWords.Rolling, ForecastWords.Batteries, ForecastWords.Media, ForecastWords.Ending, ForecastWords.Gains, ForecastWords.Clipping,
        ForecastWords.Shouting, ForecastWords.Whispering, ForecastWords.Loud, ForecastWords.Dominating, ForecastWords.Fast, ForecastWords.Routes, ForecastWords.Quiet, ForecastWords.Sources,
        SeatWords.All,
    ];

    private static readonly Dictionary<string, int[]> TablesOf = Tables.SelectMany((t, i) => t.Select(w => (Word: w, Table: i))).GroupBy(p => p.Word, p => p.Table, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);

    /// <summary>Numbers of the tables the word stands in.</summary>
    public static ReadOnlySpan<int> Of(string word) => TablesOf.TryGetValue(word, out int[]? tables) ? tables : [];
}
