using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Scenes, talkers and shots.</summary>
internal static class SceneMapper
{
    public static Scene ToDomain(V1.Scene scene, string prefix, IReadOnlyList<string> removedSiteIds, FieldReader reader)
    {
        var talkers = new List<Talker>();
        for (int t = 0; t < scene.Talkers.Count; t++)
        {
            talkers.Add(ToDomain(scene.Talkers[t], $"{prefix}.talkers[{t}]", reader));
        }

        var shots = new List<Shot>();
        for (int s = 0; s < scene.Shots.Count; s++)
        {
            shots.Add(ToDomain(scene.Shots[s], $"{prefix}.shots[{s}]", reader));
        }

        if (scene.FollowCar is { } follow)
        {
            LinkMapper.CheckFollow(follow, $"{prefix}.follow_car", reader);
        }

        if (scene.ShootDay is { } day)
        {
            DayMapper.Check(day, $"{prefix}.shoot_day", reader);
        }

        RouteMapper.ToDomain(scene.Route, $"{prefix}.route", reader);
        return new Scene
        {
            Talkers = talkers,
            Shots = shots,
            SilentSeatIds = [.. scene.SilentSeatIds],
            Drive = DriveMapper.ToDomain(scene.DriveConditions ?? new V1.DriveConditions(), $"{prefix}.drive_conditions", reader),
            RemovedSiteIds = removedSiteIds,
        };
    }

    private static Talker ToDomain(V1.Talker talker, string at, FieldReader reader)
    {
        reader.Id($"{at}.id", talker.Id);
        reader.DisplayName($"{at}.display_name", talker.DisplayName);
        return new Talker
        {
            Id = talker.Id,
            DisplayName = talker.DisplayName,
            SeatId = talker.SeatId,
            Effort = reader.Enum<VocalEffort>($"{at}.vocal_effort", talker.VocalEffort),
            HeadPoses =
            [
                .. talker.HeadPoses.Select(p => new HeadPose
                {
                    YawRad = Angles.DegToRad(p.YawDeg),
                    PitchRad = Angles.DegToRad(p.PitchDeg),
                    LeanM = new Vector3D(p.LeanForwardM, p.LeanLeftM, p.LeanUpM),
                    ShareFraction = p.ShareFraction,
                }),
            ],
            NoBodyWorn = talker.NoBodyWorn,
        };
    }

    private static Shot ToDomain(V1.Shot shot, string at, FieldReader reader)
    {
        if (shot.Id.Length is 0 or > 20 || !shot.Id.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
        {
            reader.Add($"{at}.id", "this is not a shot's id", "Use 1 to 20 letters, digits and dashes");
        }

        return new Shot
        {
            Id = shot.Id,
            Position = GeometryMapper.ToDomain(shot.Position, $"{at}.position", reader),
            AimPoint = GeometryMapper.ToDomain(shot.AimPoint, $"{at}.aim_point", reader),
            FocalLengthMm = shot.FocalLengthMm,
            SensorWidthMm = shot.SensorWidthMm,
            SensorHeightMm = shot.SensorHeightMm,
        };
    }
}
