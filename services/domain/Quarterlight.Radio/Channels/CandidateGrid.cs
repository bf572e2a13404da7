namespace Quarterlight.Radio.Channels;

/// <summary>
/// All frequencies any transmitter can take, numbered upwards, so that sets of them are bit sets. Where a common step holds
/// them without too many gaps the number follows by division; otherwise it is looked up in the sorted list.
/// </summary>
internal sealed class CandidateGrid
{
    private const long MostGaps = 4;
    private readonly long[]? _listHz;
    private readonly long _baseHz, _stepHz;

    /// <summary>Makes the grid of a union of channel lists.</summary>
    public CandidateGrid(IEnumerable<IReadOnlyList<long>> channelLists)
    {
        long[] all = [.. channelLists.SelectMany(l => l).Distinct().Order()];
        LowHz = _baseHz = all[0];
        HighHz = all[^1];
        long step = 0;
        foreach (long hz in all)
        {
            step = GreatestCommonDivisor(step, hz - _baseHz);
        }

        StepHz = _stepHz = Math.Max(1, step);
        long span = ((HighHz - LowHz) / _stepHz) + 1;
        _listHz = span > 1024 && span > MostGaps * all.Length ? all : null;
        Count = _listHz?.Length ?? (int)span;
        WordCount = (Count + 63) / 64;
    }

    /// <summary>Lowest candidate in Hz.</summary>
    public long LowHz { get; }

    /// <summary>Highest candidate in Hz.</summary>
    public long HighHz { get; }

    /// <summary>Common step of all candidates in Hz.</summary>
    public long StepHz { get; }

    /// <summary>How many numbers there are.</summary>
    public int Count { get; }

    /// <summary>Words of 64 bits a set takes.</summary>
    public int WordCount { get; }

    /// <summary>The channels of one range that lie outside all excluded blocks, upwards.</summary>
    public static IEnumerable<long> Channels(TuningRange range, long stepHz, IReadOnlyList<ExcludedBlock> excluded)
    {
        for (long hz = range.LowHz; hz <= range.HighHz; hz += stepHz)
        {
            bool free = true;
            foreach (ExcludedBlock block in excluded)
            {
                free &= hz < block.LowHz || hz > block.HighHz;
            }

            if (free)
            {
                yield return hz;
            }
        }
    }

    /// <summary>Frequency of a number in Hz.</summary>
    public long FrequencyHz(int index) => _listHz is null ? _baseHz + (index * _stepHz) : _listHz[index];

    /// <summary>Smallest number whose frequency is not below the given one; <see cref="Count"/> when there is none.</summary>
    public int FirstAtOrAbove(long hz)
    {
        if (hz <= LowHz)
        {
            return 0;
        }

        if (hz > HighHz)
        {
            return Count;
        }

        if (_listHz is null)
        {
            return (int)((hz - _baseHz + _stepHz - 1) / _stepHz);
        }

        int at = Array.BinarySearch(_listHz, hz);
        return at < 0 ? ~at : at;
    }

    /// <summary>The set of some channels.</summary>
    public ulong[] SetOf(IReadOnlyList<long> channelsHz)
    {
        ulong[] set = new ulong[WordCount];
        foreach (long hz in channelsHz)
        {
            int i = FirstAtOrAbove(hz);
            set[i >> 6] |= 1UL << (i & 63);
        }

        return set;
    }

    private static long GreatestCommonDivisor(long a, long b) => b == 0 ? a : GreatestCommonDivisor(b, a % b);
}
