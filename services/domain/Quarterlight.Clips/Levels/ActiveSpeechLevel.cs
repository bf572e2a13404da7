namespace Quarterlight.Clips.Levels;

/// <summary>Level of the speech itself, pauses left out.</summary>
/// <param name="LongTermDbov">Mean level in dBov (0 dBov: a square wave of full scale; a sine of full scale is -3.01 dBov); null for silence.</param>
/// <param name="ActiveDbov">Active speech level in dBov; null when nothing stands out from the lowest threshold of -90 dBov by the margin of 15.9
/// dB.</param>
/// <param name="ActivityShare">Share of the time that speech is active, 0 to 1; 0 without an active level. Above 1 by a hair for steady
/// sound.</param>
public sealed record ActiveSpeechLevel(double? LongTermDbov, double? ActiveDbov, double ActivityShare);
