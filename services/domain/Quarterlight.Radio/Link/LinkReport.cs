using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>How far the link holds at one availability.</summary>
/// <param name="AvailabilityFraction">Share of time and places, 0.5 to 0.999.</param>
/// <param name="RangeM">Distance between the antennas in metres up to which it holds; 0 when it does not hold at all.</param>
/// <param name="BeyondModel">True when it holds to the end of what the path model covers.</param>
public readonly record struct LinkRange(double AvailabilityFraction, double RangeM, bool BeyondModel);

/// <summary>What to expect at one distance.</summary>
/// <param name="DistanceM">Distance between the antennas in metres.</param>
/// <param name="LevelDbm">Median level at the receiver in dBm.</param>
/// <param name="SnrDb">Audio signal over noise in dB at that level; null for a digital link.</param>
/// <param name="AvailabilityFraction">Share of time and places above the level needed.</param>
public readonly record struct LinkPoint(double DistanceM, double LevelDbm, double? SnrDb, double AvailabilityFraction);

/// <summary>Something to change, and what it buys.</summary>
/// <param name="Code">Stable lower-case word with dashes, such as <c>antenna-outside</c>.</param>
/// <param name="Words">What to do.</param>
/// <param name="GainDb">What it adds to the margin at the gap.</param>
/// <param name="RangeGainM">What it adds to the range at the availability asked for, in metres.</param>
/// <param name="RangeM">The range with it, in metres.</param>
public sealed record LinkChange(string Code, string Words, double GainDb, double RangeGainM, double RangeM);

/// <summary>The answer to a link check.</summary>
public sealed record LinkReport
{
    /// <summary>The answer in one sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>Ranges at 50, 90, 95 and 99 %.</summary>
    public required IReadOnlyList<LinkRange> Ranges { get; init; }

    /// <summary>Range at the availability asked for.</summary>
    public required LinkRange AskedRange { get; init; }

    /// <summary>Distance asked about, in metres.</summary>
    public required double GapM { get; init; }

    /// <summary>Radiated power in dBm before the car's shielding.</summary>
    public required double EirpDbm { get; init; }

    /// <summary>Path loss at the gap in dB between isotropic antennas, obstacles included.</summary>
    public required double PathLossDb { get; init; }

    /// <summary>Median field at the gap, outside the follow car, in dB over a microvolt per metre.</summary>
    public required double FieldDbuvPerM { get; init; }

    /// <summary>Median level at the receiver at the gap, in dBm.</summary>
    public required double LevelDbm { get; init; }

    /// <summary>How far the real level may be from it in dB, both ways.</summary>
    public required double LevelUncertaintyDb { get; init; }

    /// <summary>Noise at the receiver in dBm, in its filter, with what other stations cost counted as noise.</summary>
    public required double NoiseDbm { get; init; }

    /// <summary>Audio signal over noise at the gap in dB; null for a digital link.</summary>
    public required double? SnrDb { get; init; }

    /// <summary>Level at the receiver needed without any fading, in dBm.</summary>
    public required double NeededLevelDbm { get; init; }

    /// <summary>The same as a field outside the follow car, in dB over a microvolt per metre.</summary>
    public required double NeededFieldDbuvPerM { get; init; }

    /// <summary>Median level at the gap over what is needed, in dB; negative when short.</summary>
    public required double MarginDb { get; init; }

    /// <summary>Margin against fading that the availability asked for needs, in dB.</summary>
    public required double FadeMarginDb { get; init; }

    /// <summary>Share of time and places above what is needed, at the gap.</summary>
    public required double AvailabilityFraction { get; init; }

    /// <summary>Drop-outs a minute at the gap and speed.</summary>
    public required double DropOutsPerMinute { get; init; }

    /// <summary>Mean length of a drop-out in milliseconds; 0 when standing.</summary>
    public required double MeanDropOutMs { get; init; }

    /// <summary>Delay in milliseconds, travel included; null when the system's own is not known.</summary>
    public required double? DelayMs { get; init; }

    /// <summary>The law.</summary>
    public required LawVerdict Law { get; init; }

    /// <summary>Range at the lawful level at the availability asked for; null when nothing may be sent without a licence.</summary>
    public required LinkRange? LawfulRange { get; init; }

    /// <summary>Level at the receiver at the gap in dBm if the transmitter kept to the lawful level; null without one.</summary>
    public required double? LawfulLevelDbm { get; init; }

    /// <summary>Which path model was used, why, and which not.</summary>
    public required PathChoice Path { get; init; }

    /// <summary>What to change, best first.</summary>
    public required IReadOnlyList<LinkChange> Changes { get; init; }

    /// <summary>What it means for the assistant director.</summary>
    public required string Blocking { get; init; }

    /// <summary>Level and signal over noise against distance, nearest first.</summary>
    public required IReadOnlyList<LinkPoint> Curve { get; init; }

    /// <summary>What to be careful about, most important first.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
