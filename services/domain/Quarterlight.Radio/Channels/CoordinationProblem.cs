namespace Quarterlight.Radio.Channels;

/// <summary>Transmitters that can take the same channels, and so can change places: only the order upwards is searched.</summary>
/// <param name="Ids">Their names, in ordinal order.</param>
/// <param name="Channels">The channels as a set of numbers of the grid.</param>
/// <param name="ChannelCount">How many there are.</param>
internal sealed record AlikeTransmitters(string[] Ids, ulong[] Channels, int ChannelCount);

/// <summary>A task in the form the searches use; the same whatever order the transmitters were listed in.</summary>
internal sealed class CoordinationProblem
{
    public CoordinationProblem(CoordinationTask task)
    {
        Limits = task.Limits;
        NeighboursHz = [.. task.Neighbours.Select(n => n.FrequencyHz).Order()];
        var lists = new List<(string Id, long[] Channels)>();
        foreach (ChannelTransmitter transmitter in task.Transmitters.OrderBy(t => t.Id, StringComparer.Ordinal))
        {
            lists.Add((transmitter.Id, ChannelsOf(transmitter, task.ExcludedBlocks)));
        }

        IGrouping<long[], (string Id, long[] Channels)>[] alike = [.. lists.GroupBy(l => l.Channels, new SameChannels())];
        Grid = new CandidateGrid(alike.Select(g => g.Key));
        Groups =
        [
            .. alike.Select(g => new AlikeTransmitters([.. g.Select(l => l.Id)], Grid.SetOf(g.Key), g.Key.Length))
                .OrderBy(g => g.ChannelCount / g.Ids.Length).ThenBy(g => g.ChannelCount).ThenBy(g => g.Ids[0], StringComparer.Ordinal),
        ];
        TransmitterCount = lists.Count;
    }

    /// <summary>Spacing and guards.</summary>
    public CoordinationLimits Limits { get; }

    /// <summary>Carriers already on air, upwards.</summary>
    public long[] NeighboursHz { get; }

    /// <summary>All channels.</summary>
    public CandidateGrid Grid { get; }

    /// <summary>Transmitters by what they can take, the most cramped first.</summary>
    public AlikeTransmitters[] Groups { get; }

    /// <summary>How many transmitters there are.</summary>
    public int TransmitterCount { get; }

    private static long[] ChannelsOf(ChannelTransmitter transmitter, IReadOnlyList<ExcludedBlock> excluded) => transmitter.FixedHz is long fixedHz
        ? [fixedHz]
        : [.. transmitter.TuningRanges.SelectMany(r => CandidateGrid.Channels(r, transmitter.StepHz, excluded)).Distinct().Order()];

    private sealed class SameChannels : IEqualityComparer<long[]>
    {
        public bool Equals(long[]? x, long[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(long[] obj) => HashCode.Combine(obj.Length, obj[0], obj[^1]);
    }
}
