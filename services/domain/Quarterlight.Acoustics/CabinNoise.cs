using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>A kind of noise in the cabin and its share.</summary>
/// <param name="Contribution">The noise.</param>
/// <param name="LevelDba">At the driver's ear, dB(A).</param>
/// <param name="ShareFraction">Share of the A-weighted energy, 0 to 1.</param>
public sealed record NoiseShare(NoiseContribution Contribution, double LevelDba, double ShareFraction);

/// <summary>All noise at the driver's ear under one set of conditions.</summary>
/// <param name="Drive">The conditions.</param>
/// <param name="LevelsDb">By octave, dB re 20 µPa.</param>
/// <param name="LevelDba">Together, dB(A).</param>
/// <param name="UncertaintyDb">Half width to expect around it, dB.</param>
/// <param name="Shares">By kind, loudest first.</param>
/// <param name="DominantWords">Words of the loudest kind in each octave, 125 Hz first.</param>
/// <param name="DailyLimitMin">Minutes a day a person may sit in it by NIOSH; null when it is a day or more.</param>
public sealed record CabinNoise(
    DriveConditions Drive,
    BandLevels LevelsDb,
    double LevelDba,
    double UncertaintyDb,
    IReadOnlyList<NoiseShare> Shares,
    IReadOnlyList<string> DominantWords,
    double? DailyLimitMin);
