namespace Quarterlight.Radio.Channels;

/// <summary>What the search has shown, beyond the carriers it found.</summary>
public enum CoordinationProof
{
    /// <summary>Every transmitter has a clean carrier: the carriers themselves are the proof.</summary>
    FullSetFound,

    /// <summary>No full clean set was found and the node limit was reached: one may exist.</summary>
    NotProved,

    /// <summary>The search was exhausted: no full clean set exists. A larger partial set than the one found may.</summary>
    ProvedImpossible,

    /// <summary>Exhausted twice: no full clean set exists, and no clean partial set is larger than the one found.</summary>
    ProvedLargest,
}

/// <summary>The carrier of one transmitter.</summary>
/// <param name="TransmitterId">Name of the transmitter.</param>
/// <param name="FrequencyHz">Carrier frequency in Hz; null where it has none.</param>
public sealed record AssignedCarrier(string TransmitterId, long? FrequencyHz);

/// <summary>Carriers for all transmitters with as few hits as were found: a compromise, proved least only when there is no hit.</summary>
/// <param name="Carriers">One entry for each transmitter, in the task's order, none without a frequency.</param>
/// <param name="Check">What is wrong with it: the remaining hits.</param>
public sealed record CompromiseAssignment(IReadOnlyList<AssignedCarrier> Carriers, ChannelCheck Check);

/// <summary>Answer of <see cref="ChannelCoordinator"/>.</summary>
public sealed record CoordinationResult
{
    /// <summary>One entry for each transmitter, in the task's order. Those with a frequency form a clean set together with the neighbours.</summary>
    public required IReadOnlyList<AssignedCarrier> Carriers { get; init; }

    /// <summary>How many transmitters have a clean carrier.</summary>
    public required int PlacedCount { get; init; }

    /// <summary>True when every transmitter has a clean carrier.</summary>
    public bool Complete => PlacedCount == Carriers.Count;

    /// <summary>What has been proved.</summary>
    public required CoordinationProof Proof { get; init; }

    /// <summary>Carriers tried in all, including those of the first quick attempts.</summary>
    public required long NodesVisited { get; init; }

    /// <summary>The check of <see cref="Carriers"/>: without hits.</summary>
    public required ChannelCheck Check { get; init; }

    /// <summary>
    /// Carriers for all transmitters with the fewest hits found; null when <see cref="Complete"/>, or when no way was found to
    /// give all of them carriers at the spacing asked for. That fewer hits are impossible is not proved.
    /// </summary>
    public CompromiseAssignment? FewestHits { get; init; }
}
