namespace Quarterlight.Clips.Tagging;

/// <summary>The tags of about one second.</summary>
/// <param name="StartSeconds">Start, s from the clip's start.</param>
/// <param name="EndSeconds">End, s from the clip's start; the last second of a clip is 0.5 to 1.5 s long.</param>
/// <param name="Probabilities">Calibrated probabilities, judged with up to two seconds around.</param>
public sealed record TaggedSecond(double StartSeconds, double EndSeconds, TagProbabilities Probabilities);
