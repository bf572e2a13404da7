namespace Quarterlight.Audio;

/// <summary>What is wrong with an uploaded file, and what the crew can do about it.</summary>
/// <param name="Code">The kind of trouble.</param>
/// <param name="Problem">What was found: a sentence without final stop.</param>
/// <param name="Remedy">The way out: a sentence without final stop.</param>
public sealed record AudioFault(AudioFaultCode Code, string Problem, string Remedy);
