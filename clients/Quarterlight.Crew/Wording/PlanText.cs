using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A mount plan in words, for a phone and a tired reader: what to rig first, figures next, the rest short.</summary>
internal static class PlanText
{
    private const int MostCautions = 4;
    private const int MostRefusalReasons = 6;

    // Two lines of a phone held sideways: judgement.
    private const int LongestHeadline = 160;

    /// <summary>The decision in one line.</summary>
    public static string Headline(Plan plan)
    {
        string scene = Name(plan.Scene.DisplayName, plan.Scene.Name);
        if (plan.Best is null || plan.Best.Placements.Count == 0)
        {
            return $"{scene}: no microphone can be placed.";
        }

        string exact = $"{scene}: {string.Join("; ", plan.Best.Placements.Select(p => $"{Talker(plan.Scene, p.TalkerId)} {Short(p)}"))}.";
        return exact.Length <= LongestHeadline ? exact
            : $"{scene}: {string.Join("; ", plan.Best.Placements.Select(p => $"{Talker(plan.Scene, p.TalkerId)} {SiteWords.Say(p.Site?.Family ?? MountFamily.Unspecified)}"))}.";
    }

    /// <summary>The standard answer, about 25 lines at most.</summary>
    public static List<CrewLine> Lines(Plan plan, UnitPreference units)
    {
        List<CrewLine> lines = [.. (plan.Best?.Placements ?? []).Select(p => new CrewLine(CrewLineKind.Talker, PlacementText.Line(plan, p, units)))];
        lines.AddRange(Uncovered(plan));
        lines.AddRange((plan.Best?.Placements ?? []).Select(p => new CrewLine(CrewLineKind.Figures, PlacementText.Figures(plan, p))));
        lines.Add(new(CrewLineKind.Certainty, Certainty(plan)));
        if (plan.RefusedSites.Count > 0)
        {
            lines.Add(new(CrewLineKind.Refused, Refused(plan)));
        }

        for (int i = 0; i < plan.RunnersUp.Count; i++)
        {
            lines.Add(new(CrewLineKind.RunnerUp, RunnerUp(plan, i, units)));
        }

        lines.AddRange(Cautions(plan, units, MostCautions));
        lines.Add(new(CrewLineKind.Proof, Proof(plan.Proof)));
        return lines;
    }

    /// <summary>What the plan was made for.</summary>
    public static string Inputs(Plan plan, UnitPreference units) =>
        $"{Name(plan.Scene.DisplayName, plan.Scene.Name)}: {Name(plan.Cabin?.DisplayName ?? "", plan.Scene.Cabin)}, {Name(plan.Kit?.DisplayName ?? "", plan.Scene.Kit)}, {DriveText.Whole(plan.Scene.DriveConditions, units)}, {Cameras(plan.Scene)}";

    public static List<CrewLine> Uncovered(Plan plan) => plan.UncoveredTalkerIds.Count == 0 ? [] :
    [
        new(CrewLineKind.Talker, $"No microphone for {Join([.. plan.UncoveredTalkerIds.Select(id => Talker(plan.Scene, id))])}: add a microphone, a fixing or a recorder input to the kit, or drop a camera that sees the places left."),
    ];

    public static string Refused(Plan plan)
    {
        string[] reasons = [.. plan.RefusedSites.SelectMany(s => s.Reasons).GroupBy(r => r).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => Say($"{g.Count()} {Reason(g.Key)}"))];
        string more = reasons.Length > MostRefusalReasons ? ", and others" : "";
        return Say($"Refused {plan.RefusedSites.Count} of {plan.RefusedSites.Count + plan.UsableSiteCount} sites: {string.Join(", ", reasons.Take(MostRefusalReasons))}{more}. Ask \"why not the visor for the driver?\" about any of them.");
    }

    public static string RunnerUp(Plan plan, int index, UnitPreference units)
    {
        PlanOption option = plan.RunnersUp[index];
        string difference = UnitText.Rewrite(CrewText.Clean(option.Difference, CrewText.LongestSentence), units).TrimEnd('.');
        double cost = (plan.Best?.WorstScoreDb ?? 0) - option.WorstScoreDb;
        string worst = Math.Abs(cost) < 0.05 ? "worst talker as good" : Say($"worst talker {Math.Abs(cost):0.0} dB {(cost > 0 ? "less" : "more")}");
        return Say($"Runner-up {index + 1}: {(difference.Length > 0 ? difference : "another set of places")}; {worst}.");
    }

    /// <summary>Cautions, safety first, each said once.</summary>
    public static List<CrewLine> Cautions(Plan plan, UnitPreference units, int most)
    {
        Advisory[] all = [.. plan.Advisories.Concat((plan.Best?.Placements ?? []).SelectMany(p => p.Advisories))
            .Where(a => a.Code != "absolute-level-uncertain").DistinctBy(a => a.Message).OrderByDescending(a => (int)a.Severity)];
        List<CrewLine> lines = [.. all.Take(most).Select(a => new CrewLine(CrewLineKind.Caution, Lead(a.Severity) + UnitText.Rewrite(CrewText.Clean(a.Message, CrewText.LongestSentence), units)))];
        if (all.Length > most)
        {
            lines.Add(new(CrewLineKind.Caution, Say($"And {all.Length - most} more: ask for details.")));
        }

        return lines;
    }

    public static string Proof(OptimalityProof? proof)
    {
        if (proof is null)
        {
            return "No proof came with this plan.";
        }

        string candidates = proof.CandidateCount.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);
        return proof.ProvedOptimal
            ? $"Proved best of {candidates} candidates: worst talker first, then the sum."
            : Say($"Best found of {candidates} candidates; no choice can make the worst talker more than {Math.Max(0, proof.WorstScoreBoundDb - proof.WorstScoreDb):0.0} dB better.");
    }

    public static string Certainty(Plan plan)
    {
        string spread = plan.CabinNoiseDba is { } noise ? Say($"about ±{noise.PlusMinus:0} dB") : "roughly";
        return $"How sure: absolute noise in this car is only known to {spread}; the choice rests on differences between places in the same car, which are much firmer; a test clip from the real car replaces the forecast.";
    }

    private static string Short(TalkerPlacement p) => p.Site?.Family == MountFamily.BodyWorn ? "body-worn" : "at the " + PlacementText.Place(p.Site);

    /// <summary>How an advisory begins.</summary>
    public static string Lead(AdvisorySeverity severity) => severity switch
    {
        AdvisorySeverity.Safety => "Safety: ",
        AdvisorySeverity.Caution => "Caution: ",
        _ => "Note: ",
    };

    private static string Cameras(Scene scene) => scene.Shots.Count switch
    {
        0 => "no cameras",
        1 => $"camera {Name(scene.Shots[0].Id)}",
        _ => $"cameras {Join([.. scene.Shots.Select(s => Name(s.Id))])}",
    };
}
