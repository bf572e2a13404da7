using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>What to be careful about in an answer about noise, in plain sentences.</summary>
internal static class NoiseAdvisories
{
    public static IReadOnlyList<Advisory> ForSurvey(NoiseBoard board, NoiseReport report, IReadOnlyList<(int From, int To)> gaps)
    {
        var all = new List<Advisory>
        {
            new(
                "drive-first",
                "A speed that sound allows is not a speed that is safe or legal: the driver drives first, local law and traffic decide, and nobody adjusts a microphone on the move.",
                AdvisorySeverity.Safety),
        };
        DriveConditions drive = board.Task.Drive;
        AddCommon(all, board, report.Noise.LevelDba, drive.SpeedKmPerHour);
        if (drive.FanStep == 0 && report.Talkers.Count > 0)
        {
            double worst = report.Talkers.Min(t => t.SnrDba);
            if (worst < DialogueUsability.UnusableBelowDb)
            {
                all.Add(new Advisory("unusable", "The forecast noise is too near the speech for usable dialogue: slow down, change the road, close windows, or record wild lines.", AdvisorySeverity.Caution));
            }
            else if (worst < DialogueUsability.ThinBelowDb)
            {
                all.Add(new Advisory("thin", "The worst talker has little over the noise: record a wild track and wild lines with the engine off.", AdvisorySeverity.Caution));
            }
        }

        if (gaps.Count > 0)
        {
            string speeds = string.Join(" and ", gaps.Select(g => g.From == g.To ? FormattableString.Invariant($"{g.From}") : FormattableString.Invariant($"{g.From} to {g.To}")));
            all.Add(new Advisory("low-gear", $"Slower than the fastest speed it does not work everywhere: at {speeds} km/h the engine is taken to turn fast in a low gear. Change up early.", AdvisorySeverity.Caution));
        }

        AddConditions(all, board);
        AddLevel(all, report.Noise.UncertaintyDb);
        return Sorted(all);
    }

    public static IReadOnlyList<Advisory> ForRoute(NoiseBoard board, IReadOnlyList<StretchNoise> stretches, IReadOnlyList<QuietRun> runs)
    {
        var all = new List<Advisory>
        {
            new(
                "drive-first",
                "Drive by the law and the traffic: never slow down for sound where that endangers or holds up others, and the driver decides. An escort or a closed road is a matter for the police and production.",
                AdvisorySeverity.Safety),
        };
        double loudest = stretches.Max(s => s.Noise.NoiseDba);
        AddCommon(all, board, loudest, stretches.Max(s => s.SpeedKmPerHour));
        if (board.Task.Planned is not null && board.Task.Drive.FanStep == 0 && runs.Count == 0)
        {
            all.Add(new Advisory("no-quiet-stretch", "Dialogue works on no stretch of this route, not even with care: choose another road, or record wild lines.", AdvisorySeverity.Caution));
        }

        int slower = stretches.Count(s => s.SpeedKmPerHour < Math.Min(s.Stretch.SpeedLimitKmPerHour, s.Stretch.TrafficSpeedKmPerHour ?? double.PositiveInfinity));
        if (slower > 0)
        {
            all.Add(new Advisory(
                "slower-than-traffic",
                FormattableString.Invariant($"On {slower} of {stretches.Count} stretches the speed is below what limit and traffic allow: say \"keep with traffic\" where that is not possible."),
                AdvisorySeverity.Caution));
        }

        AddConditions(all, board);
        AddLevel(all, CabinNoises.Of(board.Task.Drive, board.Task.Car).UncertaintyDb);
        return Sorted(all);
    }

    private static void AddCommon(List<Advisory> all, NoiseBoard board, double loudestDba, double fastestKmPerHour)
    {
        DriveConditions drive = board.Task.Drive;
        if (loudestDba >= ListeningDose.LimitDba)
        {
            all.Add(new Advisory(
                "hearing",
                FormattableString.Invariant($"At about {loudestDba:0} dB(A) in the car NIOSH recommends no more than about {ListeningDose.AllowedMinutes(loudestDba):0} minutes a day: limit the time or protect the hearing of all inside."),
                AdvisorySeverity.Safety));
        }

        if (drive.FanStep > 0)
        {
            all.Add(new Advisory("fan-on", "The fan is on: it is never acceptable in a take, whatever the figures say. Cool the car first and switch it off to roll.", AdvisorySeverity.Caution));
        }

        foreach (Talker talker in board.Uncovered)
        {
            all.Add(new Advisory(
                "talker-uncovered",
                $"The plan has no microphone for {talker.DisplayName}: the verdicts speak for the others only, and are never better than with care.",
                AdvisorySeverity.Caution));
        }

        if (TakeVerdict.OpenPanes(drive) > 0 && fastestKmPerHour >= TakeVerdict.WindOnCapsuleKmPerHour)
        {
            all.Add(new Advisory(
                "windows-open",
                "With a window open on the move the pressure in the car moves the capsule itself, which no wind-shield stops and no level here shows: from 30 km/h never better than with care, and windows down at 64 km/h (40 mph) is unusable.",
                AdvisorySeverity.Caution));
        }
    }

    private static void AddConditions(List<Advisory> all, NoiseBoard board)
    {
        DriveConditions drive = board.Task.Drive;
        if (drive.NoiseCorrection is { } correction)
        {
            string source = string.IsNullOrWhiteSpace(correction.Source) ? "a clip from the car" : $"a clip from the car ({correction.Source.Trim()})";
            all.Add(new Advisory(
                "noise-from-clip",
                $"The noise is corrected by {source}, which holds for the conditions of the clip; at other speeds, windows, roads, rain or fan the same correction is only a guess.",
                AdvisorySeverity.Caution));
        }

        if (drive is { Engine: EngineState.Running, EngineRpm: { } rpm } && !board.Task.Car.Electric)
        {
            all.Add(new Advisory("engine-speed-held", FormattableString.Invariant($"The engine is taken to turn at {rpm:0} rpm at every speed, as asked."), AdvisorySeverity.Note));
        }
    }

    private static void AddLevel(List<Advisory> all, double uncertaintyDb) => all.Add(new Advisory(
        "absolute-level-uncertain",
        FormattableString.Invariant($"Noise in a given car is only known to about ±{uncertaintyDb:0} dB: a speed is a starting point for a test drive, and differences between conditions are firmer than levels."),
        AdvisorySeverity.Note));

    private static List<Advisory> Sorted(List<Advisory> all) => [.. all.OrderByDescending(a => a.Severity)];
}
