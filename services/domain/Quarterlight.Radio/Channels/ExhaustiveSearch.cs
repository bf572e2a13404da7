namespace Quarterlight.Radio.Channels;

/// <summary>
/// Depth-first search over all clean sets, group by group and upwards within a group. It looks only for sets larger than the best
/// (or only for full ones), and turns back where the channels left cannot hold enough carriers: by spacing, and because the gaps between
/// neighbouring carriers of a clean set differ from each other by at least the guard.
/// </summary>
internal sealed class ExhaustiveSearch(CoordinationProblem problem, PlacedCarriers placed, BestSet best)
{
    private readonly int[] _counts = new int[problem.Groups.Length];
    private readonly long _spacingHz = problem.Limits.EffectiveSpacingHz, _guardHz = problem.Limits.Guard(3);
    private bool _fullOnly;
    private long _nodeLimit;
    private bool _stopped;

    /// <summary>Runs; true when everything was looked through, or a full set was found.</summary>
    /// <param name="fullOnly">Look for full sets only; otherwise for any larger than the best.</param>
    /// <param name="nodeLimit">Nodes of <see cref="PlacedCarriers"/> at which to give up.</param>
    public bool Run(bool fullOnly, long nodeLimit)
    {
        placed.Clear();
        Array.Clear(_counts);
        (_fullOnly, _nodeLimit, _stopped) = (fullOnly, nodeLimit, false);
        Descend(0, -1);
        placed.Clear();
        return !_stopped;
    }

    private int Target => _fullOnly ? problem.TransmitterCount : best.Count + 1;

    /// <summary>Places the rest of group g above a channel, then the groups after it; true when the search is over.</summary>
    private bool Descend(int g, int last)
    {
        if (g == problem.Groups.Length)
        {
            best.Offer(placed);
            return best.Complete;
        }

        AlikeTransmitters group = problem.Groups[g];
        int open = group.Ids.Length - _counts[g];
        if (open == 0)
        {
            return Descend(g + 1, -1);
        }

        int later = placed.Count;
        for (int h = g + 1; h < problem.Groups.Length; h++)
        {
            later += MostThatFit(problem.Groups[h], 0, problem.Groups[h].Ids.Length);
        }

        for (int channel = placed.NextFree(group.Channels, last + 1); channel >= 0; channel = placed.NextFree(group.Channels, channel + 1))
        {
            if (later + MostThatFit(group, channel, open) < Target)
            {
                break;
            }

            if (placed.Nodes >= _nodeLimit)
            {
                _stopped = true;
                return true;
            }

            placed.Push(channel, g);
            _counts[g]++;
            bool over = Descend(g, channel);
            _counts[g]--;
            placed.Pop();
            if (over)
            {
                return true;
            }
        }

        // Leave the rest of the group out.
        return later >= Target && Descend(g + 1, -1);
    }

    /// <summary>An upper bound of how many carriers of a group fit on its clean channels from a number upwards.</summary>
    private int MostThatFit(AlikeTransmitters group, int from, int most)
    {
        int first = placed.NextFree(group.Channels, from);
        if (first < 0 || most == 0)
        {
            return 0;
        }

        // Gaps of a clean set: at least s, s + g, s + 2g and so on in some order.
        long reachHz = problem.Grid.FrequencyHz(placed.LastFree(group.Channels)) - problem.Grid.FrequencyHz(first);
        int byGaps = 1;
        long needHz = _spacingHz;
        for (long gapHz = _spacingHz; needHz <= reachHz && byGaps < most; byGaps++)
        {
            gapHz += _guardHz;
            needHz += gapHz;
        }

        int bySpacing = 0;
        for (int channel = first; channel >= 0 && bySpacing < byGaps; bySpacing++)
        {
            int next = problem.Grid.FirstAtOrAbove(problem.Grid.FrequencyHz(channel) + _spacingHz);
            channel = placed.NextFree(group.Channels, next);
        }

        return Math.Min(Math.Min(byGaps, bySpacing), most);
    }
}
