namespace Quarterlight.Radio.Channels;

/// <summary>
/// Carriers for everybody with few hits, where no clean set was found: the left-over transmitters go where they hit least, then one
/// after another moves to its best channel while that helps. A local search from a few starts; it proves nothing.
/// </summary>
internal sealed class Compromise
{
    // A judgement: of the order of a second.
    private const long MostWork = 30_000_000;
    private const int Starts = 40, FruitlessStarts = 12, Sweeps = 6;
    private readonly CoordinationProblem _problem;
    private readonly (string Id, ulong[] Channels)[] _transmitters;
    private readonly int[] _rank;
    private readonly long?[] _hz;
    private readonly Random _random;
    private long _work;

    /// <summary>Prepares for a problem; the orders and the choices among equals come from the seeded source.</summary>
    public Compromise(CoordinationProblem problem, Random random)
    {
        _random = random;
        _problem = problem;
        _transmitters = [.. problem.Groups.SelectMany(g => g.Ids.Select(id => (id, g.Channels)))];
        _rank = [.. Enumerable.Range(0, _transmitters.Length)];
        _hz = new long?[_transmitters.Length];
    }

    /// <summary>Searches; null when no way was found to keep the spacing.</summary>
    /// <param name="start">A clean set to build upon.</param>
    /// <param name="hits">Counts the hits of an assignment.</param>
    public Dictionary<string, long>? Run(Dictionary<string, long> start, Func<Dictionary<string, long>, int> hits)
    {
        (int Hits, Dictionary<string, long> Carriers)? best = null;
        for (int i = 0, fruitless = 0; i < Starts && fruitless < FruitlessStarts && (i == 0 || _work < MostWork) && best?.Hits != 0; i++, fruitless++)
        {
            // First from the clean set; then in turn from nothing, and from the best with a few taken out.
            Dictionary<string, long> from = i == 0 ? start : i % 2 == 0 && best is not null ? best.Value.Carriers : [];
            for (int t = 0; t < _hz.Length; t++)
            {
                _hz[t] = from.TryGetValue(_transmitters[t].Id, out long hz) ? hz : null;
            }

            if (i > 0)
            {
                _random.Shuffle(_rank);
                foreach (int t in _rank.Take(2 + (i % 3)))
                {
                    _hz[t] = null;
                }

                _random.Shuffle(_rank);
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
                fruitless = 0;
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
            if (hz is not null && hits <= hitsNow)
            {
                _hz[t] = hz;
                moved |= hits < hitsNow;
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
            ForbiddenFrequencies.AddBeside(others[i], others.Length, limits.FifthOrder, ref sink);
            sink.Bar(others[i]);
        }

        int running = 0, barred = 0, equals = 0, least = int.MaxValue, now = int.MaxValue, nowAt = _hz[t] is long at ? _problem.Grid.FirstAtOrAbove(at) : -1;
        long? bestHz = null;
        for (int c = 0; c < _problem.Grid.Count; c++)
        {
            running += sink.Rise[c];
            barred += sink.Barred[c];
            if (c == nowAt)
            {
                now = running;
            }

            if (barred == 0 && running <= least && ((_transmitters[t].Channels[c >> 6] >> (c & 63)) & 1) != 0)
            {
                // Among equals, each with the same chance.
                equals = running < least ? 1 : equals + 1;
                if (equals == 1 || _random.Next(equals) == 0)
                {
                    (least, bestHz) = (running, _problem.Grid.FrequencyHz(c));
                }
            }
        }

        return (bestHz, least, now);
    }

    private bool PackBySpacing()
    {
        if (new SpacingPack(_problem).Run() is not long[] packedHz)
        {
            return false;
        }

        for (int t = 0; t < _hz.Length; t++)
        {
            _hz[t] = packedHz[t];
        }

        return true;
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
