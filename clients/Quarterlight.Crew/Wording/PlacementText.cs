using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>One talker's microphone in words.</summary>
internal static class PlacementText
{
    /// <summary>Microphone, fixing, place, distance, aim and null: everything the hand that fixes it needs.</summary>
    public static string Line(Plan plan, TalkerPlacement p, UnitPreference units)
    {
        string aim = UnitText.Rewrite(CrewText.Clean(p.AimWords, CrewText.LongestSentence), units);
        return $"{Talker(plan.Scene, p.TalkerId)}: {Microphone(plan.Kit, p.MicrophoneId)}, {Fixing(p.Fixing)} {At(p.Site)}, {UnitText.Length(p.Figures?.MouthDistanceM ?? 0, units)} from the mouth; {AimLead(aim)}{Level(aim, p.Aim)}; {Null(p)}; input {p.RecorderInput}.";
    }

    /// <summary>The figures of one talker.</summary>
    public static string Figures(Plan plan, TalkerPlacement p)
    {
        PlacementFigures f = p.Figures ?? new PlacementFigures();
        string separation = f.HasSeparationDb ? $", separation {Whole(f.SeparationDb)} dB" : "";
        return Say($"{Talker(plan.Scene, p.TalkerId)}: SNR {Estimate(f.SnrDba)} dB(A), SII {f.Sii:0.00}, direct over reverberant {Whole(f.DirectToReverberantDb)} dB{separation}, swing between head poses {f.PoseSwingDb:0.0} dB, peak {Estimate(f.PeakLevelDb)} dB at the capsule.");
    }

    /// <summary>The place as a rigger says it.</summary>
    public static string Place(MountSite? site) => site is null ? "place not stated" : Name(site.Words.Length > 0 ? site.Words : site.Id);

    public static string Estimate(Estimate? estimate) =>
        estimate is null ? "not stated" : Say($"{Whole(estimate.Value)} ± {estimate.PlusMinus:0}");

    // Never "-0".
    private static string Whole(double value) => Say($"{Math.Round(value) + 0.0:0}");

    private static string At(MountSite? site) => site?.Family == MountFamily.BodyWorn ? $"({Place(site)})" : $"at the {Place(site)}";

    private static string AimLead(string aim) => aim.Length == 0 ? "aim as drawn" : aim.StartsWith("aim", StringComparison.OrdinalIgnoreCase) ? aim : "aim " + aim;

    // Not said twice when the planner's words hold degrees already.
    private static string Level(string words, Direction? aim)
    {
        if (aim is null || words.Contains("any way", StringComparison.Ordinal) || words.Contains('°', StringComparison.Ordinal) || words.Contains("deg", StringComparison.Ordinal))
        {
            return "";
        }

        double elevation = Math.Round(aim.ElevationDeg);
        return elevation == 0 ? ", level" : Say($", {Math.Abs(elevation):0}° {(elevation < 0 ? "below" : "above")} level");
    }

    private static string Null(TalkerPlacement p) => p.HasNullToEngineDeg ? Say($"null {p.NullToEngineDeg:0}° off the engine") : "no null in the pattern";
}
