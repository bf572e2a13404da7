using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A mount plan at length.</summary>
internal static class DetailText
{
    public static List<CrewLine> Lines(Plan plan, UnitPreference units)
    {
        var lines = new List<CrewLine>();
        foreach (TalkerPlacement p in plan.Best?.Placements ?? [])
        {
            lines.Add(new(CrewLineKind.Talker, PlacementText.Line(plan, p, units)));
            lines.Add(new(CrewLineKind.Figures, PlacementText.Figures(plan, p)));
            lines.Add(new(CrewLineKind.Figures, More(plan, p, units)));
            lines.AddRange(p.Penalties.OrderByDescending(x => x.CostDb).Select(x => new CrewLine(CrewLineKind.Figures, Say($"  costs {x.CostDb:0.0} dB: {UnitText.Rewrite(CrewText.Clean(x.Words, CrewText.LongestSentence), units)}"))));
        }

        lines.AddRange(PlanText.Uncovered(plan));
        lines.Add(new(CrewLineKind.Certainty, PlanText.Certainty(plan)));
        for (int i = 0; i < plan.RunnersUp.Count; i++)
        {
            lines.Add(new(CrewLineKind.RunnerUp, PlanText.RunnerUp(plan, i, units)));
            lines.AddRange(plan.RunnersUp[i].Placements.Select(p => new CrewLine(CrewLineKind.RunnerUp, "  " + PlacementText.Line(plan, p, units))));
        }

        lines.AddRange(PlanText.Cautions(plan, units, int.MaxValue));
        lines.AddRange(Refused(plan, units));
        lines.Add(new(CrewLineKind.Proof, PlanText.Proof(plan.Proof)));
        return lines;
    }

    private static string More(Plan plan, TalkerPlacement p, UnitPreference units)
    {
        PlacementFigures f = p.Figures ?? new PlacementFigures();
        Position at = p.Capsule ?? new Position();
        Direction aim = p.Aim ?? new Direction();
        string across = $"{UnitText.Length(Math.Abs(at.YM), units)} {(at.YM >= 0 ? "left" : "right")} of the centre line";
        string along = $"{UnitText.Length(Math.Abs(at.XM), units)} {(at.XM >= 0 ? "ahead of" : "behind")} the front hip point";
        return Say($"{Talker(plan.Scene, p.TalkerId)}: capsule {along}, {across}, {UnitText.Length(at.ZM, units)} above the floor; aim {aim.AzimuthDeg:0}° round (left is positive), {aim.ElevationDeg:0}° up; {p.AimToEngineDeg:0}° from the engine; STI {f.Sti:0.00}, noise {PlacementText.Estimate(f.NoiseDba)} dB(A), useful over detrimental {f.UsefulToDetrimentalDb:0.0} dB, score {f.ScoreDb:0.0} dB.");
    }

    // One line for each set of reasons, not one for each site.
    private static IEnumerable<CrewLine> Refused(Plan plan, UnitPreference units) => plan.RefusedSites
        .GroupBy(s => string.Join(" and ", s.Reasons.Select(Reason)))
        .OrderByDescending(g => g.Count())
        .Select(g => new CrewLine(CrewLineKind.Refused, UnitText.Rewrite(Say($"Refused, {g.Key} ({g.Count()}): {string.Join("; ", g.Select(s => Name(s.Words)))}."), units)));
}
