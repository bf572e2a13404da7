namespace Quarterlight.Radio.Channels;

/// <summary>
/// Gives everybody a channel at the spacing, hits or not. Any way to do so can be pushed down carrier by carrier, lowest first, so only the
/// order of the transmitters along the spectrum is searched, each at the lowest channel left to it. Ends early on hard cases.
/// </summary>
internal sealed class SpacingPack
{
    // A judgement: milliseconds.
    private const int MostSteps = 20_000;
    private readonly long[][] _channelsHz;
    private readonly int[] _groupOf, _open;
    private readonly long[] _placedHz;
    private readonly long _spacingHz;
    private int _steps;

    /// <summary>Prepares for a problem; transmitters are numbered group after group.</summary>
    public SpacingPack(CoordinationProblem problem)
    {
        _spacingHz = problem.Limits.MinSpacingHz;
        _channelsHz =
        [
            .. problem.Groups.Select(g => Enumerable.Range(0, problem.Grid.Count)
                .Where(c => ((g.Channels[c >> 6] >> (c & 63)) & 1) != 0)
                .Select(problem.Grid.FrequencyHz)
                .Where(hz => Array.TrueForAll(problem.NeighboursHz, n => Math.Abs(n - hz) >= _spacingHz))
                .ToArray()),
        ];
        _groupOf = [.. problem.Groups.SelectMany((g, i) => g.Ids.Select(_ => i))];
        _open = [.. problem.Groups.Select(g => g.Ids.Length)];
        _placedHz = new long[_groupOf.Length];
    }

    /// <summary>Frequencies in Hz by transmitter; null when no way was found.</summary>
    public long[]? Run() => Place(0, 0) ? _placedHz : null;

    private bool Place(int count, long fromHz)
    {
        if (count == _placedHz.Length)
        {
            return true;
        }

        // Whoever can start lowest first, and of those who runs out first.
        var next = new List<(long Hz, long LastHz, int Group)>();
        for (int g = 0; g < _open.Length; g++)
        {
            long[] channels = _channelsHz[g];
            int at = Array.BinarySearch(channels, fromHz);
            at = at < 0 ? ~at : at;
            if (_open[g] > 0 && at == channels.Length)
            {
                return false;
            }

            if (_open[g] > 0)
            {
                next.Add((channels[at], channels[^1], g));
            }
        }

        next.Sort();
        foreach ((long hz, _, int g) in next)
        {
            if (++_steps > MostSteps)
            {
                return false;
            }

            int first = Array.IndexOf(_groupOf, g);
            _open[g]--;
            _placedHz[first + _open[g]] = hz;
            if (Place(count + 1, hz + _spacingHz))
            {
                return true;
            }

            _open[g]++;
        }

        return false;
    }
}
