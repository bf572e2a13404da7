using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Plans and explanations, on their way out.</summary>
internal static class PlanMapper
{
    public static V1.Plan ToContract(MountPlan plan, V1.Scene scene, V1.Cabin cabin, V1.Kit kit)
    {
        var contract = new V1.Plan
        {
            Scene = scene,
            Cabin = cabin,
            Kit = kit,
            Best = ToContract(plan.Best),
            UsableSiteCount = plan.UsableSiteCount,
            CabinNoiseDba = GeometryMapper.ToContract(plan.CabinNoiseDba),
            Proof = new V1.OptimalityProof
            {
                ProvedOptimal = plan.Proof.ProvedOptimal,
                CandidateCount = plan.Proof.CandidateCount,
                NodeCount = plan.Proof.NodeCount,
                WorstScoreDb = plan.Proof.WorstScoreDb,
                WorstScoreBoundDb = plan.Proof.WorstScoreBoundDb,
                SumScoreDb = plan.Proof.SumScoreDb,
                SumScoreBoundDb = plan.Proof.SumScoreBoundDb,
            },
        };
        contract.RunnersUp.AddRange(plan.RunnersUp.Select(ToContract));
        contract.UncoveredTalkerIds.AddRange(plan.UncoveredTalkerIds);
        contract.RefusedSites.AddRange(plan.RefusedSites.Select(ToContract));
        contract.Advisories.AddRange(plan.Advisories.Select(GeometryMapper.ToContract));
        return contract;
    }

    public static V1.ExplainSiteResponse ToContract(SiteExplanation explanation)
    {
        var contract = new V1.ExplainSiteResponse { Chosen = explanation.Chosen, Summary = explanation.Summary };
        if (explanation.Refused is { } refused)
        {
            contract.Refused = ToContract(refused);
        }

        if (explanation.There is { } there)
        {
            contract.Comparison = new V1.SiteComparison { There = ToContract(there) };
            if (explanation.Picked is { } picked)
            {
                contract.Comparison.Chosen = ToContract(picked);
                contract.Comparison.ScoreDifferenceDb = there.Figures.ScoreDb - picked.Figures.ScoreDb;
                contract.Comparison.SpeechDifferenceDb = there.Figures.SpeechDba - picked.Figures.SpeechDba;
                contract.Comparison.NoiseDifferenceDb = there.Figures.NoiseDba.Value - picked.Figures.NoiseDba.Value;
                contract.Comparison.PenaltyDifferenceDb = there.Penalties.Sum(p => p.CostDb) - picked.Penalties.Sum(p => p.CostDb);
            }
        }

        return contract;
    }

    private static V1.RefusedSite ToContract(RefusedSite refused)
    {
        var contract = new V1.RefusedSite { SiteId = refused.Site.Id, Words = refused.Site.Words, Explanation = refused.Explanation };
        contract.Reasons.AddRange(refused.Reasons.Select(r => r.ToContract<V1.RefusalReason>()));
        return contract;
    }

    private static V1.PlanOption ToContract(PlanOption option)
    {
        var contract = new V1.PlanOption { WorstScoreDb = option.WorstScoreDb, SumScoreDb = option.SumScoreDb, Difference = option.Difference };
        contract.Placements.AddRange(option.Placements.Select(ToContract));
        return contract;
    }

    private static V1.TalkerPlacement ToContract(TalkerPlacement placement)
    {
        var contract = new V1.TalkerPlacement
        {
            TalkerId = placement.TalkerId,
            MicrophoneId = placement.MicrophoneId,
            RecorderInput = placement.RecorderInput,
            Fixing = FixingMapper.ToContract1(placement.Fixing),
            Site = CabinMapper.ToContract(placement.Site),
            Capsule = GeometryMapper.ToContract(placement.Capsule),
            Aim = GeometryMapper.ToDirection(placement.Aim),
            AimWords = placement.AimWords,
            PlaceWords = placement.PlaceWords,
            AimToEngineDeg = Angles.RadToDeg(placement.AimToEngineRad),
            Figures = ToContract(placement.Figures),
        };
        if (placement.NullToEngineRad is { } toNull)
        {
            contract.NullToEngineDeg = Angles.RadToDeg(toNull);
        }

        contract.Penalties.AddRange(placement.Penalties.Select(p => new V1.Penalty { Code = p.Code, Words = p.Words, CostDb = p.CostDb }));
        contract.Advisories.AddRange(placement.Advisories.Select(GeometryMapper.ToContract));
        return contract;
    }

    private static V1.PlacementFigures ToContract(PlacementFigures figures)
    {
        var contract = new V1.PlacementFigures
        {
            SnrDba = GeometryMapper.ToContract(figures.SnrDba),
            Sii = figures.Sii,
            Sti = figures.Sti,
            DirectToReverberantDb = figures.DirectToReverberantDb,
            PoseSwingDb = figures.PoseSwingDb,
            PeakLevelDb = GeometryMapper.ToContract(figures.PeakLevelDb),
            NoiseDba = GeometryMapper.ToContract(figures.NoiseDba),
            UsefulToDetrimentalDb = figures.UsefulToDetrimentalDb,
            ScoreDb = figures.ScoreDb,
            MouthDistanceM = figures.MouthDistanceM,
            SpeechLevels = OctaveMapper.ToContract(figures.SpeechLevelsDb),
            NoiseLevels = OctaveMapper.ToContract(figures.NoiseLevelsDb),
            SelfNoiseLevels = OctaveMapper.ToContract(figures.SelfNoiseLevelsDb),
        };
        if (figures.SeparationDb is { } separation)
        {
            contract.SeparationDb = separation;
        }

        return contract;
    }
}
