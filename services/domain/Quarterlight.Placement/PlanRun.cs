using System.Numerics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>One planning run: gate the spots, trace them, make candidates, choose, word the answer.</summary>
internal sealed class PlanRun : IDisposable
{
    private readonly PlacementTask _task;
    private readonly PlacementOptions _options;
    private readonly List<RefusedSite> _refused = [];
    private readonly List<MountSpot> _spots = [];
    private readonly bool[] _usable;
    private readonly SpotFields _fields;
    private readonly CandidateFactory _factory;
    private readonly List<Candidate> _candidates;
    private readonly PlacementWriter _writer;

    public PlanRun(PlacementTask task, PlacementOptions options)
    {
        _task = task;
        _options = options;
        var gate = new SiteGate(task, options);
        int microphones = task.Kit.Microphones.Count;
        var flags = new List<bool>();
        Span<bool> usable = stackalloc bool[microphones];
        foreach (MountSpot spot in MountSpot.All(task, options))
        {
            if (task.Scene.RemovedSiteIds.Contains(spot.Site.Id))
            {
                continue;
            }

            if (gate.Try(spot, usable) is { } refusal)
            {
                _refused.Add(refusal);
                continue;
            }

            _spots.Add(spot);
            foreach (bool flag in usable)
            {
                flags.Add(flag);
            }
        }

        _usable = [.. flags];
        _fields = new SpotFields(task, options);
        _factory = new CandidateFactory(task, options, gate, _fields, _spots, _usable);
        _candidates = _factory.Singles();
        _writer = new PlacementWriter(task, _fields, new FigureSheet(_fields, options), _spots, _candidates);
    }

    /// <inheritdoc/>
    public void Dispose() => _factory.Dispose();

    public MountPlan Plan()
    {
        int talkers = _task.Scene.Talkers.Count;
        int covered = 0;
        foreach (Candidate candidate in _candidates)
        {
            covered |= candidate.Mask;
        }

        int[] served = [.. Enumerable.Range(0, talkers).Where(t => (covered & (1 << t)) != 0)];
        Choice? choice = served.Length == 0 ? null : Choose(ref served);
        OptimalityProof proof = choice is null
            ? new OptimalityProof(true, _candidates.Count, 0, 0, 0, 0, 0)
            : new OptimalityProof(choice.Complete, _candidates.Count, choice.Nodes, choice.WorstDb, choice.WorstBoundDb, choice.SumDb, choice.SumBoundDb);
        PlanOption best = choice is null ? new PlanOption([], 0, 0, "") : _writer.Write(choice, served, null);
        List<PlanOption> runnersUp = choice is null ? [] : RunnersUp(choice, served, best);
        string[] uncovered = [.. Enumerable.Range(0, talkers).Except(served).Select(t => _task.Scene.Talkers[t].Id)];
        return new MountPlan
        {
            Best = best,
            RunnersUp = runnersUp,
            UncoveredTalkerIds = uncovered,
            RefusedSites = _refused,
            UsableSiteCount = _spots.Count,
            Proof = proof,
            Advisories = PlanAdvisories.For(_task, best, uncovered, proof, _writer.NoiseUncertaintyDb),
            CabinNoiseDba = _writer.CabinNoise(),
        };
    }

    public SiteExplanation Explain(MountPlan plan, string siteId, string talkerId)
    {
        int talker = IndexOfTalker(talkerId);
        string id = siteId == BodyWorn.AnyId ? BodyWorn.IdFor(talkerId) : siteId;
        TalkerPlacement? picked = plan.Best.Placements.FirstOrDefault(p => p.TalkerId == talkerId);
        if (_refused.FirstOrDefault(r => r.Site.Id == id) is { } refused)
        {
            return new SiteExplanation { Chosen = false, Summary = refused.Explanation, Refused = refused, Picked = picked };
        }

        int spot = _spots.FindIndex(s => s.Site.Id == id);
        if (spot < 0)
        {
            throw new InvalidInputException(new Violation("site_id", $"there is no mount site \"{siteId}\" in this car or scene", "Use an id that the list of mount sites gives, or body-worn"));
        }

        Candidate? there = _candidates.Where(c => c.Spot == spot && c.Serves(talker)).OrderByDescending(c => c.ScoreDb[talker]).FirstOrDefault();
        if (there is null)
        {
            string none = $"{_spots[spot].Site.Words}: no microphone of the kit can be aimed from there for {_task.Scene.Talkers[talker].DisplayName}.";
            return new SiteExplanation { Chosen = false, Summary = none, Picked = picked };
        }

        TalkerPlacement alone = _writer.Alone(there, talker);
        return new SiteExplanation
        {
            Chosen = picked?.Site.Id == id,
            Summary = PlanAdvisories.Comparison(_task.Scene.Talkers[talker], alone, picked),
            There = alone,
            Picked = picked,
        };
    }

    private int IndexOfTalker(string talkerId)
    {
        for (int t = 0; t < _task.Scene.Talkers.Count; t++)
        {
            if (_task.Scene.Talkers[t].Id == talkerId)
            {
                return t;
            }
        }

        throw new InvalidInputException(new Violation(
            "talker_id",
            $"there is no talker \"{talkerId}\" in this scene",
            $"Use one of: {string.Join(", ", _task.Scene.Talkers.Select(t => t.Id))}"));
    }

    // Serves as many talkers as can be served. First everyone on a microphone of their own, whose worst score is a floor for
    // sharing; then with shared microphones as well. Only when even that fails are talkers left out, fewest first.
    private Choice? Choose(ref int[] served)
    {
        int[] all = served;
        Choice? own = Solve(all, []);
        Choice? best = AddGroups(all, own) ? Solve(all, []) : own;
        if (best is not null)
        {
            return best;
        }

        for (int leave = 1; leave < all.Length; leave++)
        {
            int[]? kept = null;
            foreach (int[] subset in Subsets(all, all.Length - leave))
            {
                Choice? choice = Solve(subset, []);
                if (choice is not null && (best is null || choice.WorstDb > best.WorstDb))
                {
                    (best, kept) = (choice, subset);
                }
            }

            if (best is not null)
            {
                served = kept!;
                return best;
            }
        }

        served = [];
        return null;
    }

    // True when sharing is possible at all: candidates were added.
    private bool AddGroups(int[] served, Choice? own)
    {
        int most = own is not null ? 2 : served.Length;
        int servedMask = MaskOf(served);
        int[] masks =
        [
            .. Enumerable.Range(1, servedMask).Where(m => (m & ~servedMask) == 0 && BitOperations.PopCount((uint)m) is var n && n >= 2 && n <= most),
        ];
        List<Candidate> groups = _factory.Groups(masks, _candidates, own?.WorstDb ?? double.NegativeInfinity);
        _candidates.AddRange(groups);
        return groups.Count > 0;
    }

    private static int MaskOf(int[] talkers) => talkers.Sum(t => 1 << t);

    private Choice? Solve(int[] served, HashSet<string> bannedSites)
    {
        int servedMask = MaskOf(served);
        int[] numbers =
        [
            .. Enumerable.Range(0, _candidates.Count).Where(c =>
                (_candidates[c].Mask & ~servedMask) == 0 && !bannedSites.Contains(_spots[_candidates[c].Spot].Site.Id)),
        ];

        // The search wants talkers numbered without gaps: with some left out, candidates are seen through the served ones only.
        IReadOnlyList<Candidate> view = served.Length < _task.Scene.Talkers.Count ? [.. _candidates.Select(c => Narrowed(c, served))] : _candidates;
        var limits = new ChoiceLimits(served.Length, _task.Kit.RecorderInputCount, [.. _task.Kit.Microphones.Select(m => m.Count)], _task.Kit.FixingCounts);
        return ExactChoice.Solve(view, numbers, limits, _options.NodeLimit);
    }

    private static Candidate Narrowed(Candidate c, int[] served) => new()
    {
        Mask = served.Select((t, i) => ((c.Mask >> t) & 1) << i).Sum(),
        Spot = c.Spot,
        Microphone = c.Microphone,
        Fixing = c.Fixing,
        Aim = c.Aim,
        ScoreDb = [.. served.Select(t => c.ScoreDb[t])],
        SpeechDba = [.. served.Select(t => c.SpeechDba[t])],
        RatioDb = [.. served.Select(t => c.RatioDb[t])],
        WorstDb = c.WorstDb,
        CeilingDb = c.CeilingDb,
    };

    // A runner-up is the best plan with every talker somewhere else: it is what to rig when the plan's places fall away.
    private List<PlanOption> RunnersUp(Choice choice, int[] served, PlanOption best)
    {
        var options = new List<PlanOption>();
        var banned = new HashSet<string>();
        Choice? previous = choice;
        for (int i = 0; i < 2 && previous is not null; i++)
        {
            foreach (int c in previous.Chosen)
            {
                banned.Add(_spots[_candidates[c].Spot].Site.Id);
            }

            previous = Solve(served, banned);
            if (previous is not null)
            {
                options.Add(_writer.Write(previous, served, best));
            }
        }

        return options;
    }

    private static IEnumerable<int[]> Subsets(int[] of, int size)
    {
        for (int mask = 1; mask < 1 << of.Length; mask++)
        {
            if (BitOperations.PopCount((uint)mask) == size)
            {
                yield return [.. of.Where((_, i) => (mask & (1 << i)) != 0)];
            }
        }
    }
}
