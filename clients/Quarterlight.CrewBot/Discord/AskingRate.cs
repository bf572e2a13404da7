namespace Quarterlight.CrewBot.Discord;

/// <summary>How often something may be asked.</summary>
/// <param name="AtOnce">Questions that may come together, 1 or more.</param>
/// <param name="PerMinute">Questions regained each minute, above 0.</param>
public sealed record AskingRate(int AtOnce, double PerMinute);
