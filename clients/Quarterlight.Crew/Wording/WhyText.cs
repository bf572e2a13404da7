using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>Why a site was or was not chosen, in words.</summary>
internal static class WhyText
{
    public static string Headline(ExplainSiteResponse answer, string talker, string place, UnitPreference units)
    {
        string summary = UnitText.Rewrite(CrewText.Clean(answer.Summary, CrewText.LongestSentence), units);
        return summary.Length > 0 ? summary
            : answer.Chosen ? $"{place} is the place chosen for {talker}."
            : answer.Refused is not null ? $"{place} is ruled out for {talker}: {Join([.. answer.Refused.Reasons.Select(Reason)])}."
            : $"{place} works for {talker}, but not as well as the place chosen.";
    }

    public static List<CrewLine> Lines(ExplainSiteResponse answer, Scene scene, Kit? kit, string talkerId, UnitPreference units)
    {
        var lines = new List<CrewLine>();
        string talker = Talker(scene, talkerId);
        if (answer.Refused is { } refused)
        {
            string why = UnitText.Rewrite(CrewText.Clean(refused.Explanation, CrewText.LongestSentence), units);
            lines.Add(new(CrewLineKind.Refused, why.Length > 0 ? why : Capital(Join([.. refused.Reasons.Select(Reason)])) + "."));
        }

        if (answer.Comparison is not { } c)
        {
            return lines;
        }

        if (c.There is { } there)
        {
            lines.Add(new(CrewLineKind.Figures, $"Best there for {talker}: {One(there, kit, units)}"));
        }

        if (c.Chosen is { } chosen && !answer.Chosen)
        {
            lines.Add(new(CrewLineKind.Figures, $"Chosen for {talker}: {One(chosen, kit, units)}"));
            lines.Add(new(CrewLineKind.Figures, Say($"There against chosen: score {Signed(c.ScoreDifferenceDb)} dB; speech {Signed(c.SpeechDifferenceDb)} dB, noise {Signed(c.NoiseDifferenceDb)} dB, deductions {Signed(c.PenaltyDifferenceDb)} dB.")));
        }

        lines.AddRange((c.There?.Penalties ?? []).OrderByDescending(p => p.CostDb).Take(3).Select(p =>
            new CrewLine(CrewLineKind.Figures, Say($"There it costs {p.CostDb:0.0} dB: {UnitText.Rewrite(CrewText.Clean(p.Words, CrewText.LongestSentence), units)}."))));
        lines.AddRange((c.There?.Advisories ?? []).OrderByDescending(a => (int)a.Severity).Take(2).Select(a =>
            new CrewLine(CrewLineKind.Caution, UnitText.Rewrite(CrewText.Clean(a.Message, CrewText.LongestSentence), units))));
        return lines;
    }

    private static string One(TalkerPlacement p, Kit? kit, UnitPreference units) => Say(
        $"{Microphone(kit, p.MicrophoneId)} at the {PlacementText.Place(p.Site)}, {UnitText.Length(p.Figures?.MouthDistanceM ?? 0, units)} from the mouth, SNR {PlacementText.Estimate(p.Figures?.SnrDba)} dB(A), SII {p.Figures?.Sii ?? 0:0.00}, score {p.Figures?.ScoreDb ?? 0:0.0} dB.");

    private static string Signed(double db) => db.ToString("+0.0;-0.0;0.0", System.Globalization.CultureInfo.InvariantCulture);
}
