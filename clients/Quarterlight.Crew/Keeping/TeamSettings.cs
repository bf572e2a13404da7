namespace Quarterlight.Crew.Keeping;

/// <summary>What a team settled on for all its conversations.</summary>
/// <param name="Units">Units of its answers; null when it did not say.</param>
/// <param name="CountryCode">Country it works in, ISO 3166-1 alpha-2, or EU; null when it did not say.</param>
public sealed record TeamSettings(UnitPreference? Units, string? CountryCode)
{
    /// <summary>Nothing settled.</summary>
    public static TeamSettings None { get; } = new(null, null);
}
