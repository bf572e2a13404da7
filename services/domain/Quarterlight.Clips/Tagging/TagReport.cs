namespace Quarterlight.Clips.Tagging;

/// <summary>The tags of a clip.</summary>
/// <param name="Overall">Probabilities for the clip as a whole: the mean of the seconds, each with its length as weight.</param>
/// <param name="States">What is said about each tag, for the clip as a whole.</param>
/// <param name="Seconds">Each second in order.</param>
/// <param name="Tagger">What gave the probabilities.</param>
public sealed record TagReport(
    TagProbabilities Overall, IReadOnlyDictionary<ClipTag, TagState> States, IReadOnlyList<TaggedSecond> Seconds, TaggerIdentity Tagger);
