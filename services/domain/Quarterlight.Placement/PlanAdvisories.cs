using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>What to be careful about, in plain sentences, and the sentence that compares two places.</summary>
internal static class PlanAdvisories
{
    private const double MicrophoneHeadroomDb = 3;

    public static IReadOnlyList<Advisory> For(PlacementTask task, PlanOption best, IReadOnlyList<string> uncovered, OptimalityProof proof, double noiseUncertaintyDb)
    {
        var all = new List<Advisory>();
        if (task.Scene.Drive.SpeedKmPerHour > 0)
        {
            all.Add(new Advisory(
                "moving-vehicle",
                "Rig and strike with the car parked; nobody adjusts a microphone while it moves, everybody sits belted in a seat, and local law and the stunt or safety lead decide.",
                AdvisorySeverity.Safety));
        }

        if (task.Cabin.AirbagZones.Count > 0)
        {
            all.Add(new Advisory(
                "airbags",
                "Places in an airbag's way are left out by generic zones; check this car's handbook before fixing anything on pillars, roof rails, seats or dash.",
                AdvisorySeverity.Safety));
        }

        foreach (string id in uncovered)
        {
            Talker talker = task.Scene.Talkers.First(t => t.Id == id);
            all.Add(new Advisory(
                "talker-uncovered",
                $"No microphone could be placed for {talker.DisplayName}: allow a body-worn one, free another place from the cameras, or add microphones, fixings or inputs to the kit.",
                AdvisorySeverity.Caution));
        }

        if (task.Scene.Drive.FanStep > 0)
        {
            all.Add(new Advisory("fan-on", "The fan is on: it is never acceptable in a take. Cool the car first and switch it off to roll.", AdvisorySeverity.Caution));
        }

        double worstSnr = best.Placements.Count == 0 ? double.PositiveInfinity : best.Placements.Min(p => p.Figures.SnrDba.Value);
        if (worstSnr < DialogueUsability.UnusableBelowDb)
        {
            all.Add(new Advisory(
                "unusable",
                task.Scene.Drive.OpenWindows.Any(w => w.OpenFraction > 0)
                    ? "With the windows down at this speed the dialogue will not be usable: close them, slow down, or record wild lines."
                    : "The forecast noise is too near the speech for usable dialogue: slow down, change the road, or record wild lines.",
                AdvisorySeverity.Caution));
        }
        else if (worstSnr < DialogueUsability.ThinBelowDb)
        {
            all.Add(new Advisory("thin", "The worst talker has little over the noise: record a wild track and wild lines with the engine off.", AdvisorySeverity.Caution));
        }

        if (!proof.ProvedOptimal)
        {
            all.Add(new Advisory(
                "not-proved",
                FormattableString.Invariant($"The search stopped at its limit: no choice can be more than {proof.SumScoreBoundDb - proof.SumScoreDb:0.0} dB better in sum."),
                AdvisorySeverity.Note));
        }

        if (task.Scene.Drive.NoiseCorrection is { } correction)
        {
            string source = string.IsNullOrWhiteSpace(correction.Source) ? "a clip from the car" : $"a clip from the car ({correction.Source.Trim()})";
            all.Add(new Advisory(
                "noise-from-clip",
                $"The noise is corrected by {source}: that only holds for conditions like those of the clip, so take it off when speed, road, windows or fan change.",
                AdvisorySeverity.Note));
        }

        all.Add(new Advisory(
            "absolute-level-uncertain",
            FormattableString.Invariant($"Noise in a given car is only known to about ±{noiseUncertaintyDb:0} dB, so absolute figures carry that; the choice rests on differences between places in one car, which are much firmer."),
            AdvisorySeverity.Note));
        return all;
    }

    public static IReadOnlyList<Advisory> ForPlacement(MountSite site, Fixings fixing, Microphone microphone, PlacementFigures figures, DriveConditions drive, bool shared)
    {
        var all = new List<Advisory>();
        if (figures.PeakLevelDb.Value > microphone.MaxLevelDb - MicrophoneHeadroomDb)
        {
            all.Add(new Advisory(
                "capsule-overload",
                FormattableString.Invariant($"Peaks of about {figures.PeakLevelDb.Value:0} dB may overload this capsule ({microphone.MaxLevelDb:0} dB at most): take a tougher one or move away."),
                AdvisorySeverity.Caution));
        }

        if (fixing is Fixings.SuctionCup or Fixings.ArticulatedArm or Fixings.WeightedBase && drive.SpeedKmPerHour > 0)
        {
            all.Add(new Advisory("tether", "Tie it to something fixed with a short tether: a loose microphone is a projectile when braking.", AdvisorySeverity.Safety));
        }

        if (fixing == Fixings.PaperTape && site.Family is MountFamily.DashTop or MountFamily.DashFace)
        {
            all.Add(new Advisory("hot-dash", "Do not leave tape on a dash in the sun for a day: heat sets the adhesive.", AdvisorySeverity.Note));
        }

        if (site.OnMovingGlass)
        {
            all.Add(new Advisory("window-stays-up", "This window must stay up: tell the actors and lock it if the car can.", AdvisorySeverity.Caution));
        }

        if (site.Family == MountFamily.BodyWorn)
        {
            all.Add(new Advisory("wardrobe", "Agree it with costume and the wearer; keep it clear of the seat belt.", AdvisorySeverity.Note));
        }

        if (shared)
        {
            all.Add(new Advisory("shared", "One microphone for more than one talker: they cannot be balanced apart in the mix.", AdvisorySeverity.Note));
        }

        return all;
    }

    /// <summary>Why a place was not, or was, chosen for a talker, in one sentence with numbers.</summary>
    public static string Comparison(Talker talker, TalkerPlacement there, TalkerPlacement? picked)
    {
        string place = char.ToUpperInvariant(there.Site.Words[0]) + there.Site.Words[1..];
        if (picked is null)
        {
            return $"{place} could serve {talker.DisplayName}, but the plan has no microphone left for it.";
        }

        if (picked.Site.Id == there.Site.Id)
        {
            return FormattableString.Invariant(
                $"{place} is where the plan puts {talker.DisplayName}'s microphone: {picked.Figures.MouthDistanceM * 100:0} cm from the mouth, {picked.Figures.SnrDba.Value:0} dB(A) over the noise.");
        }

        double score = there.Figures.ScoreDb - picked.Figures.ScoreDb;
        double speech = there.Figures.SpeechDba - picked.Figures.SpeechDba;
        double noise = there.Figures.NoiseDba.Value - picked.Figures.NoiseDba.Value;
        string verdict = score > 0.05
            ? FormattableString.Invariant($"{place} would be {score:0.0} dB better for {talker.DisplayName} alone, but the plan as a whole is better with the {picked.Site.Words}")
            : FormattableString.Invariant($"{place} would be {-score:0.0} dB worse for {talker.DisplayName} than the {picked.Site.Words}");
        string rest = "";
        double ratio = there.Figures.UsefulToDetrimentalDb - picked.Figures.UsefulToDetrimentalDb;
        double deductions = score - ratio, others = ratio - (speech - noise);
        if (Math.Abs(others) >= 0.5)
        {
            rest += FormattableString.Invariant($", turned heads, late reflections and other voices {others:+0.0;-0.0} dB");
        }

        if (Math.Abs(deductions) >= 0.3)
        {
            rest += FormattableString.Invariant($", deductions {deductions:+0.0;-0.0} dB");
        }

        return FormattableString.Invariant(
            $"{verdict}: {there.Figures.MouthDistanceM * 100:0} cm from the mouth instead of {picked.Figures.MouthDistanceM * 100:0}, speech {speech:+0.0;-0.0;0.0} dB, noise {noise:+0.0;-0.0;0.0} dB{rest}.");
    }
}
