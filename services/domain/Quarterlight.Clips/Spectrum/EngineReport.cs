namespace Quarterlight.Clips.Spectrum;

/// <summary>Engine speed at one time.</summary>
/// <param name="Seconds">Time in the clip, s.</param>
/// <param name="Rpm">Revolutions a minute, or nothing when the confidence is below <see cref="EngineOrders.ClaimFrom"/>.</param>
/// <param name="Confidence">0 to 1.</param>
public readonly record struct EngineMoment(double Seconds, double? Rpm, double Confidence);

/// <summary>What the orders say about the engine.</summary>
/// <param name="Cylinders">Cylinders taken for granted, four-stroke.</param>
/// <param name="Rpm">Middle value over the claimed moments, or nothing when too few moments are claimed.</param>
/// <param name="FiringHz">Firing frequency that belongs to it, Hz.</param>
/// <param name="LowestRpm">Lowest claimed value.</param>
/// <param name="HighestRpm">Highest claimed value.</param>
/// <param name="Confidence">0 to 1: mean of the claimed moments, less when they are few.</param>
/// <param name="Moments">About two a second.</param>
public sealed record EngineReport(
    int Cylinders, double? Rpm, double? FiringHz, double? LowestRpm, double? HighestRpm, double Confidence, IReadOnlyList<EngineMoment> Moments);
