namespace Quarterlight.Radio.Channels;

/// <summary>A carrier to be checked.</summary>
/// <param name="Id">Name for the answer.</param>
/// <param name="FrequencyHz">Frequency in Hz.</param>
/// <param name="IsNeighbour">True for a carrier the crew does not place.</param>
public sealed record CheckedCarrier(string Id, long FrequencyHz, bool IsNeighbour = false);

/// <summary>Two carriers that are too close. Two neighbours are not reported: nothing here can part them.</summary>
/// <param name="LowerId">Name of the lower one.</param>
/// <param name="UpperId">Name of the upper one.</param>
/// <param name="DistanceHz">Their distance in Hz.</param>
public sealed record SpacingShortfall(string LowerId, string UpperId, long DistanceHz);

/// <summary>A product nearer to a carrier than its guard.</summary>
/// <param name="Kind">Form of the product.</param>
/// <param name="MemberIds">Carriers A, B and, for three signals, C.</param>
/// <param name="ProductHz">Where the product falls, in Hz.</param>
/// <param name="VictimId">Carrier it falls near; may be one of the members.</param>
/// <param name="DistanceHz">Distance from the carrier in Hz, 0 or more.</param>
/// <param name="MarginHz">Distance less guard in Hz: negative.</param>
public sealed record IntermodHit(ProductKind Kind, IReadOnlyList<string> MemberIds, long ProductHz, string VictimId, long DistanceHz, long MarginHz);

/// <summary>What a set of carriers amounts to.</summary>
public sealed record ChannelCheck
{
    /// <summary>Pairs of carriers closer than the spacing, lowest first.</summary>
    public required IReadOnlyList<SpacingShortfall> SpacingShortfalls { get; init; }

    /// <summary>Hits, nearest first, no more than <see cref="ChannelChecker.MostListedHits"/>. Those among neighbours alone are left out.</summary>
    public required IReadOnlyList<IntermodHit> Hits { get; init; }

    /// <summary>How many hits there are of each kind; kinds without hits are absent. Counts every product and victim, listed or not.</summary>
    public required IReadOnlyDictionary<ProductKind, int> HitCounts { get; init; }

    /// <summary>How many products of each kind the carriers make.</summary>
    public required IReadOnlyDictionary<ProductKind, int> ProductCounts { get; init; }

    /// <summary>Hits made by neighbours alone on neighbours: there whatever is placed, and not counted above.</summary>
    public required int NeighbourOnlyHitCount { get; init; }

    /// <summary>Smallest distance in Hz from a third-order product to a carrier, own members included; null without products.</summary>
    public required long? NearestThirdOrderHz { get; init; }

    /// <summary>The same for the fifth-order products looked at; null when none were.</summary>
    public required long? NearestFifthOrderHz { get; init; }

    /// <summary>All hits.</summary>
    public int HitCount => HitCounts.Values.Sum();

    /// <summary>True without hits and with the spacing kept.</summary>
    public bool Clean => HitCount == 0 && SpacingShortfalls.Count == 0;
}
