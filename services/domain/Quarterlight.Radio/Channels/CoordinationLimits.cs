namespace Quarterlight.Radio.Channels;

/// <summary>How much of the fifth order is looked at.</summary>
public enum FifthOrderScope
{
    /// <summary>Nothing: third order only.</summary>
    None,

    /// <summary>The two-signal products 3A-2B.</summary>
    TwoSignal,

    /// <summary>The two-signal products and the three-signal products 3A-B-C and 2A+B-2C.</summary>
    TwoAndThreeSignal,
}

/// <summary>
/// What has to be kept between carriers and products. A product exactly at its guard distance is allowed; one that is nearer is a
/// hit. A guard of 0 still counts a product that falls exactly on a carrier.
/// </summary>
public sealed record CoordinationLimits
{
    /// <summary>Smallest distance between two carriers in Hz, at least 1 kHz; exactly this distance is allowed.</summary>
    public long MinSpacingHz { get; init; } = CoordinationDefaults.MinSpacingHz;

    /// <summary>Distance in Hz kept between any two- or three-signal product of third order and any carrier.</summary>
    public long ThirdOrderGuardHz { get; init; } = CoordinationDefaults.ThirdOrderGuardHz;

    /// <summary>Which products of fifth order count.</summary>
    public FifthOrderScope FifthOrder { get; init; } = FifthOrderScope.None;

    /// <summary>Distance in Hz kept between a product of fifth order and any carrier; used only when some count.</summary>
    public long FifthOrderGuardHz { get; init; } = CoordinationDefaults.FifthOrderGuardHz;

    /// <summary>The guard of one order, at least 1 Hz so that an exact hit always counts.</summary>
    internal long Guard(int order) => Math.Max(1, order == 3 ? ThirdOrderGuardHz : FifthOrderGuardHz);

    /// <summary>
    /// Distance two carriers need in truth: the product 2A-B lies as far from A as B does, and 3A-2B twice as far, so a guard is a spacing too.
    /// </summary>
    internal long EffectiveSpacingHz => Math.Max(
        MinSpacingHz, Math.Max(Guard(3), FifthOrder == FifthOrderScope.None ? 0 : (Guard(5) + 1) / 2));
}
