namespace Quarterlight.Radio.Channels;

/// <summary>
/// Carriers for everybody with few hits, where no clean set was found: the left-over transmitters go where they hit least, then one
/// after another moves to its best channel while that helps. A local search from a few starts; it proves nothing.
/// </summary>
internal sealed class Compromise
{
    // A judgement: of the order of a second.
    private const long MostWork = 30_000_000;
    private const int Starts = 4, Sweeps = 8;
    private readonly CoordinationProblem _problem;
    private readonly (string Id, ulong[] Channels)[] _transmitters;
    private readonly int[] _rank;
    private readonly long?[] _hz;
    private long _work;

    /// <summary>Prepares for a problem.</summary>
    public Compromise(CoordinationProblem problem)
    {
        _problem = problem;
        _transmitters = [.. problem.Groups.SelectMany(g => g.Ids.Select(id => (id, g.Channels)))];
        _rank = [.. Enumerable.Range(0, _transmitters.Length)];
        _hz = new long?[_transmitters.Length];
    }

    /// <summary>Searches; null when no way was found to keep the spacing.</summary>
    /// <param name="start">A clean set to build upon.</param>
    /// <param name="hits">Counts the hits of an assignment.</param>
    /// <param name="random">Source of the orders tried.</param>
    public Dictionary<string, long>? Run(Dictionary<string, long> start, Func<Dictionary<string, long>, int> hits, Random random)
    {
        (int Hits, Dictionary<string, long> Carriers)? best = null;
        for (int i = 0; i < Starts && (i == 0 || _work < MostWork) && best?.Hits != 0; i++)
        {
            for (int t = 0; t < _hz.Length; t++)
            {
                _hz[t] = i == 0 && start.TryGetValue(_transmitters[t].Id, out long hz) ? hz : null;
            }

            if (i > 0)
            {
                random.Shuffle(_rank);
            }

            if (!PlaceOpen() && !PackBySpacing())
            {
                continue;
            }

            for (int sweep = 0; sweep < Sweeps && _work < MostWork && Improve(); sweep++)
            {
            }

            Dictionary<string, long> carriers = Enumerable.Range(0, _hz.Length).ToDictionary(t => _transmitters[t].Id, t => _hz[t]!.Value);
            int count = hits(carriers);
            if (best is null || count < best.Value.Hits)
            {
                best = (count, carriers);
            }
        }

        return best?.Carriers;
    }

    private bool PlaceOpen()
    {
        foreach (int t in _rank)
        {
            if (_hz[t] is null)
            {
                _hz[t] = LeastHit(t).Hz;
            }
        }

        return Array.TrueForAll(_hz, hz => hz is not null);
    }

    private bool Improve()
    {
        bool moved = false;
        foreach (int t in _rank)
        {
            (long? hz, int hits, int hitsNow) = LeastHit(t);
            if (hz is not null && hits < hitsNow)
            {
                _hz[t] = hz;
                moved = true;
            }
        }

        return moved;
    }

    /// <summary>The channel where one transmitter, the others staying, has the fewest hits; null when the spacing leaves none.</summary>
    private (long? Hz, int Hits, int HitsNow) LeastHit(int t)
    {
        long[] others = [.. _problem.NeighboursHz, .. _hz.Where((hz, i) => i != t && hz is not null).Select(hz => hz!.Value)];
        CoordinationLimits limits = _problem.Limits;
        int factor = limits.FifthOrder == FifthOrderScope.TwoAndThreeSignal ? 8 : 2;
        _work += ((long)others.Length * others.Length * others.Length * factor / 4) + _problem.Grid.Count;
        var sink = new Counter(_problem.Grid, limits);
        for (int i = 0; i < others.Length; i++)
        {
            ForbiddenFrequencies.Add(others[i], others.AsSpan(0, i), limits.FifthOrder, ref sink);

            // Nearer than a guard that is wider than the spacing: hits of the products beside their own members.
            sink.Forbid(1, others[i], 3, 1);
            sink.Bar(others[i]);
        }

        int running = 0, barred = 0, least = int.MaxValue, now = int.MaxValue, nowAt = _hz[t] is long at ? _problem.Grid.FirstAtOrAbove(at) : -1;
        long? bestHz = null;
        for (int c = 0; c < _problem.Grid.Count; c++)
        {
            running += sink.Rise[c];
            barred += sink.Barred[c];
            if (c == nowAt)
            {
                now = running;
            }

            if (barred == 0 && running < least && ((_transmitters[t].Channels[c >> 6] >> (c & 63)) & 1) != 0)
            {
                (least, bestHz) = (running, _problem.Grid.FrequencyHz(c));
            }
        }

        return (bestHz, least, now);
    }

    /// <summary>Packs everybody upwards at the spacing: whoever can start lowest, and of those who runs out first.</summary>
    private bool PackBySpacing()
    {
        Array.Clear(_hz);
        long fromHz = 0;
        for (int placed = 0; placed < _hz.Length; placed++)
        {
            (long Hz, int Last, int T)? next = null;
            for (int t = 0; t < _hz.Length; t++)
            {
                if (_hz[t] is null && Lowest(t, fromHz) is (long hz, int last) && (next is null || (hz, last).CompareTo((next.Value.Hz, next.Value.Last)) < 0))
                {
                    next = (hz, last, t);
                }
            }

            if (next is null)
            {
                return false;
            }

            _hz[next.Value.T] = next.Value.Hz;
            fromHz = next.Value.Hz + _problem.Limits.MinSpacingHz;
        }

        return true;
    }

    private (long Hz, int Last)? Lowest(int t, long fromHz)
    {
        long? found = null;
        int last = -1;
        for (int c = _problem.Grid.FirstAtOrAbove(fromHz); c < _problem.Grid.Count; c++)
        {
            long hz = _problem.Grid.FrequencyHz(c);
            if (((_transmitters[t].Channels[c >> 6] >> (c & 63)) & 1) != 0
                && Array.TrueForAll(_problem.NeighboursHz, n => Math.Abs(n - hz) >= _problem.Limits.MinSpacingHz))
            {
                found ??= hz;
                last = c;
            }
        }

        return found is long lowest ? (lowest, last) : null;
    }

    private readonly struct Counter(CandidateGrid grid, CoordinationLimits limits) : IForbiddenSink
    {
        public int[] Rise { get; } = new int[grid.Count + 1];

        public int[] Barred { get; } = new int[grid.Count + 1];

        public void Forbid(int k, long rHz, int order, int hits) => Raise(Rise, k, rHz, limits.Guard(order), hits);

        public void Bar(long hz) => Raise(Barred, 1, hz, limits.MinSpacingHz, 1);

        private void Raise(int[] steps, int k, long rHz, long guardHz, int by)
        {
            (int from, int to) = ChannelSpan.Within(grid, k, rHz, guardHz);
            steps[from] += by;
            steps[to] -= by;
        }
    }
}
