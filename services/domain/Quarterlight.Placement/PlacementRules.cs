using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>What a valid scene is, in its car and with its kit.</summary>
public static class PlacementRules
{
    /// <summary>Talkers in a scene.</summary>
    public static ValidRange TalkerCount { get; } = new(1, 8, "");

    /// <summary>Shots in a scene.</summary>
    public static ValidRange ShotCount { get; } = new(0, 16, "");

    /// <summary>Head poses of a talker.</summary>
    public static ValidRange PoseCount { get; } = new(1, 8, "");

    /// <summary>How far shares may miss 1 in sum.</summary>
    public const double ShareTolerance = 0.001;

    private static readonly ValidRange s_yaw = new(-180, 180, "degrees");
    private static readonly ValidRange s_pitch = new(-90, 90, "degrees");
    private static readonly ValidRange s_lean = new(-0.5, 0.5, "m");
    private static readonly ValidRange s_leanUp = new(-0.5, 0.3, "m");

    /// <summary>Everything wrong with a task; empty when it can be planned.</summary>
    /// <param name="task">The task.</param>
    /// <param name="scenePrefix">Field path of the scene.</param>
    /// <param name="kitPrefix">Field path of the kit.</param>
    public static IReadOnlyList<Violation> Validate(PlacementTask task, string scenePrefix = "scene", string kitPrefix = "kit")
    {
        ArgumentNullException.ThrowIfNull(task);
        var violations = new List<Violation>(KitRules.Validate(task.Kit, kitPrefix));
        CheckTalkers(task, scenePrefix, violations);
        var heads = new List<SeatedHead>();
        foreach (string seatId in task.Scene.Talkers.Select(t => t.SeatId).Concat(task.Scene.SilentSeatIds))
        {
            if (task.Cabin.FindSeat(seatId) is { } seat)
            {
                heads.Add(SeatedHead.In(seat, CabinRoom.Rest));
            }
        }

        ShotCount.Check($"{scenePrefix}.shots", task.Scene.Shots.Count, violations);
        var shotIds = new HashSet<string>();
        for (int i = 0; i < task.Scene.Shots.Count; i++)
        {
            Shot shot = task.Scene.Shots[i];
            string at = $"{scenePrefix}.shots[{i}]";
            if (!shotIds.Add(shot.Id))
            {
                violations.Add(new Violation($"{at}.id", $"shot \"{shot.Id}\" is there twice", "Give each shot an id of its own"));
            }

            violations.AddRange(ShotRules.Validate(shot, task.Cabin, heads, at));
        }

        violations.AddRange(DriveConditionsRules.Validate(task.Scene.Drive, $"{scenePrefix}.drive_conditions"));
        return violations;
    }

    private static void CheckTalkers(PlacementTask task, string prefix, List<Violation> violations)
    {
        IReadOnlyList<Talker> talkers = task.Scene.Talkers;
        if (talkers.Count == 0)
        {
            violations.Add(new Violation($"{prefix}.talkers", "nobody talks in this scene", "List at least one talker"));
        }
        else
        {
            TalkerCount.Check($"{prefix}.talkers", talkers.Count, violations);
        }

        var ids = new HashSet<string>();
        var seats = new Dictionary<string, string>();
        string known = string.Join(", ", task.Cabin.Seats.Select(s => s.Id));
        for (int t = 0; t < talkers.Count; t++)
        {
            Talker talker = talkers[t];
            string at = $"{prefix}.talkers[{t}]";
            if (!ids.Add(talker.Id))
            {
                violations.Add(new Violation($"{at}.id", $"talker \"{talker.Id}\" is there twice", "Give each talker an id of their own"));
            }

            Seat? seat = task.Cabin.FindSeat(talker.SeatId);
            if (seat is null)
            {
                violations.Add(new Violation($"{at}.seat_id", $"this car has no seat \"{talker.SeatId}\"", $"Use one of: {known}"));
            }
            else if (!seats.TryAdd(talker.SeatId, talker.DisplayName))
            {
                violations.Add(new Violation($"{at}.seat_id", $"{seats[talker.SeatId]} and {talker.DisplayName} are both on seat \"{talker.SeatId}\"", "Give each talker a seat of their own"));
            }

            CheckPoses(task, talker, seat, at, violations);
        }

        for (int i = 0; i < task.Scene.SilentSeatIds.Count; i++)
        {
            string seatId = task.Scene.SilentSeatIds[i];
            if (task.Cabin.FindSeat(seatId) is null)
            {
                violations.Add(new Violation($"{prefix}.silent_seat_ids[{i}]", $"this car has no seat \"{seatId}\"", $"Use one of: {known}"));
            }
            else if (!seats.TryAdd(seatId, "somebody"))
            {
                violations.Add(new Violation($"{prefix}.silent_seat_ids[{i}]", $"seat \"{seatId}\" is taken already", "List each taken seat once"));
            }
        }
    }

    private static void CheckPoses(PlacementTask task, Talker talker, Seat? seat, string at, List<Violation> violations)
    {
        if (!PoseCount.Check($"{at}.head_poses", talker.HeadPoses.Count, violations))
        {
            return;
        }

        double sum = 0;
        for (int p = 0; p < talker.HeadPoses.Count; p++)
        {
            HeadPose pose = talker.HeadPoses[p];
            string field = $"{at}.head_poses[{p}]";
            bool inRange = s_yaw.Check($"{field}.yaw_deg", Angles.RadToDeg(pose.YawRad), violations);
            inRange &= s_pitch.Check($"{field}.pitch_deg", Angles.RadToDeg(pose.PitchRad), violations);
            inRange &= s_lean.Check($"{field}.lean_forward_m", pose.LeanM.X, violations);
            inRange &= s_lean.Check($"{field}.lean_left_m", pose.LeanM.Y, violations);
            inRange &= s_leanUp.Check($"{field}.lean_up_m", pose.LeanM.Z, violations);
            if (!(pose.ShareFraction > 0 && pose.ShareFraction <= 1))
            {
                violations.Add(new Violation($"{field}.share_fraction", $"the share is {Shown(pose.ShareFraction)}", "It must be above 0 and at most 1"));
            }

            if (inRange && seat is not null && !task.Cabin.Interior.Contains(SeatedHead.In(seat, pose).Center))
            {
                violations.Add(new Violation(field, "this lean takes the head out of the car", "Lean less"));
            }

            sum += pose.ShareFraction;
        }

        if (!(Math.Abs(sum - 1) <= ShareTolerance))
        {
            violations.Add(new Violation($"{at}.head_poses", $"the shares of the head poses sum to {Shown(sum)}", "They must sum to 1"));
        }
    }

    private static string Shown(double value) =>
        double.IsNaN(value) ? "not a number" : value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
