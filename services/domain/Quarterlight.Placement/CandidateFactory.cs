using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Makes the candidates: for each usable spot, microphone and fixing the best aim for each talker, or for a group.</summary>
internal sealed class CandidateFactory : IDisposable
{
    private readonly PlacementTask _task;
    private readonly PlacementOptions _options;
    private readonly SiteGate _gate;
    private readonly SpotFields _fields;
    private readonly List<MountSpot> _spots;
    private readonly bool[] _usable;
    private readonly SpotSums _sums;
    private readonly AimScore _score;
    private readonly AimSearch _search;
    private readonly BandVector[] _selfNoise;
    private readonly TubeScore _tube;
    private readonly Dictionary<double, int> _lastAims = []; // Best aim by how far it may lean: fixings of one reach share it.

    public CandidateFactory(PlacementTask task, PlacementOptions options, SiteGate gate, SpotFields fields, List<MountSpot> spots, bool[] usable)
    {
        _task = task;
        _options = options;
        _gate = gate;
        _fields = fields;
        _spots = spots;
        _usable = usable;
        _sums = new SpotSums(fields, spots, options);
        _score = new AimScore(fields, _sums, options);
        _search = new AimSearch(_score);
        _selfNoise = [.. task.Kit.Microphones.Select(m => SelfNoise.Energy(m.SelfNoiseDba))];
        _tube = new TubeScore(fields, options);
    }

    /// <inheritdoc/>
    public void Dispose() => _sums.Dispose();

    /// <summary>All candidates that serve one talker.</summary>
    public List<Candidate> Singles()
    {
        var all = new List<Candidate>();
        var one = new int[1];
        for (int t = 0; t < _fields.TalkerCount; t++)
        {
            one[0] = t;
            AddFor(one, 1 << t, all, double.NegativeInfinity, null);
        }

        return all;
    }

    /// <summary>
    /// Candidates that serve a group, leaving out those that cannot reach a floor: before tone change is deducted, a shared
    /// aim is never better for a talker than the talker's own best aim at the same place.
    /// </summary>
    public List<Candidate> Groups(IReadOnlyList<int> masks, IReadOnlyList<Candidate> singles, double floorDb)
    {
        var ownBest = new Dictionary<(int Spot, int Microphone, Fixings Fixing, int Talker), double>(singles.Count);
        foreach (Candidate single in singles)
        {
            ownBest[(single.Spot, single.Microphone, single.Fixing, System.Numerics.BitOperations.TrailingZeroCount(single.Mask))] = single.CeilingDb;
        }

        var all = new List<Candidate>();
        foreach (int mask in masks)
        {
            int[] talkers = [.. Enumerable.Range(0, _fields.TalkerCount).Where(t => (mask & (1 << t)) != 0)];
            AddFor(talkers, mask, all, floorDb, ownBest);
        }

        return all;
    }

    private void AddFor(int[] talkers, int mask, List<Candidate> all, double floorDb, Dictionary<(int, int, Fixings, int), double>? ownBest)
    {
        Span<Vector3D> toward = stackalloc Vector3D[talkers.Length + 1];
        IReadOnlyList<Microphone> microphones = _task.Kit.Microphones;
        for (int s = 0; s < _spots.Count; s++)
        {
            MountSpot spot = _spots[s];
            if (spot.Wearer >= 0 && (talkers.Length > 1 || spot.Wearer != talkers[0]))
            {
                continue;
            }

            Vector3D middle = default;
            for (int i = 0; i < talkers.Length; i++)
            {
                toward[i] = TowardMouth(spot, talkers[i]);
                middle += toward[i];
            }

            toward[talkers.Length] = middle.LengthSquared > 1e-6 ? middle.Normalized() : toward[0];
            for (int m = 0; m < microphones.Count; m++)
            {
                if (!_usable[(s * microphones.Count) + m])
                {
                    continue;
                }

                Fixings allowed = _gate.FixingsFor(spot.Site, microphones[m]);
                _lastAims.Clear();
                foreach (Fixings fixing in SiteGate.SingleFixings)
                {
                    if ((allowed & fixing) != 0 && Reaches(s, m, fixing, talkers, floorDb, ownBest)
                        && Make(s, m, fixing, talkers, mask, toward) is { } candidate && candidate.WorstDb >= floorDb)
                    {
                        all.Add(candidate);
                    }
                }
            }
        }
    }

    private static bool Reaches(int s, int m, Fixings fixing, int[] talkers, double floorDb, Dictionary<(int, int, Fixings, int), double>? ownBest)
    {
        if (ownBest is null)
        {
            return true;
        }

        foreach (int t in talkers)
        {
            if (!ownBest.TryGetValue((s, m, fixing, t), out double best) || best < floorDb)
            {
                return false;
            }
        }

        return true;
    }

    private Candidate? Make(int s, int m, Fixings fixing, int[] talkers, int mask, ReadOnlySpan<Vector3D> toward)
    {
        Microphone microphone = _task.Kit.Microphones[m];
        MountSpot spot = _spots[s];
        double reachM = fixing == Fixings.ArticulatedArm ? _options.ArmStandoffM : _options.StandoffM;

        // The body lies behind the capsule and must not reach into the surface; nor does a capsule look into it.
        double most = microphone.BodyLengthM <= 0.015 ? 1 : Math.Min(1, reachM / microphone.BodyLengthM);
        bool omni = microphone.Pattern.B == 0;
        var question = new AimSearch.Question(s, talkers, microphone.Pattern, _selfNoise[m], spot.Site.Normal, omni ? -1 : -0.2, omni ? 1 : most, omni ? -1 : LeastCosine(microphone.Pattern, talkers.Length));
        if (!_lastAims.TryGetValue(question.MaxAlongNormal, out int aim))
        {
            _lastAims[question.MaxAlongNormal] = aim = _search.Best(question, toward).Aim;
        }

        if (aim < 0)
        {
            return null;
        }

        Vector3D u = AimGrid.Directions[aim];
        var coefficients = new AimCoefficients(microphone.Pattern.A, microphone.Pattern.B, u);
        double place = Penalties.PlaceCostDb(spot.Site, fixing, _task.Scene.Drive, talkers.Length > 1);
        var scores = new double[_fields.TalkerCount];
        var speech = new double[_fields.TalkerCount];
        var ratios = new double[_fields.TalkerCount];
        double worst = double.PositiveInfinity, ceiling = double.PositiveInfinity;
        for (int t = 0; t < scores.Length; t++)
        {
            speech[t] = 10 * Math.Log10(TenSums.Received(_sums.Voice(s, t), coefficients).Dot(BandVector.AWeights));
            if ((mask & (1 << t)) == 0)
            {
                continue;
            }

            double ratio = microphone.Pattern.IsFirstOrder
                ? _score.Of(s, t, coefficients, _selfNoise[m])
                : _tube.Of(spot, t, microphone.Pattern, u, _selfNoise[m]);
            ratios[t] = ratio;
            scores[t] = ratio - place - Penalties.ToneCostDb(ToneChange.Between(_fields, _sums, s, t, coefficients));
            worst = Math.Min(worst, scores[t]);
            ceiling = Math.Min(ceiling, ratio - place);
        }

        return new Candidate { Mask = mask, Spot = s, Microphone = m, Fixing = fixing, Aim = u, ScoreDb = scores, SpeechDba = speech, RatioDb = ratios, WorstDb = worst, CeilingDb = ceiling };
    }

    // Real capsules lose highs off axis, tubes most of all, which a pattern that is alike in all bands does not show.
    private double LeastCosine(PolarPattern pattern, int talkers) => Math.Cos(Angles.DegToRad(
        talkers > 1 ? _options.MostOffAxisSharedDeg : pattern.IsFirstOrder ? _options.MostOffAxisDeg : _options.MostOffAxisTubeDeg));

    private Vector3D TowardMouth(MountSpot spot, int talker)
    {
        Vector3D mean = default;
        for (int p = _fields.FirstVoice[talker]; p < _fields.FirstVoice[talker + 1]; p++)
        {
            Voice voice = _fields.Voices[p];
            mean += voice.Share * (voice.Source.Position - SpotFields.CapsuleFor(spot, voice));
        }

        return mean.LengthSquared > 1e-9 ? mean.Normalized() : spot.Site.Normal;
    }
}
