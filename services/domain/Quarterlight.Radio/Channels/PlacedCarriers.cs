using System.Numerics;

namespace Quarterlight.Radio.Channels;

/// <summary>
/// A clean set that grows and shrinks at its end, and the channels still clean beside it. Each level has its own bit set, so taking a
/// carrier back costs nothing.
/// </summary>
internal sealed class PlacedCarriers
{
    private readonly CoordinationProblem _problem;
    private readonly CandidateGrid _grid;
    private readonly ulong[][] _free;
    private readonly long[] _carriersHz;
    private readonly int[] _groups;
    private readonly int _neighbours;
    private readonly long _thirdGuardHz, _fifthGuardHz;

    /// <summary>Starts with the neighbours on air and nobody placed.</summary>
    public PlacedCarriers(CoordinationProblem problem)
    {
        _problem = problem;
        _grid = problem.Grid;
        _neighbours = problem.NeighboursHz.Length;
        _carriersHz = new long[_neighbours + problem.TransmitterCount];
        _groups = new int[problem.TransmitterCount];
        _thirdGuardHz = problem.Limits.Guard(3);
        _fifthGuardHz = problem.Limits.Guard(5);
        _free = new ulong[problem.TransmitterCount + 1][];
        ulong[] start = _free[0] = new ulong[_grid.WordCount];
        foreach (AlikeTransmitters group in problem.Groups)
        {
            for (int w = 0; w < start.Length; w++)
            {
                start[w] |= group.Channels[w];
            }
        }

        for (int i = 0; i < _neighbours; i++)
        {
            Forbid(problem.NeighboursHz[i], _carriersHz.AsSpan(0, i), start);
            _carriersHz[i] = problem.NeighboursHz[i];
        }
    }

    /// <summary>Transmitters placed.</summary>
    public int Count { get; private set; }

    /// <summary>Carriers placed so far, over the life of this object.</summary>
    public long Nodes { get; private set; }

    /// <summary>Frequencies of the transmitters placed, in the order of placing.</summary>
    public ReadOnlySpan<long> PlacedHz => _carriersHz.AsSpan(_neighbours, Count);

    /// <summary>Their groups, in the same order.</summary>
    public ReadOnlySpan<int> PlacedGroups => _groups.AsSpan(0, Count);

    private ulong[] Free => _free[Count];

    /// <summary>The first clean channel of a set at or above a number; -1 when there is none.</summary>
    public int NextFree(ulong[] channels, int from)
    {
        ulong[] free = Free;
        int w = from >> 6;
        if (w >= free.Length)
        {
            return -1;
        }

        ulong word = free[w] & channels[w] & (ulong.MaxValue << (from & 63));
        while (word == 0)
        {
            if (++w == free.Length)
            {
                return -1;
            }

            word = free[w] & channels[w];
        }

        return (w << 6) + BitOperations.TrailingZeroCount(word);
    }

    /// <summary>The last clean channel of a set; -1 when there is none.</summary>
    public int LastFree(ulong[] channels)
    {
        for (int w = channels.Length - 1; w >= 0; w--)
        {
            ulong word = Free[w] & channels[w];
            if (word != 0)
            {
                return (w << 6) + 63 - BitOperations.LeadingZeroCount(word);
            }
        }

        return -1;
    }

    /// <summary>Places a carrier of a group on a clean channel.</summary>
    public void Push(int channel, int group)
    {
        ulong[] before = Free;
        ulong[] after = _free[Count + 1] ??= new ulong[_grid.WordCount];
        Array.Copy(before, after, before.Length);
        long hz = _grid.FrequencyHz(channel);
        int placed = _neighbours + Count;
        Forbid(hz, _carriersHz.AsSpan(0, placed), after);
        _carriersHz[placed] = hz;
        _groups[Count] = group;
        Count++;
        Nodes++;
    }

    /// <summary>Takes the last carrier back.</summary>
    public void Pop() => Count--;

    /// <summary>Takes all carriers back.</summary>
    public void Clear() => Count = 0;

    private void Forbid(long hz, ReadOnlySpan<long> others, ulong[] free)
    {
        var sink = new Sink(_grid, free, _thirdGuardHz, _fifthGuardHz);
        sink.Clear(1, hz, _problem.Limits.EffectiveSpacingHz);
        ForbiddenFrequencies.Add(hz, others, _problem.Limits.FifthOrder, ref sink);
    }

    private readonly struct Sink(CandidateGrid grid, ulong[] free, long thirdGuardHz, long fifthGuardHz) : IForbiddenSink
    {
        public void Forbid(int k, long rHz, int order, int hits) => Clear(k, rHz, order == 3 ? thirdGuardHz : fifthGuardHz);

        /// <summary>Clears all x with |k x - r| below the guard.</summary>
        public void Clear(int k, long rHz, long guardHz)
        {
            (int from, int to) = ChannelSpan.Within(grid, k, rHz, guardHz);
            int first = from >> 6, last = (to - 1) >> 6;
            if (from >= to)
            {
                return;
            }

            ulong head = ulong.MaxValue << (from & 63), tail = ulong.MaxValue >> (63 - ((to - 1) & 63));
            if (first == last)
            {
                free[first] &= ~(head & tail);
                return;
            }

            free[first] &= ~head;
            Array.Clear(free, first + 1, last - first - 1);
            free[last] &= ~tail;
        }
    }
}
