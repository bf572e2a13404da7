namespace Quarterlight.Drawing;

/// <summary>A carrier on a spectrum map.</summary>
/// <param name="Label">What the crew calls it, such as TX 1.</param>
/// <param name="FrequencyMHz">Centre in MHz, above 0.</param>
/// <param name="IsClean">True when no product falls on it.</param>
/// <param name="IsNeighbour">True for another user's fixed transmitter; false for one of the crew's own.</param>
public sealed record SpectrumChannel(string Label, double FrequencyMHz, bool IsClean, bool IsNeighbour);

/// <summary>An intermodulation product on a spectrum map.</summary>
/// <param name="FrequencyMHz">Where it falls in MHz, above 0.</param>
/// <param name="Order">3 or 5.</param>
/// <param name="LevelDbm">Its level in dBm; null when not computed.</param>
/// <param name="IsHit">True when it falls on a carrier, guard included.</param>
public sealed record SpectrumProduct(double FrequencyMHz, int Order, double? LevelDbm, bool IsHit);

/// <summary>A stretch of spectrum that is not to be used.</summary>
/// <param name="LowMHz">Lower edge in MHz.</param>
/// <param name="HighMHz">Upper edge in MHz, not below the lower one.</param>
/// <param name="Reason">Why, in a few words.</param>
public sealed record ExcludedBlock(double LowMHz, double HighMHz, string Reason);

/// <summary>What a spectrum picture shows.</summary>
public sealed record SpectrumMap
{
    /// <summary>The answer in one sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>Lower edge of the range that was planned in MHz, above 0.</summary>
    public required double LowMHz { get; init; }

    /// <summary>Upper edge of the range that was planned in MHz, above the lower one.</summary>
    public required double HighMHz { get; init; }

    /// <summary>Distance kept between a carrier and any product in kHz, 0 or more.</summary>
    public required double GuardKHz { get; init; }

    /// <summary>Carriers, own and neighbours', in any order.</summary>
    public required IReadOnlyList<SpectrumChannel> Channels { get; init; }

    /// <summary>Intermodulation products; may be empty.</summary>
    public IReadOnlyList<SpectrumProduct> Products { get; init; } = [];

    /// <summary>Stretches not to be used; may be empty.</summary>
    public IReadOnlyList<ExcludedBlock> Excluded { get; init; } = [];
}
