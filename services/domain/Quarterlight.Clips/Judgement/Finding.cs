namespace Quarterlight.Clips.Judgement;

/// <summary>A reason, and how the headline says it.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Short">What was found, without the final stop, such as "the fan is running".</param>
/// <param name="Mend">The way out in a few words, such as "Fan off"; empty when nothing needs to be done.</param>
internal sealed record Finding(ClipReason Reason, string Short, string Mend = "");
