using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A changed plan beside the plan in force.</summary>
internal static class WhatIfText
{
    // Less than this is not heard as a change: judgement.
    private const double SameDb = 0.5;

    public static string Headline(Plan before, Plan after, string change)
    {
        if (after.Best is null || after.Best.Placements.Count == 0)
        {
            return $"{Capital(change)}: no microphone can be placed.";
        }

        int moved = after.Best.Placements.Count(p => Of(before, p.TalkerId) is { } old && Moved(old, p));
        string moves = moved switch
        {
            0 => "nothing moves",
            1 => "one talker's microphone changes",
            _ => Say($"{moved} talkers' microphones change"),
        };
        string lost = after.UncoveredTalkerIds.Count > before.UncoveredTalkerIds.Count ? "; not everyone is covered any more" : "";
        (TalkerPlacement Placement, double Db)? worst = Largest(before, after);
        string effect = worst is not { } w ? "nothing to compare with"
            : Math.Abs(w.Db) < SameDb ? "no audible difference"
            : $"{Talker(after.Scene, w.Placement.TalkerId)} {Difference(w.Db, "dB")} in SNR{(after.Best.Placements.Count > 1 ? ", the largest change" : "")}";
        return $"{Capital(change)}: {effect}; {moves}{lost}.";
    }

    public static List<CrewLine> Lines(Plan before, Plan after, UnitPreference units)
    {
        var lines = new List<CrewLine>();
        foreach (TalkerPlacement p in after.Best?.Placements ?? [])
        {
            TalkerPlacement? old = Of(before, p.TalkerId);
            string moves = old is null ? "" : Moved(old, p) ? $" Instead of {Microphone(before.Kit, old.MicrophoneId)} at the {PlacementText.Place(old.Site)}." : " Same microphone and place.";
            lines.Add(new(CrewLineKind.Talker, PlacementText.Line(after, p, units) + moves));
        }

        lines.AddRange(PlanText.Uncovered(after));

        // Where room is short the last figures go first: so the largest change leads.
        foreach (TalkerPlacement p in (after.Best?.Placements ?? []).OrderByDescending(p => Of(before, p.TalkerId) is { } old ? Math.Abs(Snr(p) - Snr(old)) : double.MaxValue))
        {
            if (Of(before, p.TalkerId) is not { } old)
            {
                lines.Add(new(CrewLineKind.Figures, PlacementText.Figures(after, p)));
                continue;
            }

            double snr = Snr(p) - Snr(old), score = (p.Figures?.ScoreDb ?? 0) - (old.Figures?.ScoreDb ?? 0);
            lines.Add(new(CrewLineKind.Figures, Say($"{Talker(after.Scene, p.TalkerId)}: SNR {PlacementText.Estimate(p.Figures?.SnrDba)} dB(A), was {Snr(old):0} ({Signed(snr)} dB); SII {p.Figures?.Sii ?? 0:0.00}, was {old.Figures?.Sii ?? 0:0.00}; score {Signed(score)} dB.")));
        }

        lines.Add(new(CrewLineKind.Certainty, "How sure: the differences are firmer than the figures themselves, which hold only within their ±."));
        lines.AddRange(PlanText.Cautions(after, units, 3));
        lines.Add(new(CrewLineKind.Proof, PlanText.Proof(after.Proof)));
        return lines;
    }

    private static TalkerPlacement? Of(Plan plan, string talkerId) => plan.Best?.Placements.FirstOrDefault(p => p.TalkerId == talkerId);

    private static bool Moved(TalkerPlacement before, TalkerPlacement after) =>
        before.Site?.Id != after.Site?.Id || before.MicrophoneId != after.MicrophoneId;

    private static (TalkerPlacement Placement, double Db)? Largest(Plan before, Plan after)
    {
        (TalkerPlacement, double)? largest = null;
        foreach (TalkerPlacement p in after.Best.Placements)
        {
            if (Of(before, p.TalkerId) is { } old && (largest is not { } l || Math.Abs(Snr(p) - Snr(old)) > Math.Abs(l.Item2)))
            {
                largest = (p, Snr(p) - Snr(old));
            }
        }

        return largest;
    }

    private static double Snr(TalkerPlacement p) => p.Figures?.SnrDba?.Value ?? 0;

    private static string Difference(double db, string unit) => Say($"{(db < 0 ? "loses" : "gains")} {Math.Abs(db):0.0} {unit}");

    private static string Signed(double db) => db.ToString("+0.0;-0.0;0.0", System.Globalization.CultureInfo.InvariantCulture);
}
