namespace Quarterlight.Planner.Access;

/// <summary>What a call says of itself before its body.</summary>
/// <param name="Method">What is called, for the log.</param>
/// <param name="Key">The key, as sent; null when nothing.</param>
/// <param name="Team">The team it is for, as sent; null when nothing.</param>
/// <param name="Parent">The caller's span, as sent; null when nothing.</param>
internal readonly record struct CallHead(string Method, string? Key, string? Team, string? Parent);
