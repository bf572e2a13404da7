namespace Quarterlight.Radio.Channels;

/// <summary>Frequencies a transmitter can be set to: LowHz, LowHz + step and so on up to HighHz.</summary>
/// <param name="LowHz">Lowest frequency in Hz; the grid starts here.</param>
/// <param name="HighHz">Highest frequency in Hz, inclusive.</param>
public sealed record TuningRange(long LowHz, long HighHz);

/// <summary>A transmitter that needs a carrier.</summary>
public sealed record ChannelTransmitter
{
    /// <summary>Name, unique within the task.</summary>
    public required string Id { get; init; }

    /// <summary>Where it can be tuned; may be empty only when it is already tuned.</summary>
    public IReadOnlyList<TuningRange> TuningRanges { get; init; } = [];

    /// <summary>Tuning step in Hz.</summary>
    public long StepHz { get; init; } = 25_000;

    /// <summary>Frequency in Hz of a transmitter that is already tuned and is not to be moved; null when free. It need not lie on the grid.</summary>
    public long? FixedHz { get; init; }
}

/// <summary>A carrier of somebody else, or of the crew's own, that nobody moves: it makes products and suffers from them.</summary>
/// <param name="Id">Name, unique within the task.</param>
/// <param name="FrequencyHz">Carrier frequency in Hz.</param>
public sealed record NeighbourCarrier(string Id, long FrequencyHz);

/// <summary>Frequencies not to be used, such as a broadcast channel.</summary>
/// <param name="LowHz">Lower edge in Hz, inclusive.</param>
/// <param name="HighHz">Upper edge in Hz, inclusive.</param>
/// <param name="Why">The reason in plain words; may be empty.</param>
public sealed record ExcludedBlock(long LowHz, long HighHz, string Why);

/// <summary>Which transmitters need carriers, among what, and what has to be kept.</summary>
public sealed record CoordinationTask
{
    /// <summary>Transmitters to place, 1 to 40.</summary>
    public required IReadOnlyList<ChannelTransmitter> Transmitters { get; init; }

    /// <summary>Carriers that stay where they are.</summary>
    public IReadOnlyList<NeighbourCarrier> Neighbours { get; init; } = [];

    /// <summary>Blocks no transmitter may be placed in.</summary>
    public IReadOnlyList<ExcludedBlock> ExcludedBlocks { get; init; } = [];

    /// <summary>Spacing and guards.</summary>
    public CoordinationLimits Limits { get; init; } = new();

    /// <summary>Carriers tried before the search stops without a proof.</summary>
    public int NodeLimit { get; init; } = CoordinationDefaults.NodeLimit;

    /// <summary>Seed of the restarts: same task and seed, same answer.</summary>
    public int Seed { get; init; } = 1;
}
