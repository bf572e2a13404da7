using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Turns chosen candidates into placements with figures, words and cautions.</summary>
internal sealed class PlacementWriter(PlacementTask task, SpotFields fields, FigureSheet figures, IReadOnlyList<MountSpot> spots, IReadOnlyList<Candidate> candidates)
{
    public double NoiseUncertaintyDb => figures.NoiseUncertaintyDb;

    public Estimate CabinNoise() => figures.CabinNoise();

    /// <summary>Writes a choice; compared with another option when one is given.</summary>
    public PlanOption Write(Choice choice, int[] served, PlanOption? comparedWith)
    {
        var placements = new List<TalkerPlacement>();
        var inputs = new List<int>();
        int[] chosen = choice.Chosen;
        var all = new int[task.Scene.Talkers.Count];
        Array.Fill(all, -1);
        for (int i = 0; i < served.Length; i++)
        {
            all[served[i]] = chosen[i];
            if (!inputs.Contains(chosen[i]))
            {
                inputs.Add(chosen[i]);
            }
        }

        foreach (int t in served)
        {
            double? lead = ExactChoice.LeadDb(candidates, all[t], all, t);
            placements.Add(Place(candidates[all[t]], t, inputs.IndexOf(all[t]) + 1, lead, all.Count(c => c == all[t]) > 1));
        }

        return new PlanOption(placements, choice.WorstDb, choice.SumDb, comparedWith is null ? "" : Difference(placements, comparedWith));
    }

    /// <summary>Writes one candidate on its own.</summary>
    public TalkerPlacement Alone(Candidate candidate, int talker) => Place(candidate, talker, 1, null, false);

    private TalkerPlacement Place(Candidate candidate, int t, int input, double? lead, bool shared)
    {
        MountSpot spot = spots[candidate.Spot];
        Microphone microphone = task.Kit.Microphones[candidate.Microphone];
        Talker talker = task.Scene.Talkers[t];
        var penalties = new List<Penalty>();
        double place = Penalties.PlaceCostDb(spot.Site, candidate.Fixing, task.Scene.Drive, shared, penalties);
        double comb = lead is { } l ? Penalties.CombCostDb(l) : 0;
        if (comb > 0)
        {
            penalties.Add(new Penalty("comb-risk", "another open microphone hears this talker almost as well", comb));
        }

        // What is left between ratio and score is the tone change: reported as what the choice deducted.
        double ratio = candidate.RatioDb[t];
        double tone = ratio - place - candidate.ScoreDb[t];
        if (tone > 1e-9)
        {
            penalties.Add(new Penalty("tone-change", "the voice changes tone as the head turns", tone));
        }

        PlacementFigures figure = figures.For(spot, microphone, candidate.Aim, t, candidate.ScoreDb[t] - comb, ratio, lead);
        Vector3D mouth = fields.Voices[fields.FirstVoice[t]].Source.Position;
        Vector3D toMouth = (mouth - spot.Capsule).Normalized();
        double toEngine = ToEngine(spot.Capsule, candidate.Aim);
        double? nullAngle = PolarPatternMeasures.NullAngleRad(microphone.Pattern);
        return new TalkerPlacement
        {
            TalkerId = talker.Id,
            MicrophoneId = microphone.Id,
            RecorderInput = input,
            Fixing = candidate.Fixing,
            Site = spot.Site,
            Capsule = spot.Capsule,
            Aim = candidate.Aim,
            AimWords = PlaceWords.Aim(candidate.Aim, toMouth, talker.DisplayName, microphone.Pattern.B == 0),
            PlaceWords = PlaceWords.Place(spot.Site.Words, spot.Capsule, figure.MouthDistanceM, talker.DisplayName),
            AimToEngineRad = toEngine,
            NullToEngineRad = nullAngle is { } n ? Math.Abs(n - toEngine) : null,
            Figures = figure,
            Penalties = penalties,
            Advisories = PlanAdvisories.ForPlacement(spot.Site, candidate.Fixing, microphone, figure, task.Scene.Drive, shared),
        };
    }

    private double ToEngine(Vector3D capsule, Vector3D aim)
    {
        NoisePort? engine = task.Cabin.NoisePorts.FirstOrDefault(p => p.Kind == NoisePortKind.Engine);
        return engine is null ? 0 : aim.AngleTo(engine.Position - capsule);
    }

    private string Difference(List<TalkerPlacement> placements, PlanOption best)
    {
        var parts = new List<string>();
        foreach (TalkerPlacement placement in placements)
        {
            TalkerPlacement? before = best.Placements.FirstOrDefault(p => p.TalkerId == placement.TalkerId);
            if (before is null)
            {
                continue;
            }

            double change = placement.Figures.ScoreDb - before.Figures.ScoreDb;
            string who = task.Scene.Talkers.First(t => t.Id == placement.TalkerId).DisplayName;
            string how = Math.Abs(change) < 0.05 ? "as good" : FormattableString.Invariant($"{Math.Abs(change):0.0} dB {(change < 0 ? "worse" : "better")}");
            parts.Add($"{who} at the {placement.Site.Words} ({how})");
        }

        return string.Join("; ", parts);
    }
}
