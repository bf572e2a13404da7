using System.Runtime.InteropServices;
using Quarterlight.Cabin;

namespace Quarterlight.Placement;

/// <summary>What there is to choose with.</summary>
/// <param name="TalkerCount">Talkers to serve, all of them.</param>
/// <param name="InputCount">Recorder inputs: most microphones at once.</param>
/// <param name="MicrophoneCounts">How many of each microphone.</param>
/// <param name="FixingCounts">How many of each single fixing.</param>
internal sealed record ChoiceLimits(int TalkerCount, int InputCount, IReadOnlyList<int> MicrophoneCounts, IReadOnlyDictionary<Fixings, int> FixingCounts);

/// <summary>A choice and its proof.</summary>
/// <param name="Chosen">Candidate number of each talker; talkers who share have the same.</param>
/// <param name="WorstDb">Score of the worst talker, all penalties taken off.</param>
/// <param name="SumDb">Sum of the talkers' scores.</param>
/// <param name="Complete">True when the search ended by itself: nothing better exists.</param>
/// <param name="Nodes">Branches looked into.</param>
/// <param name="WorstBoundDb">What no choice's worst talker can exceed.</param>
/// <param name="SumBoundDb">What no sum can exceed among choices with that worst talker.</param>
internal sealed record Choice(int[] Chosen, double WorstDb, double SumDb, bool Complete, long Nodes, double WorstBoundDb, double SumBoundDb);

/// <summary>
/// Picks one candidate for each talker so that the worst talker is served as well as possible, and then the sum: depth-first
/// branch and bound, exact.
/// </summary>
/// <remarks>
/// A site holds one microphone; counts of microphones, fixings and inputs hold. Two microphones open at once comb for a talker
/// whom his own does not lead by enough, so a score depends on the others chosen: it only ever falls as more are added, hence
/// "each remaining talker's best score on its own" bounds from above. Docs: docs/models/choice.md.
/// </remarks>
internal sealed class ExactChoice
{
    private const double Tie = 1e-9;

    private readonly IReadOnlyList<Candidate> _candidates;
    private readonly ChoiceLimits _limits;
    private readonly long _nodeLimit;
    private readonly int[][] _options; // Per talker in search order: candidates, best first.
    private readonly int[] _order;
    private readonly double[] _bestAlone;
    private readonly int[] _microphonesUsed;
    private readonly Dictionary<Fixings, int> _fixingsLeft;
    private readonly HashSet<int> _spotsUsed = [];
    private readonly List<int> _open = [];
    private readonly int[] _assigned;
    private readonly int[] _bestAssigned;
    private double _bestWorst = double.NegativeInfinity;
    private double _bestSum = double.NegativeInfinity;
    private long _nodes;
    private bool _found;

    private ExactChoice(IReadOnlyList<Candidate> candidates, IReadOnlyList<int> allowed, ChoiceLimits limits, long nodeLimit)
    {
        _candidates = candidates;
        _limits = limits;
        _nodeLimit = nodeLimit;
        int talkers = limits.TalkerCount;
        _bestAlone = new double[talkers];
        Array.Fill(_bestAlone, double.NegativeInfinity);
        foreach (int c in allowed)
        {
            for (int t = 0; t < talkers; t++)
            {
                if (candidates[c].Serves(t))
                {
                    _bestAlone[t] = Math.Max(_bestAlone[t], candidates[c].ScoreDb[t]);
                }
            }
        }

        // Hardest talker first: the worst score is settled near the root, and the bound bites at once.
        _order = [.. Enumerable.Range(0, talkers).OrderBy(t => _bestAlone[t])];
        _options = new int[talkers][];
        for (int t = 0; t < talkers; t++)
        {
            _options[t] = [.. allowed.Where(c => candidates[c].Serves(t)).OrderByDescending(c => candidates[c].ScoreDb[t]).ThenBy(c => c)];
        }

        _microphonesUsed = new int[limits.MicrophoneCounts.Count];
        _fixingsLeft = limits.FixingCounts.ToDictionary(p => p.Key, p => p.Value);
        _assigned = new int[talkers];
        Array.Fill(_assigned, -1);
        _bestAssigned = new int[talkers];
    }

    /// <summary>Solves; null when no choice serves every talker (or none was found within the node limit).</summary>
    public static Choice? Solve(IReadOnlyList<Candidate> candidates, IReadOnlyList<int> allowed, ChoiceLimits limits, long nodeLimit)
    {
        var search = new ExactChoice(candidates, allowed, limits, nodeLimit);
        if (search._bestAlone.Any(double.IsNegativeInfinity))
        {
            return null;
        }

        search.Descend(0, double.PositiveInfinity, 0);
        if (!search._found)
        {
            return null;
        }

        bool complete = search._nodes < nodeLimit;
        double worstBound = complete ? search._bestWorst : search._bestAlone.Min();
        double sumBound = complete ? search._bestSum : search._bestAlone.Sum();
        return new Choice((int[])search._bestAssigned.Clone(), search._bestWorst, search._bestSum, complete, search._nodes, worstBound, sumBound);
    }

    /// <summary>Score in dB of a talker in a complete choice: the candidate's own less the dearest comb with another open microphone.</summary>
    public static double ScoreIn(IReadOnlyList<Candidate> candidates, ReadOnlySpan<int> chosen, int talker) =>
        ScoreAmong(candidates, chosen[talker], chosen, talker);

    /// <summary>
    /// Least lead in dB of a talker's own microphone over the others open; null with a single one. Entries below 0 are talkers
    /// without a microphone.
    /// </summary>
    public static double? LeadDb(IReadOnlyList<Candidate> candidates, int own, ReadOnlySpan<int> open, int talker)
    {
        double? least = null;
        double ownDba = candidates[own].SpeechDba[talker];
        foreach (int other in open)
        {
            if (other >= 0 && other != own)
            {
                double lead = ownDba - candidates[other].SpeechDba[talker];
                least = least is { } l ? Math.Min(l, lead) : lead;
            }
        }

        return least;
    }

    // The cost only grows as the lead shrinks: the least lead is the dearest.
    private static double ScoreAmong(IReadOnlyList<Candidate> candidates, int own, ReadOnlySpan<int> open, int talker) =>
        candidates[own].ScoreDb[talker] - (LeadDb(candidates, own, open, talker) is { } lead ? Penalties.CombCostDb(lead) : 0);

    private void Descend(int depth, double worstSoFar, double sumSoFar)
    {
        while (depth < _order.Length && _assigned[_order[depth]] >= 0)
        {
            depth++;
        }

        if (depth == _order.Length)
        {
            Keep();
            return;
        }

        (double restWorst, double restSum) = RestAlone(depth + 1);
        int talker = _order[depth];
        foreach (int c in _options[talker])
        {
            if (_nodes >= _nodeLimit)
            {
                return;
            }

            Candidate candidate = _candidates[c];
            double own = candidate.ScoreDb[talker];

            // Options are sorted by this talker's score: once the bound fails it fails for all that follow.
            if (!CanBeat(Math.Min(Math.Min(worstSoFar, own), restWorst), sumSoFar + own + restSum))
            {
                return;
            }

            _nodes++;
            if (Fits(candidate))
            {
                Place(c, candidate);
                (double worst, double sum) = Current();
                (double leftWorst, double leftSum) = RestAlone(depth + 1);
                if (CanBeat(Math.Min(worst, leftWorst), sum + leftSum))
                {
                    Descend(depth + 1, worst, sum);
                }

                Lift(c, candidate);
            }
        }
    }

    // What those still without a microphone, from a depth on, could score at best: each alone.
    private (double Worst, double Sum) RestAlone(int fromDepth)
    {
        double worst = double.PositiveInfinity, sum = 0;
        for (int d = fromDepth; d < _order.Length; d++)
        {
            if (_assigned[_order[d]] < 0)
            {
                worst = Math.Min(worst, _bestAlone[_order[d]]);
                sum += _bestAlone[_order[d]];
            }
        }

        return (worst, sum);
    }

    private bool CanBeat(double worstBound, double sumBound) =>
        worstBound > _bestWorst + Tie || (worstBound >= _bestWorst - Tie && sumBound > _bestSum + Tie);

    private bool Fits(Candidate candidate)
    {
        for (int t = 0; t < _assigned.Length; t++)
        {
            if (candidate.Serves(t) && _assigned[t] >= 0)
            {
                return false;
            }
        }

        return _open.Count < _limits.InputCount
            && _microphonesUsed[candidate.Microphone] < _limits.MicrophoneCounts[candidate.Microphone]
            && _fixingsLeft.GetValueOrDefault(candidate.Fixing) > 0
            && !_spotsUsed.Contains(candidate.Spot);
    }

    private void Place(int c, Candidate candidate)
    {
        _open.Add(c);
        _microphonesUsed[candidate.Microphone]++;
        _fixingsLeft[candidate.Fixing]--;
        _spotsUsed.Add(candidate.Spot);
        Assign(candidate, c);
    }

    private void Lift(int c, Candidate candidate)
    {
        _open.Remove(c);
        _microphonesUsed[candidate.Microphone]--;
        _fixingsLeft[candidate.Fixing]++;
        _spotsUsed.Remove(candidate.Spot);
        Assign(candidate, -1);
    }

    private void Assign(Candidate candidate, int c)
    {
        for (int t = 0; t < _assigned.Length; t++)
        {
            if (candidate.Serves(t))
            {
                _assigned[t] = c;
            }
        }
    }

    private (double Worst, double Sum) Current()
    {
        double worst = double.PositiveInfinity, sum = 0;
        for (int t = 0; t < _assigned.Length; t++)
        {
            if (_assigned[t] < 0)
            {
                continue;
            }

            double score = ScoreAmong(_candidates, _assigned[t], CollectionsMarshal.AsSpan(_open), t);
            worst = Math.Min(worst, score);
            sum += score;
        }

        return (worst, sum);
    }

    private void Keep()
    {
        (double worst, double sum) = Current();
        if (worst > _bestWorst + Tie || (worst >= _bestWorst - Tie && sum > _bestSum + Tie))
        {
            _found = true;
            _bestWorst = worst;
            _bestSum = sum;
            _assigned.CopyTo(_bestAssigned, 0);
        }
    }
}
