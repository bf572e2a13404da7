namespace Quarterlight.Clips.Tagging;

/// <summary>Which trained model spoke.</summary>
/// <param name="Name">Name, such as "quarterlight-tagger".</param>
/// <param name="Version">Version of the trained model.</param>
/// <param name="TrainingDataDigest">SHA-256 over the recordings it was trained with, in hexadecimal.</param>
public sealed record TaggerIdentity(string Name, string Version, string TrainingDataDigest);
